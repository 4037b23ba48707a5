import { expect, test } from 'vitest';
import { codeOf, STATES } from '../../shared/checks/states.ts';

test('codes of verdicts are frozen: a program that reads them must not be broken by better words', () => {
  expect(Object.values(STATES.plan).map((state) => codeOf(state))).toEqual([
    'plan-in',
    'plan-near',
    'plan-open',
    'plan-out',
  ]);
  // A calculation that may miss or misses is said as of a plan.
  expect(Object.values(STATES.calculation).map((state) => codeOf(state))).toEqual([
    'calculation-in',
    'calculation-near',
    'plan-open',
    'plan-out',
  ]);
  expect(Object.values(STATES.part).map((state) => codeOf(state))).toEqual([
    'part-in',
    'part-near',
    'part-open',
    'part-out',
  ]);
  expect(codeOf('proven in limits', 'at one place')).toBe('part-in-where-read');
  expect(codeOf('not proven', 'at one place')).toBe('part-open');
  expect((['waiting', 'no limits', 'being settled'] as const).map((state) => codeOf(state))).toEqual([
    'waiting',
    'no-limits',
    'settling',
  ]);
});
