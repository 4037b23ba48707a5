import { expect, test } from 'vitest';
import { type GridRow, gridAction } from '../../src/page/grid/grid-keys.ts';

const full = ['number', 'name', 'entry', 'value', 'limits', 'check'] as const;
const rows: GridRow[] = [
  { row: 'heading', columns: ['number', 'name'] },
  { row: 'bore', columns: full },
  { row: 'close', columns: ['number', 'name', 'check'] },
  { row: 'close/in/bore', columns: ['name', 'entry', 'value'] },
];
const key = (name: string, more: Partial<KeyboardEvent> = {}) => ({
  key: name,
  ctrlKey: false,
  metaKey: false,
  altKey: false,
  shiftKey: false,
  ...more,
});
const to = (row: string, column: string) => ({ do: 'move', to: { row, column } });

test('arrows move by one and stop at the edges', () => {
  const at = { row: 'bore', column: 'entry' } as const;
  expect(gridAction(rows, at, key('ArrowLeft'))).toEqual(to('bore', 'name'));
  expect(gridAction(rows, at, key('ArrowRight'))).toEqual(to('bore', 'value'));
  expect(gridAction(rows, { row: 'bore', column: 'check' }, key('ArrowRight'))).toEqual(to('bore', 'check'));
  expect(gridAction(rows, { row: 'heading', column: 'name' }, key('ArrowUp'))).toEqual(to('heading', 'name'));
});

test('a column the next row lacks gives the nearest before it', () => {
  expect(gridAction(rows, { row: 'bore', column: 'value' }, key('ArrowUp'))).toEqual(to('heading', 'name'));
  expect(gridAction(rows, { row: 'bore', column: 'value' }, key('ArrowDown'))).toEqual(to('close', 'name'));
  expect(gridAction(rows, { row: 'close', column: 'number' }, key('ArrowDown'))).toEqual(
    to('close/in/bore', 'name'),
  );
});

test('Home and End go along the row, with Ctrl to the corners', () => {
  const at = { row: 'bore', column: 'entry' } as const;
  expect(gridAction(rows, at, key('Home'))).toEqual(to('bore', 'number'));
  expect(gridAction(rows, at, key('End'))).toEqual(to('bore', 'check'));
  expect(gridAction(rows, at, key('Home', { ctrlKey: true }))).toEqual(to('heading', 'number'));
  expect(gridAction(rows, at, key('End', { ctrlKey: true }))).toEqual(to('close/in/bore', 'value'));
});

test('Enter and F2 edit an entry and unfold elsewhere; a typed figure begins a new entry', () => {
  const entry = { row: 'bore', column: 'entry' } as const;
  expect(gridAction(rows, entry, key('Enter'))).toEqual({ do: 'edit' });
  expect(gridAction(rows, entry, key('F2'))).toEqual({ do: 'edit' });
  expect(gridAction(rows, entry, key('2'))).toEqual({ do: 'edit', start: '2' });
  expect(gridAction(rows, { row: 'bore', column: 'name' }, key('Enter'))).toEqual({ do: 'unfold' });
  expect(gridAction(rows, { row: 'bore', column: 'name' }, key('2'))).toBeUndefined();
});

test('Alt with arrows carries the line; Tab and the browser’s own keys are left alone', () => {
  const at = { row: 'bore', column: 'entry' } as const;
  expect(gridAction(rows, at, key('ArrowUp', { altKey: true }))).toEqual({ do: 'carry', way: -1 });
  expect(gridAction(rows, at, key('Tab'))).toBeUndefined();
  expect(gridAction(rows, at, key('c', { ctrlKey: true }))).toBeUndefined();
  expect(gridAction(rows, { row: 'gone', column: 'name' }, key('ArrowUp'))).toBeUndefined();
});
