import { isNone } from '../../../shared/dimension.ts';
import type { Remedy } from '../../../shared/problem.ts';
import { kindsOf } from '../../../shared/quantities/quantities.ts';
import { CELL_FIELDS } from '../../../shared/sheet/cell-fields.ts';
import { fieldAtPath } from '../../../shared/sheet/field.ts';
import { fieldWords } from '../../../shared/sheet/field-words.ts';
import type { CellRecord, Role } from '../../../shared/sheet/format.ts';
import { type EntryContext, NO_HANDBOOK, parseEntry, parseTolerance } from '../../language/parse.ts';
import { sizeOf } from '../../language/syntax/size-of.ts';
import { isAngular } from '../../language/syntax/sort.ts';
import type { Entry, ParsedEntry } from '../../language/syntax/syntax.ts';
import { unitOfSize } from '../../language/values/tolerance-unit.ts';
import { preferences } from '../kit/preferences.ts';
import { didHint } from '../state/hints.ts';
import type { Sheet } from '../state/sheet.ts';
import { spacedReadings } from './spaced-readings.ts';
import type { EntrySpot } from './spot.ts';

/** The role an entry of a field is read in: what a `±` in it means. */
const roleOf = (field: string, record: CellRecord | undefined): Role => {
  const role = fieldAtPath(CELL_FIELDS, field)?.reads?.role ?? 'given';
  if (role !== 'own') return role;
  return record === undefined || record.role === 'cell' ? 'given' : record.role;
};

/** The unit its value is shown in, where that is not the sheet's own: a bare figure may be in either. */
const displayOf = (sheet: Sheet, { cell, field }: EntrySpot): { display: string } | undefined => {
  const line = sheet.line(cell);
  const [part, name = ''] = field.split('.');
  if (part === 'inputs' || fieldAtPath(CELL_FIELDS, field)?.reads?.quantity !== 'own') return undefined;
  const display = part === 'outputs' ? line?.result?.outputs[name]?.display : line?.record.display;
  return display === undefined ? undefined : { display };
};

/** Unit of the size a tolerance stands beside. */
const sizeUnitAt = (sheet: Sheet, { cell, quantity }: EntrySpot): { sizeUnit: string } | undefined => {
  const { entry } = sheet.line(cell)?.record ?? {};
  if (entry === undefined) return undefined;
  const units = { ...sheet.state.units };
  const sizeUnit = unitOfSize(
    parseEntry(entry, { ...(quantity !== undefined && { quantity }), units, handbook: NO_HANDBOOK }).entry,
  );
  return sizeUnit === undefined ? undefined : { sizeUnit };
};

/** How a text typed here is read: with the user's own decimal mark. */
export const entryContext = (sheet: Sheet, spot: EntrySpot, handbook = NO_HANDBOOK): EntryContext => ({
  ...(spot.quantity !== undefined && { quantity: spot.quantity }),
  units: { ...sheet.state.units },
  handbook,
  ...(spot.kind === 'tolerance' && sizeUnitAt(sheet, spot)),
  decimal: preferences().decimal,
  ...(spot.kind === 'entry' && displayOf(sheet, spot)),
  role: spot.role ?? roleOf(spot.field, sheet.line(spot.cell)?.record),
});

/** Kind of quantity a first entry settles; a formula's is left to what it gives. */
export const kindOfEntry = (entry: Entry): string | undefined => {
  const literal =
    entry.kind === 'range'
      ? entry.low
      : entry.kind === 'readings'
        ? entry.stations.flat().find(({ bare }) => !bare)
        : sizeOf(entry);
  if (!literal || literal.bare) return undefined;
  // An angle has no dimension, as a plain number has none.
  if (isNone(literal.dimension)) return isAngular(literal.unit) ? 'angle' : 'number';
  return kindsOf(literal.dimension, literal.point)[0]?.name;
};

/** Writes a typed text into the sheet as it is stored: a bare number gets its unit now, so that a later switch changes no value. */
export const commitText = (sheet: Sheet, spot: EntrySpot, text: string): void =>
  write(sheet, spot, text, entryContext(sheet, spot));

/** The same for a text from the sheet or the program itself, which has a decimal point whatever the user writes. */
export const commitStored = (sheet: Sheet, spot: EntrySpot, text: string): void =>
  write(sheet, spot, text, { ...entryContext(sheet, spot), decimal: '.' });

/**
 * A number that the typist's own mark leaves in doubt (1.234 to somebody who writes a comma) reads well with the stored
 * point: it is stored with the other mark, so that the question stays until it is answered.
 */
const keepDoubt = ({ committed, problems }: Pick<ParsedEntry, 'committed' | 'problems'>): string =>
  problems.reduce((text, { kind, from, to }) => {
    const number = kind === 'ask' && from !== undefined && to !== undefined ? text.slice(from, to) : '';
    if (!/^\d{1,3}\.\d{3}$/.test(number)) return text;
    return text.slice(0, from) + number.replace('.', ',') + text.slice(to);
  }, committed);

/** Reads a text as it was typed. */
export const readEntry = (text: string, context: EntryContext): ParsedEntry => {
  const read = parseEntry(context.role === 'measured' ? spacedReadings(text) : text, context);
  return context.decimal === ',' ? { ...read, committed: keepDoubt(read) } : read;
};

const write = (sheet: Sheet, spot: EntrySpot, text: string, context: EntryContext): void => {
  const { document } = sheet;
  if (spot.kind === 'tolerance') {
    document.setField(spot.cell, spot.field, parseTolerance(text, context).committed);
    return;
  }
  const role = fieldAtPath(CELL_FIELDS, spot.field)?.reads?.role;
  if (role === 'own' || role === 'measured') didHint('entry');
  const parsed = readEntry(text, context);
  const record = sheet.line(spot.cell)?.record;
  const kind =
    spot.field === 'entry' && record?.quantity === undefined && record?.role !== 'cell'
      ? kindOfEntry(parsed.entry)
      : undefined;
  if (kind === undefined) {
    document.setField(spot.cell, spot.field, parsed.committed);
    return;
  }
  document.batch(`${fieldWords(spot.field)} of ${sheet.titleOf(spot.cell)}`, () => {
    document.setField(spot.cell, spot.field, parsed.committed);
    document.setField(spot.cell, 'quantity', kind);
  });
};

/** Takes a remedy: an entry in place of the present one, or a setting of the sheet. */
export const takeRemedy = (sheet: Sheet, spot: EntrySpot, remedy: Remedy): void => {
  if (remedy.setting) {
    sheet.document.setUnits({ [remedy.setting.name]: remedy.setting.value });
    return;
  }
  if (remedy.entry === undefined) return;
  if (remedy.quantity !== undefined && spot.field === 'entry') {
    sheet.document.setField(spot.cell, 'quantity', remedy.quantity);
    return;
  }
  commitStored(sheet, spot, remedy.entry);
};

/**
 * Whether taking a remedy says that the user writes a decimal comma: what was typed has one where the remedy has the point.
 */
export const saysComma = (sheet: Sheet, { cell, field }: EntrySpot, { entry }: Remedy): boolean => {
  if (preferences().decimal === ',' || entry === undefined) return false;
  const record = sheet.line(cell)?.record as unknown as Record<string, unknown> | undefined;
  const typed = field
    .split('.')
    .reduce<unknown>((value, key) => (value as Record<string, unknown> | undefined)?.[key], record);
  return typeof typed === 'string' && /\d,\d/.test(typed) && typed.replace(/(\d),(?=\d)/g, '$1.') === entry;
};
