import type { CellRecord } from '../../../shared/sheet/format.ts';
import { findUnit } from '../../../shared/units/units.ts';
import type { Literal } from '../../language/syntax/syntax.ts';
import { inputRow, outputRow, type RowKey } from '../rows/key.ts';
import type { SheetScope } from '../rows/scope.ts';
import { numberOf } from '../rows/texts.ts';
import type { Datum } from './datum.ts';

/** Divisions that a gauge shows from a setting, typed apart from it in a cell of the library. */
export interface Counted {
  cell: string;
  field: string;
  text: string;
  count: number;
  /** Rows of the size, of what the gauge moved, and of one division. */
  size: RowKey;
  travel: RowKey;
  division: RowKey | undefined;
}

/** The count of a cell that works a size out from a setting; undefined where it is none, or no plain number. */
export function countedOf(record: CellRecord, scope: SheetScope): Counted | undefined {
  const kind = record.kind === undefined ? undefined : scope.library.kinds.get(record.kind);
  const reads = kind?.inputs.find((one) => one.reads?.travel !== undefined)?.reads;
  const input = kind?.inputs.find((one) => one.quantity === 'number' && one.counts === 'measured');
  const [size] = reads?.sizes ?? [];
  const text = input && record.inputs?.[input.name];
  if (!reads?.travel || !input || size === undefined || !text?.trim()) return undefined;
  const { entry, problems } = scope.texts.entry(text, 'number', 'measured');
  const count = problems.length > 0 ? undefined : numberOf(entry);
  const { id } = record;
  const rowOf = (name: string): RowKey =>
    kind?.outputs.some((one) => one.name === name) ? outputRow(id, name) : inputRow(id, name);
  if (count === undefined) return undefined;
  return {
    cell: id,
    field: `inputs.${input.name}`,
    text,
    count,
    size: rowOf(size),
    travel: rowOf(reads.travel),
    division: reads.division === undefined ? undefined : rowOf(reads.division),
  };
}

/** The same as a text of readings from a setting, as the sheet stands. */
export function countedDatum(
  { cell, field, text, count, size, travel, division: one }: Counted,
  nominal: (key: RowKey) => number | undefined,
  system: 'in' | 'mm',
): Datum | undefined {
  const [value, moved] = [nominal(size), nominal(travel)];
  const unit = findUnit(system);
  if (value === undefined || moved === undefined || !unit) return undefined;
  const plain = { text, from: 0, to: 0, unit: system, bare: true } as const;
  const setting = { ...plain, value: value - moved } as unknown as Literal;
  // The count stands between the setting and the division, and is all of the text.
  const division = {
    ...plain,
    // From none at all nothing tells which way they run.
    value: count === 0 ? ((one && nominal(one)) ?? unit.factor) : moved / count,
    from: text.length,
    to: text.length,
  } as unknown as Literal;
  const read = { ...plain, value, to: text.length } as unknown as Literal;
  return {
    cell,
    field,
    text,
    key: size,
    read: true,
    made: false,
    system,
    literals: [read],
    stations: [0],
    set: { size: setting, divisions: [count], division },
  };
}
