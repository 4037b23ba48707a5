import { expect, test } from 'vitest';
import { type Crossing, type Distance, findCrossings, spaced } from '../../../src/engine/network/roots.ts';

const over =
  (f: (x: number) => number): Distance =>
  (trials, n) =>
    trials.slice(0, n).map(f);
const search = (f: (x: number) => number, from = -10, to = 10, noise = 1e-12) =>
  findCrossings(over(f), spaced(from, to, 129), noise);
const placesOf = (found: readonly Crossing[]) => found.map((one) => (one.is === 'level' ? one.from : one.at));

// Zeros by algebra.
test.each<[string, (x: number) => number, number[]]>([
  ['a straight line', (x) => 3 * x - 1.2, [0.4]],
  ['three answers', (x) => (x + 7) * (x - 0.001) * (x - 8.25), [-7, 0.001, 8.25]],
  ['two answers between two trials', (x) => (x - 2.01) * (x - 2.03), [2.01, 2.03]],
  ['steep', (x) => Math.exp(5 * x) / 1e12 - 1, [Math.log(1e12) / 5]],
  ['flat at the answer', (x) => 1e9 * (x - 0.3) ** 3, [0.3]],
  ['a root of a root', (x) => Math.sqrt(x + 10) - 2, [-6]],
  ['nothing on one side', (x) => (x < 1 ? Number.NaN : x - 1.5), [1.5]],
])('finds %s', (_, f, wanted) => {
  const { crossings } = search(f, -10, 10, 1e-15);
  expect(crossings.map((one) => one.is)).toEqual(wanted.map(() => 'root'));
  placesOf(crossings).forEach((at, i) => {
    expect(Math.abs(at - (wanted[i] as number))).toBeLessThan(1e-4 * Math.abs(f(at)) + 1e-4);
    expect(Math.abs(f(at))).toBeLessThan(1e-9);
  });
});

test('an answer that is touched and not crossed is one', () => {
  const { crossings } = search((x) => (x - 1.2345) ** 2);
  expect(crossings).toHaveLength(1);
  expect(placesOf(crossings)[0]).toBeCloseTo(1.2345, 5);
});

test('one that is touched at a kink is one, and so is the last value that there is', () => {
  expect(search((x) => Math.abs(x - 1.2345)).crossings).toEqual([
    { is: 'root', at: expect.closeTo(1.2345, 12) },
  ]);
  for (const f of [(x: number) => Math.sqrt(x - 1.2345), (x: number) => Math.sqrt(1.2345 - x)])
    expect(search(f).crossings).toEqual([{ is: 'root', at: expect.closeTo(1.2345, 12) }]);
  // Values that end elsewhere are no answer.
  expect(search((x) => 1 + Math.sqrt(x - 1.2345)).crossings).toEqual([]);
});

test('a jump is none, and both sides of it are told', () => {
  expect(search((x) => (x < Math.PI ? -0.25 : 0.5)).crossings).toEqual([
    { is: 'jump', at: expect.closeTo(Math.PI, 12), before: -0.25, after: 0.5 },
  ]);
});

test('a pole is none', () => {
  expect(search((x) => 1 / (x - Math.E)).crossings).toEqual([{ is: 'pole', at: expect.closeTo(Math.E, 9) }]);
  expect(search((x) => 1 / x).crossings).toEqual([{ is: 'pole', at: expect.closeTo(0, 9) }]);
});

test('a step that gives it all along is told by its ends', () => {
  const { crossings } = search((x) => Math.floor(x / 3) - 1);
  expect(crossings).toEqual([{ is: 'level', from: expect.closeTo(3, 9), to: expect.closeTo(6, 9) }]);
});

test('where there is none, what came nearest is told', () => {
  const { crossings, nearest, isFlat } = search((x) => x * x + 2);
  expect(crossings).toEqual([]);
  expect(nearest?.distance).toBeCloseTo(2, 6);
  expect(isFlat).toBe(false);
});

test('what does not move it is flat, and what has no value has nothing nearest', () => {
  expect(search(() => 4)).toEqual({ crossings: [], nearest: { at: -10, distance: 4 }, isFlat: true });
  expect(search(() => Number.NaN)).toMatchObject({ crossings: [], nearest: undefined });
});
