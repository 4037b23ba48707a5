import { dimension, sameDimension } from '../../../shared/dimension.ts';
import type { CellRecord } from '../../../shared/sheet/format.ts';
import type { GaugeSetting, Literal, Spread } from '../../language/syntax/syntax.ts';
import { cellRow, inputRow, outputRow, partRow, type RowKey } from '../rows/key.ts';
import type { SheetScope } from '../rows/scope.ts';

/** One text of a cell with the lengths that stand in it as they were written. */
export interface Datum {
  /** Id of the cell. */
  cell: string;
  /** Field the text is in, by its path in the file form. */
  field: string;
  text: string;
  /** Row that holds its value (of a set of readings: the mean). */
  key: RowKey;
  /** Read off a part, as against given, chosen or an input. */
  read: boolean;
  /** Read off a part that was just made to a plan. */
  made: boolean;
  /** System the numbers are written in. */
  system: 'in' | 'mm';
  literals: Literal[];
  /** Number of the station each literal belongs to. */
  stations: number[];
  set?: GaugeSetting;
  spread?: Spread;
  /** How far over or under size, signed. */
  offset?: true;
}

const INCHES: ReadonlySet<string> = new Set(['in', 'thou', 'tenth_in', 'uin', 'ft']);
const LENGTH = 'length';
const METRES = dimension(1);

type Place = Pick<Datum, 'field' | 'key' | 'read' | 'made'> & {
  role: CellRecord['role'];
  quantity: string | undefined;
};

/** Every text of a cell that holds plain lengths; formulas and what cannot be read are not among them. */
export function dataOf(record: CellRecord, scope: SheetScope): Datum[] {
  const data: Datum[] = [];
  const take = (text: string | undefined, place: Place): void => {
    const datum = text?.trim() ? read(record, text, place, scope) : undefined;
    if (datum) data.push(datum);
  };
  if (record.role === 'section' || record.role === 'remark') return data;
  if (record.role !== 'cell') {
    const { id, role, quantity } = record;
    const issued = record.issued?.trim();
    const own = cellRow(id);
    const key = issued ? partRow(own, 'replanned') : own;
    take(record.entry, { field: 'entry', key, role, quantity, read: role === 'measured', made: false });
    take(issued, { field: 'issued', key: own, role: 'chosen', quantity, read: false, made: false });
    if (scope.isMeasured(record, 'value'))
      take(record.measured?.entry, {
        field: 'measured.entry',
        key: partRow(own, 'measured'),
        role: 'measured',
        quantity,
        read: true,
        made: true,
      });
    return data;
  }
  const kind = record.kind === undefined ? undefined : scope.library.kinds.get(record.kind);
  for (const input of kind?.inputs ?? [])
    if (input.quantity === LENGTH)
      take(record.inputs?.[input.name], {
        field: `inputs.${input.name}`,
        key: inputRow(record.id, input.name),
        role: input.role ?? 'given',
        quantity: LENGTH,
        read: input.role === 'measured',
        made: false,
      });
  for (const output of kind?.outputs ?? [])
    if (output.quantity === LENGTH && scope.isMeasured(record, output.name))
      take(record.outputs?.[output.name]?.measured?.entry, {
        field: `outputs.${output.name}.measured.entry`,
        key: partRow(outputRow(record.id, output.name), 'measured'),
        role: 'measured',
        quantity: LENGTH,
        read: true,
        made: true,
      });
  return data;
}

function read(record: CellRecord, text: string, place: Place, scope: SheetScope): Datum | undefined {
  if (text.trimStart().startsWith('=')) return undefined;
  if (place.quantity !== undefined && place.quantity !== LENGTH) return undefined;
  // A bare figure beside a unit of its own is asked about as it is: nothing is asked of what it would be.
  const display = record.role === 'cell' ? undefined : record.display;
  const { entry, problems } = scope.texts.entry(text, place.quantity, place.role, display);
  if (problems.length > 0) return undefined;
  switch (entry.kind) {
    case 'value': {
      const datum = datumOf(record, text, place, [[entry.value]]);
      if (datum && entry.set) datum.set = entry.set;
      if (datum && entry.spread) datum.spread = entry.spread;
      return datum;
    }
    case 'readings': {
      const datum = datumOf(record, text, place, entry.stations);
      if (datum && entry.set) datum.set = entry.set;
      return datum;
    }
    case 'offset': {
      const datum = datumOf(record, text, place, [[entry.value]]);
      if (datum) datum.offset = true;
      return datum;
    }
    default:
      return undefined;
  }
}

/** A datum of literals by stations; undefined where they are no lengths. */
function datumOf(
  record: CellRecord,
  text: string,
  { field, key, read, made }: Place,
  groups: readonly Literal[][],
): Datum | undefined {
  const literals: Literal[] = [];
  const stations: number[] = [];
  let system: Datum['system'] = 'mm';
  groups.forEach((group, station) => {
    for (const literal of group) {
      literals.push(literal);
      stations.push(station);
      if (INCHES.has(literal.unit ?? '')) system = 'in';
    }
  });
  const first = literals[0];
  if (!first || !sameDimension(first.dimension, METRES)) return undefined;
  return { cell: record.id, field, text, key, read, made, system, literals, stations };
}
