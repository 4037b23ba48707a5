import { describe, expect, it } from 'vitest';
import { fineTapDrill } from '../../../cells/tables/threads/metric-series.ts';
import {
  holeForPercent,
  inchThreads,
  metricThreads,
  percentOfThread,
  threadByDesignation,
} from '../../../cells/tables/threads/threads.ts';
import { rowById, rowsWhere, titleOf } from './reference.ts';
import { thread } from './thread.ts';

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
