import { library } from '../../../cells/catalogue.ts';
import type { CellRecord, SheetFile } from '../../../shared/sheet/format.ts';
import { findUnit, toSI } from '../../../shared/units/units.ts';
import { type ComputedSheet, computeSheet } from '../../../src/engine/compute.ts';
import type { Library } from '../../../src/engine/rows/library.ts';
import type { Figure, OutputResult } from '../../../src/engine/rows/results.ts';

export type Line = Partial<CellRecord> & Pick<CellRecord, 'role'>;

/** A sheet of these lines by name, computed by the engine as the command line and the page compute it. */
export const sheetOf = (
  lines: Readonly<Record<string, Line>>,
  options: { length?: 'in' | 'mm'; library?: Library } = {},
): ComputedSheet => {
  const file: SheetFile = {
    format: 'fitwright-sheet',
    version: 2,
    title: { title: 'From outside' },
    units: { length: options.length ?? 'mm' },
    rule: 'worst-case',
    cells: Object.entries(lines).map(([name, line], i) => ({ id: `c${i}`, name, ...line })),
  };
  return computeSheet(file, options.library ?? library);
};

/** A line of the library with its inputs. */
export const cell = (kind: string, inputs: Record<string, string>): Line => ({
  role: 'cell',
  kind,
  edition: library.kinds.get(kind)?.edition ?? 1,
  inputs,
});

export const measured = (quantity: string, entry: string, more: Partial<CellRecord> = {}): Line => ({
  role: 'measured',
  quantity,
  entry,
  ...more,
});
export const given = (quantity: string, entry: string): Line => ({ role: 'given', quantity, entry });
export const worked = (quantity: string, entry: string): Line => ({ role: 'worked', quantity, entry });

const outputOf = (sheet: ComputedSheet, name: string, output: string): OutputResult => {
  const found = sheet.byName(name)?.outputs[output];
  if (!found) throw new Error(`${name}.${output} is not there`);
  if (found.problem) throw new Error(`${name}.${output}: ${found.problem.message}`);
  return found;
};

/** What a line shows, measured before planned. SI. */
export const figure = (sheet: ComputedSheet, name: string, output = 'value'): Figure => {
  const { measured: part, planned: plan } = outputOf(sheet, name, output);
  const found = part ?? plan;
  if (!found) throw new Error(`${name}.${output} has no figure`);
  return found;
};

/** Its value in a unit. */
export const valueIn = (unit: string, sheet: ComputedSheet, name: string, output = 'value'): number =>
  inUnit(unit, figure(sheet, name, output).value);

export const inUnit = (symbol: string, si: number): number => {
  if (symbol === '') return si;
  const unit = findUnit(symbol);
  if (!unit) throw new Error(`no unit ${symbol}`);
  return si / toSI(1, unit);
};

/** One library cell alone: its outputs in given units. */
export const one = (kind: string, inputs: Record<string, string>) => {
  const sheet = sheetOf({ it: cell(kind, inputs) });
  return (output: string, unit: string): number => valueIn(unit, sheet, 'it', output);
};

/** Remarks a lone library cell makes. */
export const remarksOf = (kind: string, inputs: Record<string, string>): string[] =>
  (sheetOf({ it: cell(kind, inputs) }).byName('it')?.remarks ?? []).map((remark) => remark.message);
