import type { TableProblem } from './table.ts';
import { inch, mm, rowsOf } from './table.ts';

/** Section of a key, metres. */
export interface KeySection {
  width: number;
  height: number;
}

/**
 * Keys by shaft diameter, inches: to and including, width, height of the rectangular key (`-`: square only); ANSI/ASME
 * B17.1-1967 (R2013). Square widths from over 5/16 to 3 1/4 in seen in part (Shigley 9e Table 7-6), the rest from memory.
 */
const inchText = `
7/16   3/32  -
9/16   1/8   3/32
7/8    3/16  1/8
1-1/4  1/4   3/16
1-3/8  5/16  1/4
1-3/4  3/8   1/4
2-1/4  1/2   3/8
2-3/4  5/8   7/16
3-1/4  3/4   1/2
3-3/4  7/8   5/8
4-1/2  1     3/4
5-1/2  1-1/4 7/8
6-1/2  1-1/2 1
7-1/2  1-3/4 1-1/2
9      2     1-1/2
`;

const fraction = (text: string): number =>
  text.split('-').reduce((sum, part) => {
    const [top, bottom = '1'] = part.split('/');
    return sum + Number(top) / Number(bottom);
  }, 0);

const inchRows = rowsOf(inchText).map(([to, width, height]) => ({
  to: fraction(to!),
  width: fraction(width!),
  height: height === '-' ? undefined : fraction(height!),
}));

/** Inches or mm to a hundred-millionth: a size on the edge of a row belongs to the row. */
const near = (metres: number, unit: number): number => Math.round((metres / unit) * 1e8) / 1e8;

/** The standard inch key of a shaft, square or rectangular. */
export const inchKey = (
  shaft: number,
  form: 'square' | 'rectangular' = 'square',
): KeySection | TableProblem => {
  const size = near(shaft, 0.0254);
  const row = size > 0.3125 ? inchRows.find((each) => size <= each.to) : undefined;
  if (row === undefined)
    return {
      problem: `B17.1 has no key for a shaft of ${size} in (over 5/16 to 9 in): take a Woodruff key, a pin or a splined shaft.`,
    };
  if (form === 'square') return { width: inch(row.width), height: inch(row.width) };
  return row.height === undefined
    ? {
        problem: `B17.1 has no rectangular key for a shaft of ${size} in: take the square key, ${row.width} in.`,
      }
    : { width: inch(row.width), height: inch(row.height) };
};

/**
 * What is measured on shaft and hub: `S` from the keyseat floor to the far side of the shaft; `T` from the keyway floor to
 * the far side of the bore, 0.005 in clearance above a parallel key, 0.020 in less for a taper key at its thick end.
 * ANSI/ASME B17.1-1967 (R2013). Metres.
 */
export const inchKeyDepths = (
  shaft: number,
  { width, height }: KeySection,
): { S: number; T: number; taper: number } | TableProblem => {
  if (width > shaft) return { problem: 'The key is wider than the shaft: check both.' };
  const chord = Math.sqrt(shaft * shaft - width * width);
  const half = (shaft + height + chord) / 2;
  return { S: (shaft - height + chord) / 2, T: half + inch(0.005), taper: half - inch(0.02) };
};

/**
 * Parallel keys, mm: shaft to and including, b, h, depth t1 in the shaft, t2 in the hub.
 * DIN 6885-1 form A, ISO/R 773. Shafts over 8 to 30 mm seen in part, the rest from memory.
 */
const metricText = `
8   2   2  1.2 1.0
10  3   3  1.8 1.4
12  4   4  2.5 1.8
17  5   5  3.0 2.3
22  6   6  3.5 2.8
30  8   7  4.0 3.3
38  10  8  5.0 3.3
44  12  8  5.0 3.3
50  14  9  5.5 3.8
58  16  10 6.0 4.3
65  18  11 7.0 4.4
75  20  12 7.5 4.9
85  22  14 9.0 5.4
95  25  14 9.0 5.4
110 28  16 10  6.4
130 32  18 11  7.4
150 36  20 12  8.4
170 40  22 13  9.4
200 45  25 15  10.4
230 50  28 17  11.4
260 56  32 20  12.4
290 63  32 20  12.4
330 70  36 22  14.4
380 80  40 25  15.4
440 90  45 28  17.4
500 100 50 31  19.5
`;

const metricRows = rowsOf(metricText).map((cells) => {
  const [to, b, h, t1, t2] = cells.map(Number) as [number, number, number, number, number];
  return { to, b, h, t1, t2 };
});

