import { expect, test } from 'vitest';
import { isFigure, readingsFrom, readTable, writeTable } from '../../src/page/entry/table.ts';
import { lineFromRow, linesFromTable } from '../../src/page/grid/lines-from-table.ts';

test('a table from a spreadsheet keeps tabs and breaks that stand in quotes', () => {
  expect(readTable('a\tb\r\n"c\td"\t"e ""f""\ng"\n')).toEqual([
    ['a', 'b'],
    ['c\td', 'e "f"\ng'],
  ]);
  expect(readTable('2.2515"\n2.2514"')).toEqual([['2.2515"'], ['2.2514"']]);
  const rows = [['a\tb', 'c"d'], ['e']];
  expect(readTable(writeTable(rows))).toEqual(rows);
});

test('figures are told from text', () => {
  for (const yes of [
    '2.2515',
    '.0015',
    '-3',
    '2 1/4',
    '2-1/4',
    '27/64',
    '1,5',
    '2.25 in',
    '2.2515"',
    '1e-3',
    '68F',
  ])
    expect(isFigure(yes), yes).toBe(true);
  for (const no of ['', 'Bore', '=a+b', 'mm', '-', 'M8x1.25 thread']) expect(isFigure(no), no).toBe(false);
});

test('a column is one list of readings, several columns are stations', () => {
  expect(readingsFrom(readTable('2.2549\n2.2572\n2.2544\n'))).toEqual({
    text: '2.2549; 2.2572; 2.2544',
    count: 3,
  });
  expect(readingsFrom(readTable('2.2549\t2.2572\n2.2544\t2.2561'))).toEqual({
    text: '2.2549; 2.2572 | 2.2544; 2.2561',
    count: 4,
  });
  expect(readingsFrom(readTable('Bore (mm)\n57.15\n57.17'))).toEqual({ text: '57.15; 57.17 mm', count: 2 });
  expect(readingsFrom(readTable('Bore\t57.15'))).toBeUndefined();
  // Blanks or commas in place of tabs, and a column that numbers the rows.
  expect(readingsFrom(readTable('2.2549  2.2572\n2.2544  2.2561'))?.text).toBe(
    '2.2549; 2.2572 | 2.2544; 2.2561',
  );
  expect(readingsFrom(readTable('2.2549, 2.2572\r\n2.2544, 2.2561'))?.text).toBe(
    '2.2549; 2.2572 | 2.2544; 2.2561',
  );
  expect(readingsFrom(readTable('No.\tBore (in)\n1\t2.2549\n2\t2.2572'))?.text).toBe('2.2549; 2.2572 in');
  expect(readingsFrom(readTable('1\t2\n2\t3'))?.text).toBe('1; 2 | 2; 3');
  expect(readingsFrom(readTable('2 1/4\n2 17/64'))?.text).toBe('2 1/4; 2 17/64');
});

test('rows become lines by what stands in them', () => {
  expect(lineFromRow(['Journal', '1.7481', 'in'])).toEqual({
    role: 'given',
    label: 'Journal',
    entry: '1.7481 in',
  });
  expect(lineFromRow(['Journal', 'measured', '1.7481 in'])).toEqual({
    role: 'measured',
    label: 'Journal',
    entry: '1.7481 in',
  });
  expect(lineFromRow(['Clearance', '=bore - journal'])).toEqual({
    role: 'worked',
    label: 'Clearance',
    entry: '=bore - journal',
  });
  expect(lineFromRow(['Oil it'])).toEqual({ role: 'remark', note: 'Oil it' });
  expect(lineFromRow(['', '2.25'])).toEqual({ role: 'given', entry: '2.25' });
  expect(linesFromTable(readTable('What\tSize\nA\t1 in\nB\t2 in'))).toEqual([
    { role: 'given', label: 'A', entry: '1 in' },
    { role: 'given', label: 'B', entry: '2 in' },
  ]);
});
