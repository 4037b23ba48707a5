import type { CellRecord } from '../../../shared/sheet/format.ts';
import type { InputPlace } from '../../engine/trial/place.ts';
import type { useLibrary } from '../state/library.ts';
import type { Sheet } from '../state/sheet.ts';

/** An input that may be moved, and what it is called. */
export interface Place extends InputPlace {
  title: string;
  quantity?: string;
}

const isNumber = (text: string | undefined): boolean => /^[-+.\d]/.test(text?.trim() ?? '');

const isFast = (record: CellRecord | undefined): boolean =>
  Boolean(
    record?.locked || record?.issued?.trim() || (record?.role === 'chosen' && record.measured?.entry.trim()),
  );

/** The inputs of a line that may be another value; for others the window says why not, where it is asked. */
export const placesOf = (
  sheet: Sheet,
  library: ReturnType<ReturnType<typeof useLibrary>>,
  cell: string,
): Place[] => {
  const record = sheet.line(cell)?.record;
  if (!record) return [];
  if (record.role !== 'cell') {
    const isMovable = record.role === 'chosen' || (record.role === 'given' && isNumber(record.entry));
    const quantity = sheet.shape(cell, 'value')?.quantity ?? record.quantity;
    return isMovable
      ? [{ cell, field: 'entry', title: sheet.titleOf(cell), ...(quantity ? { quantity } : {}) }]
      : [];
  }
  return (library?.kinds.get(record.kind ?? '')?.inputs ?? []).flatMap((input): Place[] =>
    !input.record && !input.choice && isNumber(record.inputs?.[input.name])
      ? [
          {
            cell,
            field: `inputs.${input.name}`,
            title: `${sheet.titleOf(cell)}: ${input.label}`,
            ...(input.quantity ? { quantity: input.quantity } : {}),
          },
        ]
      : [],
  );
};

/** Why a line has no window of its own, where one is looked for in vain. */
export const whyNone = (record: CellRecord | undefined): string | undefined => {
  if (!record?.entry?.trim()) return undefined;
  if (record.role === 'measured')
    return 'It was read off the part, and a reading is what it is: how far a size may go is told on one that is still to be cut.';
  return record.role === 'worked' || (record.role === 'given' && record.entry.trimStart().startsWith('='))
    ? 'It is worked out from other lines: how far these may go is told on theirs.'
    : undefined;
};

/** The inputs of the whole sheet that may be another value, but of lines that are locked, released or measured. */
export const allPlaces = (sheet: Sheet, library: ReturnType<ReturnType<typeof useLibrary>>): Place[] =>
  sheet.state.order.flatMap((cell) =>
    isFast(sheet.line(cell)?.record) ? [] : placesOf(sheet, library, cell),
  );
