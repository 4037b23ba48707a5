import { expect, test } from 'vitest';
import type { CheckState } from '../../shared/checks/check.ts';
import { numberLines } from '../../shared/sheet/numbering.ts';
import type { CellResult } from '../../src/engine/rows/results.ts';
import { countChecks } from '../../src/page/state/counts.ts';

const cell = (id: string, ...states: CheckState[]): CellResult => ({
  id,
  outputs: Object.fromEntries(
    states.map((state, k) => [
      `o${k}`,
      { stands: 'planned' as const, check: { asNew: { state }, rule: 'worst-case' as const, words: state } },
    ]),
  ),
  problems: [],
  remarks: [],
  slips: [],
  echoes: {},
  feeds: [],
});

test('checks are counted by what they ask for; the worst kind comes first', () => {
  const counts = countChecks([
    cell('a', 'holds', 'no limits'),
    cell('b', 'waiting', 'may miss'),
    cell('c', 'proven in limits, near the edge', 'out of limits', 'misses'),
  ]);
  expect(counts.of).toEqual({ misses: 2, doubt: 1, waiting: 1, edge: 1, holds: 1, none: 1 });
  expect(counts.total).toBe(6);
  expect(counts.first).toEqual({ cell: 'c', output: 'o1' });
});

test('a sheet where everything holds has nothing to go to', () => {
  expect(countChecks([cell('a', 'holds', 'proven in limits')]).first).toBeUndefined();
});

test('headings and remarks have no number', () => {
  const roles = { a: 'section', b: 'given', c: 'remark', d: 'cell' } as const;
  const numbers = numberLines(['a', 'b', 'c', 'd', 'gone'], (id) => roles[id as 'a']);
  expect([...numbers]).toEqual([
    ['b', 1],
    ['d', 2],
  ]);
});
