import { formatQuantity } from '../../shared/quantities/figures.ts';
import { displayUnit } from '../../shared/quantities/quantities.ts';
import type { CellRecord, SheetFile } from '../../shared/sheet/format.ts';
import { readSheet } from '../../shared/sheet/read.ts';
import type { Unit } from '../../shared/units/units.ts';
import type { Library } from '../engine/rows/library.ts';
import type { FigurePlace, InputPlace } from '../engine/trial/place.ts';
import { TrialSheet } from '../engine/trial/trial-sheet.ts';
import { Desk } from '../engine/workback/desk.ts';
import type { Answer, Offered, Solution } from '../engine/workback/question.ts';
import type { Assignment, WorkBackCommand } from './arguments.ts';
import { byLabel, jsonByLabel } from './by-label.ts';
import { escaped, fetchText } from './check.ts';
import { checkNames, checkTitles } from './check-titles.ts';
import { asAsked } from './example.ts';
import { EXIT, type Exit } from './exit.ts';
import type { Io } from './io.ts';
import { onOneLine } from './one-line.ts';
import { override } from './override.ts';
import { alignColumns } from './table.ts';

/** The sheet worked out, and its lines by name. */
interface Opened {
  file: SheetFile;
  desk: Desk;
  trial: TrialSheet;
  library: Library;
}

/** Works a figure back to one of its inputs, or lists those that move it. */
export const workBackCommand = async (command: WorkBackCommand, library: Library, io: Io): Promise<Exit> => {
  const { path, want, change } = command;
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
  const { file, faults } = override(base, command.set, [], library.kinds);
  if (faults[0] !== undefined) return tell(faults[0]);
  const trial = new TrialSheet(library);
  const desk = new Desk(trial);
  try {
    trial.load(file);
    const opened: Opened = { file, desk, trial, library };
    const figure = figureAt(opened, want);
    if (typeof figure === 'string') return tell(`--want ${figure}`);
    if (change === undefined) return listOffers(opened, command, figure, io, tell);
    const input = inputNamed(opened, change);
    if (typeof input === 'string') return tell(`--change ${input}`);
    const answer = desk.answer({
      figure,
      want: want.entry,
      change: input,
      ...(command.between ? { between: command.between } : {}),
      ...(command.steps ? { steps: command.steps } : {}),
    });
    if (answer.isUnread) return tell(byLabel(file)(answer.reason ?? ''));
    return give(opened, command, figure, answer, io);
  } finally {
    trial.destroy();
  }
};

const list = (names: readonly string[]): string => names.join(', ') || 'none';

const lineNamed = ({ file }: Opened, name: string): CellRecord | string => {
  const found = file.cells.find((one) => one.name?.normalize('NFC') === name);
  if (found && found.role !== 'section' && found.role !== 'remark') return found;
  const names = file.cells.flatMap((one) => (one.name && one.role !== 'section' ? [one.name] : []));
  return `${name}: the sheet has no cell of that name. It has: ${list(names)}.`;
};

function figureAt(opened: Opened, { name, part }: Assignment): FigurePlace | string {
  const line = lineNamed(opened, name);
  if (typeof line === 'string') return line;
  if (line.role !== 'cell' && part === undefined) return { cell: line.id, output: 'value' };
  const outputs = Object.keys(opened.trial.result(line.id)?.outputs ?? {});
  if (part !== undefined && outputs.includes(part)) return { cell: line.id, output: part };
  return `${name}${part === undefined ? '' : `.${part}`}: say which figure of it: ${list(outputs)}.`;
}

function inputNamed(opened: Opened, text: string): InputPlace | string {
  const tolerance = /^(.*?)\s+tolerance$/.exec(text);
  const [name = '', part] = (tolerance?.[1] ?? text).trim().normalize('NFC').split('.', 2);
  const line = lineNamed(opened, name);
  if (typeof line === 'string') return line;
  if (tolerance) return { cell: line.id, field: 'tolerance' };
  if (line.role !== 'cell')
    return part === undefined
      ? { cell: line.id, field: 'entry' }
      : `${text}: "${name}" is a plain cell and has no input "${part}".`;
  const inputs = opened.library.kinds.get(line.kind ?? '')?.inputs.map((one) => one.name) ?? [];
  if (part !== undefined && inputs.includes(part)) return { cell: line.id, field: `inputs.${part}` };
  return `${text}: say which input of it: ${list(inputs)}.`;
}

