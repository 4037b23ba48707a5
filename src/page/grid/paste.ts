import type { CellRecord, Role } from '../../../shared/sheet/format.ts';
import { importText } from '../../document/files.ts';
import { nameFrom } from '../../document/model/names.ts';
import { referencesIn } from '../../language/names.ts';
import { commitText, entryContext, kindOfEntry, readEntry } from '../entry/commit.ts';
import { spotOfField } from '../entry/input-spot.ts';
import { pairsTyped } from '../entry/pairs.ts';
import type { EntrySpot } from '../entry/spot.ts';
import { readingsFrom, readTable } from '../entry/table.ts';
import { pastedOnOneLine } from '../kit/one-line.ts';
import type { SheetContext } from '../state/context.ts';
import type { Place } from '../state/cursor.ts';
import { isLocked, sayLocked } from '../state/edit-entry.ts';
import { hasRoom } from '../state/has-room.ts';
import { bringIntoView } from '../state/in-place.ts';
import { useLibrary } from '../state/library.ts';
import { namesOf } from '../state/lines-commands.ts';
import { cellOfRow, isLineRow, lineRow, partsOfRow } from '../state/row-key.ts';
import type { Selection } from '../state/selection.ts';
import { linesFromTable } from './lines-from-table.ts';

/** Where an entry pasted at a place goes, and whether a list of readings may stand there. */
const spotAt = (
  { sheet }: SheetContext,
  place: Place,
): { spot: EntrySpot; list: boolean; pairs?: readonly [string, string] | undefined } | undefined => {
  const { cell, input, output } = partsOfRow(place.row);
  const line = sheet.line(cell);
  if (place.column !== 'entry' || !line) return undefined;
  const library = useLibrary();
  const spot = (field: string): EntrySpot => spotOfField(sheet, library(), cell, field);
  if (output !== undefined) return { spot: spot(`outputs.${output}.measured.entry`), list: true };
  if (input !== undefined) {
    const at = spot(`inputs.${input}`);
    const { pairs } =
      library()
        ?.kinds.get(line.record.kind ?? '')
        ?.inputs.find(({ name }) => name === input) ?? {};
    return { spot: at, list: at.role === 'measured', pairs };
  }
  return { spot: spot('entry'), list: line.record.role === 'measured' };
};

/** Names the pasted lines refer to that neither they nor the sheet have. */
const missingNames = ({ sheet }: SheetContext, cells: readonly Partial<CellRecord>[]): string[] => {
  const own = new Set(cells.map(({ name }) => name));
  const texts = cells.flatMap((cell) => [
    cell.entry ?? '',
    cell.limits?.lower ?? '',
    cell.limits?.upper ?? '',
    ...Object.values(cell.inputs ?? {}),
  ]);
  const names = texts
    .filter((text) => text.trimStart().startsWith('='))
    .flatMap((text) => [...referencesIn(text)].map(({ name }) => name));
  return [...new Set(names)].filter((name) => !own.has(name) && !sheet.idOf(name));
};

const insert = (
  context: SheetContext,
  selection: Selection,
  after: string | null,
  cells: readonly Partial<CellRecord>[],
): void => {
  const { sheet, cursor, notices } = context;
  if (!hasRoom(context, cells.length, JSON.stringify(cells, undefined, 2).length)) return;
  const missing = missingNames(context, cells);
  const what = cells.length === 1 ? (cells[0]!.label ?? 'one line') : `${cells.length} lines`;
  const ids = sheet.document.insertCells(after, cells, `paste of ${what}`);
  selection.set(ids);
  cursor.setUnfolded(false);
  cursor.move({ row: lineRow(ids[0]!), column: 'name' });
  bringIntoView(lineRow(ids[0]!));
  const lacking =
    missing.length > 0
      ? ` This sheet has no ${missing.slice(0, 3).join(', ')}${missing.length > 3 ? ' …' : ''} they refer to.`
      : '';
  notices.say(`Pasted ${namesOf(context, ids)}.${lacking}`, {
    label: 'Undo',
    run: () => sheet.document.undo(),
  });
};

