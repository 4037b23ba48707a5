import { rowsOf } from '../table.ts';

type InchSeries = 'UNC' | 'UNF' | 'UNEF';

/**
 * Standard series of ASME B1.1, size, threads per inch and the drill usually taken before tapping (about 75 % of thread).
 * Series from memory, drills common practice.
 */
const coarse = `
#1 64 #53
#2 56 #50
#3 48 #47
#4 40 #43
#5 40 #38
#6 32 #36
#8 32 #29
#10 24 #25
#12 24 #16
1/4 20 #7
5/16 18 F
3/8 16 5/16
7/16 14 U
1/2 13 27/64
9/16 12 31/64
5/8 11 17/32
3/4 10 21/32
7/8 9 49/64
1 8 7/8
1-1/8 7 63/64
1-1/4 7 1-7/64
1-3/8 6 1-7/32
1-1/2 6 1-11/32
1-3/4 5 1-9/16
2 4.5 1-25/32
2-1/4 4.5 2-1/32
2-1/2 4 2-1/4
2-3/4 4 2-1/2
3 4 2-3/4
3-1/4 4 3
3-1/2 4 3-1/4
3-3/4 4 3-1/2
4 4 -
`;
const fine = `
#0 80 3/64
#1 72 #53
#2 64 #50
#3 56 #45
#4 48 #42
#5 44 #37
#6 40 #33
#8 36 #29
#10 32 #21
#12 28 #14
1/4 28 #3
5/16 24 I
3/8 24 Q
7/16 20 25/64
1/2 20 29/64
9/16 18 33/64
5/8 18 37/64
3/4 16 11/16
7/8 14 13/16
1 12 59/64
1-1/8 12 1-3/64
1-1/4 12 1-11/64
1-3/8 12 1-19/64
1-1/2 12 1-27/64
`;
const extraFine = `
#12 32 #13
1/4 32 7/32
5/16 32 9/32
3/8 32 11/32
7/16 28 Y
1/2 28 15/32
9/16 24 33/64
5/8 24 37/64
11/16 24 41/64
3/4 20 45/64
13/16 20 49/64
7/8 20 53/64
15/16 20 57/64
1 20 61/64
1-1/16 18 1
1-1/8 18 1-5/64
1-3/16 18 1-9/64
1-1/4 18 1-3/16
1-5/16 18 1-17/64
1-3/8 18 1-5/16
1-7/16 18 1-3/8
1-1/2 18 1-29/64
1-9/16 18 1-1/2
1-5/8 18 1-37/64
1-11/16 18 1-5/8
`;

export interface InchThreadRow {
  size: string;
  series: InchSeries;
  /** inches */
  major: number;
  perInch: number;
  tapDrill?: string;
}

/** `#10` is 0.060 + 10 x 0.013; `1-1/8`, `1 1/8` and `0.25` in inches; undefined for anything else. */
export const sizeInInches = (size: string): number | undefined => {
  const number = /^#(\d{1,2})$/.exec(size);
  if (number) return Math.round(60 + 13 * Number(number[1])) / 1000;
  const mixed = /^(?:(\d+)(?:[\s-]+|$))?(?:(\d+)\/(\d+))?$/.exec(size);
  if (mixed && size !== '') {
    const [, whole, top, bottom] = mixed;
    const value = Number(whole ?? 0) + (top === undefined ? 0 : Number(top) / Number(bottom));
    return Number.isFinite(value) && value > 0 ? value : undefined;
  }
  return /^\d*\.\d+$/.test(size) ? Number(size) : undefined;
};

const read = (series: InchSeries, text: string): InchThreadRow[] =>
  rowsOf(text.replace(/^#(?=\d)/gm, 'No.')).map(([size, perInch, drill]) => {
    const name = size!.replace('No.', '#');
    return {
      size: name,
      series,
      major: sizeInInches(name)!,
      perInch: Number(perInch),
      ...(drill === '-' || drill === undefined ? {} : { tapDrill: drill }),
    };
  });

export const inchThreads: readonly InchThreadRow[] = [
  ...read('UNC', coarse),
  ...read('UNF', fine),
  ...read('UNEF', extraFine),
];

/** Threads per inch of the constant-pitch series, from 1/4 in up: 8-UN, 12-UN ... */
export const constantPitches: readonly number[] = [4, 6, 8, 12, 16, 20, 28, 32];
