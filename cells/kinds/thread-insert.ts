import { defineCell } from '../record/cell.ts';
import { cutting, licensed } from '../record/hazards.ts';

export default defineCell({
  key: 'thread-insert',
  edition: 1,
  title: 'Wire thread insert, by general proportions',
  purpose:
    'A stripped hole brought back to its own thread by a wire insert: hole and tap, depth, and whether the old hole and the wall allow it.',
  group: 'threads',
  inputs: [
    {
      name: 'thread',
      label: 'thread of the screw',
      choice: 'thread',
      hint: 'The one to be brought back, without its class: 3/8-16 UNC, M8.',
    },
    {
      name: 'hole_found',
      label: 'old hole, widest',
      quantity: 'length',
      optional: true,
      sensible: ['2 mm', '80 mm'],
      hint: 'Across what is left of the old thread, or the bore it was drilled out to.',
    },
    {
      name: 'length_share',
      label: 'length of the insert, in diameters of the screw',
      quantity: 'number',
      default: '1.5',
      sensible: ['1', '3'],
      source: 'common practice, no source: 1 in steel, 1.5 in iron, 2 in light alloy',
    },
    {
      name: 'set_below',
      label: 'insert stands below the face by, in turns',
      quantity: 'number',
      default: '1',
      sensible: ['0', '2'],
      source: 'ASME B18.29.2M-2005: one turn for its countersink and how deep it is set',
    },
    {
      name: 'lead_turns',
      label: 'turns left tapered by the tap, and room under it',
      quantity: 'number',
      default: '3',
      sensible: ['1', '12'],
      source: 'ASME B18.29.2M-2005: a bottoming tap 2 turns and 1 of room; a plug tap 4 and 1',
      hint: 'A tap with a pointed end, of 8 mm and below, goes deeper by half the screw’s diameter.',
    },
    { name: 'drills_at_hand', label: 'drills at hand', choice: 'drill-series', default: 'any' },
    {
      name: 'to_edge',
      label: 'axis of the hole to the nearest edge',
      quantity: 'length',
      optional: true,
      sensible: ['3 mm', '300 mm'],
    },
    {
      name: 'least_wall',
      label: 'least wall wanted at the edge',
      quantity: 'length',
      optional: true,
      sensible: ['0.5 mm', '100 mm'],
    },
  ],
  outputs: [
    {
      name: 'least_hole',
      label: 'least hole before tapping',
      quantity: 'length',
      formula: '=THREADMAJOR(thread) + 0.216506 * THREADPITCH(thread)',
      basis: 'geometry',
      hint: 'Minor diameter of the thread the insert goes into.',
    },
    {
      name: 'drill',
      label: 'drill',
      quantity: 'length',
      formula: '=DRILLABOVE(drills_at_hand; least_hole)',
      basis: 'geometry',
      held: true,
      face: true,
    },
    {
      name: 'over_least',
      label: 'drill over the least hole',
      quantity: 'length',
      formula: '=drill - least_hole',
      basis: 'geometry',
      display: { in: 'thou', mm: 'um' },
    },
    {
      name: 'pitch_diameter',
      label: 'pitch diameter of its tap',
      quantity: 'length',
      formula: '=THREADMAJOR(thread) + 0.649519 * THREADPITCH(thread)',
      basis: 'geometry',
    },
    {
      name: 'major',
      label: 'major diameter of its tap',
      quantity: 'length',
      formula: '=THREADMAJOR(thread) + 1.299038 * THREADPITCH(thread)',
      basis: 'geometry',
      face: true,
    },
    {
      name: 'insert_length',
      label: 'length of the insert, fitted',
      quantity: 'length',
      formula: '=length_share * THREADMAJOR(thread)',
      basis: 'geometry',
    },
    {
      name: 'full_thread',
      label: 'full thread down to, at least',
      quantity: 'length',
      formula: '=insert_length + set_below * THREADPITCH(thread)',
      basis: 'geometry',
    },
    {
      name: 'drill_depth',
      label: 'drill down to, at least',
      quantity: 'length',
      formula: '=full_thread + lead_turns * THREADPITCH(thread)',
      basis: 'geometry',
      face: true,
      hint: 'To the full diameter, without the point.',
    },
    {
      name: 'metal_left',
      label: 'metal for the new thread, each side',
      quantity: 'length',
      formula: '=(major - hole_found) / 2',
      basis: 'geometry',
      hint: 'From the old hole to the roots of the new thread.',
    },
    {
      name: 'share_left',
      label: 'share of the new thread that the old hole leaves',
      quantity: 'number',
      formula: '=MIN(1; (major - hole_found) / (major - least_hole))',
      basis: 'geometry',
      display: { in: '%', mm: '%' },
      limits: { lower: '=0.75' },
    },
    {
      name: 'wall_left',
      label: 'wall left at the edge',
      quantity: 'length',
      formula: '=to_edge - major / 2',
      basis: 'geometry',
      limits: { lower: '=least_wall' },
    },
  ],
  validity: [
    {
      holds: '=AND(length_share > 0; set_below >= 0; lead_turns >= 0)',
      otherwise: 'Length and turns are counted from zero upward.',
      grade: 'error',
    },
    {
      holds: '=IF(ISBLANK(hole_found); 1 > 0; hole_found > 0 m)',
      otherwise: 'The old hole is above zero.',
      grade: 'error',
    },
    {
      holds:
        '=IF(ISBLANK(hole_found); 1 > 0; hole_found < THREADMAJOR(thread) + 1.299038 * THREADPITCH(thread))',
      otherwise:
        'The old hole is wider than the thread of the insert: a screwed plug or the next larger thread repairs it.',
      grade: 'error',
    },
    {
      holds: '=IF(ISBLANK(to_edge); 1 > 0; wall_left > 0 m)',
      otherwise: 'The tap breaks through at the edge.',
      grade: 'caution',
    },
  ],
  assumptions: [
    'An insert coiled of wire of a rhombic section, its outside a thread of the same pitch 3/4 of a fundamental triangle larger each side: the maker’s own table of drills, taps and lengths comes first.',
    'Sizes are basic ones, without the class of the tap.',
  ],
  sources: [
    'ASME B18.29.2M-2005, screw thread inserts, helical coil: full thread down to the insert’s length and 1 P; drilled 3 P deeper for a bottoming tap, 5 P for a plug tap',
    'ASME B18.29.1-2010, the same in inches: a hole of the form of ASME B1.1, larger by the section of the wire; NASM33537: least major diameter cut off to H/8, so D + 1.29904 P (pitch D + 0.64952 P and least minor D + 0.21651 P from memory)',
    'Triangle of the thread: H = 0.866025 P, 3/4 H = 0.649519 P each side: ASME B1.1-2003, ISO 68-1:1998',
    'Share left and lengths: common practice, no source',
  ],
  cautions: [
    'Insert wire springs: goggles; break off and count the driving tang where the insert has one, and fish it out of a blind hole.',
    cutting,
    licensed,
  ],
  examples: [
    {
      title: 'M8 x 1.25, insert of 12 mm, plug tap with a pointed end',
      source:
        "ASME B18.29.2M-2005 in Machinery's Handbook, 31e, Helical Coil Screw Thread Inserts, example 3: M8 x 1.25, insert of 12.0, hole 23.5 deep; 4 turns of lead, 1 of room, and 4 mm of point are 8.2 turns",
      grade: 'seen',
      inputs: { thread: 'M8', length_share: '1.5', lead_turns: '8.2' },
      expect: {
        insert_length: { value: '12 mm', within: 1e-9 },
        drill_depth: { value: '23.5 mm', within: 1e-9 },
      },
    },
    {
      title: 'M8 x 1.25: drill, tap and depth',
      source:
        'metric insert table after ISO proportions (from memory): least minor 8.271, pitch 8.812, major 9.624 mm; 12 + 1.25 + 3.75 by hand',
      grade: 'memory',
      inputs: { thread: 'M8', hole_found: '8.4 mm', drills_at_hand: 'millimetre', to_edge: '10 mm' },
      expect: {
        least_hole: { value: '8.271 mm', within: '1e-3 mm' },
        pitch_diameter: { value: '8.812 mm', within: '1e-3 mm' },
        major: { value: '9.624 mm', within: '1e-3 mm' },
        drill_depth: { value: '17 mm', within: 1e-9 },
        share_left: { value: '0.9045', within: 1e-3 },
        wall_left: { value: '5.188 mm', within: '1e-3 mm' },
      },
    },
    {
      title: '3/8-16 UNC: the thread of the insert by the triangle',
      source:
        'recomputed by coordinates: H = 0.054127 in; 0.375 + 1.5 H = 0.45619 in, depth of thread 5/8 H each side leaves 0.38853 in',
      grade: 'recomputed',
      inputs: { thread: '3/8-16 UNC', length_share: '1' },
      expect: {
        major: { value: '0.45619 in', within: '1e-5 in' },
        least_hole: { value: '0.38853 in', within: '1e-5 in' },
        drill_depth: { value: '0.625 in', within: 1e-9 },
      },
    },
  ],
  drawing: ({ major, drill, insert_length: insert, full_thread: full, drill_depth: deep }) => {
    if (
      major === undefined ||
      drill === undefined ||
      insert === undefined ||
      full === undefined ||
      deep === undefined
    )
      return undefined;
    if (!(drill > 0 && major > drill && insert > 0 && full >= insert && deep >= full)) return undefined;
    const scale = Math.min(150 / deep, 80 / major);
    if (!Number.isFinite(scale)) return undefined;
    const [x, top] = [140, 24];
    const y = (depth: number): number => top + depth * scale;
    const [half, core] = [(major * scale) / 2, (drill * scale) / 2];
    const from = full - insert;
    // Wire between hole and screw, as deep again as the thread it stands in.
    const wire = 2 * (half - core);
    return {
      width: 300,
      height: top + deep * scale + 34,
      shapes: [
        { kind: 'rect', x: x - 86, y: top, width: 172, height: deep * scale + 20, fill: 'section-b' },
        { kind: 'rect', x: x - core, y: top, width: 2 * core, height: deep * scale, fill: 'paper' },
        { kind: 'rect', x: x - half, y: top, width: 2 * half, height: full * scale, fill: 'paper' },
        { kind: 'rect', x: x - half, y: y(from), width: wire, height: insert * scale, fill: 'section-a' },
        {
          kind: 'rect',
          x: x + half - wire,
          y: y(from),
          width: wire,
          height: insert * scale,
          fill: 'section-a',
        },
        { kind: 'line', x1: x, y1: 8, x2: x, y2: top + deep * scale + 28, style: 'centre' },
        {
          kind: 'dimension',
          x1: x + half,
          y1: top,
          x2: x + half,
          y2: y(full),
          offset: -66,
          of: 'full_thread',
        },
        {
          kind: 'dimension',
          x1: x + core,
          y1: top,
          x2: x + core,
          y2: y(deep),
          offset: -100,
          of: 'drill_depth',
        },
      ],
      exaggeration: 'thread and wire drawn plain',
    };
  },
});
