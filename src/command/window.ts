import { handbook } from '../../cells/handbook.ts';
import type { CellRecord, SheetFile } from '../../shared/sheet/format.ts';
import { readSheet } from '../../shared/sheet/read.ts';
import type { Library } from '../engine/rows/library.ts';
import type { CheckName } from '../engine/trial/checks.ts';
import { TrialSheet } from '../engine/trial/trial-sheet.ts';
import type { CheckSaid, WindowAnswer, WindowFound } from '../engine/window/answer.ts';
import type { Range } from '../engine/window/range.ts';
import { windowOf } from '../engine/window/window.ts';
import { endText, pieceText, saidText, valueText } from '../engine/window/words.ts';
import { parseEntry } from '../language/parse.ts';
import type { WindowCommand } from './arguments.ts';
import { byLabel, jsonByLabel } from './by-label.ts';
import { escaped, fetchText } from './check.ts';
import { checkNames, checkTitles } from './check-titles.ts';
import { asAsked } from './example.ts';
import { EXIT, type Exit } from './exit.ts';
import type { Io } from './io.ts';
import { onOneLine } from './one-line.ts';
import { override } from './override.ts';

/** Works out how far an input may go, and prints it. */
export const windowCommand = async (command: WindowCommand, library: Library, io: Io): Promise<Exit> => {
  const { path } = command;
  const tell = (message: string): Exit => {
    io.err(`fitwright: ${path}: ${onOneLine(message)}\n`);
    return EXIT.error;
  };
  const text = await fetchText(path, io);
  if (text === undefined) return EXIT.error;
  const read = readSheet(text);
  if ('kind' in read) return tell(read.message);
  for (const warning of read.warnings) tell(warning);
  const base = asAsked(read.file, command);
  const { file, faults, notices } = override(base, command.set, [], library.kinds);
  for (const message of [...faults, ...notices]) tell(message);
  if (faults.length > 0) return EXIT.error;
  const [name = '', input] = command.of.split('.', 2);
  const cell = file.cells.find((one) => one.name?.normalize('NFC') === name && one.role !== 'section');
  if (!cell) {
    const names = file.cells.flatMap((one) => (one.name && one.role !== 'section' ? [one.name] : []));
    return tell(
      `--of ${command.of}: the sheet has no cell of that name. It has: ${names.join(', ') || 'none'}.`,
    );
  }
  if (input !== undefined && cell.role !== 'cell')
    return tell(`--of ${command.of}: "${name}" is a plain cell and has no input "${input}".`);
  const range =
    command.between === undefined ? undefined : rangeIn(command.between, file, cell, input, library);
  if (range === null)
    return tell(
      `--between ${command.between}: write two values of what "${command.of}" is, as in "2.25 in .. 2.26 in".`,
    );
  const trial = new TrialSheet(library);
  try {
    trial.load(file);
    trial.settle();
    const field = input === undefined ? 'entry' : `inputs.${input}`;
    const answer = windowOf(trial, { cell: cell.id, field, ...(range ? { range } : {}) });
    if (answer.is === 'none' && answer.stays) return tell(`--of ${command.of}: ${byLabel(file)(answer.why)}`);
    const title = checkTitles(file);
    io.out(
      command.json
        ? `${escaped(jsonByLabel(file, jsonOf(answer, file)))}\n`
        : `${path}: ${file.title.title}\n${byLabel(file)(textOf(answer, command.of, title))}`,
    );
    return answer.is === 'found' ? EXIT.holds : EXIT.open;
  } finally {
    trial.destroy();
  }
};

/** The range that was asked for; null where it cannot be read. */
function rangeIn(
  text: string,
  file: SheetFile,
  cell: CellRecord,
  input: string | undefined,
  library: Library,
): Range | null {
  const kind = library.kinds.get(cell.kind ?? '');
  const quantity =
    input === undefined ? cell.quantity : kind?.inputs.find((one) => one.name === input)?.quantity;
  const read = parseEntry(text, {
    ...(quantity ? { quantity } : {}),
    units: file.units,
    handbook,
    role: 'given',
  });
  const { entry } = read;
  if (read.problems.length > 0 || entry.kind !== 'range') return null;
  const [low, high] = [entry.low.value, entry.high.value].sort((a, b) => a - b);
  return low === undefined || high === undefined || low === high ? null : { low, high };
}

const plain = (text: string): string => text.replaceAll('\u00a0', ' ');

function textOf(answer: WindowAnswer, of: string, title: (check: CheckName) => string): string {
  const lines: string[] = [];
  const list = (checks: readonly CheckSaid[]): void => {
    for (const one of checks) lines.push(`    ${saidText(one, title(one))}`);
  };
  if (answer.is === 'none') lines.push(`  ${answer.why}`);
  else {
    const { piece, others, value } = answer;
    const now = value === undefined ? 'blank as yet' : `now ${valueText(answer, value)}`;
    if (piece) lines.push(`  ${of} may be ${pieceText(answer, piece)}; ${now}`);
    else
      lines.push(
        value === undefined
          ? `  ${of} is blank as yet; it may be:`
          : `  ${of} is ${valueText(answer, value)}, where not every check below it holds; it may be:`,
      );
    for (const one of piece ? [piece] : others) {
      if (!piece) lines.push(`  ${pieceText(answer, one)}`);
      for (const side of ['low', 'high'] as const) {
        lines.push(`  ${endText(answer, side, one[side])}`);
        list(one[side].closedBy);
      }
    }
    if (piece && others.length > 0)
      lines.push(`  All hold elsewhere too: ${others.map((one) => pieceText(answer, one)).join('; ')}`);
    const { low, high } = answer.searched;
    lines.push(
      `  Looked through from ${valueText(answer, low)} to ${valueText(answer, high)}; ${counted(answer)}`,
    );
  }
  if (answer.leftOut.length > 0) {
    lines.push(`  Left out, for they fail or wait whatever ${of} is:`);
    list(answer.leftOut);
  }
  return plain(`${lines.join('\n')}\n`);
}

const counted = ({ checks }: WindowFound): string =>
  checks.length === 1 ? 'one check holds at either end.' : `${checks.length} checks hold at either end.`;

function jsonOf(answer: WindowAnswer, file: SheetFile) {
  const check = checkNames(file);
  const said = (one: CheckSaid) => ({ ...check(one), verdict: one.words });
  const leftOut = answer.leftOut.map(said);
  if (answer.is === 'none') return { window: null, why: answer.why, leftOut };
  const piece = (one: WindowFound['piece']) =>
    one && {
      low: one.low.at,
      lowClosedBy: one.low.closedBy.map(said),
      high: one.high.at,
      highClosedBy: one.high.closedBy.map(said),
    };
  return {
    of: answer.name,
    ...(answer.value === undefined ? {} : { value: answer.value }),
    window: piece(answer.piece) ?? null,
    elsewhere: answer.others.map(piece),
    searched: answer.searched,
    ...(answer.metalOn ? { metalOn: answer.metalOn } : {}),
    checks: answer.checks.map(check),
    leftOut,
  };
}
