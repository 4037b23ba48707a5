import type { CellInput, Validity } from '../record/cell.ts';

/** One member of a fit that is there and stays as it is: its size takes the place of its limits. */
export const asItIs: readonly CellInput[] = [
  {
    name: 'hole_is',
    label: 'hole as it is',
    quantity: 'length',
    role: 'measured',
    optional: true,
    sensible: ['0.5 mm', '500 mm'],
    hint: 'Where the hole is there and the shaft is made to it. Comes before its class.',
  },
  {
    name: 'shaft_is',
    label: 'shaft as it is',
    quantity: 'length',
    role: 'measured',
    optional: true,
    sensible: ['0.5 mm', '500 mm'],
    hint: 'Where the shaft is there and the hole is made to it. Comes before its class.',
  },
];

/** By the deviations alone where both are made to their classes: the nominal drops out, whatever its spread. */
export const leastClearance =
  '=IF(AND(ISBLANK(hole_is); ISBLANK(shaft_is)); hole_lower - shaft_upper; IF(ISBLANK(hole_is); hole_least; hole_is) - IF(ISBLANK(shaft_is); shaft_greatest; shaft_is))';
export const greatestClearance =
  '=IF(AND(ISBLANK(hole_is); ISBLANK(shaft_is)); hole_upper - shaft_lower; IF(ISBLANK(hole_is); hole_greatest; hole_is) - IF(ISBLANK(shaft_is); shaft_least; shaft_is))';

export const asItIsHolds: readonly Validity[] = [
  {
    holds: '=AND(IF(ISBLANK(hole_is); 1 > 0; hole_is > 0 m); IF(ISBLANK(shaft_is); 1 > 0; shaft_is > 0 m))',
    otherwise: 'A size is above zero.',
    grade: 'error',
  },
];
