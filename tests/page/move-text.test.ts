import { expect, test } from 'vitest';
import { moveText } from '../../src/page/state/move-text.ts';

const inPlaces = (places: number) => (by: number) => by.toFixed(places);
const spread = (half: number) => ({ low: 5 - half, high: 5 + half });

test('a move is shown where it can be read and means something, and nowhere else', () => {
  expect(moveText(0.25, spread(1), inPlaces(2))).toBe('0.25');
  expect(moveText(-0.25, undefined, inPlaces(2))).toBe('-0.25');
  expect(moveText(0.002, spread(0.001), inPlaces(2))).toBeUndefined();
  // A pound on a force that is known to a thousand or two says nothing.
  expect(moveText(1, spread(2100), inPlaces(2))).toBeUndefined();
  expect(moveText(3, spread(2100), inPlaces(2))).toBe('3.00');
  expect(moveText(0, spread(1), inPlaces(2))).toBeUndefined();
  expect(moveText(undefined, spread(1), inPlaces(2))).toBeUndefined();
});
