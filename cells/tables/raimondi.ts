import type { TableProblem } from './table.ts';
import { rowsOf } from './table.ts';

/**
 * Full (360 degree) journal bearing by Raimondi and Boyd, ASLE Transactions 1 (1958) 159-209, from memory; Sommerfeld
 * number, attitude and peak pressure are recomputed in the tests from the Reynolds equation, and the last row of the
 * infinite bearing is computed from it. By length over diameter:
 * eccentricity ratio, Sommerfeld number S = (r/c)^2 mu N / P (N in turns per second), attitude angle in degrees, friction
 * variable (r/c) f, flow variable Q / (r c N l), side flow over flow, and mean over greatest pressure.
 */
const text = {
  infinite: `
0.1  0.240  69.10 4.80 3.03  0 0.826
0.2  0.123  67.26 2.57 2.83  0 0.814
0.4  0.0626 61.94 1.52 2.26  0 0.764
0.6  0.0389 54.31 1.20 1.56  0 0.667
0.8  0.021  42.22 0.961 0.760 0 0.495
0.9  0.0115 31.62 0.756 0.411 0 0.358
0.97 0.00375 18.22 0.456 0.116 0 0.197
`,
  '1': `
0.1  1.33    79.5  26.4  3.37 0.150 0.540
0.2  0.631   74.02 12.8  3.59 0.280 0.529
0.4  0.264   63.10 5.79  3.99 0.497 0.484
0.6  0.121   50.58 3.22  4.33 0.680 0.415
0.8  0.0446  36.24 1.70  4.62 0.842 0.313
0.9  0.0188  26.45 1.05  4.74 0.919 0.247
0.97 0.00474 15.47 0.514 4.82 0.973 0.152
`,
  '1/2': `
0.1  4.31    81.62 85.6  3.43 0.173 0.523
0.2  2.03    74.94 40.9  3.72 0.318 0.506
0.4  0.779   61.45 17.0  4.29 0.552 0.441
0.6  0.319   48.14 8.10  4.85 0.730 0.365
0.8  0.0923  33.31 3.26  5.41 0.874 0.267
0.9  0.0313  23.66 1.60  5.69 0.939 0.206
0.97 0.00609 13.75 0.610 5.88 0.980 0.126
`,
  '1/4': `
0.1  16.2   82.31 322   3.45 0.180 0.515
0.2  7.57   75.18 153   3.76 0.330 0.489
0.4  2.83   60.86 61.1  4.37 0.567 0.415
0.6  1.07   46.72 26.7  4.99 0.746 0.334
0.8  0.261  31.04 8.80  5.60 0.884 0.240
0.9  0.0736 21.85 3.50  5.91 0.945 0.180
0.97 0.0101 12.22 0.922 6.12 0.984 0.108
`,
} as const;

export interface FilmPoint {
  /** e / c */
  eccentricity: number;
  /** Sommerfeld number, N in turns per second. */
  S: number;
  /** degrees */
  attitude: number;
  /** (r/c) f */
  friction: number;
  /** Q / (r c N l) */
  flow: number;
  /** Qs / Q */
  sideFlow: number;
  /** P / pmax */
  pressure: number;
}

const read = (rows: string): readonly FilmPoint[] =>
  rowsOf(rows).map((cells) => {
    const [eccentricity, S, attitude, friction, flow, sideFlow, pressure] = cells.map(Number) as [
      number,
      number,
      number,
      number,
      number,
      number,
      number,
    ];
    return { eccentricity, S, attitude, friction, flow, sideFlow, pressure };
  });

export const fullBearing = {
  infinite: read(text.infinite),
  '1': read(text['1']),
  '1/2': read(text['1/2']),
  '1/4': read(text['1/4']),
} as const;

type Column = Exclude<keyof FilmPoint, 'S'>;
const columns: readonly Column[] = ['eccentricity', 'attitude', 'friction', 'flow', 'sideFlow', 'pressure'];

/** One column between the rows, over ln S; friction, which spans decades, by its logarithm. `S` lies within the table. */
const between = (table: readonly FilmPoint[], S: number, column: Column): number => {
  const at = Math.max(
    1,
    table.findIndex((point) => point.S <= S),
  );
  const [a, b] = [table[at - 1]!, table[at]!];
  const share = Math.log(a.S / S) / Math.log(a.S / b.S);
  if (column === 'friction')
    return Math.exp(Math.log(a.friction) * (1 - share) + Math.log(b.friction) * share);
  return a[column] * (1 - share) + b[column] * share;
};

const reach = (table: readonly FilmPoint[]): [low: number, high: number] => [
  table[table.length - 1]!.S,
  table[0]!.S,
];

/**
 * The film of a full bearing at Sommerfeld number `S` and length over diameter `x` from 1/4 to 4. Between the tabulated
 * lengths by the authors' own formula,
 * y = x^-3 [-1/8 (1-x)(1-2x)(1-4x) y_inf + 1/3 (1-2x)(1-4x) y_1 - 1/4 (1-x)(1-4x) y_1/2 + 1/24 (1-x)(1-2x) y_1/4],
 * at each eccentricity.
 */
export const filmAt = (S: number, lengthOverDiameter: number): FilmPoint | TableProblem => {
  const x = lengthOverDiameter;
  if (!(x >= 0.25 && x <= 4))
    return {
      problem: `Length over diameter is ${x}: the charts reach from 0.25 to 4. A shorter bearing is a ring of oil at best; a longer one binds at its ends.`,
    };
  const table = tableFor(x);
  const [low, high] = reach(table);
  if (!(S >= low && S <= high))
    return {
      problem: `Sommerfeld number ${S.toPrecision(3)} is outside the charts at this length (${low.toPrecision(3)} to ${high.toPrecision(3)}): ${S > high ? 'the load is so light that the shaft may whirl' : 'the film is thinner than 3 to 10 % of the clearance: count on boundary lubrication'}.`,
    };
  const found = { S } as FilmPoint;
  for (const column of columns) found[column] = between(table, S, column);
  return found;
};

/** Sommerfeld numbers of the rows at a length over diameter. */
export const filmRows = (lengthOverDiameter: number): readonly number[] =>
  tableFor(lengthOverDiameter).map(({ S }) => S);

/** The table of one length over diameter; at the tabulated ones, the table itself. */
const tableFor = (x: number): readonly FilmPoint[] => {
  if (x === 1) return fullBearing['1'];
  if (x === 0.5) return fullBearing['1/2'];
  if (x === 0.25) return fullBearing['1/4'];
  const weights = [
    (-(1 - x) * (1 - 2 * x) * (1 - 4 * x)) / 8,
    ((1 - 2 * x) * (1 - 4 * x)) / 3,
    (-(1 - x) * (1 - 4 * x)) / 4,
    ((1 - x) * (1 - 2 * x)) / 24,
  ] as const;
  return fullBearing.infinite.map((long, i) => {
    const rows = [long, fullBearing['1'][i]!, fullBearing['1/2'][i]!, fullBearing['1/4'][i]!];
    const mixed = (column: keyof FilmPoint): number =>
      rows.reduce((sum, row, k) => sum + weights[k]! * row[column], 0) / x ** 3;
    return {
      eccentricity: long.eccentricity,
      S: mixed('S'),
      attitude: mixed('attitude'),
      friction: mixed('friction'),
      flow: mixed('flow'),
      sideFlow: mixed('sideFlow'),
      pressure: mixed('pressure'),
    };
  });
};
