import { rowById } from '../tables/reference.ts';
import { sheetWith } from './example-sheet.ts';
import { checkRow, expectedOf } from './row-check.ts';
import { figure } from './sheet-of.ts';

/** The screw and its three sleeves as an end float: sizes with their limits, inches. */
const floatIn = (id: string) => {
  const { a, b, c, d } = rowById(id).inputs as Record<string, [number, number]>;
  const entry = ([size, limit]: [number, number]): string => `${size} in ± ${limit} in`;
  const sheet = sheetWith('end-float', {
    space: entry(a!),
    width_1: entry(b!),
    width_2: entry(c!),
    width_3: entry(d!),
  });
  const { value, low, high, u } = figure(sheet, 'it', 'end_float');
  return { value: value / 0.0254, low: low / 0.0254, high: high / 0.0254, u: u / 0.0254 };
};

checkRow('R644', () => ({ got: floatIn('R644').value, expected: expectedOf('R644'), near: 1e-9 }));
checkRow('R646', () => ({ got: floatIn('R646').high, expected: expectedOf('R646'), near: 1e-9 }));
checkRow('R647', () => ({ got: floatIn('R647').low, expected: expectedOf('R647'), near: 1e-9 }));
// A rectangular distribution has u = limit / sqrt 3: the root of the sum of squared limits is sqrt 3 times the whole u.
checkRow('R649', () => ({ got: floatIn('R649').u * Math.sqrt(3), expected: expectedOf('R649'), near: 1e-8 }));
