import { describe, expect, test } from 'vitest';
import { folders, library as whole } from '../../cells/catalogue.ts';
import { fileName } from '../../cells/catalogue-of.ts';
import { libraryOnUse } from '../../cells/on-use.ts';
import { onUse } from './on-use.ts';

test('the file of a kind has the name of its key, by which it is fetched', () => {
  for (const [path, kind] of Object.entries(folders.kinds)) expect(fileName(path)).toBe(kind.key);
});

describe('a library fetched as it is used', () => {
  test('comes to the whole one', async () => {
    const library = libraryOnUse();
    expect(library.kinds.size).toBe(0);
    expect(library.keys).toEqual([...whole.kinds.keys()]);
    expect(library.functions).toEqual(whole.functions);
    await library.fetch(library.keys);
    expect(library.keys.map((key) => library.kinds.get(key))).toEqual([...whole.kinds.values()]);
    for (const [name, table] of library.tables) expect(table).toBe(whole.tables.get(name));
  });

  test('has a kind with the tables it chooses from, and nothing besides', async () => {
    const { library, asked } = onUse();
    await library.fetch(['gauge', 'no-such-kind']);
    expect([...library.kinds.keys()]).toEqual(['gauge']);
    expect([...library.tables.keys()]).toEqual(['gauges']);
    expect(asked).toEqual(['kinds/gauge', 'choices/gauges']);
    expect(library.lacks('material')).toBe(true);
    expect(library.lacks('no-such-kind')).toBe(false);
  });

  test('fetches once what several ask for', async () => {
    const { library, asked } = onUse();
    await Promise.all([library.fetch(['gauge']), library.fetch(['gauge', 'gauge'])]);
    await library.fetch(['gauge']);
    expect(asked).toEqual(['kinds/gauge', 'choices/gauges']);
  });

  test('lacks what could not be fetched, alone, until it can', async () => {
    const { library, away } = onUse();
    away.add('choices/gauges');
    await library.fetch(['gauge', 'finishing-stock']);
    expect([...library.kinds.keys()]).toEqual(['finishing-stock']);
    expect(library.lacks('gauge')).toBe(true);
    away.clear();
    await library.fetch(['gauge']);
    expect(library.lacks('gauge')).toBe(false);
    expect([...library.tables.keys()]).toContain('gauges');
  });
});
