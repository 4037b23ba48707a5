import { expect, test } from 'vitest';
import { ownRule } from '../../shared/checks/decision-rules.ts';

test('a rule is told beside a verdict where it is not the sheet’s', () => {
  expect(ownRule('simple', 'iso14253-2013')).toBe('with no allowance for measuring error');
  expect(ownRule('worst-case', 'simple')).toBe('by worst case');
  expect(ownRule('worst-case', 'worst-case')).toBeUndefined();
});
