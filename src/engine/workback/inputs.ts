import type { CellInput } from '../../../cells/record/cell.ts';
import { namedChoices } from '../../../cells/tables/threads/names.ts';
import type { CellRecord, Role } from '../../../shared/sheet/format.ts';
import type { Entry } from '../../language/syntax/syntax.ts';
import type { Computed } from '../computed.ts';
import type { Row } from '../network/layout.ts';
import { cellRow, inputRow, partRow } from '../rows/key.ts';
import type { Library } from '../rows/library.ts';
import { numberOf } from '../rows/texts.ts';
import { type Free, freeRow } from '../trial/path.ts';
import type { InputPlace } from '../trial/place.ts';
import type { Offered } from './question.ts';

/** An input that may move, and the row by which it does. */
export interface Movable extends Omit<Offered, 'influence'> {
  free?: Free;
  /** Of a choice: what there is to choose from. */
  rows?: readonly { key: string; name: string }[];
  /** Which of all there are these are, where it is not all of them. */
  which?: string;
  /** Its usual range, SI. */
  usual?: readonly [number, number];
  /** How its text is read. */
  role: Role;
  entry: Entry;
  /** Of a tolerance: the unit it is typed in. */
  typedIn?: string;
}

/** The rows of a table, or what may be taken in the place of a choice in words. */
function rowsOf(
  { tables }: Pick<Library, 'tables'>,
  choice: string,
  text: string,
): Pick<Movable, 'rows' | 'which'> | undefined {
  const table = tables.get(choice);
  if (table) return { rows: table.rows };
  const named = namedChoices.get(choice)?.(text);
  if (!named) return undefined;
  const rows = named.names.map((name) => ({ key: name, name }));
  return named.which === undefined ? { rows } : { rows, which: named.which };
}

/** Why it stays as it is. */
export interface Fixed {
  stays: string;
}

/** What of a line may move, or why it stays. */
export function inputAt(book: Computed, { cell, field }: InputPlace): Movable | Fixed {
  const record = book.scope.records.get(cell);
  if (!record) return { stays: 'That line is no longer there.' };
  if (field === 'entry') return entryOf(book, record);
  if (field === 'tolerance') return toleranceOf(book, record);
  const name = field.startsWith('inputs.') ? field.slice('inputs.'.length) : '';
  const kind = record.kind === undefined ? undefined : book.scope.library.kinds.get(record.kind);
  const input = kind?.inputs.find((one) => one.name === name);
  if (!input) return { stays: `\`${book.scope.called(cell)}\` has no \`${name || field}\` to change.` };
  return inputOf(book, record, input);
}

/** Every input of the sheet that may move; tolerances among them where a spread is wanted. */
export function inputsOf(book: Computed, tolerances: boolean): Movable[] {
  const found: Movable[] = [];
  for (const record of book.scope.records.values()) {
    const kind = record.kind === undefined ? undefined : book.scope.library.kinds.get(record.kind);
    const all =
      record.role === 'cell'
        ? (kind?.inputs ?? []).map((input) => inputOf(book, record, input))
        : [entryOf(book, record), ...(tolerances ? [toleranceOf(book, record)] : [])];
    for (const one of all) if (!('stays' in one)) found.push(one);
  }
  return found;
}

/** So many are told. */
const MOST_STAYING = 4;

/** Why lines that lead to a figure stay as they are; those that are worked out from others are none of them. */
export function staying(book: Computed, leads: (cell: string) => boolean): string[] {
  const found: string[] = [];
  for (const record of book.scope.records.values()) {
    const why =
      held(book, record) ??
      (isLocked(record) ? { stays: `\`${book.scope.called(record.id)}\` ${LOCKED}` } : undefined);
    const isText = record.role === 'section' || record.role === 'remark';
    if (why && !isText && leads(record.id)) found.push(why.stays);
    if (found.length === MOST_STAYING) break;
  }
  return found;
}

const stays = (why: string): Fixed => ({ stays: why });

/** A line that was measured, released or locked stays put, whatever of it is asked for. */
function held(book: Computed, record: CellRecord): Fixed | undefined {
  const called = `\`${book.scope.called(record.id)}\``;
  if (record.role === 'section' || record.role === 'remark')
    return stays(`${called} is text and has no value.`);
  if (record.role === 'measured')
    return stays(`${called} was read off the part: what was read stays as it is.`);
  if (book.scope.isMeasured(record, 'value'))
    return stays(`${called} has been measured: it stays as it came out.`);
  if (record.issued?.trim())
    return stays(
      `${called} has been released to cut at ${record.issued.trim()} and stays there: withdraw it first.`,
    );
  return undefined;
}

const LOCKED = 'is locked by its author: unlock it first.';

/** As the page has it: what is still to be filled in is not locked. */
const isLocked = (record: CellRecord): boolean =>
  record.locked === true && (record.entry?.trimStart().startsWith('=') || !record.fill) === true;

