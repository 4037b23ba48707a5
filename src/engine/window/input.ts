import { handbook } from '../../../cells/handbook.ts';
import { differenceUnit } from '../../../shared/quantities/figures.ts';
import { displayUnit } from '../../../shared/quantities/quantities.ts';
import { magnitude, roundedText, trimmedText } from '../../../shared/rounding.ts';
import type { CellRecord, Role, SheetFile } from '../../../shared/sheet/format.ts';
import { fromSI, isUnit, parseUnit, type Unit } from '../../../shared/units/units.ts';
import { sizeOf } from '../../language/syntax/size-of.ts';
import type { Entry, Spread } from '../../language/syntax/syntax.ts';
import { cellRow, inputRow, type RowKey } from '../rows/key.ts';
import type { Library } from '../rows/library.ts';
import type { CellResult } from '../rows/results.ts';
import { Texts } from '../rows/texts.ts';
import type { InputPlace } from '../trial/place.ts';

/** An input whose value may be another one. */
export interface Movable {
  place: InputPlace;
  key: RowKey;
  /** `bush_od`, `press.interference`. */
  name: string;
  /** What its entry is written in. */
  unit: Unit;
  quantity?: string;
  /** As it stands, SI; undefined while it is blank. */
  value?: number;
  /** Usual range of an input of the library, SI. */
  usual?: readonly [number, number];
  /** The side on which metal is still on, of a size that is cut. */
  metalOn?: 'low' | 'high';
  /** The record with another value, its own spread about it; undefined where it cannot be written. */
  put(si: number): CellRecord | undefined;
}

/** Why an input cannot be another, in one sentence. */
export interface Unmovable {
  why: string;
}

/** What of an input its text depends on. */
interface Spot {
  record: CellRecord;
  text: string;
  quantity: string | undefined;
  role: Role;
  display: string | undefined;
  write: (text: string) => CellRecord;
}

/** An input that may be moved, or why it stays. `of`: results of the sheet as it stands. */
export function movableOf(
  file: SheetFile,
  library: Library,
  place: InputPlace,
  of: (cell: string) => CellResult | undefined,
): Movable | Unmovable {
  const record = file.cells.find(({ id }) => id === place.cell);
  if (!record) return { why: 'There is no such line in the sheet.' };
  const called = record.name ?? record.label ?? record.id;
  if (record.role !== 'cell') {
    const stays = whyItStays(record, called);
    if (stays) return { why: stays };
    const quantity = record.quantity ?? of(record.id)?.outputs.value?.quantity;
    return movable(file, place, cellRow(record.id), called, {
      record,
      text: record.entry ?? '',
      quantity,
      role: record.role,
      display: record.display,
      write: (entry) => ({ ...record, entry }),
    });
  }
  const kind = library.kinds.get(record.kind ?? '');
  const numbers = (kind?.inputs ?? []).filter((one) => !one.record && !one.choice).map((one) => one.name);
  const list = numbers.map((name) => `${called}.${name}`).join(', ') || 'none';
  if (!place.field.startsWith('inputs.'))
    return { why: `"${called}" is a library cell: name one of its inputs (${list}).` };
  const wanted = place.field.slice('inputs.'.length);
  const input = kind?.inputs.find((one) => one.name === wanted);
  const name = `${called}.${wanted}`;
  if (!kind || !input) return { why: `"${called}" has no input "${wanted}". It has: ${list}.` };
  if (input.record || input.choice)
    return {
      why: `"${name}" takes ${input.record ? `a ${input.record} cell` : 'a row of a table'} and no number, so it has no window.`,
    };
  const found = movable(file, place, inputRow(record.id, input.name), name, {
    record,
    text: record.inputs?.[input.name]?.trim() || (input.default ?? ''),
    quantity: input.quantity,
    role: input.role ?? 'given',
    display: undefined,
    write: (text) => ({ ...record, inputs: { ...record.inputs, [input.name]: text } }),
  });
  if ('why' in found || !input.sensible) return found;
  const texts = new Texts(handbook, file.units);
  const [low, high] = input.sensible.map(
    (text) => sizeOf(texts.entry(text, input.quantity, 'given').entry)?.value,
  );
  return low === undefined || high === undefined ? found : { ...found, usual: [low, high] };
}

/** What stands fast, and why. */
function whyItStays(record: CellRecord, called: string): string | undefined {
  const { role, entry = '' } = record;
  if (role === 'section' || role === 'remark') return `"${called}" holds text and no number.`;
  if (role === 'measured')
    return `"${called}" was read off the part, and a reading is what it is: ask for the window of a size that is still to be cut.`;
  if (record.measured?.entry.trim())
    return `"${called}" has been measured, and what it came out at stands: ask for the window of a size that is still to be cut.`;
  if (record.issued?.trim())
    return `"${called}" has been released to cut, and the released size stands: take it back first.`;
  const isFormula = entry.trimStart().startsWith('=');
  if (record.locked && entry.trim() && (isFormula || !record.fill))
    return `"${called}" is locked by its author: unlock it first.`;
  if (role === 'worked' || (role === 'given' && isFormula))
    return `"${called}" is worked out from other lines: ask for the window of one that it depends on.`;
  return undefined;
}

