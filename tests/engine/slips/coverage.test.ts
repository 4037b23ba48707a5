import { expect, test } from 'vitest';
import { walk } from '../../walk.ts';
import { Asker } from './asker.ts';
import { coverage, FORMS } from './coverage.ts';

const parts = walk(80, 1500);

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
  // What chance takes of so many: three standard errors.
  const least = (share: number): number => share - 3 * Math.sqrt((share * (1 - share)) / parts);
  expect(found.mean / parts).toBeGreaterThan(least(form === 'good' ? 0.93 : 0.9));
  expect(found.least / parts).toBeGreaterThan(least(0.9));
  expect(found.greatest / parts).toBeGreaterThan(least(0.9));
  // Proven wrongly to limits that are only just proven.
  const most = 0.025 + 3 * Math.sqrt((0.025 * 0.975) / parts);
  expect(found.below / parts).toBeLessThan(most);
  expect(found.above / parts).toBeLessThan(most);
});
