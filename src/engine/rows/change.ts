import type { CellRecord, DecisionRule, SheetUnits } from '../../../shared/sheet/format.ts';

export interface SheetSettings {
  units: SheetUnits;
  rule: DecisionRule;
  /** An entry; 20 degC when absent (ISO 1). */
  referenceTemperature?: string;
  /** The way taken, by what the ways lead to. */
  ways?: Readonly<Record<string, string>>;
}

/** One edit as the engine takes it. Records carry names, not ids, in their formulas. */
export interface SheetChange {
  changed?: CellRecord[];
  gone?: string[];
  settings?: SheetSettings;
  /** As-measured values are left out when false: the sheet as planned. True when absent. */
  measured?: boolean;
}
