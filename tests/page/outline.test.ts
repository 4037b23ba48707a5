import { expect, test } from 'vitest';
import type { CellResult, Figure, OutputResult } from '../../src/engine/results.ts';
import { keepOutline } from '../../src/page/state/outline.ts';

const figure = (value: number): Figure => ({ value, low: value, high: value, centre: value, u: 0, dof: 9 });
const result = (value: OutputResult, beside: Partial<CellResult> = {}): CellResult => ({
  id: 'a',
  outputs: { value },
  problems: [],
  remarks: [],
  slips: [],
  echoes: {},
  feeds: ['b'],
  ...beside,
});
const output = (value: number, beside: Partial<OutputResult> = {}): OutputResult => ({
  planned: figure(value),
  limits: { lower: figure(1) },
  check: { asNew: { state: 'holds', by: -value }, rule: 'worst-case', words: 'holds' },
  ...beside,
});

test('figures and by how much a limit is kept are no part of an outline, and equal parts are taken over', () => {
  const before = result(output(2));
  const now = result(output(3));
  expect(keepOutline(before, now)).toBe(true);
  expect(now.feeds).toBe(before.feeds);
  expect(now.outputs.value?.planned?.value).toBe(3);
});

test.each([
  [
    'a verdict',
    result(output(3, { check: { asNew: { state: 'misses' }, rule: 'worst-case', words: 'misses' } })),
  ],
  ['a measured size', result(output(3, { measured: figure(3), stands: 'measured' }))],
  ['a size to aim for', result(output(3, { planned: { ...figure(3), aim: 3.1 } }))],
  ['another limit', result(output(3, { limits: { upper: figure(4) } }))],
  ['no limits', result({ planned: figure(3), check: output(3).check })],
  ['a problem', result(output(3, { problem: { kind: 'arithmetic', message: 'no root' } }))],
  ['another unit', result(output(3, { display: 'mm' }))],
  ['another output', { ...result(output(3)), outputs: { value: output(3), mean: output(3) } }],
  ['an output less', { ...result(output(3)), outputs: {} }],
  ['a slip', result(output(3), { slips: [{ key: 'k', field: 'entry', message: 'm' }] })],
  ['an echo', result(output(3), { echoes: { entry: '0.5' } })],
  ['another cell to hang on', result(output(3), { feeds: ['c'] })],
])('%s is', (_, now) => {
  expect(keepOutline(result(output(2)), now)).toBe(false);
});
