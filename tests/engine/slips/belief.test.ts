import { expect, test } from 'vitest';
import { byExpectation, byGroup } from '../../../src/engine/slips/belief.ts';
import type { Datum } from '../../../src/engine/slips/datum.ts';

/** A list of readings, SI, by stations. */
const list = (stations: readonly (readonly number[])[]): Datum =>
  ({
    literals: stations.flat().map((value) => ({ value })),
    stations: stations.flatMap((station, i) => station.map(() => i)),
  }) as unknown as Datum;

const UM = 1e-6;

test('a reading of a tapered, out-of-round surface is expected where its station and its place around meet', () => {
  // Station i lies 8 um, place j 200 um further; the reading asked about is far off.
  const at = (i: number, j: number) => 0.062 + 8 * UM * i + 200 * UM * j;
  const stations = [0, 1, 2, 3].map((i) => [0, 1, 2].map((j) => at(i, j)));
  for (const [i, j] of [
    [0, 0],
    [2, 1],
    [3, 2],
  ] as const) {
    const off = stations.map((station) => [...station]);
    (off[i] as number[])[j] = 0.07;
    const belief = byGroup(list(off), i * 3 + j, UM);
    const best = belief.at(at(i, j));
    for (const d of [-30, -10, 10, 30]) expect(belief.at(at(i, j) + d * UM)).toBeLessThan(best);
    // A reading that would suit the next place around is a thousand times less likely here.
    expect(belief.at(at(i, j === 0 ? 1 : j - 1))).toBeLessThan(best - Math.log(1000));
  }
});

test('a long list with an odd one in it costs no more than the square of its length', () => {
  // Counted, not timed: a table of 400 readings used to be summed 400 times for each of them.
  const long = list(Array.from({ length: 100 }, (_, i) => [0, 1, 2, 3].map((j) => 0.05 + UM * (i + 3 * j))));
  let reads = 0;
  const counted = long.literals.map((one) => {
    const { value } = one;
    return Object.defineProperty({ ...one }, 'value', {
      get: () => {
        reads++;
        return value;
      },
    });
  });
  const datum = { ...long, literals: counted };
  for (let i = 0; i < 400; i++) byGroup(datum, i, UM);
  expect(reads).toBeLessThan(10 * 400 ** 2);
});

test('wear explains a size on the side it leads to, and not on the other', () => {
  const belief = byExpectation(
    { by: 'limits', low: 0.0499, high: 0.05, slack: 0, worn: 'low', said: '' },
    UM,
  );
  expect(belief.at(0.04995)).toBeGreaterThan(belief.at(0.0498));
  expect(belief.at(0.0497)).toBeGreaterThan(belief.at(0.0502) + Math.log(3));
  // Heavy tails: half a millimetre of wear is odd, not impossible.
  expect(belief.at(0.04995) - belief.at(0.0494)).toBeLessThan(Math.log(200));
});

test('readings that differ by little are less likely to be of a worn surface', () => {
  const limits = { by: 'limits', low: 0.0499, high: 0.05, slack: 0, worn: 'low', said: '' } as const;
  const [any, even, uneven] = [undefined, 2 * UM, 100 * UM].map((range) => byExpectation(limits, UM, range));
  expect(even?.at(0.0497)).toBeLessThan((any?.at(0.0497) as number) - Math.log(5));
  expect(uneven?.at(0.0497)).toBe(any?.at(0.0497));
  expect(even?.at(0.04995)).toBe(any?.at(0.04995));
});
