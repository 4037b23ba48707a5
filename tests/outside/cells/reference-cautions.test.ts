import { describe, expect, test } from 'vitest';
import { library } from '../../../cells/catalogue.ts';
import { cautionTexts } from '../../../cells/record/caution.ts';
import { rowById, titleOf } from '../tables/reference.ts';

const saidBy = (kind: string): string => {
  const found = library.kinds.get(kind);
  if (!found) throw new Error(`there is no cell kind ${kind}`);
  return [...cautionTexts(found), ...found.inputs.map(({ hint }) => hint ?? '')].join(' ');
};

/** What a caution says in figures is what is published; whatever else is local is left to the local codes. */
describe('cautions that carry a figure', () => {
  test(titleOf(rowById('R713')), () => {
    const { LN2, dry_ice } = rowById('R713').expected as { LN2: number; dry_ice: number };
    expect(saidBy('shrink-fit')).toContain(`Dry ice ${dry_ice} degC, liquid nitrogen ${LN2} degC`);
  });
  test(titleOf(rowById('R714')), () => {
    // 694 litres of gas from one of liquid: the caution says about 0.7 m3.
    const [, litres] = /about (\d+):1/.exec(String(rowById('R714').expected)) ?? [];
    expect(saidBy('shrink-fit')).toContain(`${(Number(litres) / 1000).toFixed(1)} m3 of gas`);
  });
  test(titleOf(rowById('R705')), () => {
    expect(saidBy('shrink-fit')).toContain(`below ${rowById('R705').expected} % of oxygen`);
  });
  test(titleOf(rowById('R718')), () => {
    const { V_room, V_LN2_L, ratio } = rowById('R718').inputs as Record<string, number>;
    const oxygen = (100 * 0.2095 * (V_room! - (V_LN2_L! * ratio!) / 1000)) / V_room!;
    expect(oxygen).toBeCloseTo(rowById('R718').expected as number, 2);
    // The worked case of the caution: ten litres in a closed room of 50 m3 is already too much.
    expect(oxygen).toBeLessThan(rowById('R705').expected as number);
    expect(saidBy('shrink-fit')).toContain(`${V_LN2_L} litres in a closed room of ${V_room} m3`);
  });
  test.each(['shrink-fit', 'bearing-pressure', 'material', 'bought-bush'])(
    `${titleOf(rowById('R716'))}: %s`,
    (kind) => {
      const { limit_C } = rowById('R716').expected as { limit_C: number };
      expect(saidBy(kind)).toContain(`above about ${limit_C} degC`);
    },
  );
  test(titleOf(rowById('R710')), () => {
    // The rule leaves 100 degF to the autoignition temperature; well below the flash point is the closer bound.
    expect(saidBy('shrink-fit')).toContain('well below the flash point');
  });
});
