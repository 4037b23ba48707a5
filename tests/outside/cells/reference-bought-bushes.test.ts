import { describe, expect, test } from 'vitest';
import { rowById, rowsWhere, titleOf } from '../tables/reference.ts';
import { checkRow } from './row-check.ts';
import { one, remarksOf } from './sheet-of.ts';

const bush = (make: string, bore: number, outside: number, shaft_class: string) =>
  one('bought-bush', { make, bore: `${bore} mm`, outside: `${outside} mm`, shaft_class });
/** The limits of a class of ISO 286 at a size, by the cell of the metric fit. */
const limits = (nominal: number, hole_class: string, shaft_class: string) =>
  one('iso-fit', { nominal: `${nominal} mm`, hole_class, shaft_class });

describe('bushes bought to a standard, by the cell', () => {
  for (const row of rowsWhere((each) => typeof each.inputs.OD_range_mm === 'string'))
    checkRow(row.id, () => {
      const [over = 0, to = 0] = String(row.inputs.OD_range_mm).split('-').map(Number);
      const printed = row.expected as { upper: number; lower: number };
      return [over + 1, to].flatMap((outside) => {
        const it = bush('wrapped', outside - 3, outside, 'f7');
        const of = limits(outside - 3, 'H9', 'f7');
        return [
          { got: it('outside_greatest', 'um') - 1000 * outside, expected: printed.upper, near: 1e-6 },
          { got: it('outside_least', 'um') - 1000 * outside, expected: printed.lower, near: 1e-6 },
          { got: it('least_clearance', 'um'), expected: of('least_clearance', 'um'), near: 1e-6 },
          { got: it('greatest_clearance', 'um'), expected: of('greatest_clearance', 'um'), near: 1e-6 },
        ];
      });
    });

  checkRow('R583', () => {
    const printed = rowById('R583').expected as { housing: string; shaft: string[] };
    return printed.shaft.flatMap((shaft) => {
      const it = bush('wrapped', 30, 34, shaft);
      const housing = limits(34, printed.housing, shaft);
      return [
        { got: it('housing_least', 'mm'), expected: housing('hole_least', 'mm'), near: 1e-9 },
        { got: it('housing_greatest', 'mm'), expected: housing('hole_greatest', 'mm'), near: 1e-9 },
        { got: it('shaft_least', 'mm'), expected: limits(30, 'H9', shaft)('shaft_least', 'mm'), near: 1e-9 },
      ];
    });
  });

  test(titleOf(rowById('R577')), () => {
    const printed = rowById('R577').expected as Record<
      'd1' | 'd2' | 'housing' | 'd1_after' | 'shaft',
      string
    >;
    expect(printed).toMatchObject({ d2: 's6 (r6 above 120 mm)', housing: 'H7', d1_after: 'H8 approx.' });
    for (const [bore, outside, outer] of [
      [40, 50, 's6'],
      [100, 120, 's6'],
      [110, 130, 'r6'],
    ] as const) {
      const it = bush('turned', bore, outside, 'e7');
      const held = limits(outside, printed.housing, outer);
      const run = limits(bore, 'H8', 'e7');
      expect(it('least_interference', 'um')).toBeCloseTo(-held('greatest_clearance', 'um'), 6);
      expect(it('greatest_interference', 'um')).toBeCloseTo(-held('least_clearance', 'um'), 6);
      expect(it('least_clearance', 'um')).toBeCloseTo(run('least_clearance', 'um'), 6);
      expect(it('greatest_clearance', 'um')).toBeCloseTo(run('greatest_clearance', 'um'), 6);
      // E6 before it is fitted: the press takes about as much as the interference gives.
      const before = limits(bore, printed.d1, 'h6');
      expect(before('hole_least', 'um')).toBeGreaterThan(it('fitted_least', 'um'));
    }
  });

  test('a shaft as it is comes before a class, and a size outside the table is told', () => {
    const it = one('bought-bush', {
      make: 'wrapped',
      bore: '35 mm',
      outside: '39 mm',
      shaft_class: 'f7',
      journal: '34.950 mm',
    });
    expect(it('least_clearance', 'um')).toBeCloseTo(50, 6);
    expect(
      remarksOf('bought-bush', { make: 'wrapped', bore: '35 mm', outside: '39 mm' }).join(' '),
    ).toContain('no clearance');
    expect(() => bush('wrapped', 240, 250, 'f7')('outside_least', 'mm')).toThrow(/250 mm/);
  });
});
