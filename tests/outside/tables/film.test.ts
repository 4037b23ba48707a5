import { describe, expect, it } from 'vitest';
import type { FilmPoint } from '../../../cells/tables/raimondi.ts';
import { filmAt, fullBearing } from '../../../cells/tables/raimondi.ts';
import { dynamicViscosity, kinematicViscosity, oilByKey, oils } from '../../../cells/tables/viscosity.ts';
import { rowById, rowsWhere, titleOf } from './reference.ts';
import { solveFilm, solveLongFilm } from './reynolds.ts';

const film = (S: number, lengthOverDiameter: number): FilmPoint => {
  const found = filmAt(S, lengthOverDiameter);
  if ('problem' in found) throw new Error(found.problem);
  return found;
};
const off = (ours: number, theirs: number): number => Math.abs(ours / theirs - 1);

describe('bearing charts against print', () => {
  for (const row of rowsWhere((each) => each.quantity.startsWith('Raimondi-Boyd full bearing')))
    it(titleOf(row), () => {
      const printed = row.expected as {
        S: number;
        '(r/c)f': number;
        'Q/(rcNl)': number;
        'Qs/Q': number;
        'P/pmax': number;
      };
      const ours = film(printed.S, row.inputs['l/d'] as number);
      expect(off(ours.eccentricity, row.inputs.epsilon as number)).toBeLessThan(0.02);
      expect(off(ours.friction, printed['(r/c)f'])).toBeLessThan(0.02);
      expect(off(ours.flow, printed['Q/(rcNl)'])).toBeLessThan(0.02);
      expect(off(ours.sideFlow, printed['Qs/Q'])).toBeLessThan(0.02);
      expect(off(ours.pressure, printed['P/pmax'])).toBeLessThan(0.02);
    });

  /** S = (r/c)^2 mu N / P in pounds and inches, as the example has it. */
  const example = (id: string): { c: number; r: number; point: FilmPoint } => {
    const { mu_reyn, N_rev_s, W_lbf, r_in, c_in, l_in } = rowById(id).inputs as Record<string, number>;
    const unitLoad = W_lbf! / (2 * r_in! * l_in!);
    const S = ((r_in! / c_in!) ** 2 * mu_reyn! * N_rev_s!) / unitLoad;
    return { c: c_in!, r: r_in!, point: film(S, l_in! / (2 * r_in!)) };
  };
  const readings: Readonly<
    Record<string, (e: ReturnType<typeof example>) => [ours: number, within: number]>
  > = {
    R586: ({ point }) => [point.S, 0.005 * 0.135],
    R588: ({ c, point }) => [c * (1 - point.eccentricity), 2e-5],
    R589: ({ c, point }) => [c * point.eccentricity, 2e-5],
    R591: ({ c, r, point }) => [(point.friction * c) / r, 0.02 * 0.007],
    R594: ({ point }) => [point.flow, 0.02 * 4.28],
    R596: ({ point }) => [point.sideFlow, 0.02 * 0.655],
    R597: ({ point }) => [point.pressure, 0.02 * 0.42],
  };
  for (const [id, reading] of Object.entries(readings))
    it(titleOf(rowById(id)), () => {
      const [ours, within] = reading(example(id));
      expect(Math.abs(ours - (rowById(id).expected as number))).toBeLessThan(within);
    });
});

