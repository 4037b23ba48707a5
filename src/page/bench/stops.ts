import type { CellRecord } from '../../../shared/sheet/format.ts';
import type { EntrySpot } from '../entry/spot.ts';
import { say } from '../kit/words.ts';
import { isReadOffPart } from '../state/as-cut.ts';
import type { Sheet } from '../state/sheet.ts';
import { splitReadings } from './readings-text.ts';
import type { Plan } from './slots.ts';

/** One dimension to be read at the machine. */
export interface Stop {
  cell: string;
  /** Output whose figure and check tell how it came out. */
  output: string;
  spot: EntrySpot;
  title: string;
  /** What stands there now, as stored. */
  entry: string;
  /** Name of the gauge cell. */
  gauge: string | undefined;
  /** Where and how to measure, in the words of the sheet. */
  note: string | undefined;
  plan: Plan;
  /** A bore is read across its inside, a shaft over its outside, where the limits tell which it is. */
  inside?: boolean;
  /** It is known to be a bore or a shaft, and not a thickness or a gap. */
  round: boolean;
  /** It has a place along and a direction round. */
  length: boolean;
}

/** Names a dimension for as long as it is on the sheet. */
export const keyOf = ({ spot }: Stop): string => `${spot.cell} ${spot.field}`;

const planOf = (example: string | undefined): Plan =>
  (example && splitReadings(example)?.places.map((place) => place.length)) || [];

const inside = (record: CellRecord): boolean | undefined =>
  record.limits?.metalOn === undefined ? undefined : record.limits.metalOn === 'low';

/** What a bore gauge reads is a bore. */
const byBoreGauge = (sheet: Sheet, gauge: string | undefined): boolean => {
  const id = gauge && sheet.idOf(gauge);
  return /\bbore\b/.test((id && sheet.line(id)?.record.inputs?.gauge) || '');
};

/** Read across the inside, where limits or gauge tell; and whether it is round. */
const shapeOf = (
  sheet: Sheet,
  record: CellRecord,
  gauge: string | undefined,
  plan: Plan,
): Pick<Stop, 'inside' | 'round'> => {
  const byLimits = inside(record);
  const bore = byBoreGauge(sheet, gauge);
  const side = byLimits ?? (bore || undefined);
  return {
    ...(side !== undefined && { inside: side }),
    // Once at each place is how a thickness is read; where nothing was laid down, metal on a side tells of a fit.
    round: bore || plan.some((n) => n > 1) || (plan.length === 0 && byLimits !== undefined),
  };
};

const ofRecord = (sheet: Sheet, cell: string, record: CellRecord): Stop | undefined => {
  const result = sheet.line(cell)?.result;
  const quantity = record.quantity ?? result?.outputs.value?.quantity;
  const common = {
    cell,
    title: sheet.titleOf(cell),
    note: record.note,
    length: quantity === undefined || quantity === 'length',
  };
  if (record.role === 'measured') {
    const plan = planOf(record.example);
    return {
      ...common,
      ...shapeOf(sheet, record, record.gauge, plan),
      output: result?.outputs.value ? 'value' : 'mean',
      spot: { cell, field: 'entry', kind: 'entry', quantity },
      entry: record.entry ?? '',
      gauge: record.gauge,
      plan,
    };
  }
  if (!isReadOffPart(sheet, record)) return undefined;
  const gauge = record.measured?.gauge ?? record.gauge;
  return {
    ...common,
    ...shapeOf(sheet, record, gauge, []),
    output: 'value',
    spot: { cell, field: 'measured.entry', kind: 'entry', quantity },
    entry: record.measured?.entry ?? '',
    gauge,
    plan: [],
  };
};

const ofOutputs = (sheet: Sheet, cell: string, record: CellRecord): Stop[] =>
  Object.entries(record.outputs ?? {}).flatMap(([output, settings]) => {
    // What a library cell works out is read only where somebody said with what.
    if (!settings.measured) return [];
    const result = sheet.line(cell)?.result?.outputs[output];
    return [
      {
        cell,
        output,
        spot: { cell, field: `outputs.${output}.measured.entry`, kind: 'entry', quantity: result?.quantity },
        title: `${sheet.titleOf(cell)}: ${say(result?.label ?? output)}`,
        entry: settings.measured?.entry ?? '',
        gauge: settings.measured?.gauge,
        note: settings.measured?.note,
        plan: [],
        round: byBoreGauge(sheet, settings.measured?.gauge),
        length: result?.quantity === 'length',
      },
    ];
  });

/** Everything on a sheet that is read off a part, in the order of its lines. */
export const stopsOf = (sheet: Sheet): Stop[] =>
  sheet.state.order.flatMap((cell) => {
    const record = sheet.line(cell)?.record;
    if (!record) return [];
    if (record.role === 'cell') return ofOutputs(sheet, cell, record);
    return ofRecord(sheet, cell, record) ?? [];
  });
