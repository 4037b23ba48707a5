import { describe, expect, it } from 'vitest';
import {
  pitchDiameterRows,
  pitchDiameterTolerance,
  pitchRows,
} from '../../../cells/tables/threads/metric-limits.ts';
import { fineTapDrill } from '../../../cells/tables/threads/metric-series.ts';
import type { Thread } from '../../../cells/tables/threads.ts';
import {
  holeForPercent,
  inchThreads,
  metricThreads,
  percentOfThread,
  threadByDesignation,
} from '../../../cells/tables/threads.ts';
import { rowById, rowsWhere, titleOf } from './reference.ts';

const thread = (text: string): Thread => {
  const found = threadByDesignation(text);
  if ('problem' in found) throw new Error(found.problem);
  return found;
};
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

describe('metric threads against print', () => {
  for (const row of rowsWhere((each) => each.quantity.includes('pitch dia d2, minor dia D1')))
    it(titleOf(row), () => {
      const printed = row.expected as { d2: number; D1: number; As_mm2: number; As_table: number };
      const { d, P } = row.inputs as { d: number; P: number };
      const ours = thread(`M${d}`);
      expect(mms(ours.pitch)).toBe(P);
      expect(ours.series).toBe('M coarse');
      expect(Math.abs(mms(ours.pitchDiameter) - printed.d2)).toBeLessThan(5e-4);
      expect(Math.abs(mms(ours.minor) - printed.D1)).toBeLessThan(1e-3);
      expect(Math.abs((ours.stressArea * 1e6) / printed.As_mm2 - 1)).toBeLessThan(5e-3);
      expect(Math.abs((ours.stressArea * 1e6) / printed.As_table - 1)).toBeLessThan(5e-3);
    });

  for (const row of rowsWhere((each) => each.quantity.includes('tap drill and 6H minor diameter maximum')))
    it(titleOf(row), () => {
      const printed = row.expected as { tap_drill_mm: number; D1_6H_max: number; thread_percent: number };
      const { d, P } = row.inputs as { d: number; P: number };
      const ours = thread(`M${d}x${P}-6H`);
      expect(mms(ours.tapDrill!.diameter)).toBe(printed.tap_drill_mm);
      expect(mms(ours.limits!.minor!.max)).toBeCloseTo(printed.D1_6H_max, 3);
      expect(percentOfThread(ours.major, ours.pitch, ours.tapDrill!.diameter)).toBeCloseTo(
        printed.thread_percent,
        1,
      );
    });

  /** 6g major least and greatest, pitch least and greatest; 6H pitch greatest, minor greatest. */
  const printed6 = `
M6 5.794 5.974 5.212 5.324 5.500 5.153
M8 7.760 7.972 7.042 7.160 7.348 6.912
M10 9.732 9.968 8.862 8.994 9.206 8.676
M12 11.701 11.966 10.679 10.829 11.063 10.441
M16 15.682 15.962 14.503 14.663 14.913 14.210
M20 19.623 19.958 18.164 18.334 18.600 17.744`;
  for (const line of printed6.trim().split('\n')) {
    const [size, ...figures] = line.split(' ');
    it(`${size} 6g and 6H limits [ISO 965-2] from memory`, () => {
      const bolt = thread(`${size}-6g`).limits!;
      const nut = thread(`${size}-6H`).limits!;
      expect(
        [bolt.major!.min, bolt.major!.max, bolt.pitch.min, bolt.pitch.max, nut.pitch.max, nut.minor!.max].map(
          mms,
        ),
      ).toEqual(figures.map(Number));
    });
  }

  it('tabulated tolerances lie by their formulas (ISO 965-1): a second method, recomputed', () => {
    for (const [P, row] of pitchRows) {
      const minor6 = P < 1 ? 433 * P - 190 * P ** 1.22 : 230 * P ** 0.7;
      if (row.minor.has(6)) expect(Math.abs(row.minor.get(6)! / minor6 - 1), `TD1 ${P}`).toBeLessThan(0.045);
      const major6 = 180 * P ** (2 / 3) - 3.15 / Math.sqrt(P);
      expect(Math.abs(row.major.get(6)! / major6 - 1), `Td ${P}`).toBeLessThan(0.055);
      expect(Math.abs(row.g - (15 + 11 * P)), `g ${P}`).toBeLessThanOrEqual(3.1);
      if (!Number.isNaN(row.f)) expect(Math.abs(row.f - (30 + 11 * P)), `f ${P}`).toBeLessThanOrEqual(12);
      for (const [table, grade, factor] of [
        [row.minor, 4, 0.63],
        [row.minor, 5, 0.8],
        [row.minor, 7, 1.25],
        [row.minor, 8, 1.6],
        [row.major, 4, 0.63],
        [row.major, 8, 1.6],
      ] as const)
        if (table.has(grade) && table.has(6))
          expect(
            Math.abs(table.get(grade)! / table.get(6)! / factor - 1),
            `grade ${grade} ${P}`,
          ).toBeLessThan(0.04);
    }
    const bounds = [0.99, 1.4, 2.8, 5.6, 11.2, 22.4, 45, 90, 180, 355];
    for (const [i, row] of pitchDiameterRows.entries())
      for (const [P, { external, internal }] of row.by) {
        const formula = 90 * P ** 0.4 * Math.sqrt(bounds[i]! * bounds[i + 1]!) ** 0.1;
        expect(Math.abs(external / formula - 1), `Td2 ${P} to ${row.to}`).toBeLessThan(0.045);
        if (!Number.isNaN(internal))
          expect(Math.abs(internal / (1.32 * formula) - 1), `TD2 ${P} to ${row.to}`).toBeLessThan(0.05);
      }
  });

  it('other grades: M8 has Td2 75, 95, 118, 150, 190 in grades 4 to 8 and TD2 100, 125, 160, 200, 250 [ISO 965-1] from memory', () => {
    expect([4, 5, 6, 7, 8].map((grade) => pitchDiameterTolerance(8, 1.25, grade, false))).toEqual([
      75, 95, 118, 150, 190,
    ]);
    expect([4, 5, 6, 7, 8].map((grade) => pitchDiameterTolerance(8, 1.25, grade, true))).toEqual([
      100, 125, 160, 200, 250,
    ]);
  });
});

