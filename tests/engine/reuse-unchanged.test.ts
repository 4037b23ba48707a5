import fc from 'fast-check';
import { expect, test } from 'vitest';
import { reuseUnchanged } from '../../src/engine/worker/reuse-unchanged.ts';

const value = fc.anything({ withNullPrototype: false, maxDepth: 4, withSparseArray: false });

test('says what the new value says, with the very parts of the old one that say the same', () => {
  fc.assert(
    fc.property(value, value, (before, now) => {
      const expected = structuredClone(now);
      const reused = reuseUnchanged(structuredClone(now), before);
      expect(reused).toEqual(expected);
      expect(reuseUnchanged(structuredClone(before), before)).toBe(before);
      // Beside a part that changed.
      const kept = reuseUnchanged({ a: structuredClone(before), b: 1 }, { a: before, b: 2 });
      expect(kept).toEqual({ a: before, b: 1 });
      expect(kept.a).toBe(before);
    }),
    { seed: 20261130, numRuns: 500 },
  );
});

test('sees a number without value, a sign of nothing, a field that came and one that went', () => {
  const nan = { a: Number.NaN };
  expect(reuseUnchanged({ a: Number.NaN }, nan)).toBe(nan);
  expect(reuseUnchanged({ a: -0 }, { a: 0 })).toEqual({ a: -0 });
  expect(reuseUnchanged({ a: 1 }, { a: 1, b: 2 })).toEqual({ a: 1 });
  expect(reuseUnchanged({ a: 1, b: undefined }, { a: 1 })).toHaveProperty('b');
  expect(reuseUnchanged([1], { 0: 1 })).toEqual([1]);
});
