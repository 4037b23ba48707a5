import { describe, expect } from 'vitest';
import type { ReferenceRow } from '../tables/reference.ts';
import { rowById, rowsWhere } from '../tables/reference.ts';
import { checkRow, expectedOf } from './row-check.ts';
import { one, sheetOf, valueIn, worked } from './sheet-of.ts';

/** `1/4-20 UNC basic pitch ...` and `M10 x 1.5 (ISO ...`: the designation a row begins with. */
const designationOf = ({ quantity }: ReferenceRow): string => {
  const metric = /^M(\d+) x ([\d.]+)/.exec(quantity);
  return metric ? `M${metric[1]}x${metric[2]}` : quantity.split(' ').slice(0, 2).join(' ');
};
const threadOf = (row: ReferenceRow, more: Record<string, string> = {}) =>
  one('thread-limits', { thread: designationOf(row), ...more });

describe('unified threads by the cell', () => {
  for (const row of rowsWhere((each) => each.quantity.includes('basic pitch diameter, basic minor diameter')))
    checkRow(row.id, () => {
      const printed = row.expected as Record<'pitch_dia' | 'minor_dia_int_basic' | 'As_in2', number>;
      const it = threadOf(row);
      return [
        { got: it('pitch_diameter', 'in'), expected: printed.pitch_dia, near: 5.1e-5 },
        { got: it('minor', 'in'), expected: printed.minor_dia_int_basic, near: 5.1e-5 },
        { got: it('stress_area', 'in2'), expected: printed.As_in2, within: 5e-3 },
      ];
    });
  for (const row of rowsWhere((each) => each.quantity.includes('class 2B minor diameter limits')))
    checkRow(row.id, () => {
      const printed = row.expected as { min: number; max: number };
      const it = threadOf(row, { class: '2B' });
      return [
        { got: it('crest_least', 'in'), expected: printed.min, near: 1e-9 },
        { got: it('crest_greatest', 'in'), expected: printed.max, near: 1e-9 },
      ];
    });
  checkRow('R468', () => ({
    got: one('thread-limits', { thread: '1/4-20 UNC' })('minor', 'in'),
    expected: expectedOf('R468'),
    near: 5e-5,
  }));
  for (const row of rowsWhere((each) => each.quantity.startsWith('percent of thread for')))
    checkRow(row.id, () => {
      const { D, tpi, drill } = row.inputs as Record<'D' | 'tpi' | 'drill', number>;
      const series = [20, 18, 16, 14, 13, 11, 10, 9, 8].includes(tpi) && D !== 0.375 ? 'UNC' : 'UNF';
      const size = row.quantity.split(' ')[4];
      return {
        got:
          100 *
          one('thread-limits', { thread: `${size} ${series}`, hole: `${drill} in` })('thread_share', ''),
        expected: row.expected as number,
        near: 0.05,
      };
    });
  checkRow('R499', () => {
    expect(rowById('R499').expected).toContain('percent = 76.98 n (D - drill)');
    // Drills and threads that no row has.
    return (
      [
        ['1/4-20 UNC', 0.25, 20, 0.2055],
        ['5/16-18 UNC', 0.3125, 18, 0.25],
        ['1/2-20 UNF', 0.5, 20, 0.4531],
        ['3/4-16 UNF', 0.75, 16, 0.6875],
        ['1-8 UNC', 1, 8, 0.89],
      ] as const
    ).map(([thread, D, n, drill]) => ({
      got: 100 * one('thread-limits', { thread, hole: `${drill} in` })('thread_share', ''),
      expected: 76.98 * n * (D - drill),
      within: 1e-4,
    }));
  });
  checkRow('R522', () => {
    const drill = (formula: string): number =>
      valueIn('in', sheetOf({ hole: worked('length', formula) }, { length: 'in' }), 'hole');
    expect(rowById('R522').expected).toContain('Q (0.3320); 21/64');
    return [
      { got: drill('= DRILLNOTABOVE(0.3320 in)'), expected: 0.332, near: 1e-12 },
      { got: drill('= DRILLNOTABOVE(0.3319 in)'), expected: 21 / 64, near: 1e-12 },
      { got: drill('= DRILLNOTBELOW(0.3320 in)'), expected: 0.332, near: 1e-12 },
      { got: drill('= DRILLNOTBELOW(0.3321 in)'), expected: 0.339, near: 1e-12 },
    ];
  });
});

describe('metric threads by the cell', () => {
  for (const row of rowsWhere((each) => each.quantity.includes('pitch dia d2, minor dia D1')))
    checkRow(row.id, () => {
      const printed = row.expected as Record<'d2' | 'D1' | 'As_mm2', number>;
      const it = threadOf(row);
      return [
        { got: it('pitch_diameter', 'mm'), expected: printed.d2, near: 5.1e-4 },
        { got: it('minor', 'mm'), expected: printed.D1, near: 5.1e-4 },
        { got: it('stress_area', 'mm2'), expected: printed.As_mm2, within: 1e-3 },
      ];
    });
  for (const row of rowsWhere((each) => each.quantity.includes('tap drill and 6H minor')))
    checkRow(row.id, () => {
      const printed = row.expected as Record<'tap_drill_mm' | 'D1_6H_max' | 'thread_percent', number>;
      const it = threadOf(row, { class: '6H' });
      return [
        { got: it('tap_drill', 'mm'), expected: printed.tap_drill_mm, near: 1e-9 },
        { got: it('crest_greatest', 'mm'), expected: printed.D1_6H_max, near: 1e-9 },
        { got: 100 * it('thread_share', ''), expected: printed.thread_percent, near: 0.06 },
      ];
    });
});

describe('length of engagement by the cell', () => {
  checkRow('R523', () => {
    expect(rowById('R523').expected).toContain('2 At / ( pi Kn_max [ 1/2 + 0.57735 n (Es_min - Kn_max) ] )');
    return (
      [
        ['1/4-20 UNC', 20],
        ['3/4-10 UNC', 10],
        ['1-12 UNF', 12],
      ] as const
    ).map(([thread, n]) => {
      const it = one('thread-engagement', { thread, bolt_class: '2A', hole_class: '2B' });
      const [At, Kn, Es] = [it('stress_area', 'in2'), it('hole_minor', 'in'), it('bolt_pitch', 'in')];
      return {
        got: it('least_equal', 'in'),
        expected: (2 * At) / (Math.PI * Kn * (0.5 + 0.57735 * n * (Es - Kn))),
        within: 1e-5,
      };
    });
  });
  const engagement = (thread: string) =>
    one('thread-engagement', { thread, bolt_class: '2A', hole_class: '2B' });
  checkRow('R524', () => ({
    got: engagement('1/2-13 UNC')('least_engagement', 'in'),
    expected: expectedOf('R524'),
    within: 2e-3,
  }));
  checkRow('R525', () => ({
    got: engagement('3/8-16 UNC')('least_engagement', 'in'),
    expected: expectedOf('R525'),
    within: 2e-3,
  }));
  checkRow('R527', () => {
    const it = engagement('1/2-13 UNC');
    // The row multiplies out at 0.3643 in, rounded as printed.
    return [
      { got: it('bolt_shear_area', 'in2'), expected: 0.2838, within: 3e-3 },
      { got: it('hole_shear_area', 'in2'), expected: 0.4093, within: 3e-3 },
    ];
  });
});
