import { describe, expect } from 'vitest';
import { rowById, rowsWhere } from '../tables/reference.ts';
import { checkRow } from './row-check.ts';
import { one } from './sheet-of.ts';

/** Upper end of `1 3/8-1 3/4` or `8-10`, as an entry. */
const upTo = (range: unknown): string => String(range).split('-')[1] ?? '';

describe('keys by the cell', () => {
  for (const row of rowsWhere((each) => typeof each.inputs.shaft_range_in === 'string'))
    checkRow(row.id, () => ({
      got: one('key-size', { shaft: `${upTo(row.inputs.shaft_range_in)} in`, system: 'inch-square' })(
        'width',
        'in',
      ),
      expected: row.expected as number,
      within: 1e-9,
    }));
  for (const row of rowsWhere((each) => each.quantity.startsWith('S and T for square key')))
    checkRow(row.id, () => {
      const printed = row.expected as { S: number; T_parallel: number; T_taper: number };
      const it = one('key-size', { shaft: `${row.inputs.D as number} in`, system: 'inch-square' });
      return [
        { got: it('over_seat', 'in'), expected: printed.S, near: 6e-4 },
        { got: it('over_way', 'in'), expected: printed.T_parallel, near: 6e-4 },
        { got: it('over_way_taper', 'in'), expected: printed.T_taper, near: 6e-4 },
      ];
    });
  checkRow('R538', () => {
    // The row is the formula as printed; on every key of the table up to 6 in.
    expect(rowById('R538').expected).toContain('S = (D - H + sqrt(D^2 - W^2))/2');
    return [0.4375, 0.5, 0.8125, 1.125, 1.3125, 1.9375, 2.5, 3, 4.25, 5.5].flatMap((D) => {
      const it = one('key-size', { shaft: `${D} in`, system: 'inch-square' });
      const [W, H] = [it('width', 'in'), it('height', 'in')];
      const root = Math.sqrt(D ** 2 - W ** 2);
      return [
        { got: it('over_seat', 'in'), expected: (D - H + root) / 2, near: 1e-9 },
        { got: it('over_way', 'in'), expected: (D + H + root) / 2 + 0.005, near: 1e-9 },
      ];
    });
  });
  for (const row of rowsWhere((each) => typeof each.inputs.shaft_range_mm === 'string'))
    checkRow(row.id, () => {
      const printed = row.expected as Record<'b' | 'h' | 't1_shaft' | 't2_hub', number>;
      const it = one('key-size', { shaft: `${upTo(row.inputs.shaft_range_mm)} mm`, system: 'metric' });
      return [
        { got: it('width', 'mm'), expected: printed.b, near: 1e-9 },
        { got: it('height', 'mm'), expected: printed.h, near: 1e-9 },
        { got: it('seat_depth', 'mm'), expected: printed.t1_shaft, near: 1e-9 },
        { got: it('way_depth', 'mm'), expected: printed.t2_hub, near: 1e-9 },
      ];
    });
});
