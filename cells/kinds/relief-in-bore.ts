import { annulus } from '../drawings/annulus.ts';
import { defineCell } from '../record/cell.ts';
import { milling } from '../record/hazards.ts';

export default defineCell({
  key: 'relief-in-bore',
  edition: 1,
  title: 'Relief by a keyseat cutter in a bore',
  purpose:
    'How long a pocket a keyseat cutter sinks into the wall of a bore, how deep it must go to bridge two holes, and whether cutter and neck have room.',
  group: 'machine work',
  inputs: [
    { name: 'bore', label: 'bore', quantity: 'length', sensible: ['10 mm', '1 m'] },
    {
      name: 'cutter',
      label: 'cutter diameter',
      quantity: 'length',
      sensible: ['4 mm', '300 mm'],
      hint: 'As it runs: with its runout.',
    },
    {
      name: 'depth',
      label: 'depth of the relief',
      quantity: 'length',
      sensible: ['0.1 mm', '30 mm'],
      hint: 'From the wall of the bore outward, where it is deepest.',
    },
    {
      name: 'to_bridge',
      label: 'length to bridge',
      quantity: 'length',
      optional: true,
      sensible: ['1 mm', '300 mm'],
      hint: 'Straight across, from outer edge to outer edge of what it must join.',
    },
    {
      name: 'neck',
      label: 'neck of the cutter',
      quantity: 'length',
      optional: true,
      sensible: ['2 mm', '100 mm'],
      hint: 'Diameter of the shank behind the teeth, where it runs inside the bore.',
    },
    {
      name: 'outside',
      label: 'outside diameter round the bore',
      quantity: 'length',
      optional: true,
      sensible: ['12 mm', '2 m'],
      hint: 'Of the bush or boss, for the wall left.',
    },
    {
      name: 'least_wall',
      label: 'least wall wanted behind it',
      quantity: 'length',
      optional: true,
      sensible: ['0.2 mm', '50 mm'],
    },
  ],
  outputs: [
    {
      name: 'offset',
      label: 'cutter axis off the bore axis',
      quantity: 'length',
      formula: '=bore / 2 + depth - cutter / 2',
      basis: 'geometry',
      face: true,
      hint: 'What the slide moves, from where the spindle is true to the bore.',
    },
    {
      name: 'edges_at',
      label: 'edges of the relief, from the bore axis',
      quantity: 'length',
      formula: '=((bore / 2) ^ 2 - (cutter / 2) ^ 2 + offset ^ 2) / (2 * offset)',
      basis: 'geometry',
      hint: 'Along the way the cutter was fed.',
    },
    {
      name: 'chord',
      label: 'length of the relief, straight across',
      quantity: 'length',
      formula: '=2 * SQRT((bore / 2) ^ 2 - edges_at ^ 2)',
      basis: 'geometry',
      face: true,
      limits: { lower: '=to_bridge' },
    },
    {
      name: 'depth_to_bridge',
      label: 'depth that just bridges it',
      quantity: 'length',
      formula:
        '=SQRT((bore / 2) ^ 2 - (to_bridge / 2) ^ 2) - SQRT((cutter / 2) ^ 2 - (to_bridge / 2) ^ 2) + cutter / 2 - bore / 2',
      basis: 'geometry',
      face: true,
    },
    {
      name: 'flat_chord',
      label: 'length it would have in a flat face',
      quantity: 'length',
      formula: '=2 * SQRT((cutter / 2) ^ 2 - (cutter / 2 - depth) ^ 2)',
      basis: 'geometry',
      hint: 'The usual formula of a cutter sunk into a flat: in a bore the wall bends away the same way, and the relief comes out longer.',
    },
    {
      name: 'angle_spanned',
      label: 'angle the relief spans on the bore',
      quantity: 'angle',
      formula: '=2 * ASIN(chord / bore)',
      basis: 'geometry',
      display: { in: 'deg', mm: 'deg' },
    },
    {
      name: 'neck_room',
      label: 'room between neck and bore, at depth',
      quantity: 'length',
      formula: '=bore / 2 - offset - neck / 2',
      basis: 'geometry',
      limits: { lower: '=0 m' },
    },
    {
      name: 'wall_left',
      label: 'wall left behind the relief',
      quantity: 'length',
      formula: '=outside / 2 - bore / 2 - depth',
      basis: 'geometry',
      face: true,
      limits: { lower: '=least_wall' },
    },
    {
      name: 'relief_area',
      label: 'section of the relief',
      quantity: 'area',
      formula:
        '=(cutter / 2) ^ 2 * (PI() - ACOS((offset ^ 2 + (cutter / 2) ^ 2 - (bore / 2) ^ 2) / (offset * cutter))) - (bore / 2) ^ 2 * ACOS(edges_at / (bore / 2)) + offset * chord / 2',
      basis: 'geometry',
      display: { in: 'in2', mm: 'mm2' },
      hint: 'Across the bore, outside its circle; times the width of the cutter it is the oil it holds.',
    },
  ],
  validity: [
    {
      holds: '=AND(bore > 0 m; cutter > 0 m; depth > 0 m)',
      otherwise: 'Bore, cutter and depth are above zero.',
      grade: 'error',
    },
    {
      holds: '=cutter < bore',
      otherwise: 'The cutter is as large as the bore: it does not go in. Take a smaller one.',
      grade: 'error',
    },
    {
      holds: '=depth < cutter / 2',
      otherwise: 'Deeper than half the cutter: its neck runs into the wall before that.',
      grade: 'error',
    },
    {
      holds: '=IF(ISBLANK(to_bridge); 1 > 0; AND(to_bridge > 0 m; to_bridge < cutter))',
      otherwise:
        'The length to bridge is above zero and shorter than the cutter: a smaller cutter never spans it.',
      grade: 'error',
    },
    {
      holds: '=IF(ISBLANK(neck); 1 > 0; neck < cutter)',
      otherwise: 'The neck is smaller than the cutter.',
      grade: 'error',
    },
    {
      holds: '=IF(ISBLANK(outside); 1 > 0; outside > bore)',
      otherwise: 'The outside is larger than the bore.',
      grade: 'error',
    },
    {
      holds: '=IF(ISBLANK(neck); 1 > 0; neck_room > 0 m)',
      otherwise:
        'The neck rubs on the bore before the relief is deep enough: a thinner neck, a larger cutter, or less depth.',
      grade: 'caution',
    },
    {
      holds: '=IF(ISBLANK(outside); 1 > 0; wall_left > 0 m)',
      otherwise: 'The cutter comes out through the wall.',
      grade: 'caution',
    },
    {
      holds: '=bore - cutter >= 0.02 * bore',
      otherwise:
        'Cutter and bore differ by less than a fiftieth: it enters only if both are true, and a touch of the slide marks the bore.',
      grade: 'caution',
    },
  ],
  assumptions: [
    'Two circles: the cutter is fed straight out and back, its axis parallel to the bore; a rotary table makes the relief longer by the angle turned.',
    'A cutter that runs out or springs away cuts deeper or less: try the depth on scrap.',
  ],
  sources: [
    "Chord of a segment by radius and height: Circle Formulas, Machinery's Handbook, 31e; two circles by coordinates, a second method of our own",
    'Geometry of two circles that meet: R, r and the distance of their centres',
  ],
  cautions: [
    'The cutter runs where it cannot be seen: stop the spindle before the slide moves back, no fingers and no cloth in the bore, chips out with a brush or a vacuum.',
    'Climb cutting draws a thin cutter in: feed against the teeth, and lock what does not move.',
    milling,
  ],
  examples: [
    {
      title: 'Bore 2.20 in, cutter 1 1/2 in, 0.080 in deep',
      source:
        'recomputed by coordinates: circles of 1.10 and 0.75 in, centres 0.43 in apart; by the flat formula 0.674 in',
      grade: 'recomputed',
      inputs: {
        bore: '2.20 in',
        cutter: '1 1/2 in',
        depth: '0.080 in',
        to_bridge: '0.70 in',
        outside: '2.60 in',
        neck: '0.5 in',
      },
      expect: {
        chord: { value: '1.0453 in', within: '1e-4 in' },
        flat_chord: { value: '0.6741 in', within: '1e-4 in' },
        depth_to_bridge: { value: '0.02951 in', within: '1e-5 in' },
        wall_left: { value: '0.120 in', within: '1e-9 in' },
        neck_room: { value: '0.42 in', within: '1e-9 in' },
        relief_area: { value: '0.0593424 in2', within: 1e-3 },
      },
    },
    {
      title: 'A cutter nearly as large as the bore: 50 mm bore, 48 mm cutter, 0.5 mm deep',
      source:
        'recomputed by coordinates: radii 25 and 24 mm, centres 1.5 mm apart; the chord by Heron’s area of the triangle of both radii and the distance',
      grade: 'recomputed',
      inputs: { bore: '50 mm', cutter: '48 mm', depth: '0.5 mm' },
      expect: { chord: { value: '36.5053 mm', within: '1e-3 mm' } },
    },
    {
      title: 'The flat formula: a cutter of 24 cm sunk 2 cm',
      source:
        "Machinery's Handbook, 31e, Circle Formulas, example 3: a segment 2 cm high of a circle of 12 cm radius has a chord of 13.27 cm",
      grade: 'seen',
      inputs: { bore: '30 cm', cutter: '24 cm', depth: '2 cm' },
      expect: { flat_chord: { value: '13.27 cm', within: '0.005 cm' } },
    },
  ],
  drawing: ({ bore, cutter, depth, outside }) => {
    if (bore === undefined || cutter === undefined || depth === undefined) return undefined;
    if (!(bore > 0 && cutter > 0 && cutter < bore && depth > 0 && depth < cutter / 2)) return undefined;
    const whole = outside !== undefined && outside > bore ? outside : bore * 1.35;
    const scale = 190 / whole;
    if (!Number.isFinite(scale)) return undefined;
    const [x, y] = [160, 115];
    const offset = bore / 2 + depth - cutter / 2;
    return {
      width: 320,
      height: 240,
      shapes: [
        annulus(x, y, (whole * scale) / 2, (bore * scale) / 2, 'section-b'),
        { kind: 'circle', x: x + offset * scale, y, r: (cutter * scale) / 2, fill: 'paper' },
        { kind: 'circle', x, y, r: (bore * scale) / 2, fill: 'none' },
        { kind: 'line', x1: 40, y1: y, x2: 290, y2: y, style: 'centre' },
        { kind: 'line', x1: x, y1: 12, x2: x, y2: 218, style: 'centre' },
        {
          kind: 'dimension',
          x1: x - (bore * scale) / 2,
          y1: y,
          x2: x + (bore * scale) / 2,
          y2: y,
          offset: -112,
          of: 'bore',
        },
        {
          kind: 'dimension',
          x1: x + (offset - cutter / 2) * scale,
          y1: y,
          x2: x + (offset + cutter / 2) * scale,
          y2: y,
          offset: 112,
          of: 'cutter',
        },
      ],
    };
  },
});
