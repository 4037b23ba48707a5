import { expect, test } from 'vitest';
import { inUncertainties } from '../../src/page/unfolded/against-plan.tsx';
import { roundStep, ticksTo } from '../../src/page/unfolded/trace-scale.ts';
import { coverageWords, dofWords } from '../../src/page/unfolded/uncertainty.tsx';

test('a difference is told in standard uncertainties of itself', () => {
  expect(inUncertainties({ value: 0.0001, u: 0.0002 })).toMatch(/^That is 0\.5 standard .* no more than/);
  expect(inUncertainties({ value: -0.0005, u: 0.0002 })).toMatch(
    /^That is 2\.5 standard .* more than the doubt/,
  );
  expect(inUncertainties({ value: 0.0005, u: 0 })).toMatch(/^Neither/);
});

test('ticks are round and reach past the greatest value', () => {
  expect(roundStep(37, 5)).toBe(10);
  expect(ticksTo(37, 5)).toEqual([0, 10, 20, 30, 40]);
  expect(ticksTo(0.75, 5)).toEqual([0, 0.2, 0.4, 0.6, 0.8]);
  expect(ticksTo(0, 5)).toEqual([0, 1]);
});

test('degrees of freedom are told to a place while there are few, and what k = 2 covers then', () => {
  expect([5.168, 189.5, 1.5e6, Number.POSITIVE_INFINITY].map((dof) => dofWords(dof))).toEqual([
    '5.1',
    '189',
    'more than 1000',
    '∞',
  ]);
  expect(dofWords(5.168, true)).toBe('5,1');
  // Student's t with 4 degrees of freedom: 2.776 covers 95 % (JCGM 100, Table G.2, from memory), 2.000 covers 88.4 %.
  expect(coverageWords(4)).toMatch(/covers 88 %: more readings/);
  expect(coverageWords(60)).toMatch(/covers 95 %\.$/);
  expect(coverageWords(Number.POSITIVE_INFINITY)).toMatch(/normal/);
});