/** Figures of an answer are told finely: they are to be typed. */
const shown = (si: number, unit: Unit): string => formatQuantity(si, unit).replaceAll('\u00a0', ' ');

const unitAt = ({ file, trial }: Opened, { cell, output }: FigurePlace): Unit => {
  const found = trial.result(cell)?.outputs[output];
  return displayUnit(found?.quantity, file.units, found?.display);
};

function listOffers(
  opened: Opened,
  { want, json }: WorkBackCommand,
  figure: FigurePlace,
  io: Io,
  tell: (message: string) => Exit,
): Exit {
  const offers = opened.desk.offers(figure, want.entry);
  const { inputs, reason = '' } = offers;
  if (offers.isUnread) return tell(`--want: ${byLabel(opened.file)(reason)}`);
  if (json)
    io.out(
      `${escaped(jsonByLabel(opened.file, { inputs: inputs.map(offerJson), ...(reason ? { reason } : {}) }))}\n`,
    );
  else if (inputs.length === 0) io.out(`${byLabel(opened.file)(reason)}\n`);
  else
    io.out(
      `${alignColumns([
        ['change', 'entry', 'still to be cut', 'what it is'],
        ...inputs.map((one) => [one.name, one.text, one.isToCut ? 'yes' : '', one.label]),
      ]).join('\n')}\n`,
    );
  return inputs.length > 0 ? EXIT.holds : EXIT.open;
}

const offerJson = ({ name, label, text, isToCut, isChoice, influence }: Offered) => ({
  change: name,
  label,
  entry: text,
  toCut: isToCut,
  ...(isChoice ? { rowOfTable: true } : { influence }),
});

function give(
  opened: Opened,
  { json, path }: WorkBackCommand,
  figure: FigurePlace,
  answer: Answer,
  io: Io,
): Exit {
  const { solutions } = answer;
  const found = solutions.some(({ fits }) => fits !== false);
  if (json) io.out(`${escaped(jsonByLabel(opened.file, jsonOf(opened, answer)))}\n`);
  else {
    const unit = unitAt(opened, figure);
    for (const one of solutions) {
      io.out(`${wordsOf(one, unit)}\n${checksText(opened, one)}`);
      for (const made of one.made ?? [])
        io.out(
          `  to make: ${wordsOf(made, unit)}${made.isAim ? ', to aim for' : ''}\n${checksText(opened, made)}`,
        );
    }
    if (answer.tried !== undefined) io.out(`${answer.tried}\n`);
  }
  if (answer.reason !== undefined)
    io.err(`fitwright: ${path}: ${onOneLine(byLabel(opened.file)(answer.reason))}\n`);
  return found ? EXIT.holds : EXIT.open;
}

const wordsOf = (one: Solution, unit: Unit): string =>
  `${one.name ?? one.text}: comes to ${shown(one.figure, unit)}`;

function checksText({ file }: Opened, { checks }: Solution): string {
  if (!checks) return '';
  const title = checkTitles(file);
  const { turned, failing, same } = checks;
  const lines = [
    ...turned.map((one) => `${title(one)}: ${one.before.words || 'holds'} -> ${one.after.words || 'holds'}`),
    ...failing.map((one) => `${title(one)}: still ${one.words}`),
    ...(same > 0 ? [`${same} ${same === 1 ? 'check says' : 'checks say'} the same as now`] : []),
  ];
  return lines.map((line) => `    ${line}\n`).join('');
}

const jsonOf = ({ file }: Opened, { between, tried, reason, solutions }: Answer) => {
  const name = checkNames(file);
  const one = ({ checks, made, isAim, fits, all, ...rest }: Solution): object => ({
    ...rest,
    ...(all ? { from: all[0], to: all[1] } : {}),
    ...(isAim ? { aim: true } : {}),
    ...(fits === undefined ? {} : { fits }),
    checks: (checks?.turned ?? []).map((check) => ({
      ...name(check),
      before: check.before.words,
      after: check.after.words,
    })),
    failing: (checks?.failing ?? []).map((check) => ({ ...name(check), verdict: check.words })),
    same: checks?.same ?? 0,
    ...(made && made.length > 0 ? { made: made.map(one) } : {}),
  });
  return {
    solutions: solutions.map(one),
    ...(between ? { searched: between } : {}),
    ...(tried === undefined ? {} : { tried }),
    ...(reason === undefined ? {} : { reason }),
  };
};
