import { zones } from '../drawings/zones.ts';
import { asItIs, asItIsHolds, greatestClearance, leastClearance } from '../formulas/as-it-is.ts';
import { defineCell } from '../record/cell.ts';
import { pressGuard, pressStop } from '../record/hazards.ts';

export default defineCell({
  key: 'iso-fit',
  edition: 1,
  title: 'Metric fit by ISO 286',
  purpose: 'Limits of hole and shaft by their classes, and the clearance or interference between them.',
  group: 'fits',
  inputs: [
    { name: 'nominal', label: 'nominal size', quantity: 'length', sensible: ['0.5 mm', '500 mm'] },
    {
      name: 'hole_class',
      label: 'hole',
      choice: 'hole-classes',
      optional: true,
      hint: 'Capital letter: H7. Blank: the shaft alone, or a hole as it is.',
    },
    {
      name: 'shaft_class',
      label: 'shaft',
      choice: 'shaft-classes',
      optional: true,
      hint: 'Small letter: g6. Blank: the hole alone, or a shaft as it is.',
    },
    ...asItIs,
  ],
  outputs: [
    {
      name: 'hole_upper',
      label: 'hole, upper deviation',
      quantity: 'length',
      basis: 'geometry',
      formula: '=UPPERDEVIATION(nominal; hole_class)',
      display: { in: 'tenth_in', mm: 'um' },
    },
    {
      name: 'hole_lower',
      label: 'hole, lower deviation',
      quantity: 'length',
      basis: 'geometry',
      formula: '=LOWERDEVIATION(nominal; hole_class)',
      display: { in: 'tenth_in', mm: 'um' },
    },
    {
      name: 'shaft_upper',
      label: 'shaft, upper deviation',
      quantity: 'length',
      basis: 'geometry',
      formula: '=UPPERDEVIATION(nominal; shaft_class)',
      display: { in: 'tenth_in', mm: 'um' },
    },
    {
      name: 'shaft_lower',
      label: 'shaft, lower deviation',
      quantity: 'length',
      basis: 'geometry',
      formula: '=LOWERDEVIATION(nominal; shaft_class)',
      display: { in: 'tenth_in', mm: 'um' },
    },
    {
      name: 'hole_least',
      label: 'hole, least',
      quantity: 'length',
      basis: 'geometry',
      formula: '=nominal + hole_lower',
    },
    {
      name: 'hole_greatest',
      label: 'hole, greatest',
      quantity: 'length',
      basis: 'geometry',
      formula: '=nominal + hole_upper',
    },
    {
      name: 'shaft_least',
      label: 'shaft, least',
      quantity: 'length',
      basis: 'geometry',
      formula: '=nominal + shaft_lower',
    },
    {
      name: 'shaft_greatest',
      label: 'shaft, greatest',
      quantity: 'length',
      basis: 'geometry',
      formula: '=nominal + shaft_upper',
    },
    {
      name: 'least_clearance',
      label: 'least clearance',
      quantity: 'length',
      basis: 'geometry',
      formula: leastClearance,
      face: true,
      display: { in: 'thou', mm: 'um' },
      hint: 'Below zero it is the greatest interference.',
    },
    {
      name: 'greatest_clearance',
      label: 'greatest clearance',
      quantity: 'length',
      basis: 'geometry',
      formula: greatestClearance,
      face: true,
      display: { in: 'thou', mm: 'um' },
      hint: 'Below zero it is the least interference.',
    },
    {
      name: 'middle_clearance',
      label: 'clearance, limits in their middle',
      quantity: 'length',
      basis: 'geometry',
      formula: '=(least_clearance + greatest_clearance) / 2',
      display: { in: 'thou', mm: 'um' },
      spread: {
        low: '=(least_clearance - greatest_clearance) / 2',
        high: '=(greatest_clearance - least_clearance) / 2',
        distribution: 'triangular',
        label: 'tolerances of hole and shaft',
      },
      hint: 'For what follows: its spread reaches from the least to the greatest.',
    },
  ],
  validity: [
    ...asItIsHolds,
    {
      holds: '=AND(nominal > 0 m; nominal <= 0.5 m)',
      otherwise: 'The tables reach from above 0 to 500 mm.',
      grade: 'error',
    },
    {
      holds:
        '=IF(OR(AND(ISBLANK(hole_class); ISBLANK(hole_is)); AND(ISBLANK(shaft_class); ISBLANK(shaft_is))); 1 > 0; OR(least_clearance >= 0 m; greatest_clearance <= 0 m))',
      otherwise: 'A transition fit: parts within their limits may come out loose or tight.',
      grade: 'caution',
    },
  ],
  assumptions: [
    'Sizes at 20 degC. A size on a step belongs to the step below it: 50 mm to over 30 up to 50.',
    'Form and taper are within the limits of size (envelope asked, or measured at the worst place).',
  ],
  sources: ['ISO 286-1:2010, ISO 286-2:2010 with ISO 286-2:1988/Cor.1:2006'],
  cautions: [pressGuard, pressStop],
  examples: [
    {
      title: '50 H7/f7',
      source: 'ISO 286-1 definitions with the limits of ISO 286-2',
      grade: 'computed',
      inputs: { nominal: '50 mm', hole_class: 'H7', shaft_class: 'f7' },
      expect: {
        greatest_clearance: { value: '75 um', within: '1e-6 um' },
        least_clearance: { value: '25 um', within: '1e-6 um' },
      },
    },
    {
      title: 'Hole 50 H7 alone, on a shaft that measures 49.960 mm',
      source: 'ISO 286-2 limits of 50 H7: 0 to 25 um, and by subtraction',
      grade: 'computed',
      inputs: { nominal: '50 mm', hole_class: 'H7', shaft_is: '49.960 mm' },
      expect: {
        least_clearance: { value: '40 um', within: '1e-6 um' },
        greatest_clearance: { value: '65 um', within: '1e-6 um' },
      },
    },
    {
      title: 'Hole 25 H7 and shaft 25 s6',
      source: 'ISO 286-2:1988/2010, tables',
      grade: 'seen',
      inputs: { nominal: '25 mm', hole_class: 'H7', shaft_class: 's6' },
      expect: {
        hole_upper: { value: '21 um', within: '1e-6 um' },
        shaft_upper: { value: '48 um', within: '1e-6 um' },
        shaft_lower: { value: '35 um', within: '1e-6 um' },
      },
    },
    {
      title: '50 H7/p6, tight at the worst by 1 um',
      source: 'ISO 286-1 definitions with the limits of ISO 286-2',
      grade: 'computed',
      inputs: { nominal: '50 mm', hole_class: 'H7', shaft_class: 'p6' },
      expect: {
        greatest_clearance: { value: '-1 um', within: '1e-6 um' },
        least_clearance: { value: '-42 um', within: '1e-6 um' },
      },
    },
  ],
  drawing: (v) =>
    zones({
      hole: { lower: v.hole_lower, upper: v.hole_upper, names: ['hole_lower', 'hole_upper'] },
      shaft: { lower: v.shaft_lower, upper: v.shaft_upper, names: ['shaft_lower', 'shaft_upper'] },
    }),
});
