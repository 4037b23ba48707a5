import { expect, test } from 'vitest';
import { keyedReading, listedReadings } from '../../src/page/bench/keyed.ts';
import { type PadKey, press, withoutOffer } from '../../src/page/bench/pad.ts';
import { isReading, joinReadings, splitReadings } from '../../src/page/bench/readings-text.ts';
import { further, nextSlot, slotsOf, withReading } from '../../src/page/bench/slots.ts';
import { leadingDigits } from '../../src/page/entry/begun-reading.ts';

test('an entry of readings comes apart by place and direction, and goes together again', () => {
  const entry = '2.2549; 2.2572 | 2.2544; 2.2561 in ± 0.0001 in';
  const split = splitReadings(entry)!;
  expect(split).toEqual({
    places: [
      ['2.2549', '2.2572'],
      ['2.2544', '2.2561'],
    ],
    tail: 'in ± 0.0001 in',
  });
  expect(joinReadings(split)).toBe(entry);
  expect(splitReadings('2 1/4 in')).toEqual({ places: [['2 1/4']], tail: 'in' });
  expect(splitReadings('1.7481 in; 1.7480 in')).toEqual({ places: [['1.7481 in', '1.7480']], tail: 'in' });
  expect(splitReadings('')).toEqual({ places: [], tail: '' });
});

test('what is no plain list of readings is left alone', () => {
  for (const text of ['= bore', 'set 1.7500 in, +14 div of .0001 in', '2.2510..2.2515 in', '2 mm: 1.2 kN'])
    expect(splitReadings(text), text).toBeUndefined();
});

test('places not read yet close up in the entry', () => {
  const places = withReading([], { place: 1, direction: 1 }, '2.25');
  expect(places).toEqual([[], ['', '2.25']]);
  expect(joinReadings({ places, tail: 'in' })).toBe('2.25 in');
  expect(joinReadings({ places: [['']], tail: 'in' })).toBe('');
});

test('the next reading keeps the leading digits of the last', () => {
  expect(leadingDigits('2.2549')).toBe('2.25');
  expect(leadingDigits('57.153')).toBe('57.1');
  expect(leadingDigits('.0015')).toBe('.00');
  expect(leadingDigits('12.5')).toBe('12.');
  expect(leadingDigits('2 1/4')).toBe('');
  expect(leadingDigits('57')).toBe('');
  expect(leadingDigits(undefined)).toBe('');
});

test('the plan is read place by place, and what was read beyond it is kept', () => {
  const slots = slotsOf([2, 2], [['2.1'], ['2.2', '2.3', '2.4']]);
  expect(slots).toHaveLength(5);
  expect(nextSlot(slots, [['2.1'], ['2.2', '2.3', '2.4']])).toBeUndefined();
  expect(nextSlot(slotsOf([2, 2], []), [])).toEqual({ place: 0, direction: 0 });
  expect(nextSlot(slotsOf([2, 2], [['2.1', '2.2'], ['2.3']]), [['2.1', '2.2'], ['2.3']])).toEqual({
    place: 1,
    direction: 1,
  });
  expect(slotsOf([], [])).toEqual([{ place: 0, direction: 0 }]);
});

test('a direction left out stays out, and more can be read than was planned', () => {
  const places = [['2.1'], ['2.2']];
  expect(nextSlot(slotsOf([2, 2], places), places)).toEqual({ place: 1, direction: 1 });
  expect(further(places, { place: 1, direction: 0 }, 'round')).toEqual({ place: 1, direction: 1 });
  expect(further(places, { place: 1, direction: 0 }, 'along')).toEqual({ place: 2, direction: 0 });
});

test('the pad writes decimals, fractions and mixed numbers, and nothing that is no number', () => {
  const type = (keys: string) => [...keys].reduce((text, key) => press(text, key as PadKey), '');
  expect(type('2.2549')).toBe('2.2549');
  expect(type('2..2')).toBe('2.2');
  expect(type('2 1/4')).toBe('2 1/4');
  expect(type('27/64')).toBe('27/64');
  expect(type('/5')).toBe('5');
  expect(type('2.5/4')).toBe('2.54');
  expect(press('3', '-')).toBe('-3');
  expect(press('-3', '-')).toBe('3');
  expect(press('2.2', 'back')).toBe('2.');
  for (const yes of ['2.2549', '.0015', '2 1/4', '27/64', '-3']) expect(isReading(yes), yes).toBe(true);
  for (const no of ['', '2.', '2 1/', '1/0', '-', '2 1']) expect(isReading(no), no).toBe(false);
});

test('a reading keyed in whole replaces the digits that were offered', () => {
  const key = (keys: string, offered: string) =>
    [...keys].reduce((text, one) => press(text, one as PadKey, offered), offered);
  expect(key('87', '1.24')).toBe('1.2487');
  expect(key('1.2487', '1.24')).toBe('1.2487');
  expect(key('.2487', '1.24')).toBe('.2487');
  expect(key('1 1/4', '1.24')).toBe('1 1/4');
  expect(key('44.912', '44.')).toBe('44.912');
  // On a keyboard the whole text comes at once, a gauge's too.
  expect(withoutOffer('1.241.2487', '1.24')).toBe('1.2487');
  expect(withoutOffer('1.2487', '1.24')).toBe('1.2487');
  expect(withoutOffer('1.241', '1.24')).toBe('1.241');
  expect(withoutOffer('1.2485 in', '1.24')).toBe('1.2485 in');
});

test('what a gauge sends is read with its unit, and a pasted list place by place', () => {
  expect(keyedReading('+01.2488')).toEqual({ figure: '1.2488', unit: '' });
  expect(keyedReading('-0.0012 in ')).toEqual({ figure: '-0.0012', unit: 'in' });
  expect(keyedReading('31.72mm')).toEqual({ figure: '31.72', unit: 'mm' });
  expect(keyedReading('1 3/4')).toEqual({ figure: '1 3/4', unit: '' });
  expect(keyedReading('1.24.88')).toBeUndefined();
  expect(listedReadings('1.2488 1.2487\n1.2486', false)).toEqual({
    places: [['1.2488', '1.2487'], ['1.2486']],
    tail: '',
  });
  expect(listedReadings('44,912\t44,913 mm', true)).toEqual({ places: [['44.912', '44.913']], tail: 'mm' });
  expect(listedReadings('1.2488', false)).toBeUndefined();
});