const asHere = ({ sheet }: SheetContext, role: Role) => ({
  ...entryContext(sheet, { cell: '', field: 'entry', kind: 'entry' }),
  role,
});

/** What a spreadsheet's rows say, as they are stored: every bare number of a length gets the sheet's unit, and each line a name. */
const committed = (context: SheetContext, record: Partial<CellRecord>): Partial<CellRecord> => {
  const { entry, label, limits } = record;
  const here = asHere(context, record.role ?? 'given');
  // A bare figure of a shop's table is a size, as it is in a line put in by hand.
  const asSize = (text: string) => readEntry(text, { ...here, quantity: 'length' });
  const read = entry === undefined || entry.startsWith('=') ? undefined : asSize(entry);
  const isSize =
    read !== undefined &&
    (read.problems.length === 0 || (/^[+-]?[\d.,; ]+$/.test(entry!) && read.problems[0]!.kind === 'ask'));
  const other = isSize || entry === undefined ? undefined : readEntry(entry, here);
  const quantity = isSize ? 'length' : other && kindOfEntry(other.entry);
  const limit = (text: string) => asSize(text).committed;
  return {
    ...record,
    ...(label !== undefined && record.role !== 'section' && { name: nameFrom(label) }),
    ...(quantity && { quantity }),
    ...(entry !== undefined && { entry: (isSize ? read : other)!.committed }),
    ...(limits && {
      limits: {
        ...(limits.lower && { lower: limit(limits.lower) }),
        ...(limits.upper && { upper: limit(limits.upper) }),
      },
    }),
  };
};

/**
 * Puts a pasted text where it belongs: lines of our own file format behind the present line; a column of figures into
 * the entry under the cursor, as readings; any other table as new lines.
 */
export const pasteText = (context: SheetContext, selection: Selection, text: string): void => {
  const { sheet, cursor, notices } = context;
  const place = cursor.place();
  const cell = place && cellOfRow(place.row);
  const after = selection.ids().at(-1) ?? cell ?? sheet.state.order.at(-1) ?? null;
  if (text.trim() === '') {
    notices.say('There is nothing to paste.');
    return;
  }
  if (text.trimStart().startsWith('{')) {
    const read = importText(text);
    if ('message' in read) notices.say(`These are no lines of a sheet: ${read.message}`);
    else if (read.file.cells.length === 0) notices.say('There is no line in what was copied.');
    else insert(context, selection, after, read.file.cells);
    return;
  }
  const table = readTable(text);
  const at = place && !selection.any() ? spotAt(context, place) : undefined;
  if (at?.pairs) {
    const read = pairsTyped(text, at.pairs, entryContext(sheet, at.spot));
    sheet.document.setField(at.spot.cell, at.spot.field, pastedOnOneLine(read));
    notices.say(`Pasted into ${sheet.titleOf(at.spot.cell)}.`);
    return;
  }
  if (at) {
    const readings = readingsFrom(table);
    const single = table.length === 1 && table[0]!.length === 1;
    if (single || (readings && (at.list || readings.count === 1))) {
      const entry = single ? table[0]![0]! : readings!.text;
      const enter = () => {
        commitText(sheet, at.spot, entry);
        notices.say(
          single || readings!.count === 1
            ? `Pasted into ${sheet.titleOf(at.spot.cell)}.`
            : `Pasted ${readings!.count} readings into ${sheet.titleOf(at.spot.cell)}.`,
        );
      };
      if (place && isLocked(context, place.row)) sayLocked(context, place.row, entry, enter);
      else enter();
      return;
    }
    if (place && !isLineRow(place.row)) {
      notices.say('One value belongs here: what was copied holds more.');
      return;
    }
  }
  const lines = linesFromTable(table, asHere(context, 'measured'));
  if (lines.length > 0 && hasRoom(context, lines.length))
    insert(
      context,
      selection,
      after,
      lines.map((record) => committed(context, record)),
    );
};
