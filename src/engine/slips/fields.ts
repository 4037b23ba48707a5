import { CELL_FIELDS } from '../../../shared/sheet/cell-fields.ts';
import { fieldsIn } from '../../../shared/sheet/field.ts';
import type { CellRecord } from '../../../shared/sheet/format.ts';

/** Text of a field by its path in the file form; empty where there is none. */
export function textOf(record: CellRecord, field: string): string {
  for (const [path, , value] of fieldsIn(record, CELL_FIELDS))
    if (path === field) return typeof value === 'string' ? value : '';
  return '';
}

/** Answers of older sheets name a size as measured by the group it is in. */
const asNow = (key: string): string => key.replace(/([:.])measured(?![.\w])/, '$1measured.entry');

/** True where the user has already answered this question about this very text. */
export const isDismissed = (record: CellRecord, slip: { key: string; field: string }): boolean =>
  record.dismissed?.some(
    (one) => asNow(one.slip) === asNow(slip.key) && one.text === textOf(record, slip.field),
  ) ?? false;
