import { expect, test } from 'vitest';
import { readTrace } from '../../cells/functions/ram-trace.ts';
import { NO_HANDBOOK } from '../../src/language/parse.ts';
import { pairsTyped } from '../../src/page/entry/pairs.ts';
import { pastedOnOneLine } from '../../src/page/kit/one-line.ts';

const typed = (text: string, length: 'in' | 'mm' = 'mm', decimal: '.' | ',' = '.') =>
  pairsTyped(text, ['length', 'force'], { units: { length }, handbook: NO_HANDBOOK, decimal });

const TRACE = '2 mm: 1.2 kN; 4 mm: 2.3 kN';

test('a trace reads as what it is, however it was typed or pasted', () => {
  for (const text of [
    TRACE,
    '2 mm 1.2 kN 4 mm 2.3 kN',
    '2 mm\t1.2 kN\n4 mm\t2.3 kN',
    '2mm 1.2kN\r\n4mm 2.3kN\r\n',
    '2 mm, 1.2 kN; 4 mm, 2.3 kN',
    '2: 1.2 kN; 4: 2.3 kN',
    '2 1.2; 4 2.3 kN',
    'Depth (mm)\tForce (kN)\n2\t1.2\n4\t2.3',
    // The units say which is which.
    '1.2 kN 2 mm\n2.3 kN 4 mm',
    'Force (kN)\tDepth (mm)\n1.2\t2\n2.3\t4',
  ]) {
    expect(typed(text), text).toBe(TRACE);
    // Through a field of one line, as a browser pastes it there.
    expect(typed(pastedOnOneLine(text)), text).toBe(TRACE);
  }
  for (const text of [
    '2: 1,2 kN; 4: 2,3 kN',
    '2,0 mm\t1,2 kN\n4,0 mm\t2,3 kN',
    '2,0\t1,2 kN\r\n4,0\t2,3 kN\r\n',
    '2,0 mm 1,2 kN; 4,0 mm 2,3 kN',
    'Depth (mm)\tForce (kN)\n2,0\t1,2\n4,0\t2,3',
    '1,2 kN\t2,0 mm\n2,3 kN\t4,0 mm',
  ]) {
    const read = readTrace(typed(text, 'mm', ','));
    expect(read, text).toEqual(readTrace(TRACE));
    expect(typed(pastedOnOneLine(text), 'mm', ','), text).toBe(typed(text, 'mm', ','));
  }
  expect(typed('2 mm 1,2 kN\n4 mm 2,3 kN')).toBe(TRACE);
  expect(typed('1/2 3 short_tonf\n1 1/2 5 short_tonf', 'in')).toBe(
    '1/2 in: 3 short_tonf; 1 1/2 in: 5 short_tonf',
  );
  expect(readTrace(TRACE)).toEqual([
    { depth: 0.002, force: 1200 },
    { depth: 0.004, force: 2300 },
  ]);
});

test('what can be read in two ways, or in none, stands as it was typed', () => {
  for (const text of [
    '2 1.2; 4 2.3',
    '2 mm 1.2 kN 4 mm',
    '2 mm: 1,234 kN; 4 mm: 2 kN',
    'see the chart',
    '',
    '2 kN: 4 kN',
  ])
    expect(typed(text), text).toBe(text);
});
