import { expect, test } from 'vitest';
import { linearWords } from '../../src/page/unfolded/outcome.tsx';
import { shareWords } from '../../src/page/unfolded/share-words.ts';

test('a share is told with the digits its draws support, and none and all as such', () => {
  expect(shareWords(0, 200_000)).toBe('none of 200\u202f000');
  expect(shareWords(1, 200_000)).toBe('all of 200\u202f000');
  expect(shareWords(0.5123, 200_000)).toBe('51.2 %');
  expect(shareWords(0.989425, 200_000)).toBe('98.94 %');
  expect(shareWords(0.000015, 200_000)).toBe('0.0015 %');
  expect(shareWords(0.99999, 200_000)).toBe('99.9990 %');
});

test('whether the linear figure will do is told by the tolerance of the guide', () => {
  const linear = { low: 0, high: 1, tolerance: 0.05, offLow: -0.01, offHigh: 0.2, noise: 0.001 };
  const say = (si: number) => `${si} in`;
  expect(linearWords({ linear: { ...linear, verdict: 'agrees' } }, say)).toMatch(/will do/);
  expect(linearWords({ linear: { ...linear, verdict: 'misleads' } }, say)).toMatch(/0\.2 in off.*0\.05 in/);
  expect(linearWords({ linear: { ...linear, verdict: 'misleads' } }, () => 'the same')).toMatch(
    /the same off, 4\.0 times what/,
  );
  // A tolerance finer than what is shown is not told as none.
  expect(linearWords({ linear: { ...linear, verdict: 'misleads' } }, (si) => `${si.toFixed(1)} in`)).toMatch(
    /0\.2 in off, more than the 0\.1 in/,
  );
  expect(
    linearWords(
      { linear: { ...linear, tolerance: 0.04, verdict: 'misleads' } },
      (si) => `${si.toFixed(1)} in`,
    ),
  ).toMatch(/0\.2 in off, 5\.0 times what/);
  expect(linearWords({ linear: { ...linear, verdict: 'more draws' } }, say)).toMatch(
    /more simulated assemblies/,
  );
});
