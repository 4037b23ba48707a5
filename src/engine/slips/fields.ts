import type { CellRecord } from '../../../shared/sheet/format.ts';

/** Text of a field as problems and slips name it; empty where there is none. */
export function textOf(record: CellRecord, field: string): string {
  const [head = '', name = '', part, last] = field.split('.');
  switch (head) {
    case 'entry':
    case 'issued':
    case 'tolerance':
    case 'at':
      return record[head] ?? '';
    case 'measured':
      return (name === 'at' ? record.measured?.at : record.measured?.entry) ?? '';
    case 'inputs':
      return record.inputs?.[name] ?? '';
    case 'outputs': {
      const measured = part === 'measured' ? record.outputs?.[name]?.measured : undefined;
      return (last === 'at' ? measured?.at : measured?.entry) ?? '';
    }
    default:
      return '';
  }
}

/** True where the user has already answered this question about this very text. */
export const isDismissed = (record: CellRecord, slip: { key: string; field: string }): boolean =>
  record.dismissed?.some((one) => one.slip === slip.key && one.text === textOf(record, slip.field)) ?? false;
