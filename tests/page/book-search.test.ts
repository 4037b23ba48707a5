import { expect, test } from 'vitest';
import { library } from '../../cells/catalogue.ts';
import { functionsUsed } from '../../cells/functions-used.ts';
import type { CellKind } from '../../cells/record/cell.ts';
import { ANYTHING, findInBook, quantitiesOf } from '../../src/page/book/search.ts';

const kinds = [...library.kinds.values()];
const keys = (query: Partial<typeof ANYTHING>): string[] =>
  findInBook(kinds, { ...ANYTHING, ...query }).map((kind) => kind.key);

test('asked nothing, the whole book', () => {
  expect(keys({}).sort()).toEqual(kinds.map((kind) => kind.key).sort());
});

test('every word counts, wherever it stands, whatever its case', () => {
  expect(keys({ words: 'Liquid NITROGEN' })).toContain('shrink-fit');
  expect(keys({ words: 'liquid nitrogen' })).not.toContain('sine-bar');
  expect(keys({ words: 'crush joint bolt' })).toContain('split-shell-crush');
  expect(keys({ words: 'crush perpetuum' })).toEqual([]);
});

test('a word in title or purpose comes before one deeper down', () => {
  const found = keys({ words: 'backlash' });
  expect(found.slice(0, 2).sort()).toEqual(['backlash', 'line-bore-shift']);
});

test('by what goes in and what comes out', () => {
  const torque = keys({ comesOut: 'torque' });
  expect(torque).toContain('bolt-preload');
  for (const key of torque)
    expect(library.kinds.get(key)?.outputs.some((output) => output.quantity === 'torque')).toBe(true);
  expect(keys({ goesIn: 'speed', comesOut: 'rotational speed' })).toEqual(['spindle-speed']);
});

test('only quantities that some cell has are offered', () => {
  const offered = quantitiesOf(kinds, 'outputs').map((one) => one.value);
  expect(offered).toContain('length');
  for (const value of offered) expect(keys({ comesOut: value }).length, value).toBeGreaterThan(0);
});

test('the look-ups a cell calls are named, no others', () => {
  const names = (key: string) =>
    functionsUsed(library.kinds.get(key) as CellKind, library.functions).map((one) => one.name);
  expect(names('iso-fit').sort()).toEqual(['LOWERDEVIATION', 'UPPERDEVIATION']);
  expect(names('sine-bar')).toEqual([]);
});
