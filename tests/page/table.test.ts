import { expect, test } from 'vitest';
import { type EntryContext, NO_HANDBOOK } from '../../src/language/parse.ts';
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

const HERE: EntryContext = { units: { length: 'in' }, handbook: NO_HANDBOOK, role: 'measured' };
const lineOf = (row: readonly string[]) => lineFromRow(row, HERE);
const linesOf = (text: string) => linesFromTable(readTable(text), HERE);

test('rows become lines by what stands in them', () => {
  expect(lineOf(['Journal', '1.7481', 'in'])).toEqual({
    role: 'given',
    label: 'Journal',
    entry: '1.7481 in',
  });
  expect(lineOf(['Journal', 'measured', '1.7481 in'])).toEqual({
    role: 'measured',
    label: 'Journal',
    entry: '1.7481 in',
  });
  expect(lineOf(['Clearance', '=bore - journal'])).toEqual({
    role: 'worked',
    label: 'Clearance',
    entry: '=bore - journal',
  });
  expect(lineOf(['Oil it'])).toEqual({ role: 'remark', note: 'Oil it' });
  expect(lineOf(['', '2.25'])).toEqual({ role: 'given', entry: '2.25' });
  expect(linesOf('What\tSize\nA\t1 in\nB\t2 in')).toEqual([
    { role: 'given', label: 'A', entry: '1 in' },
    { role: 'given', label: 'B', entry: '2 in' },
  ]);
});

const given = (label: string, entry: string, more: object = {}) => ({ role: 'given', label, entry, ...more });

test.each([
  // A unit in the head of a column is that of its figures.
  ['What\tSize (mm)\nJournal\t44.45', [given('Journal', '44.45 mm')]],
  // A column that numbers the rows is no size, wherever the label stands.
  ['No.\tName\tSize\tUnit\n1\tJournal\t1.75\tin', [given('Journal', '1.75 in')]],
  ['1\tJournal\t1.75\n2\tHousing\t2.25', [given('Journal', '1.75'), given('Housing', '2.25')]],
  ['1.7500\tJournal A', [given('Journal A', '1.7500')]],
  ['Journal\t1.75 ± .0002', [given('Journal', '1.75 ± .0002')]],
  ['Journal\t1.75\t±.0002', [given('Journal', '1.75 ±.0002')]],
  ['Shaft\t50 k6\nBore\tØ2.0005', [given('Shaft', '50 k6'), given('Bore', 'Ø2.0005')]],
  // Names and figures with no tab between them.
  ['journal = 1.75\nhousing = 2.25', [given('journal', '1.75'), given('housing', '2.25')]],
  ['Journal 1.7500\nHousing bore, 2.2500', [given('Journal', '1.7500'), given('Housing bore', '2.2500')]],
  [
    'Oil at 5\nLook again',
    [
      { role: 'remark', note: 'Oil at 5' },
      { role: 'remark', note: 'Look again' },
    ],
  ],
  // Nothing that was pasted is lost.
  [
    'Journal\t1.7500\t1.7499\t1.7501',
    [{ role: 'measured', label: 'Journal', entry: '1.7500; 1.7499; 1.7501' }],
  ],
  [
    'Part\tSize\tQty\nBolt\t.5\t4\nNut\t.5\t8',
    [given('Bolt', '.5', { note: 'Qty: 4' }), given('Nut', '.5', { note: 'Qty: 8' })],
  ],
  [
    'What\tSize\tMin\tMax (in)\nA\t1.75\t1.74\t1.76\nB\t2\t1.9\t2.1',
    [
      given('A', '1.75', { limits: { lower: '1.74', upper: '1.76 in' } }),
      given('B', '2', { limits: { lower: '1.9', upper: '2.1 in' } }),
    ],
  ],
  [
    'Fit\tH7/g6\nA\t1 in\nB\t2 in',
    [{ role: 'remark', note: 'Fit, H7/g6' }, given('A', '1 in'), given('B', '2 in')],
  ],
  ['Journal\t1.75\tfrom the drawing', [given('Journal', '1.75', { note: 'from the drawing' })]],
])('%j becomes lines', (text, lines) => {
  expect(linesOf(text)).toEqual(lines);
});
