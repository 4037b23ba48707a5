import { describe, expect, test } from 'vitest';
import { rowById } from '../tables/reference.ts';
import { sheetWith } from './example-sheet.ts';
import { checkRow, expectedOf } from './row-check.ts';
import { figure, valueIn } from './sheet-of.ts';

describe('close-in of a pressed bush', () => {
  const bush = (more: Record<string, string | Record<string, string>> = {}) => {
    const sheet = sheetWith('bush-close-in', {
      bush_outside: '50 mm',
      bush_bore: '40 mm',
      interference: '0.040 mm',
      bush_material: { E: '100 GPa', nu: '0.34' },
      housing_material: { E: '100 GPa', nu: '0.26' },
      ...more,
    });
    return { sheet, mm: (output: string): number => valueIn('mm', sheet, 'it', output) };
  };
  checkRow('R159', () => {
    const { lame_mm, mean_mm } = rowById('R159').expected as Record<string, number>;
    const { mm } = bush({ housing_outside: '90 mm', bush_length: '20 mm', housing_length: '80 mm' });
    return [
      { got: mm('close_in'), expected: lame_mm!, within: 2e-5 },
      { got: mm('close_in_long_housing'), expected: mean_mm!, within: 0.02 },
    ];
  });
  test('42 finite-element runs of housings longer than the bush lie in its band (recomputed: axisymmetric, 4-node, frictionless)', () => {
    // Bush bore, outside, casting outside, bush length, mm; E and nu of bush and housing; per cent more than Lame by times as long.
    const times = [1.1, 1.25, 1.5, 2, 3, 4];
    const runs: [number, number, number, number, number, number, number, number, number[]][] = [
      [40, 50, 90, 20, 100, 0.34, 100, 0.26, [3.0, 6.5, 10.8, 15.4, 17.4, 17.5]],
      [40, 50, 90, 50, 100, 0.34, 100, 0.26, [2.6, 4.7, 5.7, 5.9, 6.8, 6.9]],
      [40, 50, 90, 100, 100, 0.34, 100, 0.26, [2.0, 2.7, 2.7, 3.2, 3.2, 3.2]],
      [44, 50, 80, 50, 100, 0.34, 100, 0.26, [1.9, 3.1, 3.5, 3.7, 4.2, 4.3]],
      [30, 50, 120, 50, 100, 0.34, 207, 0.29, [2.4, 4.8, 6.7, 7.5, 7.8, 8.3]],
      [40, 50, 70, 40, 70, 0.33, 100, 0.26, [2.8, 4.8, 5.4, 5.7, 6.5, 6.6]],
      [40, 50, 160, 40, 100, 0.34, 70, 0.33, [2.8, 5.6, 8.6, 11.4, 12.5, 12.6]],
    ];
    for (const [bore, outside, casting, length, Eb, nb, Eh, nh, more] of runs)
      for (const [i, percent] of more.entries()) {
        const { sheet } = bush({
          bush_bore: `${bore} mm`,
          bush_outside: `${outside} mm`,
          housing_outside: `${casting} mm`,
          bush_length: `${length} mm`,
          housing_length: `${length * (times[i] as number)} mm`,
          bush_material: { E: `${Eb} GPa`, nu: `${nb}` },
          housing_material: { E: `${Eh} GPa`, nu: `${nh}` },
        });
        const share = figure(sheet, 'it', 'length_share');
        expect(share.low * 100, `${outside} ${length} ${times[i]}`).toBeLessThanOrEqual(percent + 0.1);
        expect(share.high * 100, `${outside} ${length} ${times[i]}`).toBeGreaterThanOrEqual(percent - 0.1);
      }
  });
  checkRow('R161', () => ({
    got: bush({ housing_outside: '90 mm' }).mm('close_in_rigid') / 0.04,
    expected: expectedOf('R161'),
    near: 1e-4,
  }));
  test('an endless housing of the same metal is the lower end of the band, the thinnest casting the upper [Lame, R115] recomputed', () => {
    const figure = bush().sheet.byName('it')?.outputs.close_in?.planned;
    const known = (outside: string): number => bush({ housing_outside: outside }).mm('close_in');
    expect((figure?.high ?? 0) * 1000).toBeCloseTo(known('50000 mm'), 6);
    expect((figure?.low ?? 0) * 1000).toBeCloseTo(known('75 mm'), 8);
  });
  test('nothing in a flat elastic fit closes in more than the ceiling [greatest over all walls, by search] recomputed', () => {
    let most = 0;
    for (let bore = 5; bore < 50; bore += 0.5)
      most = Math.max(most, bush({ housing_outside: '90 mm', bush_bore: `${bore} mm` }).mm('close_in_rigid'));
    expect(most).toBeLessThanOrEqual(bush({ housing_outside: '90 mm' }).mm('ceiling'));
    expect(most).toBeGreaterThan(0.999 * bush({ housing_outside: '90 mm' }).mm('ceiling'));
  });
});
