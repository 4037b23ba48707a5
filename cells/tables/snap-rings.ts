import { mm, rowsOf, type TableProblem } from './table.ts';

/**
 * Snap rings for shafts (DIN 471) and bores (DIN 472), mm: size, thickness of the ring, diameter of the groove, its width
 * (H13, least), least shoulder behind it. From memory; of each the sizes most often met.
 */
const SHAFT = `
10  1.00 9.6   1.10 0.6
12  1.00 11.5  1.10 0.8
15  1.00 14.3  1.10 1.1
16  1.00 15.2  1.10 1.2
17  1.00 16.2  1.10 1.2
18  1.20 17.0  1.30 1.5
20  1.20 19.0  1.30 1.5
22  1.20 21.0  1.30 1.5
25  1.20 23.9  1.30 1.7
28  1.50 26.6  1.60 2.1
30  1.50 28.6  1.60 2.1
32  1.50 30.3  1.60 2.6
35  1.50 33.0  1.60 3.0
40  1.75 37.5  1.85 3.8
45  1.75 42.5  1.85 3.8
50  2.00 47.0  2.15 4.5
55  2.00 52.0  2.15 4.5
60  2.00 57.0  2.15 4.5
65  2.50 62.0  2.65 4.5
70  2.50 67.0  2.65 4.5
75  2.50 72.0  2.65 4.5
80  2.50 76.5  2.65 5.3
90  3.00 86.5  3.15 5.3
100 3.00 96.5  3.15 5.3
`;

const BORE = `
10  1.00 10.4  1.10 0.6
12  1.00 12.5  1.10 0.8
15  1.00 15.7  1.10 1.1
16  1.00 16.8  1.10 1.2
18  1.00 19.0  1.10 1.5
20  1.00 21.0  1.10 1.5
22  1.00 23.0  1.10 1.5
25  1.20 26.2  1.30 1.8
28  1.20 29.4  1.30 2.1
30  1.20 31.4  1.30 2.1
32  1.20 33.7  1.30 2.6
35  1.50 37.0  1.60 3.0
40  1.75 42.5  1.85 3.8
42  1.75 44.5  1.85 3.8
47  1.75 49.5  1.85 3.8
50  2.00 53.0  2.15 4.5
52  2.00 55.0  2.15 4.5
62  2.00 65.0  2.15 4.5
72  2.50 75.0  2.65 4.5
80  2.50 83.5  2.65 5.3
90  3.00 93.5  3.15 5.3
100 3.00 103.5 3.15 5.3
`;

export interface SnapRing {
  size: number;
  thickness: number;
  groove: number;
  width: number;
  shoulder: number;
}

const read = (text: string): SnapRing[] =>
  rowsOf(text).map((cells) => {
    const [size, thickness, groove, width, shoulder] = cells.map((cell) => mm(Number(cell)));
    return { size, thickness, groove, width, shoulder } as SnapRing;
  });

const RINGS: ReadonlyMap<string, SnapRing> = new Map(
  Object.entries({ shaft: read(SHAFT), bore: read(BORE) }).flatMap(([where, rings]) =>
    rings.map((ring) => [`${where}-${Math.round(ring.size * 1000)}`, ring] as const),
  ),
);

/** A ring by its key, such as `shaft-25`. */
export const snapRing = (key: string): SnapRing | TableProblem =>
  RINGS.get(key) ?? { problem: `There is no snap ring "${key}" in the table: choose one of it.` };

/** As a table that a cell chooses from. */
export const snapRingTable = {
  title: 'Snap rings (DIN 471, DIN 472)',
  rows: [...RINGS.keys()].map((key) => {
    const [where, size] = key.split('-');
    return {
      key,
      name: where === 'shaft' ? `shaft of ${size} mm (DIN 471)` : `bore of ${size} mm (DIN 472)`,
      columns: {},
    };
  }),
};
