import { describe, expect, it } from 'vitest';
import { parseEntry, parseFormula, parseTolerance } from '../../src/language/parse.ts';
import { at } from './context.ts';

const first = (text: string) => parseEntry(text, at()).problems[0];

describe('entries too big to read say which limit, and keep their text', () => {
  it.each([
    ['100 kB pasted', 'x'.repeat(100_000), /has 100000 characters; at most 4000 are read/],
    ['100 kB of a formula', `=${'a+'.repeat(50_000)}a`, /has 100002 characters/],
    [
      '200 nested parentheses',
      `=${'('.repeat(200)}1${')'.repeat(200)}`,
      /nested 200 levels deep; at most 64/,
    ],
    ['parentheses never closed', '='.concat('('.repeat(3000)), /nested 3000 levels deep/],
    ['501 terms', `=${Array(501).fill('1').join('+')}`, /has 501 terms; at most 500/],
    ['a tower of powers', `=${Array(300).fill('2').join('^')}`, /nested 299 levels deep; at most 64/],
    ['a row of signs', `=${'-'.repeat(400)}1`, /nested 400 levels deep; at most 64/],
    ['2,000 readings', Array(2000).fill('1').join(';'), /has 2000 terms; at most 500/],
    ['a number of 3,000 digits', '9'.repeat(3000), /at most 40 digits; this one has 3000/],
  ])('%s', (_, text, message) => {
    const { problems, entry, committed } = parseEntry(text, at());
    expect(problems[0]).toMatchObject({ kind: 'too-big' });
    expect(problems[0]?.message).toMatch(message);
    expect(entry.kind === 'blank' || entry.kind === 'formula').toBe(true);
    expect(committed).toBe(text);
    expect(parseTolerance(text, at()).problems).not.toEqual([]);
  });

  it('what just fits is read', () => {
    expect(parseEntry(`=${Array(500).fill('1').join('+')}`, at()).problems).toEqual([]);
    expect(parseEntry(`=${'('.repeat(64)}1${')'.repeat(64)}`, at()).problems).toEqual([]);
    expect(parseEntry(Array(500).fill('1').join(';'), at()).problems).toEqual([]);
  });
});

it('numbers at the ends of what a double holds', () => {
  expect(first('1e300 in')).toBeUndefined();
  expect(first('1e308 mi')?.kind).toBe('range');
  expect(first('1e-400')?.kind).toBe('range');
  expect(first('1e999999999999')?.kind).toBe('range');
  expect(first('2 in ± 1e308 mi')?.kind).toBe('range');
});

it('names in any script', () => {
  for (const text of ['=孔径 + 2 mm', '=διάμετρος * 2', '=втулка.натяг', '=cafe\u0301 + 1 in']) {
    expect(parseEntry(text, at()).problems, text).toEqual([]);
  }
  const { entry } = parseEntry('=cafe\u0301', at());
  expect(entry.kind === 'formula' && entry.expr).toMatchObject({ kind: 'ref', name: 'caf\u00e9' });
  expect(first('=🔩 + 1')?.kind).toBe('syntax');
});

it('blank is blank and never zero', () => {
  for (const text of ['', '   ', '\n', '\t']) {
    expect(parseEntry(text, at())).toEqual({ entry: { kind: 'blank' }, problems: [], committed: '' });
  }
});

it('a formula may stand without its sign in a library cell, with spans of the text as it is', () => {
  const { expr, problems } = parseFormula('bore * 2');
  expect(problems).toEqual([]);
  expect(expr).toMatchObject({ kind: 'binary', op: '*' });
  expect(parseFormula('bore * ').problems[0]).toMatchObject({ kind: 'syntax', from: 5, to: 6 });
});

it('a tolerance is nothing but a tolerance', () => {
  const tolerance = (text: string, nominal?: number) =>
    parseTolerance(text, { ...at(), ...(nominal ? { nominal } : {}) });
  expect(tolerance('+0.0005 -0 in').spread).toEqual({
    low: 0,
    high: 0.0000127,
    percent: false,
    form: 'deviations',
  });
  expect(tolerance('+0.0005/-0').committed).toBe('+0.0005/-0 in');
  expect(tolerance('± .0002').committed).toBe('± .0002 in');
  expect(tolerance('± .0002').spread).toMatchObject({ low: -0.00000508, high: 0.00000508 });
  expect(tolerance('± 5 %').spread).toMatchObject({ percent: true, high: 0.05 });
  // ISO 286-1:2010: 50 mm H7 is +0.025 0
  expect(tolerance('H7', 0.05)).toMatchObject({ designation: 'H7', spread: { form: 'class', low: 0 } });
  expect(tolerance('H7').spread).toBeUndefined();
  expect(tolerance('H7').designation).toBe('H7');
  expect(tolerance('H99', 0.05).problems[0]?.kind).toBe('unknown-key');
  expect(tolerance('0.002').problems[0]?.message).toMatch(/is not a tolerance/);
  const offered = (text: string) => tolerance(text).problems[0]?.choices?.map((c) => c.entry);
  expect(offered('+.002')).toEqual(['+.002 -0', '±.002']);
  expect(offered('-.002 in')).toEqual(['+0 -.002 in', '±.002 in']);
  expect(offered('0.002')).toEqual(['± 0.002']);
  expect(offered('rubbish')).toBeUndefined();
  expect(tolerance('± 2 K').problems[0]?.kind).toBe('dimension');
});
