import type { CellRecord, KeptValue, SheetFile } from '../../../shared/sheet/format.ts';
import type { SheetSettings } from './change.ts';

/** A whole sheet as the engine takes it. */
export interface Sheet {
  /** By id, in the order of the sheet. */
  records: Map<string, CellRecord>;
  settings: SheetSettings;
  measured: boolean;
  kept: readonly KeptValue[];
}

export const BLANK_SHEET: Readonly<Sheet> = {
  records: new Map(),
  settings: { units: { length: 'mm' }, rule: 'worst-case' },
  measured: true,
  kept: [],
};

export function settingsOf(file: Pick<SheetFile, 'units' | 'rule' | 'title' | 'ways'>): SheetSettings {
  const reference = file.title.referenceTemperature?.trim();
  return {
    units: file.units,
    rule: file.rule,
    ...(reference ? { referenceTemperature: reference } : {}),
    ...(file.ways ? { ways: file.ways } : {}),
  };
}