function entryOf(book: Computed, record: CellRecord): Movable | Fixed {
  const { scope } = book;
  const called = `\`${scope.called(record.id)}\``;
  const why = held(book, record);
  if (why) return why;
  if (record.role === 'cell') return stays(`${called} is a library cell: name one of its inputs.`);
  if (isLocked(record)) return stays(`${called} ${LOCKED}`);
  const text = record.entry?.trim() ?? '';
  const { entry, problems } = scope.texts.entry(text, record.quantity, record.role, record.display);
  if (problems.length > 0) return stays(`The entry of ${called} cannot be read: put it right first.`);
  if (entry.kind === 'formula' && record.role === 'worked')
    return stays(`${called} is worked out from other lines: choose one of those it depends on.`);
  const row = freeRow(book, cellRow(record.id));
  if (!row || entry.kind === 'readings') return stays(`${called} is text and has no value.`);
  return {
    cell: record.id,
    field: 'entry',
    name: scope.called(record.id),
    label: record.label ?? record.name ?? record.id,
    ...shownAs(record.quantity, record.display),
    text,
    ...(entry.kind === 'formula' ? { isFormula: true } : {}),
    isToCut: record.role === 'chosen',
    free: { row },
    role: record.role,
    entry,
  };
}

function toleranceOf(book: Computed, record: CellRecord): Movable | Fixed {
  const { scope, network } = book;
  const called = `\`${scope.called(record.id)}\``;
  const why = held(book, record);
  if (why) return why;
  if (record.locked) return stays(`${called} ${LOCKED}`);
  const text = record.tolerance?.trim();
  const key = cellRow(record.id);
  const row = [partRow(key, 'cut'), key]
    .map((one) => network.rows.get(one))
    .find((one) => one?.source !== undefined);
  const { spread } = text
    ? scope.texts.tolerance(text, record.quantity, row && nominalNumber(book, row))
    : { spread: undefined };
  if (!text || !spread || spread.percent || !row || reach(row) === undefined)
    return stays(`${called} has no tolerance in figures that could be made closer.`);
  return {
    cell: record.id,
    field: 'tolerance',
    name: `${scope.called(record.id)} tolerance`,
    label: `${record.label ?? record.name ?? record.id}: its tolerance`,
    ...shownAs(record.quantity, record.display),
    text,
    isToCut: record.role === 'chosen',
    free: { row, moves: 'spread' },
    ...(spread.unit ? { typedIn: spread.unit.symbol } : {}),
    role: record.role,
    entry: { kind: 'blank' },
  };
}

function inputOf(book: Computed, record: CellRecord, input: CellInput): Movable | Fixed {
  const { scope } = book;
  const called = `\`${scope.called(record.id)}.${input.name}\``;
  if (record.locked) return stays(`\`${scope.called(record.id)}\` ${LOCKED}`);
  if (input.record !== undefined) return stays(`${called} names another line: change what that one says.`);
  if (input.role === 'measured' || input.counts === 'measured')
    return stays(`${called} was read off the part: what was read stays as it is.`);
  const typed = record.inputs?.[input.name]?.trim() ?? '';
  const text = typed === '' ? (input.default ?? '') : typed;
  const base = {
    cell: record.id,
    field: `inputs.${input.name}`,
    name: `${scope.called(record.id)}.${input.name}`,
    label: `${record.label ?? scope.called(record.id)}: ${input.label}`,
    ...shownAs(input.quantity, undefined),
    text,
    isToCut: input.role === 'chosen',
    role: input.role ?? 'given',
  };
  if (input.choice !== undefined) {
    const rows = rowsOf(scope.library, input.choice, text);
    if (!rows) return stays(`${called} is text and has no value.`);
    if (scope.choices.nameTaken(text) !== undefined)
      return stays(`${called} is chosen in another line: change that one.`);
    return { ...base, isChoice: true, ...rows, entry: { kind: 'blank' } };
  }
  const { entry, problems } = scope.texts.entry(text, input.quantity, input.role ?? 'given');
  if (problems.length > 0) return stays(`The entry of ${called} cannot be read: put it right first.`);
  const row = freeRow(book, inputRow(record.id, input.name));
  if (!row) return stays(`${called} only names another line: change that one.`);
  const [low, high] = (input.sensible ?? []).map((end) =>
    numberOf(scope.texts.entry(end, input.quantity, 'given').entry),
  );
  return {
    ...base,
    ...(entry.kind === 'formula' && typed !== '' ? { isFormula: true } : {}),
    ...(low !== undefined && high !== undefined ? { usual: [low, high] as const } : {}),
    free: { row },
    entry,
  };
}

const shownAs = (
  quantity: string | undefined,
  display: string | undefined,
): Pick<Movable, 'quantity' | 'display'> => ({
  ...(quantity ? { quantity } : {}),
  ...(display ? { display } : {}),
});

const nominalNumber = ({ grid }: Computed, row: Row): number | undefined => {
  const value = grid.nominal(row.slot);
  return typeof value === 'number' ? value : undefined;
};

/** Half the width of a source whose ends are numbers, SI. */
export const reach = (row: Row): number | undefined => {
  const { body } = row.definition;
  if (body.kind !== 'source') return undefined;
  const { low, high } = body.ends;
  return typeof low === 'number' && typeof high === 'number' && high > low ? (high - low) / 2 : undefined;
};
