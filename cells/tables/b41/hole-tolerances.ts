import { rowsOf } from '../table.ts';

/**
 * Tolerance grades of the inch system, thousandths of an inch: what an H hole of that grade takes. ANSI/ASME B4.1-1967
 * (R2009), Table 2 and the hole columns of Tables 8 to 12 as printed in Machinery's Handbook, 31st ed. (seen for grades
 * 5 to 9; grades 4 and 10 to 13 seen to 1.97 in, else from memory). Sizes in inches: over the row above, to and including
 * this row. The metric table of ISO 286 is not it converted: the steps differ.
 */
const text = `
# to    4    5    6    7   8   9   10  11  12 13
0.12    0.15 0.2  0.25 0.4 0.6 1.0 1.6 2.5 4  6
0.24    0.15 0.2  0.3  0.5 0.7 1.2 1.8 3.0 5  7
0.40    0.15 0.25 0.4  0.6 0.9 1.4 2.2 3.5 6  9
0.71    0.2  0.3  0.4  0.7 1.0 1.6 2.8 4.0 7  10
1.19    0.25 0.4  0.5  0.8 1.2 2.0 3.5 5.0 8  12
1.97    0.3  0.4  0.6  1.0 1.6 2.5 4.0 6.0 10 16
3.15    0.3  0.5  0.7  1.2 1.8 3.0 4.5 7.0 12 18
4.73    0.4  0.6  0.9  1.4 2.2 3.5 5.0 9.0 14 22
7.09    0.5  0.7  1.0  1.6 2.5 4.0 6.0 10  16 25
9.85    0.6  0.8  1.2  1.8 2.8 4.5 7.0 12  18 28
`;

interface Row {
  to: number;
  tolerances: ReadonlyMap<number, number>;
}

export const inchGrades: readonly Row[] = rowsOf(text).map(([to, ...cells]) => ({
  to: Number(to),
  tolerances: new Map(cells.map((cell, i) => [i + 4, Number(cell)] as const)),
}));

/** Thousandths of an inch. */
export const inchTolerance = (nominalInches: number, grade: number): number | undefined =>
  inchGrades.find((row) => nominalInches <= row.to)?.tolerances.get(grade);
