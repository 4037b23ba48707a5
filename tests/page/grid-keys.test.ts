import { expect, test } from 'vitest';
import { type GridRow, gridAction } from '../../src/page/grid/grid-keys.ts';
import { inputRow, lineRow } from '../../src/page/state/row-key.ts';

const BORE = lineRow('bore');
const CLOSE = lineRow('close');
const HEADING = lineRow('heading');
const INPUT = inputRow('close', 'bore');
const full = ['number', 'name', 'entry', 'value', 'limits', 'check'] as const;
const rows: GridRow[] = [
  { row: HEADING, columns: ['number', 'name'] },
  { row: BORE, columns: full },
  { row: CLOSE, columns: ['number', 'name', 'check'] },
  { row: INPUT, columns: ['name', 'entry', 'value'] },
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
  const at = { row: BORE, column: 'entry' } as const;
  expect(gridAction(rows, at, key('ArrowLeft'))).toEqual(to(BORE, 'name'));
  expect(gridAction(rows, at, key('ArrowRight'))).toEqual(to(BORE, 'value'));
  expect(gridAction(rows, { row: BORE, column: 'check' }, key('ArrowRight'))).toEqual(to(BORE, 'check'));
  expect(gridAction(rows, { row: HEADING, column: 'name' }, key('ArrowUp'))).toEqual(to(HEADING, 'name'));
});

test('a column the next row lacks gives the nearest before it', () => {
  expect(gridAction(rows, { row: BORE, column: 'value' }, key('ArrowUp'))).toEqual(to(HEADING, 'name'));
  expect(gridAction(rows, { row: BORE, column: 'value' }, key('ArrowDown'))).toEqual(to(CLOSE, 'name'));
  expect(gridAction(rows, { row: CLOSE, column: 'number' }, key('ArrowDown'))).toEqual(to(INPUT, 'name'));
});

test('Home and End go along the row, with Ctrl to the corners', () => {
  const at = { row: BORE, column: 'entry' } as const;
  expect(gridAction(rows, at, key('Home'))).toEqual(to(BORE, 'number'));
  expect(gridAction(rows, at, key('End'))).toEqual(to(BORE, 'check'));
  expect(gridAction(rows, at, key('Home', { ctrlKey: true }))).toEqual(to(HEADING, 'number'));
  expect(gridAction(rows, at, key('End', { ctrlKey: true }))).toEqual(to(INPUT, 'value'));
});

test('Enter and F2 edit an entry and unfold elsewhere; a typed figure begins a new entry', () => {
  const entry = { row: BORE, column: 'entry' } as const;
  expect(gridAction(rows, entry, key('Enter'))).toEqual({ do: 'edit' });
  expect(gridAction(rows, entry, key('F2'))).toEqual({ do: 'edit' });
  expect(gridAction(rows, entry, key('2'))).toEqual({ do: 'edit', start: '2' });
  expect(gridAction(rows, { row: BORE, column: 'name' }, key('Enter'))).toEqual({ do: 'unfold' });
  expect(gridAction(rows, { row: BORE, column: 'name' }, key('2'))).toBeUndefined();
});

test('Alt with arrows carries the line; Tab and the browser’s own keys are left alone', () => {
  const at = { row: BORE, column: 'entry' } as const;
  expect(gridAction(rows, at, key('ArrowUp', { altKey: true }))).toEqual({ do: 'carry', way: -1 });
  expect(gridAction(rows, at, key('Tab'))).toBeUndefined();
  expect(gridAction(rows, at, key('c', { ctrlKey: true }))).toBeUndefined();
  expect(gridAction(rows, { row: lineRow('gone'), column: 'name' }, key('ArrowUp'))).toBeUndefined();
});

test('Delete takes what stands under the cursor: the entry, or the line where it is named', () => {
  expect(gridAction(rows, { row: lineRow('bore'), column: 'entry' }, key('Delete'))).toEqual({ do: 'empty' });
  expect(gridAction(rows, { row: lineRow('bore'), column: 'entry' }, key('Backspace'))).toEqual({
    do: 'empty',
  });
  expect(gridAction(rows, { row: lineRow('bore'), column: 'name' }, key('Delete'))).toEqual({ do: 'delete' });
  expect(gridAction(rows, { row: lineRow('bore'), column: 'name' }, key('Backspace'))).toBeUndefined();
  expect(gridAction(rows, { row: lineRow('bore'), column: 'limits' }, key('Delete'))).toBeUndefined();
});
