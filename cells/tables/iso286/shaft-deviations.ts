import { rowsOf } from '../table.ts';

/**
 * Fundamental deviations of shafts, micrometres. ISO 286-1:2010 Tables 4 and 5. Columns a to h hold the upper deviation
 * with its sign turned (es = -value), columns m to zc the lower deviation ei. j, js and k depend on the grade and are below.
 * Up to 180 mm (m to zc) and over 180 mm (a to k) seen in a machine drawing handbook's Table 15.2, the rest from memory;
 * every column is held against the standard's formula by the tests. cd, ef and fg are given to 10 mm.
 */
const upTo500 = `
# to a    b   c   cd d   e   ef f  fg g  m  n  p  r   s   t   u   v   x   y    z    za   zb   zc
3    270  140 60  34 20  14  10 6  4  2  2  4  6  10  14  -   18  -   20  -    26   32   40   60
6    270  140 70  46 30  20  14 10 6  4  4  8  12 15  19  -   23  -   28  -    35   42   50   80
10   280  150 80  56 40  25  18 13 8  5  6  10 15 19  23  -   28  -   34  -    42   52   67   97
14   290  150 95  -  50  32  -  16 -  6  7  12 18 23  28  -   33  -   40  -    50   64   90   130
18   290  150 95  -  50  32  -  16 -  6  7  12 18 23  28  -   33  39  45  -    60   77   108  150
24   300  160 110 -  65  40  -  20 -  7  8  15 22 28  35  -   41  47  54  63   73   98   136  188
30   300  160 110 -  65  40  -  20 -  7  8  15 22 28  35  41  48  55  64  75   88   118  160  218
40   310  170 120 -  80  50  -  25 -  9  9  17 26 34  43  48  60  68  80  94   112  148  200  274
50   320  180 130 -  80  50  -  25 -  9  9  17 26 34  43  54  70  81  97  114  136  180  242  325
65   340  190 140 -  100 60  -  30 -  10 11 20 32 41  53  66  87  102 122 144  172  226  300  405
80   360  200 150 -  100 60  -  30 -  10 11 20 32 43  59  75  102 120 146 174  210  274  360  480
100  380  220 170 -  120 72  -  36 -  12 13 23 37 51  71  91  124 146 178 214  258  335  445  585
120  410  240 180 -  120 72  -  36 -  12 13 23 37 54  79  104 144 172 210 254  310  400  525  690
140  460  260 200 -  145 85  -  43 -  14 15 27 43 63  92  122 170 202 248 300  365  470  620  800
160  520  280 210 -  145 85  -  43 -  14 15 27 43 65  100 134 190 228 280 340  415  535  700  900
180  580  310 230 -  145 85  -  43 -  14 15 27 43 68  108 146 210 252 310 380  465  600  780  1000
200  660  340 240 -  170 100 -  50 -  15 17 31 50 77  122 166 236 284 350 425  520  670  880  1150
225  740  380 260 -  170 100 -  50 -  15 17 31 50 80  130 180 258 310 385 470  575  740  960  1250
250  820  420 280 -  170 100 -  50 -  15 17 31 50 84  140 196 284 340 425 520  640  820  1050 1350
280  920  480 300 -  190 110 -  56 -  17 20 34 56 94  158 218 315 385 475 580  710  920  1200 1550
315  1050 540 330 -  190 110 -  56 -  17 20 34 56 98  170 240 350 425 525 650  790  1000 1300 1700
355  1200 600 360 -  210 125 -  62 -  18 21 37 62 108 190 268 390 475 590 730  900  1150 1500 1900
400  1350 680 400 -  210 125 -  62 -  18 21 37 62 114 208 294 435 530 660 820  1000 1300 1650 2100
450  1500 760 440 -  230 135 -  68 -  20 23 40 68 126 232 330 490 595 740 920  1100 1450 1850 2400
500  1650 840 480 -  230 135 -  68 -  20 23 40 68 132 252 360 540 660 820 1000 1250 1600 2100 2600
`;

