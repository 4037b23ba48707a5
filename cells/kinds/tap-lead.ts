import { defineCell } from '../record/cell.ts';
import { cutting } from '../record/hazards.ts';

export default defineCell({
  key: 'tap-lead',
  edition: 1,
  title: 'Thread left by the lead of a tap',
  purpose:
    'The last turns of a blind hole are cut by the lead of the tap: full on their flanks, but shallow at the major diameter. Where a screw bites there, and for how many turns.',
  group: 'threads',
  inputs: [
    { name: 'thread', label: 'thread', choice: 'thread', hint: 'Without its class: 3/8-16 UNC, M10.' },
    {
      name: 'hole',
      label: 'hole before tapping',
      quantity: 'length',
      default: '=TAPDRILL(thread)',
      sensible: ['0.5 mm', '200 mm'],
      source: 'the drill usually taken: the tables of threads',
    },
    {
      name: 'lead_turns',
      label: 'turns of lead of the last tap',
      quantity: 'number',
      sensible: ['1', '10'],
      hint: 'Bottoming 1 to 2, plug 3 to 5, taper 7 to 10 turns, by whose tap it is.',
    },
    {
      name: 'tip',
      label: 'diameter of the tap at its tip',
      quantity: 'length',
      default: '=hole',
      sensible: ['0.5 mm', '200 mm'],
      source: 'a tap that just enters its hole; measure it',
    },
    {
      name: 'tapped_depth',
      label: 'depth the tip of the tap went to',
      quantity: 'length',
      sensible: ['1 mm', '500 mm'],
      hint: 'From the face.',
    },
    {
      name: 'screw_major',
      label: 'major diameter of the screw, or of its end',
      quantity: 'length',
      default: '=THREADMAJOR(thread)',
      sensible: ['0.5 mm', '200 mm'],
      source: 'the basic size; a screw made to its class is a little less',
      hint: 'Turned down at its end, or as measured.',
    },
    {
      name: 'screw_in',
      label: 'screw wanted in by',
      quantity: 'length',
      optional: true,
      sensible: ['1 mm', '500 mm'],
      hint: 'From the face to its end.',
    },
  ],
  outputs: [
    {
      name: 'major',
      label: 'major diameter of the tap',
      quantity: 'length',
      formula: '=THREADMAJOR(thread)',
      basis: 'geometry',
    },
    { name: 'pitch', label: 'pitch', quantity: 'length', formula: '=THREADPITCH(thread)', basis: 'geometry' },
    {
      name: 'full_depth',
      label: 'full thread down to',
      quantity: 'length',
      formula: '=tapped_depth - lead_turns * pitch',
      basis: 'geometry',
      ofPart: true,
      face: true,
    },
    {
      name: 'major_at_end',
      label: 'major diameter of the hole where the screw ends',
      quantity: 'length',
      formula:
        '=IF(screw_in > tapped_depth; hole; MIN(major; MAX(hole; major - (major - tip) * (screw_in - full_depth) / (lead_turns * pitch))))',
      basis: 'geometry',
    },
    {
      name: 'bites_from',
      label: 'screw begins to bite at a depth of',
      quantity: 'length',
      formula: '=full_depth + MAX(0; major - screw_major) / (major - tip) * lead_turns * pitch',
      basis: 'geometry',
      face: true,
      limits: { lower: '=screw_in' },
      hint: 'Its crests meet the shallow roots of the hole: on the major diameter, not on the flanks.',
    },
    {
      name: 'bite_turns',
      label: 'turns of bite, screwed in as far as wanted',
      quantity: 'number',
      formula: '=MAX(0 m; screw_in - bites_from) / pitch',
      basis: 'geometry',
      face: true,
      hint: '0: it goes in freely.',
    },
    {
      name: 'end_to_turn',
      label: 'end of the screw to be turned to, to go in freely',
      quantity: 'length',
      formula: '=MIN(screw_major; major_at_end)',
      basis: 'geometry',
      ofPart: true,
      face: true,
      hint: 'Over the turns of bite; the flanks still bear.',
    },
  ],
  validity: [
    {
      holds: '=AND(hole > 0 m; hole < THREADMAJOR(thread); tip > 0 m; tip < THREADMAJOR(thread))',
      otherwise: 'Hole and tip of the tap are above zero and smaller than the thread.',
      grade: 'error',
    },
    {
      holds: '=lead_turns > 0',
      otherwise: 'A tap has some lead: bottoming ones one to two turns.',
      grade: 'error',
    },
    {
      holds: '=tapped_depth > lead_turns * THREADPITCH(thread)',
      otherwise: 'The tap has not gone in past its lead: no full thread is cut yet.',
      grade: 'error',
    },
    {
      holds: '=AND(screw_major > hole; screw_major <= 1.02 * THREADMAJOR(thread))',
      otherwise: 'The screw is larger than its thread, or smaller than the hole: look at both.',
      grade: 'error',
    },
    {
      holds: '=IF(ISBLANK(screw_in); 1 > 0; screw_in > 0 m)',
      otherwise: 'How far the screw goes in is above zero.',
      grade: 'error',
    },
    {
      holds: '=IF(ISBLANK(screw_in); 1 > 0; screw_in <= tapped_depth)',
      otherwise: 'The screw reaches past the tapped hole: it bottoms before it clamps.',
      grade: 'caution',
    },
    {
      holds: '=IF(ISBLANK(screw_in); 1 > 0; bite_turns <= 0)',
      otherwise:
        'The screw bites before it is home: it feels tight and clamps nothing. A bottoming tap, a shorter screw, or its end turned down. A screw that is meant to hold itself so may do.',
      grade: 'caution',
    },
  ],
  assumptions: [
    'The lead is a straight cone from the tip to the full major diameter, ground on the crests alone: flanks and pitch diameter are full all the way.',
    'The hole is deeper than the tap went, or its bottom does not touch it.',
  ],
  sources: [
    'No published worked example was found: the examples are held by a second method of our own',
    'Geometry of a cone over the crests of a tap',
    "Lead of taps: plug 3 to 5, bottoming 1 to 2 turns: ANSI/ASME B94.9-2008 (R2018) in Machinery's Handbook, 31e; taper 8 to 10 in its 26th edition",
  ],
  cautions: [
    'A tap that bottoms breaks: count its turns, and clear the chips. Broken taps are sharp and hard: goggles.',
    cutting,
  ],
  examples: [
    {
      title: '3/8-16, plug tap of 4 turns, tip as the hole 5/16 in, gone in 1 in; screw wanted in 0.875 in',
      source:
        'recomputed by coordinates: full thread to 1 - 4/16 = 0.75 in; the screw of 0.375 in bites from there, 0.125 in x 16 = 2 turns; major there 0.375 - 0.0625 x 0.5 = 0.34375 in',
      grade: 'recomputed',
      inputs: {
        thread: '3/8-16 UNC',
        hole: '5/16 in',
        lead_turns: '4',
        tapped_depth: '1 in',
        screw_in: '0.875 in',
      },
      expect: {
        full_depth: { value: '0.75 in', within: '1e-9 in' },
        bite_turns: { value: '2', within: 1e-9 },
        end_to_turn: { value: '0.34375 in', within: '1e-9 in' },
      },
    },
    {
      title: 'The same with the end of the screw turned to 0.350 in',
      source:
        'recomputed by coordinates: 0.75 + 0.25 x (0.375 - 0.350) / 0.0625 = 0.85 in, 0.025 in x 16 = 0.4 turns',
      grade: 'recomputed',
      inputs: {
        thread: '3/8-16 UNC',
        hole: '5/16 in',
        lead_turns: '4',
        tapped_depth: '1 in',
        screw_major: '0.350 in',
        screw_in: '0.875 in',
      },
      expect: {
        bites_from: { value: '0.85 in', within: '1e-9 in' },
        bite_turns: { value: '0.4', within: 1e-9 },
      },
    },
  ],
  drawing: ({ major, tip: tipRead, tapped_depth: deep, full_depth: full }) => {
    if (major === undefined || deep === undefined || full === undefined) return undefined;
    // A tap that just enters a hole left at its usual drill.
    const tip = tipRead ?? 0.85 * major;
    if (!(tip > 0 && major > tip && full > 0 && deep > full) || !Number.isFinite(deep / major))
      return undefined;
    const [top, height, x] = [26, 150, 150];
    const y = (depth: number): number => top + (height * depth) / deep;
    const half = (d: number): number => (60 * d) / major;
    const outline = [
      [x - half(major), top],
      [x - half(major), y(full)],
      [x - half(tip), y(deep)],
      [x + half(tip), y(deep)],
      [x + half(major), y(full)],
      [x + half(major), top],
    ];
    return {
      width: 300,
      height: 210,
      shapes: [
        { kind: 'rect', x: x - 100, y: top, width: 200, height: height + 20, fill: 'section-b' },
        { kind: 'path', d: `M${outline.map((point) => point.join(' ')).join('L')}Z`, fill: 'paper' },
        { kind: 'line', x1: x, y1: 12, x2: x, y2: 204, style: 'centre' },
        {
          kind: 'dimension',
          x1: x + half(major),
          y1: top,
          x2: x + half(major),
          y2: y(full),
          offset: 56,
          of: 'full_depth',
        },
      ],
      exaggeration: 'not to scale along the hole',
    };
  },
});
