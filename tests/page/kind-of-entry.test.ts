import { expect, test } from 'vitest';
import { NO_HANDBOOK, parseEntry } from '../../src/language/parse.ts';
import { kindOfEntry } from '../../src/page/entry/commit.ts';

test.each([
  ['2.25 in', 'length'],
  ['1.7481; 1.7480 in', 'length'],
  ['30 deg', 'angle'],
  ['20 %', 'number'],
  ['68 degF', 'temperature'],
  ['10 K', 'temperature difference'],
  ['2.25', undefined],
])('a first entry of %s settles what the line holds', (text, kind) => {
  expect(kindOfEntry(parseEntry(text, { units: { length: 'in' }, handbook: NO_HANDBOOK }).entry)).toBe(kind);
});
