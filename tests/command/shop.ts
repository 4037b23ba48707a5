import type { CellRecord, SheetFile } from '../../shared/sheet/format.ts';
import type { Io } from '../../src/command/io.ts';
import { run } from '../../src/command/run.ts';

/** A small sheet of plain cells: a journal in its bush, with limits of 2 to 4 thou new and 8 thou worn. */
export const clearanceSheet = (cells: readonly CellRecord[] = []): SheetFile => ({
  format: 'fitwright-sheet',
  version: 2,
  title: { title: 'Countershaft, clearance' },
  units: { length: 'in' },
  rule: 'worst-case',
  cells: [
    { id: 's1', role: 'section', label: 'Sizes' },
    {
      id: 'c1',
      role: 'measured',
      name: 'bore',
      label: 'Bush bore',
      quantity: 'length',
      entry: '1.7510 in ± 0.0002 in',
    },
    {
      id: 'c2',
      role: 'measured',
      name: 'journal',
      label: 'Journal',
      quantity: 'length',
      entry: '1.7480 in ± 0.0002 in',
    },
    {
      id: 'c3',
      role: 'worked',
      name: 'clearance',
      label: 'Running clearance',
      quantity: 'length',
      display: 'thou',
      entry: '=bore - journal',
      limits: { lower: '2 thou', upper: '4 thou', wear: '8 thou', metalOn: 'low' },
    },
    {
      id: 'c4',
      role: 'chosen',
      name: 'bush_outside',
      label: 'Bush outside diameter',
      quantity: 'length',
      entry: '2.2515 in',
      tolerance: '+0.0005 -0 in',
      limits: { lower: '2.2510 in', upper: '2.2525 in', metalOn: 'high' },
    },
    ...cells,
  ],
});

export interface Run {
  exit: number;
  out: string;
  err: string;
}

const missing = (): Error => Object.assign(new Error('no such file'), { code: 'ENOENT' });

/** Runs the command over files held in memory: a sheet, or the bare text of a file. */
export const fitwright = async (
  argv: readonly string[],
  files: Readonly<Record<string, SheetFile | string>> = {},
): Promise<Run> => {
  let out = '';
  let err = '';
  const io: Io = {
    out: (text) => {
      out += text;
    },
    err: (text) => {
      err += text;
    },
    read: async (path) => {
      const file = files[path];
      if (file === undefined) throw missing();
      return typeof file === 'string' ? file : JSON.stringify(file);
    },
  };
  const exit = await run(argv, io);
  return { exit, out, err };
};
