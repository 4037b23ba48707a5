import { expect, test } from 'vitest';
import { surfaceOf } from '../../../src/engine/slips/words.ts';

test.each([
  ['gudgeon eye', 'hole'],
  ['housing bore', 'hole'],
  ['bore of the journal bush', 'hole'],
  ['piston bore, top', 'hole'],
  ['journal for the link eye', 'shaft'],
  ['bearing seat', 'shaft'],
  ['bearing seat in the casting', 'hole'],
  ['bearing housing', 'hole'],
  ['housing spigot', 'shaft'],
  ['housing, width', undefined],
  ['flange', undefined],
])('%s is a %s', (words, surface) => {
  expect(surfaceOf(words)).toBe(surface);
});
