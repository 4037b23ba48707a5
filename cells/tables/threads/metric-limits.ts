import type { TableProblem } from '../table.ts';
import { rowsOf, um } from '../table.ts';
import type { ThreadLimits } from './thread.ts';
import { basicMinor, basicPitchDiameter } from './thread.ts';

/**
 * Tolerances of ISO metric threads, ISO 965-1:1998, micrometres. The tables are the standard; the formulas behind them
 * (Td2 of grade 6 = 90 P^0.4 d^0.1, TD1 = 230 P^0.7, Td = 180 P^(2/3) - 3.15 / sqrt P, g = -(15 + 11 P)) were rounded to
 * preferred numbers. From memory, except TD1 of grade 6 at nine pitches, held against printed limits by the tests.
 */
const byPitch = `
# P    g   f   e   TD1:4 5   6    7    8    Td:4 6   8
0.2    17  -   -   38    -   -    -    -    36   56  -
0.25   18  -   -   45    56  -    -    -    42   67  -
0.3    18  -   -   53    67  85   -    -    48   75  -
0.35   19  34  -   63    80  100  -    -    53   85  -
0.4    19  34  -   71    90  112  -    -    60   95  -
0.45   20  35  -   80    100 125  -    -    63   100 -
0.5    20  36  50  90    112 140  180  -    67   106 -
0.6    21  36  53  100   125 160  200  -    80   125 -
0.7    22  38  56  112   140 180  224  -    90   140 -
0.75   22  38  56  118   150 190  236  -    90   140 -
0.8    24  38  60  125   160 200  250  315  95   150 236
1      26  40  60  150   190 236  300  375  112  180 280
1.25   28  42  63  170   212 265  335  425  132  212 335
1.5    32  45  67  190   236 300  375  475  150  236 375
1.75   34  48  71  212   265 335  425  530  170  265 425
2      38  52  71  236   300 375  475  600  180  280 450
2.5    42  58  80  280   355 450  560  710  212  335 530
3      48  63  85  315   400 500  630  800  236  375 600
3.5    53  70  90  355   450 560  710  900  265  425 670
4      60  75  95  375   475 600  750  950  300  475 750
4.5    63  80  100 425   530 670  850  1060 315  500 800
5      71  85  106 450   560 710  900  1120 335  530 850
5.5    75  90  112 475   600 750  950  1180 355  560 900
6      80  95  118 500   630 800  1000 1250 375  600 950
8      100 118 140 600   750 950  1180 1500 450  710 1180
`;

/** Pitch diameter, grade 6: diameter up to and including (mm), then pitch: external Td2 / internal TD2. */
const grade6 = `
1.4   0.2:48/-   0.25:53/-  0.3:56/75
2.8   0.2:50/-   0.25:56/-  0.35:63/85  0.4:67/90   0.45:71/95
5.6   0.35:67/90 0.5:75/100 0.6:85/112  0.7:90/118  0.75:90/118 0.8:95/125
11.2  0.75:100/132 1:112/150 1.25:118/160 1.5:132/180
22.4  1:118/160  1.25:132/180 1.5:140/190 1.75:150/200 2:160/212 2.5:170/224
45    1:125/170  1.5:150/200 2:170/224 3:200/265 3.5:212/280 4:224/300 4.5:236/315
90    1.5:160/212 2:180/236 3:212/280 4:236/315 5:250/335 5.5:265/355 6:280/375
180   2:190/250  3:224/300  4:250/335 6:300/400 8:335/450
355   3:250/335  4:280/375  6:315/425 8:355/475
`;

interface PitchRow {
  g: number;
  f: number;
  e: number;
  minor: ReadonlyMap<number, number>;
  major: ReadonlyMap<number, number>;
}

const graded = (
  grades: readonly number[],
  cells: readonly (string | undefined)[],
): ReadonlyMap<number, number> =>
  new Map(
    grades.flatMap((grade, i) =>
      cells[i] === '-' || cells[i] === undefined ? [] : [[grade, Number(cells[i])] as const],
    ),
  );

export const pitchRows: ReadonlyMap<number, PitchRow> = new Map(
  rowsOf(byPitch).map(([P, g, f, e, ...cells]) => [
    Number(P),
    {
      g: Number(g),
      f: Number(f),
      e: Number(e),
      minor: graded([4, 5, 6, 7, 8], cells.slice(0, 5)),
      major: graded([4, 6, 8], cells.slice(5)),
    },
  ]),
);

