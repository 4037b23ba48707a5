import { createRequire } from 'node:module';
import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { type DrawnSource, fillerOf } from '../../../src/engine/draws/distributions.ts';
import { endsOf } from '../../../src/engine/draws/sort.ts';
import { Stream } from '../../../src/engine/draws/stream.ts';
import { summaryOf } from '../../../src/engine/montecarlo/summary.ts';

// jStat is a general statistics library: the distribution functions that draws are held against.
interface Distributions {
  studentt: { cdf(x: number, dof: number): number };
  normal: { cdf(x: number, mean: number, deviation: number): number };
  triangular: { cdf(x: number, low: number, high: number, middle: number): number };
  arcsine: { cdf(x: number, low: number, high: number): number };
  uniform: { cdf(x: number, low: number, high: number): number };
}
const jStat: Distributions = createRequire(import.meta.url)('jstat');

const DRAWS = 40_000;

const draw = (source: Omit<DrawnSource, 'nominal'>, seed = 7): Float64Array => {
  const block = new Float64Array(DRAWS);
  fillerOf({ nominal: 0, ...source })(block, DRAWS, new Stream('source', seed));
  return block;
};

/** Greatest distance between the draws' distribution function and `cdf`, times the root of their number. */
function distance(draws: Float64Array, cdf: (x: number) => number): number {
  const sorted = draws.slice().sort();
  let most = 0;
  sorted.forEach((x, i) => {
    const expected = cdf(x);
    most = Math.max(most, Math.abs(expected - i / DRAWS), Math.abs(expected - (i + 1) / DRAWS));
  });
  return most * Math.sqrt(DRAWS);
}

/** Kolmogorov's bound: passed by chance once in 10,000. */
const BOUND = 2.23;
const ends = { low: -1, high: 3, k: 2, dof: Number.POSITIVE_INFINITY };

describe('draws follow their distribution', () => {
  test.each<[string, Omit<DrawnSource, 'nominal'>, (x: number) => number]>([
    ['rectangular', { ...ends, distribution: 'rectangular' }, (x) => jStat.uniform.cdf(x, -1, 3)],
    ['triangular', { ...ends, distribution: 'triangular' }, (x) => jStat.triangular.cdf(x, -1, 3, 1)],
    ['arcsine', { ...ends, distribution: 'arcsine' }, (x) => jStat.arcsine.cdf(x, -1, 3)],
    ['normal', { ...ends, distribution: 'normal' }, (x) => jStat.normal.cdf(x, 1, 1)],
    [
      'normal, ends at three deviations',
      { ...ends, distribution: 'normal', k: 3 },
      (x) => jStat.normal.cdf(x, 1, 2 / 3),
    ],
    [
      'Student with 4 degrees of freedom',
      { ...ends, distribution: 'normal', dof: 4 },
      (x) => jStat.studentt.cdf(x - 1, 4),
    ],
    [
      'Student with 1 degree of freedom',
      { ...ends, distribution: 'normal', dof: 1 },
      (x) => jStat.studentt.cdf(x - 1, 1),
    ],
  ])('%s', (_, source, cdf) => {
    expect(distance(draw(source), cdf)).toBeLessThan(BOUND);
  });

  it('and stay at the middle where there is no spread', () => {
    expect(new Set(draw({ ...ends, low: 0.5, high: 0.5, distribution: 'normal' }))).toEqual(new Set([0.5]));
  });
});

describe('the generator', () => {
  it('gives the same numbers for a seed, others for another, none of them 0 or 1', () => {
    const of = (seed: number) => {
      const random = new Stream('source', seed);
      return Array.from({ length: 1000 }, () => random.next());
    };
    expect(of(5)).toEqual(of(5));
    expect(of(5)).not.toEqual(of(6));
    for (const x of [...of(0), ...of(-1), ...of(2 ** 40)]) expect(x > 0 && x < 1).toBe(true);
  });
});

it('finds the least and the greatest as a sort of all does', () => {
  fc.assert(
    fc.property(
      fc.float32Array({ noNaN: true, maxLength: 200 }),
      fc.double({ min: 0, max: 1, noNaN: true }),
      (values, share) => {
        const plain = values.map((x) => x + 0);
        const k = Math.floor(share * plain.length);
        const at = endsOf(plain.slice(), k);
        const sorted = [...plain].sort((a, b) => a - b);
        for (let i = 0; i < k; i++) {
          expect(at(i)).toBe(sorted[i]);
          expect(at(plain.length - 1 - i)).toBe(sorted.at(-1 - i));
        }
      },
    ),
    { seed: 1, numRuns: 500 },
  );
});

it('finds the shortest interval of an exponential: it begins at nothing', () => {
  const n = 100_000;
  // Quantiles of the exponential distribution; 95 % lie below -ln 0.05.
  const values = Float32Array.from({ length: n }, (_, i) => -Math.log(1 - (i + 0.5) / n));
  const { low, high } = summaryOf(values, 0.95, 0).shortest;
  expect(low).toBeLessThan(1e-4);
  expect(high).toBeCloseTo(-Math.log(0.05), 3);
});
