import fc from 'fast-check';
import { expect, it } from 'vitest';
import { between, spread } from '../../src/document/model/order.ts';

const SEED = { seed: 5, numRuns: 200 };

it('there is a place between any two neighbours, however often one asks', () => {
  fc.assert(
    fc.property(fc.array(fc.nat(), { maxLength: 200 }), (picks) => {
      const places: string[] = [];
      for (const pick of picks) {
        const at = pick % (places.length + 1);
        places.splice(at, 0, between(places[at - 1] ?? '', places[at]));
      }
      expect([...places].sort()).toEqual(places);
      expect(new Set(places).size).toBe(places.length);
    }),
    SEED,
  );
});

it('a spread is in order and strictly between its ends', () => {
  fc.assert(
    fc.property(fc.nat(500), (count) => {
      const places = ['3', ...spread('3', '4', count), '4'];
      expect([...places].sort()).toEqual(places);
      expect(new Set(places).size).toBe(count + 2);
    }),
    SEED,
  );
});

it('a thousand lines typed one below the other stay short', () => {
  let place = '';
  for (let n = 0; n < 1000; n++) place = between(place, undefined);
  expect(place.length).toBeLessThan(40);
});

it('no place is given where there is none', () => {
  expect(() => between('b', 'a')).toThrow(RangeError);
  expect(() => between('a', 'a')).toThrow(RangeError);
  expect(() => between('a', 'a0')).toThrow(RangeError);
});
