import { expect, test } from 'vitest';
import { limitScale } from '../../src/page/kit/limit-scale.ts';

test('two limits stand symmetrically, with room outside', () => {
  const scale = limitScale({ lower: 2, upper: 4, value: 3 })!;
  expect(scale.lower!.at).toBeCloseTo(0.3);
  expect(scale.upper!.at).toBeCloseTo(0.7);
  expect(scale.value!.at).toBeCloseTo(0.5);
});

test('a wear limit stretches the bar to itself', () => {
  const scale = limitScale({ lower: 5, upper: 8.5, wear: 15, value: 8 })!;
  expect(scale.lower!.at).toBeCloseTo(0.3);
  expect(scale.wear!.at).toBeCloseTo(0.7);
  expect(scale.upper!.at).toBeGreaterThan(0.3);
});

test('a figure beyond the bar says on which side', () => {
  const scale = limitScale({ lower: 2, upper: 4, value: 100, low: -50, high: 150 })!;
  expect(scale.value).toEqual({ at: 1, off: 'high' });
  expect(scale.low).toEqual({ at: 0, off: 'low' });
});

test('one limit alone keeps the figure on the bar, on its own side', () => {
  const scale = limitScale({ lower: 1.2, value: 2.7, low: 1.4, high: 4.1 })!;
  expect(scale.lower!.at).toBeCloseTo(0.5);
  expect(scale.value!.at).toBeGreaterThan(0.5);
  expect(scale.high!.off).toBeUndefined();
});

test('no limit, or none that is a number, gives no bar', () => {
  expect(limitScale({ value: 3 })).toBeUndefined();
  expect(limitScale({ lower: Number.NaN, value: 3 })).toBeUndefined();
  expect(limitScale({ lower: 2, upper: 4, value: Number.POSITIVE_INFINITY })!.value).toBeUndefined();
});
