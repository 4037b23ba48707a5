import type { TradeFunction } from '../../../cells/record/cell.ts';
import type { Problem } from '../../../shared/problem.ts';
import { quantityKind, quantityKinds } from '../../../shared/quantities/quantities.ts';
import { findUnit, toSI } from '../../../shared/units/units.ts';
import { usesComma } from '../kit/decimal-mark.ts';
import { say } from '../kit/words.ts';
import { loadLibrary } from '../state/library.ts';
import type { Sheet } from '../state/sheet.ts';
import type { EntrySpot } from './spot.ts';

/** A cell that a formula can name. */
interface NameWord {
  name: string;
  label: string;
}

/** Of a plain line: `READING_FIGURES` of the engine, in words. */
const OF_READINGS: readonly NameWord[] = [
  { name: 'mean', label: 'mean of its readings' },
  { name: 'least', label: 'least of its readings' },
  { name: 'greatest', label: 'greatest of its readings' },
  { name: 'out_of_round', label: 'out-of-round' },
  { name: 'taper', label: 'taper' },
];

/** What the editor asks of the sheet around it; read when asked, so that it is never stale. */
export interface SheetWords {
  names: () => NameWord[];
  /** What a formula can name of a cell behind its point: figures, then sizes and choices it was given. */
  partsOf: (name: string) => Promise<readonly NameWord[]>;
  /** In the place for what was measured: the size planned, in the unit that a bare number takes. */
  plan: () => string | undefined;
  /** Symbols of units that fit the place, the likeliest first. */
  units: () => string[];
  /** Functions of the library, as it has them. */
  library: () => Promise<readonly TradeFunction[]>;
  problems: (text: string) => Promise<Problem[]>;
}

export const sheetWords = (sheet: Sheet, spot: EntrySpot): SheetWords => ({
  names: () =>
    sheet.state.order.flatMap((id) => {
      const line = sheet.line(id);
      if (!line?.record.name || id === spot.cell) return [];
      return [{ name: line.record.name, label: say(line.record.label ?? '') }];
    }),
  partsOf: async (name) => {
    const id = sheet.state.order.find((one) => sheet.line(one)?.record.name === name);
    const record = id === undefined ? undefined : sheet.line(id)?.record;
    if (!record) return [];
    if (record.role !== 'cell') return OF_READINGS;
    const { kind = '' } = record;
    const { inputs = [], outputs = [] } = (await loadLibrary([kind])).kinds.get(kind) ?? {};
    return [...outputs, ...inputs].map((one) => ({ name: one.name, label: say(one.label) }));
  },
  plan: () => {
    const { length } = sheet.state.units;
    const figure = sheet.line(spot.cell)?.result?.outputs.value?.planned?.value;
    if (spot.field !== 'measured.entry' || spot.quantity !== 'length' || figure === undefined)
      return undefined;
    // As far as a shop reads: ten-thousandths of an inch, micrometres.
    const text = (figure / toSI(1, findUnit(length)!)).toFixed(length === 'in' ? 4 : 3);
    return usesComma() ? text.replace('.', ',') : text;
  },
  units: () => {
    const system = sheet.state.units.length;
    const other = system === 'in' ? 'mm' : 'in';
    const kind = spot.quantity === undefined ? undefined : quantityKind(spot.quantity);
    const kinds = kind ? [kind] : quantityKinds;
    const symbols = [...kinds.flatMap((k) => k.units[system]), ...kinds.flatMap((k) => k.units[other])];
    return [...new Set(symbols)].filter((symbol) => symbol !== '');
  },
  library: async () => (await loadLibrary()).functions,
  problems: async (text) => {
    const { entryProblems } = await import('./check-text.ts');
    return entryProblems(sheet, spot, text);
  },
});
