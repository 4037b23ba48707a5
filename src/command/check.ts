import type { CellRecord, SheetFile } from '../../shared/sheet/format.ts';
import { numberLines } from '../../shared/sheet/numbering.ts';
import { readSheet } from '../../shared/sheet/read.ts';
import { computeSheet } from '../engine/compute.ts';
import type { Library } from '../engine/rows/library.ts';
import type { CellResult } from '../engine/rows/results.ts';
import type { CheckCommand } from './arguments.ts';
import { byLabel, jsonByLabel } from './by-label.ts';
import { asAsked } from './example.ts';
import { EXIT, type Exit, worst } from './exit.ts';
import { exitOf, type Finding, findingsOf } from './findings.ts';
import type { Io } from './io.ts';
import { jsonOf } from './json.ts';
import { linesOf } from './lines.ts';
import { onOneLine } from './one-line.ts';
import { override } from './override.ts';
import { type Block, findingsText, standingText, tableText } from './report.ts';

interface Checked {
  exit: Exit;
  /** False of a file that could not be read. */
  sound: boolean;
  json: ReturnType<typeof jsonOf> | null;
}

const SYSTEM: Readonly<Record<string, string>> = {
  ENOENT: 'there is no such file',
  EISDIR: 'it is a folder: name the files in it',
  EACCES: 'it may not be read: look at its permissions',
};

export const fetchText = async (path: string, io: Io): Promise<string | undefined> => {
  try {
    return await io.read(path);
  } catch (error) {
    const { code, message } = error as Error & { code?: string };
    const hint = code === 'ENOENT' && path.includes('=') ? `. An entry is set by --set ${path}` : '';
    io.err(`fitwright: ${path}: cannot be read: ${SYSTEM[code ?? ''] ?? message}${hint}.\n`);
    return undefined;
  }
};

interface Numbered {
  cell: CellRecord;
  result: CellResult;
  number: number;
}

/** Cells with a value and their results. */
const numbered = (file: SheetFile, results: readonly CellResult[]): Numbered[] => {
  const [resultOf, cellOf] = [byId(results), byId(file.cells)];
  const numbers = numberLines([...cellOf.keys()], (id) => cellOf.get(id)?.role);
  return [...numbers].flatMap(([id, number]) => {
    const [cell, result] = [cellOf.get(id), resultOf.get(id)];
    return cell && result ? [{ cell, result, number }] : [];
  });
};

const byId = <T extends { id: string }>(all: readonly T[]): Map<string, T> =>
  new Map(all.map((one) => [one.id, one]));

const printed = (file: SheetFile, cells: readonly Numbered[], library: Library): string => {
  const found = new Map(cells.map((one) => [one.cell.id, one]));
  const blocks = file.cells.flatMap((cell): Block[] => {
    if (cell.role === 'section') return [{ heading: cell.label ?? cell.name ?? '' }];
    const one = found.get(cell.id);
    if (!one) return [];
    const context = { units: file.units, kinds: library.kinds, rule: file.rule, number: one.number };
    return [{ lines: linesOf(cell, one.result, context) }];
  });
  return tableText(blocks);
};

const checkFile = async (
  path: string,
  command: CheckCommand,
  library: Library,
  io: Io,
  gap: string,
): Promise<Checked> => {
  const failed: Checked = { exit: EXIT.error, sound: false, json: null };
  const tell = (message: string): void => io.err(`fitwright: ${path}: ${onOneLine(message)}\n`);
  const text = await fetchText(path, io);
  if (text === undefined) return failed;
  const read = readSheet(text);
  if ('kind' in read) {
    tell(read.message);
    return failed;
  }
  for (const warning of read.warnings) tell(warning);
  const base = asAsked(read.file, command);
  const { file, faults, notices } = override(base, command.set, command.measured, library.kinds);
  for (const message of [...faults, ...notices]) tell(message);
  if (faults.length > 0) return failed;

  const worded = byLabel(file);
  const cells = numbered(file, computeSheet(file, library).cells);
  const told = cells.map((one) => ({ ...one, findings: findingsOf(one.cell, one.number, one.result) }));
  const findings: Finding[] = told.flatMap((one) => one.findings);
  // What might bear on a verdict and is passed over leaves the whole open.
  const passedOver: Exit[] = read.unknown.length > 0 ? [EXIT.open] : [];
  const exits: Exit[] = [...passedOver, ...told.map((one) => exitOf(one.findings, one.result))];
  for (const { grade, where, message } of findings)
    if (grade === 'error') tell(`${where}: ${worded(message)}`);
  if (!command.json) {
    io.out(`${gap}${path}: ${file.title.title}\n`);
    io.out(worded(printed(file, cells, library)));
    io.out(worded(findingsText(findings)));
    io.out(worded(standingText(cells, file)));
  }
  return {
    exit: worst(exits),
    sound: true,
    json: command.json ? JSON.parse(jsonByLabel(file, jsonOf(told, file))) : null,
  };
};

/** Signs that a terminal acts on, as JSON writes them. */
export const escaped = (json: string): string =>
  json.replace(/[\p{Cc}\p{Cf}\u2028\u2029]/gu, (sign) =>
    sign === '\n'
      ? sign
      : Array.from(
          { length: sign.length },
          (_, k) => `\\u${sign.charCodeAt(k).toString(16).padStart(4, '0')}`,
        ).join(''),
  );

/** Works every file out and prints it; the worst of them decides the exit status. */
export const check = async (command: CheckCommand, library: Library, io: Io): Promise<Exit> => {
  const byFile: Record<string, Checked['json']> = Object.create(null);
  const exits: Exit[] = [];
  let gap = '';
  for (const path of command.files) {
    const { exit, sound, json } = await checkFile(path, command, library, io, gap);
    if (sound) gap = '\n';
    exits.push(exit);
    byFile[path] = json;
  }
  if (command.json) {
    const [only] = command.files;
    const all = command.files.length === 1 ? byFile[only as string] : byFile;
    io.out(`${escaped(JSON.stringify(all, undefined, 2))}\n`);
  }
  return worst(exits);
};
