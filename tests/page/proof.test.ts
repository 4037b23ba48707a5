import { expect, test } from 'vitest';
import { inUncertainties } from '../../src/page/held/against-plan.tsx';
import { roundStep, ticksTo } from '../../src/page/trace/trace-scale.ts';

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
