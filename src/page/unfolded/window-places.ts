import type { InputPlace } from '../../engine/trial/place.ts';
import type { useLibrary } from '../state/library.ts';
import type { Sheet } from '../state/sheet.ts';

/** An input that may be moved, and what it is called. */
export interface Place extends InputPlace {
  title: string;
}

const isNumber = (text: string | undefined): boolean => /^[-+.\d]/.test(text?.trim() ?? '');

/** The inputs of a line that may be another value; for others the window says why not, where it is asked. */
export const placesOf = (
  sheet: Sheet,
  library: ReturnType<ReturnType<typeof useLibrary>>,
  cell: string,
): Place[] => {
  const record = sheet.line(cell)?.record;
  if (!record) return [];
  if (record.role !== 'cell') {
    const stands = record.measured?.entry.trim() || record.issued?.trim();
    const isMovable =
      (record.role === 'chosen' || (record.role === 'given' && isNumber(record.entry))) && !stands;
    return isMovable ? [{ cell, field: 'entry', title: sheet.titleOf(cell) }] : [];
  }
  return (library?.kinds.get(record.kind ?? '')?.inputs ?? []).flatMap((input): Place[] =>
    !input.record && !input.choice && isNumber(record.inputs?.[input.name])
      ? [{ cell, field: `inputs.${input.name}`, title: `${sheet.titleOf(cell)}: ${input.label}` }]
      : [],
  );
};

/** The same of the whole sheet, but of lines that are locked. */
export const allPlaces = (sheet: Sheet, library: ReturnType<ReturnType<typeof useLibrary>>): Place[] =>
  sheet.state.order.flatMap((cell) =>
    sheet.line(cell)?.record.locked ? [] : placesOf(sheet, library, cell),
  );
