import { createRequire } from 'node:module';
import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { type DrawnSource, fillerOf } from '../../../src/engine/draws/distributions.ts';
import { endsOf } from '../../../src/engine/draws/sort.ts';
import { Random } from '../../../src/engine/montecarlo/random.ts';
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
  fillerOf({ nominal: 0, ...source })(block, DRAWS, new Random(seed));
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
      const random = new Random(seed);
      return Array.from({ length: 1000 }, () => random.next());
    };
    expect(of(5)).toEqual(of(5));
    expect(of(5)).not.toEqual(of(6));
    for (const x of [...of(0), ...of(-1), ...of(2 ** 40)]) expect(x > 0 && x < 1).toBe(true);
  });

  // The generator of Wichmann and Hill (2006), Computational Statistics and Data Analysis 51, 1614-1622.
  const table = [
    ['a', 11600n, 2147483579n],
    ['b', 47003n, 2147483543n],
    ['c', 23000n, 2147483423n],
    ['d', 33000n, 2147483123n],
  ] as const;
  type States = Record<'a' | 'b' | 'c' | 'd', number>;

  it('draws what an independent implementation of it draws from the same states (seen)', () => {
    // Reference output of the sfmt-erlang library, reference_texts/random_rh06.testval.txt: some of its first lines.
    const random = new Random(1);
    Object.assign(random, { a: 123456789, b: 345678901, c: 567890123, d: 789012345 } satisfies States);
    const drawn = Array.from({ length: 50 }, () => {
      const value = random.next();
      const { a, b, c, d } = random as unknown as States;
      return { value, states: [a, b, c, d] };
    });
    const expected: [number, number, number[]][] = [
      [1, 0.75099757068263173, [1874688786, 84897365, 478650314, 1322001748]],
      [2, 0.05838148864854009, [971196646, 406424201, 957195702, 2085523378]],
      [3, 0.32888922619308092, [182238166, 1290604618, 1648576827, 1879831219]],
      [10, 0.29744955993590438, [1274654163, 268309417, 1223753957, 19533990]],
      [20, 0.75661060169651762, [216450854, 512410419, 737275911, 158671563]],
      [50, 0.1620720728820455, [131860915, 702696908, 1842145274, 1966310613]],
    ];
    for (const [at, value, states] of expected) {
      expect(drawn[at - 1]?.states).toEqual(states);
      expect(drawn[at - 1]?.value).toBeCloseTo(value, 14);
    }
  });

  it('has the period of 2^121 that JCGM 101, C.3.2 gives it (from memory), by the orders of its multipliers', () => {
    const power = (base: bigint, exponent: bigint, modulus: bigint): bigint => {
      let result = 1n;
      for (let e = exponent, x = base; e > 0n; e >>= 1n, x = (x * x) % modulus)
        if (e & 1n) result = (result * x) % modulus;
      return result;
    };
    const primesOf = (n: number): number[] => {
      const found: number[] = [];
      for (let p = 2, left = n; left > 1; p = p * p > left ? left : p + 1)
        if (left % p === 0) {
          found.push(p);
          while (left % p === 0) left /= p;
        }
      return found;
    };
    const gcd = (a: bigint, b: bigint): bigint => (b === 0n ? a : gcd(b, a % b));
    let period = 1n;
    for (const [, a, d] of table) {
      expect(primesOf(Number(d))).toEqual([Number(d)]);
      // A primitive root goes through every state but 0 before it comes round.
      for (const p of primesOf(Number(d) - 1)) expect(power(a, (d - 1n) / BigInt(p), d)).not.toBe(1n);
      period = (period * (d - 1n)) / gcd(period, d - 1n);
    }
    expect(Math.log2(Number(period))).toBeCloseTo(121, 5);
  });

  it('and is reckoned a second way in whole numbers', () => {
    const random = new Random(3);
    const state = random as unknown as States;
    let states = table.map(([name]) => BigInt(state[name]));
    for (let i = 0; i < 2000; i++) {
      states = states.map((x, j) => (x * (table[j]?.[1] as bigint)) % (table[j]?.[2] as bigint));
      const sum = states.reduce((all, x, j) => all + Number(x) / Number(table[j]?.[2]), 0);
      expect(Math.abs(random.next() - (sum % 1))).toBeLessThan(1e-12);
    }
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
