import { describe, expect, it } from 'vitest';
import { coldBaths, coldContractionByKey, coldContractions } from '../../../cells/tables/cold-contraction.ts';
import { materialByKey } from '../../../cells/tables/materials/materials.ts';
import { rowById, rowsWhere, titleOf } from './reference.ts';

describe('cold contraction against print', () => {
  const keys: Readonly<Record<string, string>> = {
    '304 stainless': '304',
    'brass 70/30': 'c26000',
    PTFE: 'ptfe',
  };
  for (const row of rowsWhere((each) => each.quantity.startsWith('integral thermal contraction')))
    it(titleOf(row), () => {
      const { total } = coldContractionByKey(keys[String(row.inputs.material)]!)!;
      expect(Math.abs((total.value * 100) / (row.expected as number) - 1)).toBeLessThan(0.07);
    });

  it(titleOf(rowById('R202')), () => {
    const { D } = rowById('R202').inputs as { D: number };
    const shrunk = D * coldContractionByKey('6061-t6')!.total.value;
    expect(Math.abs(shrunk / (rowById('R202').expected as number) - 1)).toBeLessThan(0.1);
  });

  it(titleOf(rowById('R713')), () => {
    const { LN2, dry_ice } = rowById('R713').expected as { LN2: number; dry_ice: number };
    expect(coldBaths.nitrogen - 273.15).toBeCloseTo(LN2, 9);
    expect(coldBaths.dryIce - 273.15).toBeCloseTo(dry_ice, 9);
  });

  it('is less than the room-temperature coefficient would give, for every metal of the materials table', () => {
    for (const { key, total } of coldContractions) {
      const material = materialByKey(key)!;
      expect(material, key).toBeDefined();
      const straight = material.alpha.value * (293.15 - 77);
      expect(total.low, key).toBeLessThan(straight * 1.2);
      if (material.kind !== 'plastic' && key !== 'feni36') {
        expect(total.value, key).toBeLessThan(straight * 0.95);
        expect(total.value, key).toBeGreaterThan(straight * 0.6);
      }
    }
  });
});
