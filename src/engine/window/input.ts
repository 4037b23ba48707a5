import type { CellRecord } from '../../../shared/sheet/format.ts';
import type { Unit } from '../../../shared/units/units.ts';
import { constantOf } from '../../language/syntax/constant.ts';
import { sizeOf } from '../../language/syntax/size-of.ts';
import type { Entry } from '../../language/syntax/syntax.ts';
import { cellRow, inputRow, type RowKey } from '../rows/key.ts';
import type { InputPlace } from '../trial/place.ts';
import { type TrialSheet, withEntry } from '../trial/trial-sheet.ts';
import { inputAt } from '../workback/inputs.ts';
import { entryWith, inFull, unitOf } from '../workback/written.ts';

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

/** What arithmetic may change of a number that is written down and read again, as a share of it. */
const NEAR = 1e-12;

/** An input that may be moved, or why it stays: as work back has it, but for what is worked out from other lines. */
export function movableOf(trial: TrialSheet, place: InputPlace): Movable | Unmovable {
  const book = trial.computed();
  const input = inputAt(book, place);
  const why = (message: string): Unmovable => ({ why: message.replace(/`([^`]*)`/g, '"$1"') });
  if ('stays' in input) return why(input.stays);
  const { cell, field } = place;
  const record = trial.record(cell);
  if (!record || !input.free || input.rows !== undefined)
    return why(`\`${input.name}\` is a choice and no number, so it has no window.`);
  if (input.isFormula && (field !== 'entry' || record.role !== 'chosen'))
    return why(
      `\`${input.name}\` is worked out from other lines: ask for the window of one that it depends on.`,
    );
  const { name, quantity, usual, entry, role, display } = input;
  const unit = unitOf(book, input);
  const value = middleOf(entry);
  const metalOn = field === 'entry' ? record.limits?.metalOn : undefined;
  return {
    place,
    key: field === 'entry' ? cellRow(cell) : inputRow(cell, field.slice('inputs.'.length)),
    name,
    unit,
    ...(quantity ? { quantity } : {}),
    ...(value === undefined ? {} : { value }),
    ...(usual ? { usual } : {}),
    ...(metalOn ? { metalOn } : {}),
    put: (si) => {
      const text = entryWith(input, inFull(si, unit), unit);
      const made = middleOf(book.scope.texts.entry(text, quantity, role, display).entry);
      const isThere =
        made !== undefined && Math.abs(made - si) <= NEAR * Math.max(Math.abs(si), Math.abs(made));
      return isThere ? withEntry(record, field, text) : undefined;
    },
  };
}

/** The one size an entry stands for, a plain number behind `=` too; of limits their middle. */
const middleOf = (entry: Entry): number | undefined => {
  if (entry.kind === 'formula') return constantOf(entry.expr);
  return entry.kind === 'range' ? (entry.low.value + entry.high.value) / 2 : sizeOf(entry)?.value;
};
