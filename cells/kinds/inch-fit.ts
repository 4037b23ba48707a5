import { zones } from '../drawings/zones.ts';
import { asItIs, asItIsHolds, greatestClearance, leastClearance } from '../formulas/as-it-is.ts';
import { defineCell } from '../record/cell.ts';
import { pressGuard, pressStop } from '../record/hazards.ts';

export default defineCell({
  key: 'inch-fit',
  edition: 1,
  title: 'Inch fit by B4.1',
  purpose: 'Limits of hole and shaft of a standard inch fit, and the clearance or interference between them.',
  group: 'fits',
  inputs: [
    { name: 'basic_size', label: 'basic size', quantity: 'length', sensible: ['0.02 in', '9.85 in'] },
    {
      name: 'fit_class',
      label: 'class of fit',
      choice: 'inch-fits',
      hint: 'RC running, LC LT LN locating, FN force',
    },
    ...asItIs,
  ],
  outputs: [
    {
      name: 'hole_upper',
      label: 'hole, upper deviation',
      quantity: 'length',
      basis: 'geometry',
      formula: '=INCHHOLEUPPER(basic_size; fit_class)',
      display: { in: 'thou', mm: 'um' },
    },
    {
      name: 'hole_lower',
      label: 'hole, lower deviation',
      quantity: 'length',
      basis: 'geometry',
      formula: '=INCHHOLELOWER(basic_size; fit_class)',
      display: { in: 'thou', mm: 'um' },
    },
    {
      name: 'shaft_upper',
      label: 'shaft, upper deviation',
      quantity: 'length',
      basis: 'geometry',
      formula: '=INCHSHAFTUPPER(basic_size; fit_class)',
      display: { in: 'thou', mm: 'um' },
    },
    {
      name: 'shaft_lower',
      label: 'shaft, lower deviation',
      quantity: 'length',
      basis: 'geometry',
      formula: '=INCHSHAFTLOWER(basic_size; fit_class)',
      display: { in: 'thou', mm: 'um' },
    },
    {
      name: 'hole_least',
      label: 'hole, least',
      quantity: 'length',
      basis: 'geometry',
      formula: '=basic_size + hole_lower',
    },
    {
      name: 'hole_greatest',
      label: 'hole, greatest',
      quantity: 'length',
      basis: 'geometry',
      formula: '=basic_size + hole_upper',
    },
    {
      name: 'shaft_least',
      label: 'shaft, least',
      quantity: 'length',
      basis: 'geometry',
      formula: '=basic_size + shaft_lower',
    },
    {
      name: 'shaft_greatest',
      label: 'shaft, greatest',
      quantity: 'length',
      basis: 'geometry',
      formula: '=basic_size + shaft_upper',
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
      holds: '=AND(basic_size > 0 m; basic_size <= 9.85 in)',
      otherwise: 'The table reaches from above 0 to 9.85 in.',
      grade: 'error',
    },
    {
      holds: '=OR(least_clearance >= 0 m; greatest_clearance <= 0 m)',
      otherwise: 'A transition fit: parts within their limits may come out loose or tight.',
      grade: 'caution',
    },
  ],
  assumptions: [
    'Sizes at 68 degF. A size on a step belongs to the step below it.',
    'Form and taper are within the limits of size.',
  ],
  sources: ['ANSI/ASME B4.1-1967 (R2009), Preferred Limits and Fits for Cylindrical Parts'],
  cautions: [pressGuard, pressStop],
  examples: [
    {
      title: 'FN3 at 1 in',
      source: 'ANSI/ASME B4.1-1967, Table 11',
      grade: 'seen',
      inputs: { basic_size: '1 in', fit_class: 'FN3' },
      expect: {
        hole_upper: { value: '0.8 thou', within: '1e-6 thou' },
        shaft_upper: { value: '2.1 thou', within: '1e-6 thou' },
        shaft_lower: { value: '1.6 thou', within: '1e-6 thou' },
        least_clearance: { value: '-2.1 thou', within: '1e-6 thou' },
        greatest_clearance: { value: '-0.8 thou', within: '1e-6 thou' },
      },
    },
    {
      title: 'RC4 at 1 1/2 in',
      source: 'ANSI/ASME B4.1-1967, Table 8',
      grade: 'seen',
      inputs: { basic_size: '1.5 in', fit_class: 'RC4' },
      expect: {
        least_clearance: { value: '1.0 thou', within: '1e-6 thou' },
        greatest_clearance: { value: '3.6 thou', within: '1e-6 thou' },
      },
    },
  ],
  drawing: (v) =>
    zones({
      hole: { lower: v.hole_lower, upper: v.hole_upper, names: ['hole_lower', 'hole_upper'] },
      shaft: { lower: v.shaft_lower, upper: v.shaft_upper, names: ['shaft_lower', 'shaft_upper'] },
    }),
});
