import { expect, test } from 'vitest';
import { sheetWith } from './example-sheet.ts';

const [E, nu, Eh, nuh, Sy] = [69e3, 0.33, 100e3, 0.26, 100];
const GROWTH = 23.6e-6 - 11.4e-6;

/**
 * Second method: ring yielded from its bore `ri` out to `c` (Tresca, plane stress), elastic beyond; its elastic housing
 * gives with it; then both are unloaded. Interference left, mm.
 */
const exactly = (ri: number, R: number, ro: number, cold: number, hot: number): number => {
  const bush = (R * R + ri * ri) / (R * R - ri * ri) - nu;
  const housing = (ro * ro + R * R) / (ro * ro - R * R) + nuh;
  const give = 2 * R * (bush / E + housing / Eh);
  const state = (c: number) => {
    const within = Sy * (1 - ri / c);
    const p = (Sy * (R * R - c * c) + within * (c * c + R * R)) / (2 * R * R);
    const hoop = (2 * within * c * c - p * (R * R + c * c)) / (R * R - c * c);
    return { p, misfit: (-2 * R * (hoop + nu * p)) / E + (p * 2 * R * housing) / Eh };
  };
  if (hot / give <= state(ri).p) return cold;
  const edge = R * (1 - 1e-9);
  let p = Sy * (1 - ri / R);
  if (state(edge).misfit > hot) {
    let [low, high] = [ri, edge];
    for (let n = 0; n < 60; n++) {
      const c = (low + high) / 2;
      if (state(c).misfit < hot) low = c;
      else high = c;
    }
    p = state(low).p;
  }
  return cold - (hot - p * give);
};

test('interference left after a heat lies in the band given, for thin and thick walls [Tresca ring with a growing plastic zone] recomputed', () => {
  const cold = 0.04;
  for (const [ri, R, ro] of [
    [22.5, 25, 60],
    [20, 25, 45],
    [20, 25, 30],
    [15, 25, 45],
    [10, 25, 60],
  ] as const)
    for (const rise of [20, 60, 80, 100, 140, 200]) {
      const sheet = sheetWith('yield-hot-loose-cold', {
        bush_outside: `${2 * R} mm`,
        bush_bore: `${2 * ri} mm`,
        housing_outside: `${2 * ro} mm`,
        interference: `${cold} mm`,
        bush_temperature: `${20 + rise} degC`,
        hot_yield: `${Sy} MPa`,
        bush_material: {
          E: `${E} MPa`,
          nu: `${nu}`,
          alpha: '23.6e-6 1/K',
          yield: '200 MPa',
          brittle: '0',
          max_temperature: '300 degC',
        },
        housing_material: {
          E: `${Eh} MPa`,
          nu: `${nuh}`,
          alpha: '11.4e-6 1/K',
          brittle: '1',
          max_temperature: '400 degC',
        },
      });
      const left = sheet.byName('it')?.outputs.interference_left?.planned;
      const expected = exactly(ri, R, ro, cold, cold + 2 * R * GROWTH * rise) / 1000;
      const where = `bore ${ri}, rise ${rise}: ${expected} in ${left?.low} to ${left?.high}`;
      expect(left?.low, where).toBeLessThanOrEqual(expected + 1e-9);
      expect(left?.high, where).toBeGreaterThanOrEqual(expected - 1e-9);
    }
});

test('housing of a bush that does not yield: 3517.7 and 10 846 psi [Mott, Machine Elements in Mechanical Design, Example 13-2] seen; von Mises of them computed', () => {
  const metal = { alpha: '0 1/K', brittle: '0', max_temperature: '300 degC', nu: '0.27' };
  const sheet = sheetWith('yield-hot-loose-cold', {
    bush_outside: '2.5 in',
    bush_bore: '2.0 in',
    housing_outside: '3.5 in',
    interference: '0.0032 in',
    bush_temperature: '100 degC',
    bush_material: { ...metal, E: '17 Mpsi', yield: '20 ksi' },
    housing_material: { ...metal, E: '30 Mpsi', yield: '51 ksi' },
  });
  const [pressure, hoop, psi] = [3517.7, 10846, 6894.757293168361];
  const expected = Math.sqrt(hoop ** 2 + hoop * pressure + pressure ** 2);
  const planned = (name: string) => sheet.byName('it')?.outputs[name]?.planned?.value ?? Number.NaN;
  expect(planned('most_pressure') / psi).toBeCloseTo(pressure, 0);
  expect(planned('housing_stress') / psi / expected).toBeCloseTo(1, 3);
  expect(planned('housing_margin')).toBeCloseTo(51000 / expected, 2);
});
