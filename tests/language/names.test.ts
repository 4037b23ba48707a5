import { describe, expect, it } from 'vitest';
import { toDecimalComma } from '../../src/language/decimal.ts';
import { completionContext } from '../../src/language/grammar/completion.ts';
import { entryLanguage } from '../../src/language/grammar/highlight.ts';
import { cellNameProblem, isValidCellName, referencesIn, renameIn } from '../../src/language/names.ts';
import { idIn, idReference } from '../../src/language/syntax/ids.ts';

describe('names of cells', () => {
  it.each(['bore', 'bore_as_found', 'Ø_bore', 'δ', 'вал', '孔径', 'x2', '_a', 'power', 'cafe\u0301'])(
    '%s is one',
    (name) => expect(isValidCellName(name)).toBe(true),
  );
  it.each([
    ['', /missing/],
    ['2bore', /begins with a letter/],
    ['bore size', /without blanks/],
    ['bore-size', /without blanks or signs/],
    ['mm', /is a unit/],
    ['thou', /is a unit/],
    ['tons', /is a unit/],
    ['MAX', /is a function/],
    ['IF', /is a function/],
    ['{c12}', /without blanks or signs/],
    ['x'.repeat(61), /at most 60/],
  ])('%s is none', (name, reason) => expect(cellNameProblem(name)?.message).toMatch(reason));
});

describe('where cells are named', () => {
  it('in a formula, faulty ones included, and nowhere else', () => {
    expect(referencesIn('=MAX(bore; press.close_in) + 2 in * (')).toEqual([
      { name: 'bore', from: 5, to: 9 },
      { name: 'press', output: 'close_in', from: 11, to: 25 },
    ]);
    expect(referencesIn('2.25 in')).toEqual([]);
    expect(referencesIn(`=${'a+'.repeat(5000)}a`)).toEqual([]);
  });
  it('by id in stored text', () => {
    const [reference] = referencesIn('={c-12}.od * 2');
    expect(reference).toEqual({ name: '{c-12}', output: 'od', from: 1, to: 10 });
    expect(idIn('{c-12}')).toBe('c-12');
    expect(idIn('bore')).toBeUndefined();
    expect(idReference('c-12')).toBe('{c-12}');
  });
  it('names and ids are swapped without touching units, functions, outputs or texts', () => {
    const ids: Readonly<Record<string, string>> = { in_: '{1}', bore: '{2}', max: '{3}' };
    const text = '=MAX(bore; max; 2 in) + press.bore + IF(bore = "bore"; 1 in; in_)';
    const stored = renameIn(text, (name) => ids[name]);
    expect(stored).toBe('=MAX({2}; {3}; 2 in) + press.bore + IF({2} = "bore"; 1 in; {1})');
    const names = Object.fromEntries(Object.entries(ids).map(([name, id]) => [id, name]));
    expect(renameIn(stored, (id) => names[id])).toBe(text);
  });
});

describe('what is completed at the cursor', () => {
  const at = (marked: string) => completionContext(marked.replace('|', ''), marked.indexOf('|'));
  it.each([
    ['=bo|', { kind: 'name', prefix: 'bo', from: 1 }],
    ['=|', { kind: 'name', prefix: '', from: 1 }],
    ['=bore + |', { kind: 'name', prefix: '', from: 8 }],
    ['=MAX(sh|', { kind: 'name', prefix: 'sh', from: 5 }],
    ['=MA|(a; b)', { kind: 'function', prefix: 'MA', from: 1 }],
    ['=press.cl|', { kind: 'output', prefix: 'cl', from: 7, of: 'press' }],
    ['={c12}.|', { kind: 'output', prefix: '', from: 7, of: '{c12}' }],
    ['=bore + 2 t|', { kind: 'unit', prefix: 't', from: 10 }],
    ['=bore + 2 1/4 i|', { kind: 'unit', prefix: 'i', from: 14 }],
    ['=x2 + a|', { kind: 'name', prefix: 'a', from: 6 }],
    ['2.25 |', { kind: 'unit', prefix: '', from: 5 }],
    ['2.25 th|', { kind: 'unit', prefix: 'th', from: 5 }],
    ['12 kg/m|', { kind: 'unit', prefix: 'm', from: 6 }],
    ['bo|', undefined],
    ['=a b|', undefined],
    ['=IF(a = "bo|', undefined],
  ])('%s', (marked, expected) => expect(at(marked)).toEqual(expected));
});

describe('the language of the editor', () => {
  const names = (text: string, top?: 'Cut') => {
    const found: string[] = [];
    entryLanguage('.', top)
      .parser.parse(text)
      .iterate({ enter: (node) => void found.push(node.name) });
    return found;
  };
  it('chooses its top by what is typed', () => {
    expect(names('=bore + 2 in').slice(0, 2)).toEqual(['Formula', '=']);
    expect(names('2 1/4 in').slice(0, 2)).toEqual(['Literal', 'Value']);
    expect(names('H7', 'Cut')).toEqual(['Cut', 'Fit']);
  });
});

it('thousands of operators in a row are left alone, not parsed', () => {
  const long = `=bore${'<'.repeat(3000)}`;
  expect(referencesIn(long)).toEqual([]);
  expect(renameIn(long, () => 'hole')).toBe(long);
  expect(toDecimalComma(long)).toBe(long);
});
