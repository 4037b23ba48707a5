import type { CellRecord, DecisionRule, SheetUnits } from '../../../shared/sheet/format.ts';

export interface SheetSettings {
  units: SheetUnits;
  rule: DecisionRule;
  /** An entry; 20 degC when absent (ISO 1). */
  referenceTemperature?: string;
}

/** One edit as the engine takes it. Records carry names, not ids, in their formulas. */
export interface SheetChange {
  changed?: CellRecord[];
  gone?: string[];
  settings?: SheetSettings;
  /** As-measured values are left out when false: the sheet as planned. True when absent. */
  measured?: boolean;
}

/** A record as one text, in whatever order its fields came. */
export const recordText = (record: CellRecord): string =>
  JSON.stringify(record, (_, part) =>
    typeof part === 'object' && part !== null && !Array.isArray(part)
      ? Object.fromEntries(Object.entries(part).sort(([a], [b]) => (a < b ? -1 : 1)))
      : part,
  );

/** True where a change does nothing but to put one record in place, given by its text. */
export const isOnly = ({ changed, gone, settings, measured }: SheetChange, record: string): boolean =>
  changed?.length === 1 &&
  !gone?.length &&
  settings === undefined &&
  measured === undefined &&
  recordText(changed[0] as CellRecord) === record;
