import type { TableProblem } from '../table.ts';
import { rowsOf, um } from '../table.ts';

/**
 * Standard tolerances, micrometres, by nominal size in mm ("over the row above, up to and including this row").
 * ISO 286-1:2010 Table 1; IT01 and IT0 from its annex, to 500 mm only. The table is the standard: the formula behind it
 * (i = 0.45 D^(1/3) + 0.001 D) was rounded and bent here and there. From memory, except grades IT1 to IT14 up to 315 mm,
 * seen in print; every row is held against the formula by the tests.
 */
const text = `
# to  IT01 IT0 IT1 IT2 IT3 IT4 IT5 IT6 IT7 IT8 IT9 IT10 IT11 IT12 IT13 IT14 IT15 IT16 IT17  IT18
3     0.3  0.5 0.8 1.2 2   3   4   6   10  14  25  40   60   100  140  250  400  600  1000  1400
6     0.4  0.6 1   1.5 2.5 4   5   8   12  18  30  48   75   120  180  300  480  750  1200  1800
10    0.4  0.6 1   1.5 2.5 4   6   9   15  22  36  58   90   150  220  360  580  900  1500  2200
18    0.5  0.8 1.2 2   3   5   8   11  18  27  43  70   110  180  270  430  700  1100 1800  2700
30    0.6  1   1.5 2.5 4   6   9   13  21  33  52  84   130  210  330  520  840  1300 2100  3300
50    0.6  1   1.5 2.5 4   7   11  16  25  39  62  100  160  250  390  620  1000 1600 2500  3900
80    0.8  1.2 2   3   5   8   13  19  30  46  74  120  190  300  460  740  1200 1900 3000  4600
120   1    1.5 2.5 4   6   10  15  22  35  54  87  140  220  350  540  870  1400 2200 3500  5400
180   1.2  2   3.5 5   8   12  18  25  40  63  100 160  250  400  630  1000 1600 2500 4000  6300
250   2    3   4.5 7   10  14  20  29  46  72  115 185  290  460  720  1150 1850 2900 4600  7200
315   2.5  4   6   8   12  16  23  32  52  81  130 210  320  520  810  1300 2100 3200 5200  8100
400   3    5   7   9   13  18  25  36  57  89  140 230  360  570  890  1400 2300 3600 5700  8900
500   4    6   8   10  15  20  27  40  63  97  155 250  400  630  970  1550 2500 4000 6300  9700
630   -    -   9   11  16  22  32  44  70  110 175 280  440  700  1100 1750 2800 4400 7000  11000
800   -    -   10  13  18  25  36  50  80  125 200 320  500  800  1250 2000 3200 5000 8000  12500
1000  -    -   11  15  21  28  40  56  90  140 230 360  560  900  1400 2300 3600 5600 9000  14000
1250  -    -   13  18  24  33  47  66  105 165 260 420  660  1050 1650 2600 4200 6600 10500 16500
1600  -    -   15  21  29  39  55  78  125 195 310 500  780  1250 1950 3100 5000 7800 12500 19500
2000  -    -   18  25  35  46  65  92  150 230 370 600  920  1500 2300 3700 6000 9200 15000 23000
2500  -    -   22  30  41  55  78  110 175 280 440 700  1100 1750 2800 4400 7000 11000 17500 28000
3150  -    -   26  36  50  68  96  135 210 330 540 860  1350 2100 3300 5400 8600 13500 21000 33000
`;

/** Grades in order, as written behind a letter. */
export const grades = ['01', '0', ...Array.from({ length: 18 }, (_, i) => String(i + 1))] as const;

interface Step {
  to: number;
  tolerances: ReadonlyMap<string, number>;
}

export const gradeSteps: readonly Step[] = rowsOf(text).map(([to, ...cells]) => ({
  to: Number(to),
  tolerances: new Map(
    cells.flatMap((cell, i) => (cell === '-' ? [] : [[grades[i]!, Number(cell)] as const])),
  ),
}));

/** Nominal size in mm, to the nanometre: 2 in must not fall a rounding error past a step. */
export const millimetres = (metres: number): number => Math.round(metres * 1e9) / 1e6;

/** "Over ... up to and including": 50 mm belongs to 30..50, 50.001 mm to 50..80. */
export const stepOf = <T extends { to: number }>(steps: readonly T[], nominal: number): T | undefined =>
  nominal > 0 ? steps.find((step) => nominal <= step.to) : undefined;

/** Standard tolerance in micrometres of a nominal size in mm. */
export const toleranceUm = (nominal: number, grade: string): number | TableProblem => {
  const step = stepOf(gradeSteps, nominal);
  if (step === undefined)
    return {
      problem: `Nominal size ${nominal} mm is outside ISO 286 (over 0 up to 3150 mm): write the limits out as deviations.`,
    };
  if (!(grades as readonly string[]).includes(grade))
    return { problem: `There is no tolerance grade IT${grade}: grades run IT01, IT0, IT1 to IT18.` };
  if (nominal <= 1 && Number(grade) >= 14 && grade.length === 2)
    return { problem: `IT${grade} is not used up to 1 mm (ISO 286-1): take IT13 or finer.` };
  return (
    step.tolerances.get(grade) ?? {
      problem: `IT${grade} is not tabulated above 500 mm (nominal ${nominal} mm): take IT1 or coarser.`,
    }
  );
};

/** Standard tolerance ITn in metres of a nominal size in metres; grade written `7`, `01`. */
export const standardTolerance = (nominal: number, grade: string): number | TableProblem => {
  const found = toleranceUm(millimetres(nominal), grade);
  return typeof found === 'number' ? um(found) : found;
};
