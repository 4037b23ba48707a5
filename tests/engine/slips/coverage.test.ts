import { expect, test } from 'vitest';
import { walk } from '../../walk.ts';
import { Asker } from './asker.ts';
import { coverage, FORMS } from './coverage.ts';

const parts = walk(80, 1500);

/** What chance takes of so many: three standard errors. */
const chance = (share: number): number => 3 * Math.sqrt((share * (1 - share)) / parts);

test.each([
  ['good', [1, 2]],
  ['good', [2, 2]],
  ['worn', [2, 2]],
  ['worn', [3, 2]],
  ['worn', [2, 3]],
  ['oval', [2, 2]],
] as const)('of %s parts read at %j places by directions what is printed covers what is', (form, shape) => {
  const asker = new Asker();
  const found = coverage(FORMS[form], shape, parts, 20261130, 'iso14253-2013', asker);
  asker.close();
  const least = (share: number): number => share - chance(share);
  expect(found.mean / parts).toBeGreaterThan(least(form === 'good' ? 0.93 : 0.9));
  expect(found.least / parts).toBeGreaterThan(least(0.9));
  expect(found.greatest / parts).toBeGreaterThan(least(0.9));
  // Proven wrongly to limits that are only just proven.
  const most = 0.025 + chance(0.025);
  expect(found.below / parts).toBeLessThan(most);
  expect(found.above / parts).toBeLessThan(most);
});

test.each([
  ['good', [1, 1]],
  ['worn', [1, 1]],
  ['worn', [1, 2]],
  ['worn', [1, 3]],
  ['worn', [2, 1]],
] as const)(
  'of %s parts read at %j places by directions what is proven holds where it was read',
  (form, shape) => {
    const asker = new Asker();
    const found = coverage(FORMS[form], shape, parts, 20261201, 'iso14253-2013', asker);
    asker.close();
    const most = 0.025 + chance(0.025);
    expect(found.belowThere / parts).toBeLessThan(most);
    expect(found.aboveThere / parts).toBeLessThan(most);
  },
);