describe('bearing charts against the Reynolds equation: a second method, recomputed', () => {
  for (const [name, ratio] of [
    ['1', 1],
    ['1/2', 0.5],
    ['1/4', 0.25],
  ] as const)
    it(`length over diameter ${name}: Sommerfeld number within 3 %, attitude within 1 degree, P/pmax within 0.01`, () => {
      for (const point of fullBearing[name]) {
        const fine = point.eccentricity > 0.85;
        const solved = solveFilm(point.eccentricity, ratio, fine ? 360 : 180, fine ? 32 : 24);
        const where = `eccentricity ${point.eccentricity}`;
        expect(off(point.S, solved.S), where).toBeLessThan(0.035);
        expect(Math.abs(point.attitude - solved.attitude), where).toBeLessThan(1);
        expect(Math.abs(point.pressure - solved.pressure), where).toBeLessThan(0.01);
      }
    });

  it('infinitely long: S within 1.5 %, attitude within 0.5 degree, friction within 1 %, flow within 6 %', () => {
    for (const point of fullBearing.infinite) {
      const solved = solveLongFilm(point.eccentricity);
      const where = `eccentricity ${point.eccentricity}`;
      expect(off(point.S, solved.S), where).toBeLessThan(0.015);
      expect(Math.abs(point.attitude - solved.attitude), where).toBeLessThan(0.5);
      expect(off(point.friction, solved.friction), where).toBeLessThan(0.01);
      expect(off(point.flow, solved.flow), where).toBeLessThan(0.06);
      expect(Math.abs(point.pressure - solved.pressure), where).toBeLessThan(0.005);
    }
  });

  it('lengths between the tables, 0.75 and 1.5, come out within 6 % of eccentricity', () => {
    for (const ratio of [0.75, 1.5])
      for (const eccentricity of [0.3, 0.5, 0.7]) {
        const solved = solveFilm(eccentricity, ratio, 180, 24);
        expect(
          off(film(solved.S, ratio).eccentricity, eccentricity),
          `l/d ${ratio}, ${eccentricity}`,
        ).toBeLessThan(0.06);
      }
  });
});

describe('bearing charts hold together', () => {
  it('film thins and side flow rises as the Sommerfeld number falls, at every length', () => {
    for (const ratio of [0.25, 0.3, 0.5, 0.75, 1, 1.5, 2, 4]) {
      let last: FilmPoint | undefined;
      for (let S = 3; S > 0.005; S *= 0.93) {
        const found = filmAt(S, ratio);
        if ('problem' in found) continue;
        if (last) {
          expect(found.eccentricity, `l/d ${ratio}, S ${S}`).toBeGreaterThan(last.eccentricity);
          expect(found.friction, `l/d ${ratio}, S ${S}`).toBeLessThan(last.friction);
        }
        last = found;
      }
      expect(last).toBeDefined();
    }
  });

  it('says when it is off the chart', () => {
    const problem = (S: number, ratio: number): string => (filmAt(S, ratio) as { problem: string }).problem;
    expect(problem(0.1, 0.1)).toMatch(/0\.25 to 4/);
    expect(problem(0.0001, 1)).toMatch(/boundary lubrication/);
    expect(problem(50, 1)).toMatch(/whirl/);
    expect(problem(Number.NaN, 1)).toMatch(/outside the charts/);
  });
});

describe('oils', () => {
  it('ISO VG grades stand 10 % either way of their number at 40 degC [ISO 3448:1992] from memory', () => {
    for (const number of [10, 15, 22, 32, 46, 68, 100, 150, 220, 320, 460, 680, 1000]) {
      const { at40 } = oilByKey(`vg-${number}`)!;
      expect(at40.value * 1e6).toBeCloseTo(number, 9);
      expect(at40.low * 1e6).toBeCloseTo(number * 0.9, 9);
      expect(at40.high * 1e6).toBeCloseTo(number * 1.1, 9);
    }
  });

  it('SAE grades join without gap at 100 degC [SAE J300] from memory', () => {
    const chain = ['sae-20', 'sae-30', 'sae-40', 'sae-50', 'sae-60'].map((key) => oilByKey(key)!.at100);
    for (const [i, grade] of chain.entries())
      if (i > 0) expect(grade.low).toBeCloseTo(chain[i - 1]!.high, 15);
  });

  it('the line goes through both points and falls between them', () => {
    for (const { at40, at100, density, key } of oils) {
      const at = (c: number): number => kinematicViscosity(at40.value, at100.value, c + 273.15) as number;
      expect(off(at(40), at40.value), key).toBeLessThan(1e-9);
      expect(off(at(100), at100.value), key).toBeLessThan(1e-9);
      for (let c = 0; c < 150; c += 10) expect(at(c), key).toBeGreaterThan(at(c + 10));
      const dynamic = dynamicViscosity(
        { at40: at40.value, at100: at100.value, density: density.value },
        313.15,
      ) as number;
      expect(off(dynamic, at40.value * density.value), key).toBeLessThan(0.02);
    }
  });

  it('says when the figures are the wrong way round or the temperature is beyond the line', () => {
    expect((kinematicViscosity(1e-5, 1e-4, 313) as { problem: string }).problem).toMatch(
      /check the two figures/,
    );
    expect((kinematicViscosity(1e-4, 1e-5, 600) as { problem: string }).problem).toMatch(
      /327 degC is outside/,
    );
  });
});
