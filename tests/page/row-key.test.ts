import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  inputRow,
  isLineRow,
  lineRow,
  outputOfRow,
  outputRow,
  partsOfRow,
} from '../../src/page/state/row-key.ts';

const text = fc
  .array(fc.constantFrom('a', '/', '%', 'in', 'out', '2f', '25', ' ', '"', 'é', '\u0000'), { maxLength: 7 })
  .map((some) => some.join(''));

test('a row of the grid gives back the cell and the name it was made of, whatever characters they hold', () => {
  fc.assert(
    fc.property(text, text, (cell, name) => {
      expect(partsOfRow(lineRow(cell))).toEqual({ cell });
      expect(partsOfRow(inputRow(cell, name))).toEqual({ cell, input: name });
      expect(partsOfRow(outputRow(cell, name))).toEqual({ cell, output: name });
      expect([lineRow(cell), inputRow(cell, name)].map(isLineRow)).toEqual([true, false]);
      expect(outputOfRow(lineRow(cell))).toBe('value');
    }),
    { seed: 20261130, numRuns: 500 },
  );
});
