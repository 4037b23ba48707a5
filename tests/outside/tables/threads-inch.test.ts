import { describe, expect, it } from 'vitest';
import { rowById, rowsWhere, titleOf } from './reference.ts';
import { thread } from './thread.ts';

const inches = (metres: number | undefined): number => Math.round((metres! / 0.0254) * 1e6) / 1e6;
const mms = (metres: number | undefined): number => Math.round(metres! * 1e6) / 1e3;
const sizeOf = (quantity: string): string => quantity.split(' ').slice(0, 2).join(' ');

describe('unified threads against print', () => {
  for (const row of rowsWhere((each) => each.quantity.includes('basic pitch diameter, basic minor diameter')))
    it(titleOf(row), () => {
      const printed = row.expected as {
        pitch_dia: number;
        minor_dia_int_basic: number;
        As_in2: number;
        As_table: number;
      };
      const ours = thread(sizeOf(row.quantity));
      expect(Math.abs(ours.pitchDiameter / 0.0254 - printed.pitch_dia)).toBeLessThan(5.1e-5);
      expect(Math.abs(ours.minor / 0.0254 - printed.minor_dia_int_basic)).toBeLessThan(5.1e-5);
      expect(Math.abs(ours.stressArea / 0.0254 ** 2 / printed.As_in2 - 1)).toBeLessThan(5e-3);
      expect(Math.abs(ours.stressArea / 0.0254 ** 2 / printed.As_table - 1)).toBeLessThan(5e-3);
    });

  for (const row of rowsWhere((each) => each.quantity.includes('class 2B minor diameter limits')))
    it(titleOf(row), () => {
      const printed = row.expected as { min: number; max: number };
      const { limits } = thread(`${sizeOf(row.quantity)}-2B`);
      expect({ min: inches(limits!.minor!.min), max: inches(limits!.minor!.max) }).toEqual(printed);
    });

  it(titleOf(rowById('R468')), () => {
    expect(Math.abs(thread('1/4-20').minor / 0.0254 - (rowById('R468').expected as number))).toBeLessThan(
      5e-5,
    );
  });

  for (const [id, designation] of [
    ['R524', '1/2-13 UNC'],
    ['R525', '3/8-16 UNC'],
    ['R527', '1/2-13 UNC'],
  ] as const)
    it(`${id}: the limits its shear areas are worked from are ours [${rowById(id).source}] ${rowById(id).grade}`, () => {
      const given = rowById(id).inputs as {
        Kn_max?: number;
        Es_min?: number;
        Ds_min?: number;
        En_max?: number;
      };
      const bolt = thread(`${designation}-2A`).limits!;
      const nut = thread(`${designation}-2B`).limits!;
      if (given.Kn_max) expect(inches(nut.minor!.max)).toBe(given.Kn_max);
      if (given.Es_min) expect(inches(bolt.pitch.min)).toBe(given.Es_min);
      if (given.Ds_min) expect(inches(bolt.major!.min)).toBe(given.Ds_min);
      if (given.En_max) expect(inches(nut.pitch.max)).toBe(given.En_max);
    });

  /** Size; pitch diameter least, greatest; minor diameter least, greatest. Misprints of the page left out. */
  const printed2B = `
#1-64 .0629 .0655 .0561 .0623
#2-56 .0744 .0772 .0667 .0737
#4-40 .0958 .0991 .0849 .0939
#5-40 .1088 .1121 .0979 .1062
#6-32 .1177 .1214 .104 .114
#8-32 .1437 .1475 .130 .139
#10-24 .1629 .1672 .145 .156
#12-24 .1889 .1933 .171 .181
1/4-20 .2175 .2224 .196 .207
5/16-18 .2764 .2817 .252 .265
3/8-16 .3344 .3401 .307 .321
7/16-14 .3911 .3972 .360 .376
1/2-13 .4500 .4565 .417 .434
5/8-11 .5660 .5732 .527 .546
3/4-10 .6850 .6927 .642 .663
7/8-9 .8028 .8110 .755 .778
1-8 .9188 .9276 .865 .890
1-1/8-7 1.0322 1.0416 .970 .998
1-1/4-7 1.1572 1.1668 1.095 1.123
1-3/8-6 1.2667 1.2771 1.195 1.225
1-3/4-5 1.6201 1.6317 1.534 1.568
2-4.5 1.8557 1.8681 1.759 1.795
2-1/4-4.5 2.1057 2.1183 2.009 2.045
2-1/2-4 2.3376 2.3511 2.229 2.267
3-4 2.8376 2.8515 2.729 2.767`;
  for (const line of printed2B.trim().split('\n')) {
    const [size, ...figures] = line.split(' ');
    it(`${size} UNC-2B, all four limits [a tap maker's table of ASME B1.1 2B threads] seen`, () => {
      const { pitch, minor } = thread(`${size} UNC-2B`).limits!;
      expect([pitch.min, pitch.max, minor!.min, minor!.max].map(inches)).toEqual(figures.map(Number));
    });
  }

  /** 2A major and pitch, 2B minor and pitch, 3A pitch least, 3B pitch greatest. */
  const printedSmall = `
#0-80 .0563 .0595 .0496 .0514 .0465 .0514 .0519 .0542 .0506 .0536
#1-64 .0686 .0724 .0603 .0623 .0561 .0623 .0629 .0655 .0614 .0648
#1-72 .0689 .0724 .0615 .0634 .0580 .0635 .0640 .0665 .0626 .0659
#2-56 .0813 .0854 .0717 .0738 .0667 .0737 .0744 .0772 .0728 .0765
#2-64 .0816 .0854 .0733 .0753 .0691 .0753 .0759 .0786 .0744 .0779`;
  for (const line of printedSmall.trim().split('\n')) {
    const [size, ...figures] = line.split(' ');
    it(`${size}, classes 2A, 2B, 3A and 3B [standard series limits of ASME B1.1, an engineering data page] seen`, () => {
      const a = thread(`${size}-2A`).limits!;
      const b = thread(`${size}-2B`).limits!;
      const ours = [
        a.major!.min,
        a.major!.max,
        a.pitch.min,
        a.pitch.max,
        b.minor!.min,
        b.minor!.max,
        b.pitch.min,
        b.pitch.max,
      ];
      ours.push(thread(`${size}-3A`).limits!.pitch.min, thread(`${size}-3B`).limits!.pitch.max);
      expect(ours.map(inches)).toEqual(figures.map(Number));
    });
  }

  /** Basic pitch diameter, 2B greatest, 3B greatest, mm. */
  const printedUnf = `
#10-32 4.310 4.409 4.384
1/4-28 5.761 5.870 5.842
5/16-24 7.249 7.371 7.341
3/8-24 8.837 8.961 8.931
7/16-20 10.287 10.424 10.391
1/2-20 11.874 12.017 11.981
9/16-18 13.371 13.520 13.482
5/8-18 14.958 15.110 15.072
3/4-16 18.019 18.184 18.143`;
  for (const line of printedUnf.trim().split('\n')) {
    const [size, basic, most2B, most3B] = line.split(' ') as [string, string, string, string];
    it(`${size} UNF pitch diameters in mm [a tap maker's table of ANSI B1.1, to 0.001 mm] seen`, () => {
      expect(Math.abs(mms(thread(size).pitchDiameter) - Number(basic))).toBeLessThan(1.1e-3);
      // The page converts four-place inches, or rounds for itself: 0.0001 in at most.
      expect(Math.abs(mms(thread(`${size} UNF-2B`).limits!.pitch.max) - Number(most2B))).toBeLessThan(2.6e-3);
      expect(Math.abs(mms(thread(`${size} UNF-3B`).limits!.pitch.max) - Number(most3B))).toBeLessThan(2.6e-3);
    });
  }
});
