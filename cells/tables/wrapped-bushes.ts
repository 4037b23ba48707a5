import type { TableProblem } from './table.ts';
import { rowsOf, um } from './table.ts';

/**
 * Outside diameter of wrapped bushes before fitting, micrometres over nominal; to and including, mm. ISO 3547 (DIN 1494).
 * 10 to 18 and 30 to 80 mm seen, the rest from memory. Into a housing H7 the bore comes out about H9; shaft f7 or e7.
 */
const text = `
10  55  25
18  65  30
30  75  35
50  85  45
80  100 55
120 120 70
180 170 100
`;

const rows = rowsOf(text).map((cells) => {
  const [to, upper, lower] = cells.map(Number) as [number, number, number];
  return { to, upper, lower };
});

/** Sizes at which the limits jump, metres. */
export const wrappedBushSteps: readonly number[] = [4, ...rows.map(({ to }) => to)].map(
  (size) => size / 1000,
);

/** Outside diameter from which on a turned bush is r6, metres. */
export const TURNED_BUSH_STEP = 0.12;

export const wrappedBushFits = { housing: 'H7', boreFitted: 'H9', shafts: ['f7', 'e7'] } as const;

/**
 * Tolerance classes of turned copper-alloy bushes, ISO 4379:1993/2018 Table 3, from memory: bore E6 before fitting comes
 * out about H8; outside s6, r6 over 120 mm.
 */
export const turnedBushFits = {
  housing: 'H7',
  boreBefore: 'E6',
  boreFitted: 'H8',
  shafts: ['e7', 'g7'],
  /** Outside diameter in metres. */
  outside: (diameter: number): 's6' | 'r6' => (diameter > TURNED_BUSH_STEP ? 'r6' : 's6'),
} as const;

/** Limit deviations of the outside diameter, metres, of a nominal outside diameter in metres. */
export const wrappedBushOutside = (nominal: number): { upper: number; lower: number } | TableProblem => {
  const size = Math.round(nominal * 1e9) / 1e6;
  const row = size > 4 ? rows.find((each) => size <= each.to) : undefined;
  return row === undefined
    ? {
        problem: `ISO 3547 is tabulated here for outside diameters over 4 to 180 mm, not ${size} mm: measure the bush, or take its maker's list.`,
      }
    : { upper: um(row.upper), lower: um(row.lower) };
};
