import { expect, test } from 'vitest';
import type { CheckState } from '../../shared/checks/check.ts';
import type { CellResult, OutputResult } from '../../src/engine/rows/results.ts';
import { Baseline } from '../../src/page/state/moves.ts';

const output = (
  value: number | undefined,
  state: CheckState = 'no limits',
  measured?: number,
): OutputResult => {
  const figure = (x: number) => ({
    value: x,
    low: x,
    high: x,
    centre: x,
    u: 0,
    dof: Number.POSITIVE_INFINITY,
  });
  return {
    ...(value !== undefined && { planned: figure(value) }),
    ...(measured !== undefined && { measured: figure(measured) }),
    stands: measured === undefined ? 'planned' : 'measured',
    check: { asNew: { state }, rule: 'worst-case', words: state },
  };
};
const result = (value: OutputResult): CellResult => ({
  id: 'a',
  outputs: { value },
  problems: [],
  remarks: [],
  slips: [],
  echoes: {},
  feeds: [],
});

test('a line moves from what it was before the edit, however many answers follow', () => {
  const baseline = new Baseline();
  baseline.keep('a', { value: output(1) });
  expect(baseline.moves(result(output(2)))).toEqual({ value: { from: 1, to: 2 } });
  baseline.keep('a', { value: output(2) });
  expect(baseline.moves(result(output(3)))).toEqual({ value: { from: 1, to: 3 } });
  baseline.reset();
  expect(baseline.moves(result(output(3)))).toBeUndefined();
});

test('the figure that stands counts: a measured size moves what was planned', () => {
  const baseline = new Baseline();
  baseline.keep('a', { value: output(1, 'holds') });
  expect(baseline.moves(result(output(1, 'proven in limits', 1.5)))).toEqual({
    value: { from: 1, to: 1.5, check: 'holds' },
  });
});

test('an answer with the same figure and the same check is no move; a figure that is lost is one', () => {
  const baseline = new Baseline();
  baseline.keep('a', { value: output(1) });
  expect(baseline.moves(result(output(1)))).toBeUndefined();
  expect(baseline.moves(result(output(undefined, 'waiting')))).toEqual({
    value: { from: 1, check: 'no limits' },
  });
});
