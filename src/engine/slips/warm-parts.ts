import type { CellRecord, Measured } from '../../../shared/sheet/format.ts';
import { cellRow, outputRow, partRow, type RowKey } from '../rows/key.ts';
import type { SheetScope } from '../rows/scope.ts';
import { numberOf } from '../rows/texts.ts';

/** A reading that was taken away from reference temperature, as far as its texts tell. */
export interface Warmth {
  field: string;
  text: string;
  /** Kelvin above reference temperature. */
  over: number;
  /** Row of the size that was read. */
  key: RowKey;
  /** Row of the expansion of its metal. */
  alpha: RowKey | undefined;
}

/** Readings of a cell that give a temperature of the part. */
export function warmthsOf(record: CellRecord, scope: SheetScope, reference: string): Warmth[] {
  const found: Warmth[] = [];
  const take = (text: string | undefined, material: string | undefined, field: string, key: RowKey): void => {
    const at = text?.trim() ? temperature(text, scope) : undefined;
    const zero = temperature(reference, scope);
    if (at === undefined || zero === undefined || at === zero) return;
    const id = material === undefined ? undefined : scope.idOf(material.trim().replace(/^=\s*/, ''));
    found.push({
      field,
      text: (text as string).trim(),
      over: at - zero,
      key,
      alpha: id === undefined ? undefined : outputRow(id, 'alpha'),
    });
  };
  const measured = (one: Measured | undefined, field: string, key: RowKey): void =>
    take(one?.at, one?.material, `${field}.at`, key);
  if (record.role === 'measured') take(record.at, record.material, 'at', cellRow(record.id));
  else if (record.role === 'cell') {
    for (const [name, output] of Object.entries(record.outputs ?? {}))
      if (scope.isMeasured(record, name))
        measured(
          output.measured,
          `outputs.${name}.measured`,
          partRow(outputRow(record.id, name), 'measured'),
        );
  } else if (scope.isMeasured(record, 'value'))
    measured(record.measured, 'measured', partRow(cellRow(record.id), 'measured'));
  return found;
}

const temperature = (text: string, scope: SheetScope): number | undefined => {
  const { entry, problems } = scope.texts.entry(text, 'temperature', 'measured');
  return problems.length > 0 ? undefined : numberOf(entry);
};
