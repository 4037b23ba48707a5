import { expect, it } from 'vitest';
import { isOfField } from '../../src/page/entry/field-path.ts';

it('a size as measured is told of at its entry, its temperature at its own field', () => {
  expect(isOfField('measured', 'measured.entry')).toBe(true);
  expect(isOfField('outputs.bore.measured', 'outputs.bore.measured.entry')).toBe(true);
  expect(isOfField('measured.at', 'measured.at')).toBe(true);
  expect(isOfField('measured', 'measured.at')).toBe(false);
  expect(isOfField('entry', 'measured.entry')).toBe(false);
  expect(isOfField(undefined, 'entry')).toBe(false);
});
