import { expect, test } from 'vitest';
import type { CheckVerdict, Verdict } from '../../shared/checks/check.ts';
import { steady } from '../../src/engine/report/steady.ts';
import type { CellResult, Figure, LimitFigures, OutputResult } from '../../src/engine/rows/results.ts';
import { Packer, Unpacker } from '../../src/engine/worker/packed.ts';

/** Another value for every field there is: a new field does not compile here until it is told how it may change. */
type Other<T> = { [K in keyof Required<T>]: Required<T>[K] };

const figure: Required<Figure> = { value: 1, low: 0.9, high: 1.1, centre: 1, u: 0.05, dof: 9, aim: 1.05 };
const otherFigure: Other<Figure> = {
  value: 2,
  low: 0.8,
  high: 1.2,
  centre: 1.01,
  u: 0.06,
  dof: 8,
  aim: 1.04,
};
const verdict: Required<Verdict> = { state: 'holds', at: 'lower', side: 'metal on', by: -0.1 };
const otherVerdict: Other<Verdict> = { state: 'may miss', at: 'upper', side: 'metal gone', by: -0.2 };
const check: Required<CheckVerdict> = {
  asNew: verdict,
  inService: verdict,
  rule: 'worst-case',
  k: 2,
  words: 'holds',
  note: 'a note',
};
const otherCheck: Other<CheckVerdict> = {
  asNew: otherVerdict,
  inService: otherVerdict,
  rule: 'simple',
  k: 1.7,
  words: 'may miss',
  note: 'another',
};
const limits: Required<LimitFigures> = { lower: figure, upper: figure, wear: figure, metalOn: 'low' };
const moved: Figure = { ...figure, value: 3 };
const otherLimits: Other<LimitFigures> = { lower: moved, upper: moved, wear: moved, metalOn: 'high' };
const output: Required<OutputResult> = {
  quantity: 'length',
  label: 'bore',
  display: 'in',
  planned: figure,
  measured: figure,
  difference: figure,
  replanned: figure,
  stands: 'planned',
  logical: true,
  limits,
  check,
  problem: { kind: 'blank', message: 'blank' },
  idle: false,
};
const otherOutput: Other<OutputResult> = {
  quantity: 'angle',
  label: 'shaft',
  display: 'mm',
  planned: moved,
  measured: moved,
  difference: moved,
  replanned: moved,
  stands: 'measured',
  logical: false,
  limits: otherLimits,
  check: otherCheck,
  problem: { kind: 'blank', message: 'not blank' },
  idle: true,
};
const cell: Required<CellResult> = {
  id: 'a',
  outputs: { value: output },
  problems: [],
  remarks: [],
  slips: [],
  echoes: {},
  feeds: ['b'],
};
const otherCell: Omit<Other<CellResult>, 'id' | 'outputs'> = {
  problems: [{ kind: 'blank', message: 'blank' }],
  remarks: [{ grade: 'caution', message: 'worn' }],
  slips: [{ key: 'k', field: 'entry', message: 'meant?' }],
  echoes: { entry: '0.5' },
  feeds: ['c'],
};

/** With each field changed, and with each that may be absent taken away. */
const each = <T extends object>(base: T, other: object, needed: readonly (keyof T)[]): T[] =>
  Object.entries(other).flatMap(([key, value]) => {
    const changed = { ...base, [key]: value };
    if (needed.includes(key as keyof T)) return [changed];
    const without = { ...base };
    delete without[key as keyof T];
    return [changed, without];
  });

const figures = each<Figure>(figure, otherFigure, ['value', 'low', 'high', 'centre', 'u', 'dof']);
const verdicts = each<Verdict>(verdict, otherVerdict, ['state']);
const outputs: OutputResult[] = [
  ...each<OutputResult>(output, otherOutput, ['check']),
  ...figures.map((planned) => ({ ...output, planned })),
  ...each<LimitFigures>(limits, otherLimits, []).map((changed) => ({ ...output, limits: changed })),
  ...[
    ...each<CheckVerdict>(check, otherCheck, ['asNew', 'rule', 'words']),
    ...verdicts.map((asNew) => ({ ...check, asNew })),
    ...verdicts.map((inService) => ({ ...check, inService })),
  ].map((changed) => ({ ...output, check: changed })),
];
const all: CellResult[] = [
  ...each<CellResult>(cell, otherCell, ['problems', 'remarks', 'slips', 'echoes', 'feeds']),
  ...outputs.map((value) => ({ ...cell, outputs: { value } })),
];

test('a change of any field of a result is seen, and reaches the other side', () => {
  for (const changed of all) {
    const [before, now] = [structuredClone(cell), structuredClone(changed)];
    const told = steady(now, before);
    expect({ ...told }).toEqual(changed);
    const [packer, unpacker] = [new Packer(), new Unpacker()];
    const send = (rev: number, one: CellResult) =>
      unpacker.unpack(structuredClone(packer.pack({ rev, cells: [one], gone: [] }))).cells;
    expect(send(1, before)).toEqual([cell]);
    expect(send(2, told)).toEqual([changed]);
  }
});
