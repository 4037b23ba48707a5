import { library } from '../../cells/catalogue.ts';
import type { CellRecord, SheetFile } from '../../shared/sheet/format.ts';
import { type ComputedSheet, computeSheet } from '../../src/engine/compute.ts';
import type { Figure, OutputResult } from '../../src/engine/rows/results.ts';
import { sheetOf } from './random-sheet.ts';

/** Factors that the closed forms below are written in. */
export const inch = 0.0254;
export const thou = 0.0000254;
export const SQRT3 = Math.sqrt(3);

export const plain = (
  name: string,
  role: CellRecord['role'],
  entry: string,
  more: Partial<CellRecord> = {},
): CellRecord => ({ id: `c_${name}`, role, name, quantity: 'length', entry, ...more });

export const ofKind = (kind: string, name: string, inputs: Record<string, string>): CellRecord => ({
  id: `c_${name}`,
  role: 'cell',
  kind,
  name,
  inputs,
});

export type Sheet = ComputedSheet & {
  output(name: string, output?: string): OutputResult;
  figure(name: string, output?: string): Figure;
};

/** Computes an inch sheet of these cells. */
export const inches = (cells: readonly CellRecord[], more: Partial<SheetFile> = {}): Sheet => {
  const sheet = computeSheet({ ...sheetOf([...cells]), units: { length: 'in' }, ...more }, library);
  const output = (name: string, of = 'value'): OutputResult => {
    const found = sheet.byName(name)?.outputs[of];
    if (!found) throw new Error(`no ${name}.${of}`);
    return found;
  };
  const figure = (name: string, of = 'value'): Figure => {
    const { measured, planned, problem } = output(name, of);
    const found = measured ?? planned;
    if (!found) throw new Error(`${name}.${of}: ${problem?.message ?? 'no figure'}`);
    return found;
  };
  return { ...sheet, output, figure };
};
