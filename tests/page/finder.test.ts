import { expect, test } from 'vitest';
import { wordChanges } from '../../src/page/sheet/changes.ts';
import { type Findable, find } from '../../src/page/sheet/match.ts';

const item = (label: string, group = 'The sheet', also = ''): Findable => ({
  id: label,
  label,
  group,
  also,
  run: () => undefined,
});

const items = [
  item('Undo', 'The sheet', 'take back'),
  item('Move up', 'This line'),
  item('Add a line below', 'This line', 'new insert'),
  item('18 Bush outside diameter', 'Lines', 'bush_outside'),
  item('Bush at the press', 'Put in from the library'),
];
const found = (query: string) => find(items, query).map(({ label }) => label);

test('found by every word, by other words, by name and without accents', () => {
  expect(found('line ADD')).toEqual(['Add a line below']);
  expect(found('insert')).toEqual(['Add a line below']);
  expect(found('bush_out')).toEqual(['18 Bush outside diameter']);
  expect(found('Úndo')).toEqual(['Undo']);
  expect(found('undo line')).toEqual([]);
  expect(found('')).toHaveLength(items.length);
});

test('what begins with the query comes first, and a group stays together', () => {
  expect(found('bush')).toEqual(['18 Bush outside diameter', 'Bush at the press']);
  expect(found('press')).toEqual(['Bush at the press']);
  const groups = find(items, 'e').map(({ group }) => group);
  expect(groups).toEqual([...groups].sort((a, b) => groups.indexOf(a) - groups.indexOf(b)));
});

test('twenty changed checks are one sentence', () => {
  const one = { title: 'Bore', from: 'holds', to: 'misses' } as const;
  expect(wordChanges([])).toBe('');
  expect(wordChanges([one])).toBe('Bore: misses, was holds.');
  expect(wordChanges(Array.from({ length: 20 }, () => one))).toBe(
    'Bore: misses, was holds. Bore: misses, was holds. Bore: misses, was holds. And 17 more checks changed.',
  );
});

test('what is called just so comes first', () => {
  const named = [
    item('9 Journal clearance', 'Lines'),
    item('Journal undersize', 'Put in from the library'),
    { ...item('3 Drive end', 'Lines'), name: 'journal' },
  ];
  expect(find(named, 'journal').map(({ label }) => label)[0]).toBe('3 Drive end');
});