/** Over 500 mm: ISO 286-1:2010, from memory. Other letters are not defined there. */
const over500 = `
# to d   e   f   g  m  n   p   r   s    t    u
560  260 145 76  22 26 44  78  150 280  400  600
630  260 145 76  22 26 44  78  155 310  450  660
710  290 160 80  24 30 50  88  175 340  500  740
800  290 160 80  24 30 50  88  185 380  560  840
900  320 170 86  26 34 56  100 210 430  620  940
1000 320 170 86  26 34 56  100 220 470  680  1050
1120 350 195 98  28 40 66  120 250 520  780  1150
1250 350 195 98  28 40 66  120 260 580  840  1300
1400 390 220 110 30 48 78  140 300 640  960  1450
1600 390 220 110 30 48 78  140 330 720  1050 1600
1800 430 240 120 32 58 92  170 370 820  1200 1850
2000 430 240 120 32 58 92  170 400 920  1350 2000
2240 480 260 130 34 68 110 195 440 1000 1500 2300
2500 480 260 130 34 68 110 195 460 1100 1650 2500
2800 520 290 145 38 76 135 240 550 1250 1900 2900
3150 520 290 145 38 76 135 240 580 1400 2100 3200
`;

export interface DeviationStep {
  to: number;
  /** Magnitude by letter. */
  by: ReadonlyMap<string, number>;
}

const read = (text: string): DeviationStep[] => {
  const letters = text.trim().split('\n')[0]!.replace('# to', '').trim().split(/\s+/);
  return rowsOf(text).map(([to, ...cells]) => ({
    to: Number(to),
    by: new Map(cells.flatMap((cell, i) => (cell === '-' ? [] : [[letters[i]!, Number(cell)] as const]))),
  }));
};

export const deviationSteps: readonly DeviationStep[] = [...read(upTo500), ...read(over500)];

/** es of a to h is negative. */
export const aboveLetters = ['a', 'b', 'c', 'cd', 'd', 'e', 'ef', 'f', 'fg', 'g', 'h'] as const;
/** ei of k to zc is zero or positive. */
export const belowLetters = [
  'k',
  'm',
  'n',
  'p',
  'r',
  's',
  't',
  'u',
  'v',
  'x',
  'y',
  'z',
  'za',
  'zb',
  'zc',
] as const;

/** ei of j5 and j6, of j7, of j8; ei of k4 to k7; ES of J6, J7, J8. ISO 286-1:2010; J from memory. */
const gradeBound = `
# to j56 j7  j8 k  J6 J7 J8
3    -2  -4  -6 0  2  4  6
6    -2  -4  -  1  5  6  10
10   -2  -5  -  1  5  8  12
18   -3  -6  -  1  6  10 15
30   -4  -8  -  2  8  12 20
50   -5  -10 -  2  10 14 24
80   -7  -12 -  2  13 18 28
120  -9  -15 -  3  16 22 34
180  -11 -18 -  3  18 26 41
250  -13 -21 -  4  22 30 47
315  -16 -26 -  4  25 36 55
400  -18 -28 -  4  29 39 60
500  -20 -32 -  5  33 43 66
`;

export interface GradeBoundStep {
  to: number;
  j56: number;
  j7: number;
  j8: number | undefined;
  k: number;
  J: ReadonlyMap<string, number>;
}

export const gradeBoundSteps: readonly GradeBoundStep[] = rowsOf(gradeBound).map((cells) => {
  const [to, j56, j7, , k, J6, J7, J8] = cells.map(Number) as [
    number,
    number,
    number,
    number,
    number,
    number,
    number,
    number,
  ];
  const j8 = cells[3] === '-' ? undefined : Number(cells[3]);
  return {
    to,
    j56,
    j7,
    j8,
    k,
    J: new Map([
      ['6', J6],
      ['7', J7],
      ['8', J8],
    ]),
  };
});
