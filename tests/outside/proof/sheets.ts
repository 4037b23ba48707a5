import { readFileSync } from 'node:fs';
import { library } from '../../../cells/catalogue.ts';
import type { CellRecord, SheetFile } from '../../../shared/sheet/format.ts';
import { readSheet } from '../../../shared/sheet/read.ts';
import { computeSheet } from '../../../src/engine/compute.ts';
import { simulate } from '../../../src/engine/montecarlo/simulate.ts';
import type { SimulatedOutput } from '../../../src/engine/montecarlo/types.ts';
import type { CellResult, Contribution, Figure } from '../../../src/engine/rows/results.ts';
import { sheetOf } from '../../engine/random-sheet.ts';

/** A cell with its name for an id; what begins with `=` is worked out. */
export const cell = (name: string, role: CellRecord['role'], entry: string, more: Partial<CellRecord> = {}) =>
  ({
    id: name,
    role: entry.startsWith('=') ? 'worked' : role,
    name,
    quantity: 'length',
    entry,
    ...more,
  }) as CellRecord;

export const sheet = (cells: CellRecord[], more: Partial<SheetFile> = {}): SheetFile => ({
  ...sheetOf(cells),
  ...more,
});

/** The sheet file of this folder. */
export function sheetFile(name: string): SheetFile {
  const read = readSheet(readFileSync(new URL(name, import.meta.url), 'utf8'));
  if (!('file' in read)) throw new Error(read.message);
  return read.file;
}

export interface Computed {
  result(name: string): CellResult;
  figure(name: string): Figure;
  /** Contributions by the id of the cell that owns the source. */
  budget(name: string): Record<string, Contribution>;
}

export function computed(file: SheetFile): Computed {
  const all = computeSheet(file, library);
  const result = (name: string): CellResult => {
    const found = all.byName(name);
    if (!found) throw new Error(`no cell ${name}`);
    return found;
  };
  return {
    result,
    figure: (name) => {
      const { planned, measured, problem } = result(name).outputs.value ?? {};
      const figure = measured ?? planned;
      if (!figure) throw new Error(`${name} has no figure: ${problem?.message}`);
      return figure;
    },
    budget: (name) => Object.fromEntries(all.budget(result(name).id, 'value').map((one) => [one.cell, one])),
  };
}

/** One output of a sheet over many draws. */
export function drawn(file: SheetFile, name: string, draws: number, output = 'value'): SimulatedOutput {
  const id = file.cells.find((one) => one.name === name)?.id;
  const found = simulate(file, library, { draws }).outputs.find(
    (one) => one.cell === id && one.output === output,
  );
  if (!found) throw new Error(`${name} was not simulated`);
  return found;
}

/** `n` readings with this mean and standard deviation, as an entry. */
export function readings(mean: number, deviation: number, n: number, unit: string): string {
  const half = Math.floor(n / 2);
  const off = n % 2 ? deviation : deviation * Math.sqrt((n - 1) / n);
  const values = Array.from({ length: n }, (_, i) => mean + (i < half ? off : i < 2 * half ? -off : 0));
  return `${values.map((value) => value.toPrecision(15)).join('; ')} ${unit}`;
}
