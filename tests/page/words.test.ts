import { expect, test } from 'vitest';
import { library } from '../../cells/catalogue.ts';
import { completionPlace } from '../../src/page/entry/complete.ts';
import { findKinds } from '../../src/page/entry/find-kinds.ts';
import { dropAfter } from '../../src/page/grid/carry.ts';
import { placeOf } from '../../src/page/kit/router.ts';

test('the library is found by what a cell is for, title first', () => {
  const found = findKinds(library.kinds.values(), 'Press BUSH');
  expect(found.length).toBeGreaterThan(1);
  expect(`${found[0]!.title} ${found[0]!.purpose}`.toLowerCase()).toMatch(/bush/);
  // What is called just so comes first.
  for (const kind of library.kinds.values())
    expect(findKinds(library.kinds.values(), kind.title)[0]?.title).toBe(kind.title);
  expect(findKinds(library.kinds.values(), '')).toHaveLength(library.kinds.size);
  expect(findKinds(library.kinds.values(), 'zzz')).toEqual([]);
});

test('a compound unit is completed as a whole', () => {
  expect(completionPlace('20 lbf/i', 8)).toEqual({ kind: 'unit', from: 3, typed: 'lbf/i' });
  expect(completionPlace('=bo', 3)).toEqual({ kind: 'name', from: 1, typed: 'bo' });
  expect(completionPlace('=press.cl', 9)).toEqual({ kind: 'output', from: 7, typed: 'cl', of: 'press' });
});

test('a line dropped on the upper half of another goes above it', () => {
  const order = ['a', 'b', 'c'];
  expect(dropAfter(order, 'c', 'a', false)).toBeNull();
  expect(dropAfter(order, 'c', 'b', false)).toBe('a');
  expect(dropAfter(order, 'a', 'c', true)).toBe('c');
  // Behind itself is above the one it stands behind already.
  expect(dropAfter(order, 'b', 'c', false)).toBe('a');
  expect(dropAfter(order, 'b', 'b', true)).toBeUndefined();
});

test('an address tells the view, and an unknown one says so', () => {
  expect(placeOf('')).toEqual({ view: 'home' });
  expect(placeOf('#/')).toEqual({ view: 'home' });
  expect(placeOf('#/sheet/4f-a1')).toEqual({ view: 'sheet', id: '4f-a1' });
  expect(placeOf('#/sheet/../x')).toEqual({ view: 'unknown', address: '/sheet/../x' });
});
