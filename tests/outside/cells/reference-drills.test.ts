import { describe } from 'vitest';
import { rowById } from '../tables/reference.ts';
import { checkRow, expectedOf } from './row-check.ts';
import { given, type Line, sheetOf, valueIn } from './sheet-of.ts';

/** Every size of a printed table typed as an entry of one sheet, as a shop writes it. */
const typed = (id: string, entryOf: (key: string) => string) => {
  const printed = Object.entries(rowById(id).expected as Record<string, number>);
  const lines: Record<string, Line> = Object.fromEntries(
    printed.map(([key], i) => [`hole_${i}`, given('length', entryOf(key))]),
  );
  const sheet = sheetOf(lines, { length: 'in' });
  return printed.map(([, expected], i) => ({
    got: valueIn('in', sheet, `hole_${i}`),
    expected,
    near: 1e-12,
  }));
};

describe('drills by their names, typed as entries', () => {
  checkRow('R511', () => typed('R511', (number) => `#${number}`));
  checkRow('R512', () => typed('R512', (letter) => `${letter} drill`));
  checkRow('R513', () => typed('R513', (fraction) => `${fraction} in`));
  for (const [id, entry] of [
    ['R514', '#7'],
    ['R515', '#21'],
    ['R517', '#36'],
    ['R519', 'F drill'],
    ['R520', 'Q drill'],
  ] as const)
    checkRow(id, () => ({
      got: valueIn('in', sheetOf({ hole: given('length', entry) }, { length: 'in' }), 'hole'),
      expected: expectedOf(id),
      near: 1e-12,
    }));
});
