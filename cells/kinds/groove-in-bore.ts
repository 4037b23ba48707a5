import { annulus } from '../drawings/annulus.ts';
import { defineCell } from '../record/cell.ts';
import { broaching } from '../record/hazards.ts';

export default defineCell({
  key: 'groove-in-bore',
  edition: 1,
  title: 'Groove broached in a bore',
  purpose:
    'A flat-bottomed groove or keyway in a round bore: what to measure from the crown, its section, and what it leaves over a pin and in the wall.',
  group: 'machine work',
  inputs: [
    { name: 'bore', label: 'bore', quantity: 'length', sensible: ['3 mm', '1 m'] },
    {
      name: 'groove_width',
      label: 'width of the groove',
      quantity: 'length',
      sensible: ['0.5 mm', '100 mm'],
    },
    {
      name: 'side_depth',
      label: 'depth at its side',
      quantity: 'length',
      sensible: ['0.1 mm', '50 mm'],
      hint: 'From the corner where its side meets the bore, square to its floor: what an oil groove or a key needs.',
    },
    {
      name: 'grooves',
      label: 'grooves',
      quantity: 'number',
      default: '1',
      sensible: ['1', '12'],
      source: 'one groove',
    },
    {
      name: 'outside',
      label: 'outside diameter round the bore',
      quantity: 'length',
      optional: true,
      sensible: ['5 mm', '2 m'],
    },
    {
      name: 'pin_reach',
      label: 'pin in the wall reaches to, from the outside',
      quantity: 'length',
      optional: true,
      sensible: ['0.5 mm', '200 mm'],
      hint: 'Depth of its end below the outside, where it stands under the groove.',
    },
    {
      name: 'least_over_pin',
      label: 'least metal wanted over the pin',
      quantity: 'length',
      optional: true,
      sensible: ['0 mm', '20 mm'],
    },
    {
      name: 'hole',
      label: 'oil hole that passes oil beside the grooves',
      quantity: 'length',
      optional: true,
      sensible: ['0.5 mm', '80 mm'],
      hint: 'Blank: the grooves alone are set beside what it had.',
    },
    {
      name: 'holes',
      label: 'such holes',
      quantity: 'number',
      default: '1',
      sensible: ['1', '24'],
      source: 'one, where its size is given',
    },
    {
      name: 'original_area',
      label: 'section of the grooves and holes it had',
      quantity: 'area',
      optional: true,
      hint: 'All together, as the original passed its oil.',
    },
  ],
  outputs: [
    {
      name: 'sagitta',
      label: 'crown of the bore above the corners',
      quantity: 'length',
      formula: '=bore / 2 - SQRT((bore / 2) ^ 2 - (groove_width / 2) ^ 2)',
      basis: 'geometry',
      display: { in: 'thou', mm: 'mm' },
      hint: 'The height of the arc over the width of the groove.',
    },
    {
      name: 'crown_depth',
      label: 'depth from the crown',
      quantity: 'length',
      formula: '=side_depth - sagitta',
      basis: 'geometry',
      ofPart: true,
      face: true,
      hint: 'What a depth micrometer on the arc reads: the arc already stands in the groove.',
    },
    {
      name: 'over_floor',
      label: 'floor of the groove to the far side of the bore',
      quantity: 'length',
      formula: '=bore + crown_depth',
      basis: 'geometry',
      ofPart: true,
      face: true,
      hint: 'What a caliper reads across.',
    },
    {
      name: 'section',
      label: 'section of one groove',
      quantity: 'area',
      formula:
        '=groove_width * (SQRT((bore / 2) ^ 2 - (groove_width / 2) ^ 2) + side_depth) - (bore / 2) ^ 2 * ASIN(groove_width / bore) - groove_width / 2 * SQRT((bore / 2) ^ 2 - (groove_width / 2) ^ 2)',
      basis: 'geometry',
      display: { in: 'in2', mm: 'mm2' },
      hint: 'Outside the circle of the bore.',
    },
    {
      name: 'all_sections',
      label: 'section of all grooves',
      quantity: 'area',
      formula: '=grooves * section',
      basis: 'geometry',
      display: { in: 'in2', mm: 'mm2' },
    },
    {
      name: 'area_share',
      label: 'grooves and holes beside what it had',
      quantity: 'number',
      formula: '=(all_sections + IF(ISBLANK(hole); 0 m2; holes * PI() / 4 * hole ^ 2)) / original_area',
      basis: 'geometry',
      display: { in: '%', mm: '%' },
    },
    {
      name: 'wall_left',
      label: 'wall left under the groove, at its corners',
      quantity: 'length',
      formula: '=outside / 2 - SQRT((bore / 2 + crown_depth) ^ 2 + (groove_width / 2) ^ 2)',
      basis: 'geometry',
      face: true,
      hint: 'The corners of a flat floor lie further out than its middle.',
    },
    {
      name: 'over_pin',
      label: 'metal left between groove and pin',
      quantity: 'length',
      formula: '=outside / 2 - bore / 2 - crown_depth - pin_reach',
      basis: 'geometry',
      face: true,
      limits: { lower: '=least_over_pin' },
    },
  ],
  validity: [
    {
      holds: '=AND(bore > 0 m; groove_width > 0 m; groove_width < bore; side_depth > 0 m)',
      otherwise: 'All sizes are above zero, and the groove narrower than the bore.',
      grade: 'error',
    },
    {
      holds: '=AND(grooves >= 1; INT(grooves) = grooves)',
      otherwise: 'Grooves are a whole number from 1 up.',
      grade: 'error',
    },
    {
      holds: '=IF(ISBLANK(outside); 1 > 0; outside > bore)',
      otherwise: 'The outside is larger than the bore.',
      grade: 'error',
    },
    {
      holds:
        '=IF(groove_width < bore; side_depth > bore / 2 - SQRT(MAX(0 m2; (bore / 2) ^ 2 - (groove_width / 2) ^ 2)); 1 > 0)',
      otherwise:
        'At its middle the groove is not below the arc: two scratches come of it, not a groove. Cut deeper or narrower.',
      grade: 'error',
    },
    {
      holds: '=IF(ISBLANK(original_area); 1 > 0; original_area > 0 m2)',
      otherwise: 'The section it had is above zero.',
      grade: 'error',
    },
    {
      holds: '=IF(ISBLANK(hole); 1 > 0; AND(hole > 0 m; holes >= 1; INT(holes) = holes))',
      otherwise: 'A hole is above zero, and holes are a whole number from 1 up.',
      grade: 'error',
    },
    {
      holds: '=IF(ISBLANK(outside); 1 > 0; wall_left > 0 m)',
      otherwise: 'The groove comes out through the wall.',
      grade: 'caution',
    },
    {
      holds: '=IF(OR(ISBLANK(outside); ISBLANK(pin_reach)); 1 > 0; over_pin > 0 m)',
      otherwise: 'The groove uncovers the pin: shorten it, or clock the groove elsewhere.',
      grade: 'caution',
    },
  ],
  assumptions: [
    'Flat floor, square sides, square to the radius at its middle; corners of the cutter take off a little of the section.',
    'The wall under the groove is least at the corners of its floor, where the outside is round too; a pin stands under its middle.',
  ],
  sources: [
    'Height of an arc, R - sqrt(R^2 - w^2 / 4); segment of a circle',
    'ANSI/ASME B17.1-1967 (R2013): the same height in its depth control values',
  ],
  cautions: [
    'Grooves belong out of the loaded part of a bearing, and stop short of its ends: there they let the film go.',
    'A broach drawn or pushed through a thin bush bursts it: support it in a bored block all round.',
    broaching,
  ],
  examples: [
    {
      title: 'Keyway of 1/4 in for a square key in a 1 in bore',
      source:
        'ANSI/ASME B17.1-1967 (R2013) Table 2: T = 1.114 in, of which 0.005 in is clearance: side depth 0.125 + 0.005 in, crown 1 + 0.114 in',
      grade: 'seen',
      inputs: { bore: '1 in', groove_width: '0.25 in', side_depth: '0.130 in' },
      expect: {
        over_floor: { value: '1.114 in', within: '6e-4 in' },
        sagitta: { value: '0.015877 in', within: '1e-6 in' },
      },
    },
    {
      title: 'Oil groove of 6 mm, 2 mm at its side, in a bore of 50 mm with a wall of 8 mm',
      source:
        'recomputed by coordinates and by integration over the width: the corner of the floor at (3, 26.819) mm is 26.987 mm out',
      grade: 'recomputed',
      inputs: {
        bore: '50 mm',
        groove_width: '6 mm',
        side_depth: '2 mm',
        outside: '66 mm',
        pin_reach: '5 mm',
        original_area: '12 mm2',
      },
      expect: {
        crown_depth: { value: '1.819347 mm', within: 1e-5 },
        section: { value: '11.277 mm2', within: 1e-3 },
        wall_left: { value: '6.013385 mm', within: 1e-5 },
        over_pin: { value: '1.180653 mm', within: 1e-5 },
      },
    },
    {
      title: 'A groove as wide as a chord of 13.27 cm in a bore of 24 cm',
      source:
        "Machinery's Handbook, 31e, Circle Formulas, examples 3 and 4: height 2 cm, segment 18.01 cm2; 13.27 x 3 less that by hand",
      grade: 'seen',
      inputs: { bore: '24 cm', groove_width: '13.27 cm', side_depth: '3 cm' },
      expect: {
        sagitta: { value: '2 cm', within: '0.003 cm' },
        section: { value: '21.80 cm2', within: '0.02 cm2' },
      },
    },
  ],
  drawing: ({ bore, groove_width: width, side_depth: side, outside }) => {
    if (bore === undefined || width === undefined || side === undefined) return undefined;
    if (!(bore > 0 && width > 0 && width < bore && side > 0)) return undefined;
    const whole = outside !== undefined && outside > bore ? outside : bore + 3 * side;
    const scale = 190 / whole;
    if (!Number.isFinite(scale) || side > bore) return undefined;
    const [x, y] = [160, 118];
    const corner = Math.sqrt((bore / 2) ** 2 - (width / 2) ** 2);
    return {
      width: 320,
      height: 250,
      shapes: [
        annulus(x, y, (whole * scale) / 2, (bore * scale) / 2, 'section-b'),
        // Open below: the arc is not there across the groove.
        {
          kind: 'path',
          d: `M${x - (width * scale) / 2} ${y - corner * scale * 0.98}v${-(side + corner * 0.02) * scale}h${width * scale}v${(side + corner * 0.02) * scale}`,
          fill: 'paper',
        },
        { kind: 'line', x1: 50, y1: y, x2: 270, y2: y, style: 'centre' },
        { kind: 'line', x1: x, y1: 8, x2: x, y2: 230, style: 'centre' },
        {
          kind: 'dimension',
          x1: x,
          y1: y - (corner + side) * scale,
          x2: x,
          y2: y + (bore * scale) / 2,
          offset: 118,
          of: 'over_floor',
        },
      ],
    };
  },
});
