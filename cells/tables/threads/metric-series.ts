import { rowsOf } from '../table.ts';

/**
 * ISO 261: diameter and pitches in mm, the coarse one first (`-` where there is none). ISO 2306 drills for the coarse
 * pitch. From memory, except the coarse pitches of M4 to M30, seen with their diameters.
 */
const text = `
# d coarse drill fine
1    0.25 0.75 0.2
1.2  0.25 0.95 0.2
1.4  0.3  1.1  0.2
1.6  0.35 1.25 0.2
1.8  0.35 1.45 0.2
2    0.4  1.6  0.25
2.2  0.45 1.75 0.25
2.5  0.45 2.05 0.35
3    0.5  2.5  0.35
3.5  0.6  2.9  0.35
4    0.7  3.3  0.5
4.5  0.75 3.7  0.5
5    0.8  4.2  0.5
5.5  -    -    0.5
6    1    5    0.75
7    1    6    0.75
8    1.25 6.8  1 0.75
9    1.25 7.8  1 0.75
10   1.5  8.5  1.25 1 0.75
11   1.5  9.5  1 0.75
12   1.75 10.2 1.5 1.25 1
14   2    12   1.5 1.25 1
15   -    -    1.5 1
16   2    14   1.5 1
17   -    -    1.5 1
18   2.5  15.5 2 1.5 1
20   2.5  17.5 2 1.5 1
22   2.5  19.5 2 1.5 1
24   3    21   2 1.5 1
25   -    -    2 1.5 1
26   -    -    1.5
27   3    24   2 1.5 1
28   -    -    2 1.5 1
30   3.5  26.5 3 2 1.5 1
32   -    -    2 1.5
33   3.5  29.5 3 2 1.5
35   -    -    1.5
36   4    32   3 2 1.5
38   -    -    1.5
39   4    35   3 2 1.5
40   -    -    3 2 1.5
42   4.5  37.5 4 3 2 1.5
45   4.5  40.5 4 3 2 1.5
48   5    43   4 3 2 1.5
50   -    -    3 2 1.5
52   5    47   4 3 2 1.5
55   -    -    4 3 2 1.5
56   5.5  50.5 4 3 2 1.5
58   -    -    4 3 2 1.5
60   5.5  54.5 4 3 2 1.5
62   -    -    4 3 2 1.5
64   6    58   4 3 2 1.5
65   -    -    4 3 2 1.5
68   6    62   4 3 2 1.5
70   -    -    6 4 3 2 1.5
72   -    -    6 4 3 2 1.5
75   -    -    4 3 2 1.5
76   -    -    6 4 3 2 1.5
80   -    -    6 4 3 2 1.5
85   -    -    6 4 3 2
90   -    -    6 4 3 2
95   -    -    6 4 3 2
100  -    -    6 4 3 2
105  -    -    6 4 3 2
110  -    -    6 4 3 2
115  -    -    6 4 3 2
120  -    -    6 4 3 2
125  -    -    8 6 4 3 2
130  -    -    8 6 4 3 2
140  -    -    8 6 4 3 2
150  -    -    8 6 4 3 2
160  -    -    8 6 4 3
170  -    -    8 6 4 3
180  -    -    8 6 4 3
190  -    -    8 6 4 3
200  -    -    8 6 4 3
`;

export interface MetricThreadRow {
  /** mm */
  major: number;
  coarse?: number;
  /** Drill of the coarse pitch, mm. */
  tapDrill?: number;
  fine: readonly number[];
}

export const metricThreads: readonly MetricThreadRow[] = rowsOf(text).map(([d, coarse, drill, ...fine]) => ({
  major: Number(d),
  ...(coarse === '-' ? {} : { coarse: Number(coarse), tapDrill: Number(drill) }),
  fine: fine.map(Number),
}));

/** Drill of a fine pitch, mm: diameter less pitch, halves of a tenth to the even tenth (M10x1.25: 8.8), as ISO 2306 has it. */
export const fineTapDrill = (major: number, pitch: number): number => {
  const hundredths = Math.round((major - pitch) * 100);
  if (pitch < 0.5 || hundredths % 10 === 0) return hundredths / 100;
  const down = Math.floor(hundredths / 10);
  return (hundredths % 10 === 5 ? (down % 2 === 0 ? down : down + 1) : Math.round(hundredths / 10)) / 10;
};