/** Depth of the keyway in the hub for a taper key, at its thick end, by width, mm. DIN 6886, from memory. */
const taperHubDepths: ReadonlyMap<number, number> = new Map([
  [2, 0.5],
  [3, 0.9],
  [4, 1.2],
  [5, 1.7],
  [6, 2.2],
  [8, 2.4],
  [10, 2.4],
  [12, 2.4],
  [14, 2.9],
  [16, 3.4],
  [18, 3.4],
  [20, 3.9],
  [22, 4.4],
  [25, 4.4],
  [28, 5.4],
  [32, 6.4],
  [36, 7.1],
  [40, 8.1],
  [45, 9.1],
  [50, 10.1],
]);

/** Shaft diameters, metres, from or up to which a row of some table reaches. */
export const keySteps: readonly number[] = [
  ...[0.3125, ...inchRows.map(({ to }) => to)].map((size) => size * 0.0254),
  ...[6, ...metricRows.map(({ to }) => to)].map((size) => size / 1000),
];

export interface ParallelKey extends KeySection {
  /** Depth in the shaft and in the hub. */
  shaftDepth: number;
  hubDepth: number;
  /** Depth in the hub for a taper key at its thick end, where the standard has one. */
  taperHubDepth?: number;
}

/** The parallel key of a shaft by DIN 6885-1. Metres. */
export const parallelKey = (shaft: number): ParallelKey | TableProblem => {
  const size = near(shaft, 0.001);
  const row = size > 6 ? metricRows.find((each) => size <= each.to) : undefined;
  if (row === undefined)
    return {
      problem: `DIN 6885-1 has no key for a shaft of ${size} mm (over 6 to 500 mm): take a pin or a splined shaft.`,
    };
  const taper = taperHubDepths.get(row.b);
  return {
    width: mm(row.b),
    height: mm(row.h),
    ...(taper === undefined ? {} : { taperHubDepth: mm(taper) }),
    shaftDepth: mm(row.t1),
    hubDepth: mm(row.t2),
  };
};

/**
 * Full-radius Woodruff keys: disc diameter in eighths of an inch, greatest height C in inches (the key may be 0.005 in less).
 * ANSI/ASME B17.2-1967 (R2013), seen: Machinery's Handbook, 31e, Keys and Keyseats, Table 8.
 */
const woodruffHeights: ReadonlyMap<number, number> = new Map([
  [2, 0.109],
  [2.5, 0.14],
  [3, 0.172],
  [4, 0.203],
  [5, 0.25],
  [6, 0.313],
  [7, 0.375],
  [8, 0.438],
  [9, 0.484],
  [10, 0.547],
  [11, 0.594],
  [12, 0.641],
]);

/** Numbers the standard lists: width in 32nds, then disc diameter in eighths. */
export const woodruffNumbers: ReadonlySet<string> = new Set(
  '202 202.5 302.5 203 303 403 204 304 404 305 405 505 605 406 506 606 806 507 607 707 807 608 708 808 1008 1208 609 709 809 1009 610 710 810 1010 1210 811 1011 1211 812 1012 1212'.split(
    ' ',
  ),
);

export interface WoodruffKey {
  width: number;
  /** Diameter of the disc it is cut from. */
  disc: number;
  height: number;
  /** Depth of the seat in the shaft, measured at its side, and of the keyway in the hub. */
  shaftDepth: number;
  hubDepth: number;
}

/** Woodruff key by number, such as `606`: 6/32 in wide, from a disc of 6/8 in. Metres. */
export const woodruffKey = (number: string): WoodruffKey | TableProblem => {
  const text = number.trim().replace(/^(no\.?\s*|#)/i, '');
  if (!woodruffNumbers.has(text))
    return {
      problem: `"${number.trim()}" is no Woodruff number of B17.2: the last two figures are eighths of disc diameter, those before 32nds of width, such as 606.`,
    };
  const whole = /^(\d+?)(\d{2}(?:\.5)?)$/.exec(text)!;
  const eighths = Number(whole[2]);
  const width = Number(whole[1]) / 32;
  const height = woodruffHeights.get(eighths)!;
  return {
    width: inch(width),
    disc: inch(eighths / 8),
    height: inch(height),
    // As printed: the least key, half its width standing out of the shaft; the seat may be 0.005 in deeper.
    shaftDepth: inch(height - 0.005 - width / 2),
    hubDepth: inch(width / 2 + 0.006),
  };
};
