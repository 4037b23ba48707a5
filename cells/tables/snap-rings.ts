import { mm, rowsOf, type TableProblem } from './table.ts';

/**
 * Snap rings for shafts (DIN 471:2011-04) and bores (DIN 472), normal type, mm: size, thickness of the ring, diameter of the
 * groove. Seen in two printed tables each, which agree but for misprints; of each the sizes most often met. A shaft of 52 mm is left out: what was seen of it does not go
 * with its neighbours. The groove of a bore of 100 mm goes with its neighbours (from memory; seen once as 103).
 */
const SHAFT = `
3 .4 2.8 | 4 .4 3.8 | 5 .6 4.8 | 6 .7 5.7 | 7 .8 6.7 | 8 .8 7.6 | 9 1 8.6 | 10 1 9.6 | 11 1 10.5 | 12 1 11.5
13 1 12.4 | 14 1 13.4 | 15 1 14.3 | 16 1 15.2 | 17 1 16.2 | 18 1.2 17 | 19 1.2 18 | 20 1.2 19 | 22 1.2 21 | 24 1.2 22.9
25 1.2 23.9 | 26 1.2 24.9 | 28 1.5 26.6 | 30 1.5 28.6 | 32 1.5 30.3 | 34 1.5 32.3 | 35 1.5 33 | 36 1.75 34 | 38 1.75 36
40 1.75 37.5 | 42 1.75 39.5 | 45 1.75 42.5 | 48 1.75 45.5 | 50 2 47 | 55 2 52 | 58 2 55 | 60 2 57 | 62 2 59
65 2.5 62 | 68 2.5 65 | 70 2.5 67 | 72 2.5 69 | 75 2.5 72 | 80 2.5 76.5 | 85 3 81.5 | 90 3 86.5 | 95 3 91.5 | 100 3 96.5
`;

const BORE = `
8 .8 8.4 | 9 .8 9.4 | 10 1 10.4 | 11 1 11.4 | 12 1 12.5 | 13 1 13.6 | 14 1 14.6 | 15 1 15.7 | 16 1 16.8 | 17 1 17.8
18 1 19 | 19 1 20 | 20 1 21 | 22 1 23 | 24 1.2 25.2 | 25 1.2 26.2 | 26 1.2 27.2 | 28 1.2 29.4 | 30 1.2 31.4 | 32 1.2 33.7
35 1.5 37 | 37 1.5 39 | 38 1.5 40 | 40 1.75 42.5 | 42 1.75 44.5 | 45 1.75 47.5 | 47 1.75 49.5 | 48 1.75 50.5 | 50 2 53
52 2 55 | 55 2 58 | 58 2 61 | 60 2 63 | 62 2 65 | 65 2.5 68 | 68 2.5 71 | 70 2.5 73 | 72 2.5 75 | 75 2.5 78 | 80 2.5 83.5
85 3 88.5 | 90 3 93.5 | 95 3 98.5 | 100 3 103.5
`;

/** Least width of the groove (H13) by the thickness of its ring, mm: the same in both standards. */
const WIDTHS: ReadonlyMap<number, number> = new Map([
  [0.4, 0.5],
  [0.6, 0.7],
  [0.7, 0.8],
  [0.8, 0.9],
  [1, 1.1],
  [1.2, 1.3],
  [1.5, 1.6],
  [1.75, 1.85],
  [2, 2.15],
  [2.5, 2.65],
  [3, 3.15],
]);

export interface SnapRing {
  size: number;
  thickness: number;
  groove: number;
  width: number;
  shoulder: number;
}

/** Shoulder behind the groove: three times its depth, to a tenth, as both standards print it. */
const shoulderOf = (size: number, groove: number): number =>
  Math.floor(10 * 1.5 * Math.abs(size - groove) + 0.5 + 1e-9) / 10;

const read = (text: string): SnapRing[] =>
  rowsOf(text.replaceAll('|', '\n')).map((cells) => {
    const [size = 0, thickness = 0, groove = 0] = cells.map(Number);
    return {
      size: mm(size),
      thickness: mm(thickness),
      groove: mm(groove),
      width: mm(WIDTHS.get(thickness)!),
      shoulder: mm(shoulderOf(size, groove)),
    };
  });

/** By key, such as `shaft-25`. */
export const snapRings: ReadonlyMap<string, SnapRing> = new Map(
  Object.entries({ shaft: read(SHAFT), bore: read(BORE) }).flatMap(([where, rings]) =>
    rings.map((ring) => [`${where}-${Math.round(ring.size * 1000)}`, ring] as const),
  ),
);

/** A ring by its key, such as `shaft-25`. */
export const snapRing = (key: string): SnapRing | TableProblem =>
  snapRings.get(key) ?? { problem: `There is no snap ring "${key}" in the table: choose one of it.` };
