import type { CellRecord } from '../../../shared/sheet/format.ts';
import {
  cellShownIn,
  inOwnUnits,
  type LengthUnit,
  type QuantityAt,
  settledReference,
  unitsSeen,
} from '../../document/sharing/own-units.ts';
import { kindsOf } from '../../engine/rows/kinds-of.ts';
import type { Library } from '../../engine/rows/library.ts';
import { preferences } from '../kit/preferences.ts';
import { loadLibrary } from '../state/library.ts';
import { inLengths } from '../state/own-units.ts';
import { quantityAt } from '../state/quantity-at.ts';
import type { Seen, Sheet } from '../state/sheet.ts';

/**
 * A shared sheet in the lengths of this device: each has its own, a guest's shop too, and nothing of the sheet is changed by
 * it. A sheet with numbers that hang on its units is shown in them, for they would be read as others.
 */
export const followLengths = (
  sheet: Sheet,
  chosen: LengthUnit | undefined,
  { keep, say }: { keep: (length: LengthUnit) => void; say: (word: string) => void },
): (() => void) => {
  const preferred = preferences().length;
  let wanted = chosen ?? (preferred === 'sheet' ? undefined : preferred);
  let over = false;

  const seenIn = (length: LengthUnit, library: Library): Seen => ({
    units: (own) => unitsSeen(own, length),
    cell: (record) => cellShownIn(record, length),
    title: settledReference,
    can: (records) => {
      // What a kind that has not been fetched reads as a length is not known.
      if (kindsOf(records).some((kind) => !library.kinds.has(kind))) return false;
      const file = { ...sheet.document.toFile(), cells: [...records] };
      return inOwnUnits(file, length, lengthsIn(library)).kept.length === 0;
    },
    lost: () => void look(),
  });
  /** A line that does not say its kind of quantity has that of its figure. */
  const lengthsIn = (library: Library): QuantityAt => {
    const inLibrary = quantityAt(library);
    const quantity = (cell: CellRecord, field: string) =>
      inLibrary(cell, field) ??
      (field === 'entry' ? sheet.line(cell.id)?.result?.outputs.value?.quantity : undefined);
    return Object.assign(quantity, { shown: inLibrary.shown });
  };

  const look = async (): Promise<void> => {
    const { document } = sheet;
    if (wanted === undefined || wanted === document.units().length) {
      sheet.see(undefined);
      return;
    }
    const { word } = await inLengths(document.toFile(), wanted);
    const library = await loadLibrary(kindsOf(document.cells()));
    if (over || wanted === undefined) return;
    const seen = seenIn(wanted, library);
    if (word === undefined && seen.can(document.cells())) sheet.see(seen);
    else if (word !== undefined) say(word);
  };
  sheet.lengths = (length) => {
    wanted = length;
    keep(length);
    void look();
  };
  void look();
  return () => {
    over = true;
    sheet.lengths = undefined;
    sheet.see(undefined);
  };
};