describe('percent of thread', () => {
  for (const row of rowsWhere((each) => each.quantity.startsWith('percent of thread for')))
    it(titleOf(row), () => {
      const { D, tpi, drill } = row.inputs as { D: number; tpi: number; drill: number };
      expect(Math.abs(percentOfThread(D, 1 / tpi, drill) - (row.expected as number))).toBeLessThan(0.1);
    });

  it(titleOf(rowById('R499')), () => {
    for (const [D, n, percent] of [
      [0.25, 20, 75],
      [0.5, 13, 60],
      [1, 8, 70],
    ] as const) {
      expect(holeForPercent(D, 1 / n, percent)).toBeCloseTo(D - (0.01299 * percent) / n, 5);
      expect(percentOfThread(D, 1 / n, holeForPercent(D, 1 / n, percent))).toBeCloseTo(percent, 9);
    }
  });

  it('every usual tap drill leaves 53 to 90 percent, and clears the minor diameter of the tap', () => {
    for (const row of inchThreads) {
      const ours = thread(`${row.size}-${row.perInch} ${row.series}`);
      if (ours.tapDrill === undefined) continue;
      const percent = percentOfThread(ours.major, ours.pitch, ours.tapDrill.diameter);
      expect(percent, ours.designation).toBeGreaterThan(53);
      expect(percent, ours.designation).toBeLessThan(90);
    }
    for (const row of metricThreads)
      for (const pitch of [...(row.coarse ? [row.coarse] : []), ...row.fine]) {
        const ours = thread(`M${row.major}x${pitch}`);
        const percent = percentOfThread(ours.major, ours.pitch, ours.tapDrill!.diameter);
        expect(percent, ours.designation).toBeGreaterThan(69);
        expect(percent, ours.designation).toBeLessThan(84);
      }
  });

  it('fine drills of ISO 2306: M6x0.75 5.2, M8x0.75 7.2, M10x1.25 8.8, M12x1.25 10.8, M12x1.5 10.5 from memory', () => {
    expect([
      fineTapDrill(6, 0.75),
      fineTapDrill(8, 0.75),
      fineTapDrill(10, 1.25),
      fineTapDrill(12, 1.25),
      fineTapDrill(12, 1.5),
    ]).toEqual([5.2, 7.2, 8.8, 10.8, 10.5]);
  });
});

describe('designations', () => {
  it('reads what drawings and shops write', () => {
    expect(thread('3/8-16 UNC-2B').designation).toBe('3/8-16 UNC');
    expect(thread('3/8-16 UNC - 2B').limits?.class).toBe('2B');
    expect(thread('10-32').designation).toBe('#10-32 UNF');
    expect(thread('No. 10-24').designation).toBe('#10-24 UNC');
    expect(thread('1-1/8-7').series).toBe('UNC');
    expect(thread('1 1/8-12').series).toBe('UNF');
    expect(thread('1/4-20 NC').series).toBe('UNC');
    expect(thread('1/4-20 2B').limits?.internal).toBe(true);
    expect(thread('2-4 1/2').designation).toBe('2-4.5 UNC');
    expect(thread('1-14 UNS').series).toBe('UNS');
    expect(thread('1-1/2-8').series).toBe('UN');
    expect(thread('.375-16').designation).toBe('3/8-16 UNC');
    expect(thread('M8').designation).toBe('M8x1.25');
    expect(thread('m8X1').series).toBe('M fine');
    expect(thread('M8 × 1,25 - 6H').limits?.internal).toBe(true);
    expect(thread('M10x1.25-5g6g').limits?.class).toBe('5g6g');
  });

  it('says what is wrong and what there is', () => {
    const problem = (text: string): string => {
      const found = threadByDesignation(text);
      if (!('problem' in found)) throw new Error(`${text} was read as ${found.designation}`);
      return found.problem;
    };
    expect(problem('3/8-18 UNC')).toMatch(/3\/8 UNC has 16 threads per inch, not 18/);
    expect(problem('1-14')).toMatch(/no standard series/);
    expect(problem('3/8-17 UN')).toMatch(/write UNS/);
    expect(problem('3/8-16 BSW')).toMatch(/no unified series/);
    expect(problem('M8x2')).toMatch(/M8x1\.25, M8x1, M8x0\.75/);
    expect(problem('M13')).toMatch(/M12 and M14/);
    expect(problem('M15')).toMatch(/M15x1\.5/);
    expect(problem('M8-6K')).toMatch(/no tolerance class/);
    expect(problem('M8-5g6h')).toMatch(/mixes two positions/);
    expect(problem('M8-9g')).toMatch(/not tabulated/);
    expect(problem('half inch')).toMatch(/not a thread designation/);
  });

  it('every standard thread reads back from its own designation', () => {
    for (const row of inchThreads) {
      const first = thread(`${row.size}-${row.perInch} ${row.series}`);
      expect(thread(first.designation)).toEqual(first);
      for (const grade of ['1A', '2A', '3A', '1B', '2B', '3B']) {
        const { pitch } = thread(`${first.designation}-${grade}`).limits!;
        expect(pitch.min).toBeLessThan(pitch.max);
      }
    }
  });
});
