import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { library } from '../../cells/catalogue.ts';
import type { SheetFile } from '../../shared/sheet/format.ts';
import { readSheet } from '../../shared/sheet/read.ts';
import { withExamples } from '../../src/command/example.ts';
import { override } from '../../src/command/override.ts';
import { computeSheet } from '../../src/engine/compute.ts';
import type { Figure, OutputResult } from '../../src/engine/rows/results.ts';

const folder = fileURLToPath(new URL('../../templates/', import.meta.url));

const listed = (under: string): string[] =>
  readdirSync(folder + under)
    .filter((name) => name.endsWith('.json'))
    .map((name) => under + name)
    .sort();

export const templates = listed('');
export const jobs = listed('jobs/');

export const textOf = (name: string): string => readFileSync(folder + name, 'utf8');

export const sheetOf = (name: string): SheetFile => {
  const read = readSheet(textOf(name));
  if ('kind' in read) throw new Error(`${name}: ${read.message}`);
  return read.file;
};

/** Figures of a sheet with its examples in, and with other entries or as-measured values in place of its own. */
export interface Worked {
  figure(cell: string, output?: string): Figure;
  value(cell: string, output?: string): number;
  state(cell: string, output?: string): string;
  output(cell: string, output?: string): OutputResult;
}

export const workOut = (
  name: string,
  set: Readonly<Record<string, string>> = {},
  measured: Readonly<Record<string, string>> = {},
): Worked => {
  const assign = (entries: Readonly<Record<string, string>>) =>
    Object.entries(entries).map(([target, entry]) => {
      const [cell = '', part] = target.split('.');
      return { name: cell, entry, ...(part === undefined ? {} : { part }) };
    });
  const changed = override(withExamples(sheetOf(name)), assign(set), assign(measured), library.kinds);
  if (changed.faults.length > 0) throw new Error(changed.faults.join('\n'));
  const sheet = computeSheet(changed.file, library);
  const output = (cell: string, which = 'value'): OutputResult => {
    const found = sheet.byName(cell)?.outputs[which];
    if (!found) throw new Error(`${name} has no ${cell}.${which}`);
    return found;
  };
  const figure = (cell: string, which?: string): Figure => {
    const found = output(cell, which);
    const stands = found.stands === 'measured' ? found.measured : found.planned;
    if (!stands) throw new Error(`${cell}.${which ?? 'value'} has no figure: ${found.problem?.message}`);
    return stands;
  };
  return {
    figure,
    output,
    value: (cell, which) => figure(cell, which).value,
    state: (cell, which) => output(cell, which).check.asNew.state,
  };
};

export const MM = 1e-3;
export const UM = 1e-6;
export const IN = 0.0254;
export const THOU = 25.4e-6;
/** One degree Fahrenheit as a difference, K. */
export const DEG_F = 5 / 9;
export const LBF = 4.4482216152605;
export const PSI = 6894.757293168361;

export const mean = (...readings: number[]): number =>
  readings.reduce((sum, reading) => sum + reading, 0) / readings.length;

/** Give of a ring of bore d at its outside D: change of diameter per diameter, times E, per pressure (Lame). */
export const inside = (D: number, d: number, nu: number): number =>
  (D ** 2 + d ** 2) / (D ** 2 - d ** 2) - nu;

/** The same of a ring of outside Do at its bore D. */
export const outside = (Do: number, D: number, nu: number): number =>
  (Do ** 2 + D ** 2) / (Do ** 2 - D ** 2) + nu;
