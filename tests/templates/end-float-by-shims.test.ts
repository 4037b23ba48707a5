import { describe, expect, it } from 'vitest';
import { IN, mean, THOU, workOut } from './shelf.ts';

/** Recomputed by hand from the sizes and the handbook formulas. */
describe('end float by thrust width and shims', () => {
  const name = 'end-float-by-shims.json';
  const sheet = workOut(name);
  const bare =
    (mean(3.0125, 3.0122, 3.0127) -
      mean(0.2492, 0.2491, 0.2492) -
      mean(0.2488, 0.2486, 0.2487) -
      mean(2.4902, 2.4902, 2.4903)) *
    IN;

  it('the space less what stands in it, less a pack of 10, 5 and 2', () => {
    expect(sheet.value('bare', 'end_float')).toBeCloseTo(bare, 10);
    expect(sheet.value('fitted')).toBeCloseTo(17 * THOU, 12);
    expect(sheet.value('built', 'end_float')).toBeCloseTo(bare - 17 * THOU, 10);
  });

  it('a pack once chosen leaves the doubt of the float in the float', () => {
    const spread = (cell: string) => {
      const { low, high } = sheet.figure(cell, 'end_float');
      return high - low;
    };
    // Grade 9 of the pack, up to 3 mm: 25 um (ISO 286-1, table 1).
    expect(spread('built')).toBeCloseTo(spread('bare') + 25e-6, 10);
  });

  it('a thinner washer is made up for by shims; a measured pack stands', () => {
    const thin = workOut(name, { washer_a: '0.2442 | 0.2441 | 0.2442 in' });
    expect(thin.value('fitted')).toBeCloseTo(22 * THOU, 12);
    const measured = workOut(name, {}, { fitted: '0.0163 in ± 0.0002 in' });
    expect(measured.value('built', 'end_float')).toBeCloseTo(bare - 16.3 * THOU, 10);
  });
});