function movable(
  file: SheetFile,
  place: InputPlace,
  key: RowKey,
  name: string,
  spot: Spot,
): Movable | Unmovable {
  const texts = new Texts(handbook, file.units);
  const read = (text: string): Entry => texts.entry(text, spot.quantity, spot.role, spot.display).entry;
  const { entry, problems } = texts.entry(spot.text, spot.quantity, spot.role, spot.display);
  const [wrong] = problems;
  if (wrong) return { why: `"${name}" cannot be read: ${wrong.message}` };
  if (entry.kind === 'readings') return { why: `"${name}" is a list of readings and no single size.` };
  const isOwn = place.field === 'entry';
  const isName = /^=?\s*[\p{L}_][\p{L}\p{N}_.]*$/u.test(spot.text.trim());
  if (!isOwn && entry.kind === 'formula')
    return {
      why: isName
        ? `"${name}" takes what \`${spot.text.trim().replace(/^=\s*/, '')}\` is: ask for the window of that line.`
        : `"${name}" is worked out from other lines: ask for the window of one that it depends on.`,
    };
  const middle = middleOf(entry);
  const unit = unitOf(entry, spot, file);
  const { metalOn } = isOwn ? (spot.record.limits ?? {}) : {};
  return {
    place,
    key,
    name,
    unit,
    ...(spot.quantity ? { quantity: spot.quantity } : {}),
    ...(middle === undefined ? {} : { value: middle }),
    ...(metalOn ? { metalOn } : {}),
    put: (si) => {
      const text = textAt(si, entry, spot.text, unit);
      const made = middleOf(read(text));
      const near =
        made !== undefined && Math.abs(made - si) <= 1e-12 * Math.max(Math.abs(si), Math.abs(made));
      return near && sameSpread(entry, read(text)) ? spot.write(text) : undefined;
    },
  };
}

/** The one size an entry stands for; of limits their middle. */
const middleOf = (entry: Entry): number | undefined =>
  entry.kind === 'range' ? (entry.low.value + entry.high.value) / 2 : sizeOf(entry)?.value;

/** The unit the entry is written in; that of the line where it has none. */
function unitOf(entry: Entry, { quantity, display }: Spot, file: SheetFile): Unit {
  const written = entry.kind === 'range' ? entry.high.unit : sizeOf(entry)?.unit;
  const shown = displayUnit(quantity, file.units, display);
  const found = written === undefined ? undefined : parseUnit(written, { point: shown.point === true });
  const isPlain = found !== undefined && isUnit(found) && found.symbol !== '' && entry.kind !== 'designation';
  return isPlain ? found : shown;
}

const spreadOf = (entry: Entry): Spread | undefined => ('spread' in entry ? entry.spread : undefined);

const sameSpread = (before: Entry, now: Entry): boolean => {
  const [a, b] = [spreadOf(before), spreadOf(now)];
  if (!a || !b) return a === b;
  // An ISO 286 class reaches otherwise at another size.
  if (a.form === 'class') return b.form === 'class' && a.designation === b.designation;
  const near = (x: number, y: number): boolean =>
    Math.abs(x - y) <= 1e-9 * Math.max(Math.abs(x), Math.abs(y));
  return a.percent === b.percent && a.k === b.k && near(a.low, b.low) && near(a.high, b.high);
};

const DIGITS = 15;

/** A number in full, without a power of ten. */
const decimal = (x: number): string => trimmedText(roundedText(x, Math.max(0, DIGITS - 1 - magnitude(x))), 0);

/** A value in full in a unit. */
export const writtenIn = (si: number, unit: Unit): string =>
  `${decimal(fromSI(si, unit))}${unit.symbol === '' ? '' : ` ${unit.symbol}`}`;

/** The text of an entry at another value: what stands behind the number stays as it is. */
function textAt(si: number, entry: Entry, text: string, unit: Unit): string {
  if (entry.kind === 'range') {
    const half = Math.abs(entry.high.value - entry.low.value) / 2;
    return `${writtenIn(si - half, unit)} .. ${writtenIn(si + half, unit)}`;
  }
  const spread = spreadOf(entry);
  return spread ? `${writtenIn(si, unit)} ${spreadText(spread, unit, text)}` : writtenIn(si, unit);
}

function spreadText(spread: Spread, unit: Unit, text: string): string {
  if (spread.form === 'class') return spread.designation ?? '';
  const step = differenceUnit(unit);
  const one = (x: number): string => (spread.percent ? `${decimal(100 * x)} %` : writtenIn(x, step));
  const k = spread.k === undefined ? '' : ` ${/\(\s*k\s*=[^)]*\)/.exec(text)?.[0] ?? `(k=${spread.k})`}`;
  if (spread.low === -spread.high) return `± ${one(spread.high)}${k}`;
  const signed = (x: number): string => (x < 0 ? `-${one(-x)}` : `+${one(x)}`);
  return `${signed(spread.high)} ${signed(spread.low)}${k}`;
}
