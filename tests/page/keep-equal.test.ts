import fc from 'fast-check';
import { expect, test } from 'vitest';
import { keepEqual } from '../../src/page/kit/keep-equal.ts';

const value = fc.letrec((tie) => ({
  any: fc.oneof(
    { maxDepth: 3 },
    fc.constantFrom(0, 1, Number.NaN, '', 'a', true, undefined, null),
    fc.array(tie('any'), { maxLength: 3 }),
    fc.dictionary(fc.constantFrom('a', 'b', 'c'), tie('any'), { maxKeys: 3, noNullPrototype: true }),
  ),
})).any;

test('what comes out equals the new value, and the old one is left as it was', () => {
  fc.assert(
    fc.property(value, value, (before, now) => {
      const [old, wanted] = [structuredClone(before), structuredClone(now)];
      expect(keepEqual(before, now)).toStrictEqual(wanted);
      expect(before).toStrictEqual(old);
    }),
    { seed: 1, numRuns: 2000 },
  );
});

test('an equal value comes out as the very one of before', () => {
  fc.assert(
    fc.property(value, (before) => {
      expect(keepEqual(before, structuredClone(before))).toBe(before);
    }),
    { seed: 1, numRuns: 1000 },
  );
});

test('parts that are equal are taken from before, others not', () => {
  const before = { same: [1, { a: 2 }], other: { b: 3 }, gone: 1 };
  const now = keepEqual<Record<string, unknown>>(before, { same: [1, { a: 2 }], other: { b: 4 } });
  expect(now).toEqual({ same: [1, { a: 2 }], other: { b: 4 } });
  expect(now.same).toBe(before.same);
  expect(now.other).not.toBe(before.other);
});
