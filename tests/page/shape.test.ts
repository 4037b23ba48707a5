import { expect, test } from 'vitest';
import type { CellResult, Figure, OutputResult } from '../../src/engine/rows/results.ts';
import { sameShape } from '../../src/page/state/shape.ts';

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

const before = result(output(2));
/** As the engine hands it over: what did not change is the object it was. */
const after = (value: OutputResult, beside: Partial<CellResult> = {}): CellResult => ({
  ...before,
  outputs: { value },
  ...beside,
});

test('figures and by how much a limit is kept are no part of an shape', () => {
  expect(sameShape(before, after(output(3)))).toBe(true);
});

test.each([
  [
    'a verdict',
    after(output(3, { check: { asNew: { state: 'misses' }, rule: 'worst-case', words: 'misses' } })),
  ],
  ['a measured size', after(output(3, { measured: figure(3), stands: 'measured' }))],
  ['a size to aim for', after(output(3, { planned: { ...figure(3), aim: 3.1 } }))],
  ['another limit', after(output(3, { limits: { upper: figure(4) } }))],
  ['no limits', after({ planned: figure(3), check: output(3).check })],
  ['a problem', after(output(3, { problem: { kind: 'arithmetic', message: 'no root' } }))],
  ['another unit', after(output(3, { display: 'mm' }))],
  ['another output', { ...after(output(3)), outputs: { value: output(3), mean: output(3) } }],
  ['an output less', { ...after(output(3)), outputs: {} }],
  ['a slip', after(output(3), { slips: [{ key: 'k', field: 'entry', message: 'm' }] })],
  ['an echo', after(output(3), { echoes: { entry: '0.5' } })],
  ['another cell to hang on', after(output(3), { feeds: ['c'] })],
])('%s is', (_, now) => {
  expect(sameShape(before, now)).toBe(false);
});