export const pitchDiameterRows = rowsOf(grade6).map(([to, ...cells]) => ({
  to: Number(to),
  by: new Map(
    cells.map((cell) => {
      const [P, figures] = cell.split(':') as [string, string];
      const [external, internal] = figures.split('/') as [string, string];
      return [Number(P), { external: Number(external), internal: Number(internal) }] as const;
    }),
  ),
}));

/** Preferred numbers R40, as the standard's own rounding: 100 106 112 118 ... */
const r40 = [
  100, 106, 112, 118, 125, 132, 140, 150, 160, 170, 180, 190, 200, 212, 224, 236, 250, 265, 280, 300, 315,
  335, 355, 375, 400, 425, 450, 475, 500, 530, 560, 600, 630, 670, 710, 750, 800, 850, 900, 950, 1000,
];
const preferred = (x: number): number => {
  const decade = 10 ** (Math.floor(Math.log10(x)) - 2);
  const scaled = x / decade;
  const best = r40.reduce((a, b) => (Math.abs(b - scaled) <= Math.abs(a - scaled) ? b : a));
  // Below a hundred the standard prints whole micrometres.
  return Math.round(best * decade);
};

const externalFactor: Readonly<Record<number, number>> = { 3: 0.5, 4: 0.63, 5: 0.8, 7: 1.25, 8: 1.6, 9: 2 };
const internalFactor: Readonly<Record<number, number>> = { 4: 0.85, 5: 1.06, 7: 1.7, 8: 2.12 };

/** Pitch diameter tolerance, micrometres; grades other than 6 by the standard's factors on grade 6 of the bolt. */
export const pitchDiameterTolerance = (
  major: number,
  pitch: number,
  grade: number,
  internal: boolean,
): number | undefined => {
  const row = pitchDiameterRows.find((each) => major <= each.to)?.by.get(pitch);
  if (row === undefined) return undefined;
  if (grade === 6) return internal ? (Number.isNaN(row.internal) ? undefined : row.internal) : row.external;
  const factor = (internal ? internalFactor : externalFactor)[grade];
  return factor === undefined ? undefined : preferred(row.external * factor);
};

/** Deviation of a position letter, micrometres, towards clearance. */
const deviation = (row: PitchRow, letter: string): number | undefined => {
  const found = { g: row.g, f: row.f, e: row.e, h: 0 }[letter.toLowerCase()];
  return found === undefined || Number.isNaN(found) ? undefined : found;
};

/** Micrometres, so that sums are exact to a nanometre. */
const rounded = (millimetres: number): number => Math.round(millimetres * 1000);

/**
 * Limits of size, metres, of `d` and `pitch` in mm; class `6g`, `5g6g` (pitch, then crest), `6H`. Diameters to the
 * micrometre, as ISO 965-2 prints them.
 */
export const metricLimits = (major: number, pitch: number, text: string): ThreadLimits | TableProblem => {
  const match = /^([3-9])([efghGH])(?:([4-8])([efghGH]))?$/.exec(text);
  if (match === null)
    return {
      problem: `"${text}" is no tolerance class of metric threads: write 6g or 5g6g for a bolt, 6H for a nut.`,
    };
  const [, pitchGrade, pitchLetter, crestGrade = pitchGrade, crestLetter = pitchLetter] =
    match as unknown as [string, string, string, string?, string?];
  const internal = pitchLetter === pitchLetter!.toUpperCase();
  if (crestLetter !== pitchLetter)
    return { problem: `"${text}" mixes two positions: write one letter, such as 5g6g.` };
  const row = pitchRows.get(pitch);
  const shift = row && deviation(row, pitchLetter!);
  const pitchTolerance = pitchDiameterTolerance(major, pitch, Number(pitchGrade), internal);
  const crest = row && (internal ? row.minor : row.major).get(Number(crestGrade));
  if (shift === undefined || pitchTolerance === undefined || crest === undefined)
    return {
      problem: `Class ${text} is not tabulated for M${major}x${pitch} (ISO 965-1): take ${internal ? '6H' : '6g'}, or a coarser pitch.`,
    };
  const pitchDiameter = rounded(basicPitchDiameter(major, pitch));
  if (internal) {
    const minor = rounded(basicMinor(major, pitch));
    return {
      class: text,
      internal,
      pitch: { min: um(pitchDiameter + shift), max: um(pitchDiameter + shift + pitchTolerance) },
      minor: { min: um(minor + shift), max: um(minor + shift + crest) },
    };
  }
  const top = rounded(major);
  return {
    class: text,
    internal,
    major: { min: um(top - shift - crest), max: um(top - shift) },
    pitch: { min: um(pitchDiameter - shift - pitchTolerance), max: um(pitchDiameter - shift) },
  };
};
