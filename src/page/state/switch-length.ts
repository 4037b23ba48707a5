import type { LengthUnit } from '../../document/sharing/own-units.ts';
import { kindsOf } from '../../engine/rows/kinds-of.ts';
import { loadLibrary } from './library.ts';
import type { Sheet } from './sheet.ts';

/**
 * Shows the sheet in other lengths, down to the lines shown in thou or in micrometres. A number without a unit, as a file
 * from elsewhere may have it, first gets the one it has had so far: no value changes by the switch. All of it is one step
 * to undo. Where the sheet is shared, each device has its own lengths.
 */
export const switchLength = async (sheet: Sheet, length: LengthUnit): Promise<void> => {
  if (sheet.lengths) {
    sheet.lengths(length);
    return;
  }
  const [{ settledTexts, shownUnits }, { quantityAt }, { handbook }, library] = await Promise.all([
    import('../../document/sharing/own-units.ts'),
    import('./quantity-at.ts'),
    import('../../../cells/handbook.ts'),
    loadLibrary(kindsOf(sheet.document.cells())),
  ]);
  const { document } = sheet;
  const inLibrary = quantityAt(library);
  const file = document.toFile();
  if (length === file.units.length) return;
  const texts = settledTexts(
    file,
    length,
    (cell, field) =>
      inLibrary(cell, field) ??
      (field === 'entry' ? sheet.line(cell.id)?.result?.outputs.value?.quantity : undefined),
    handbook,
  );
  document.batch('units of the sheet', () => {
    for (const { cell, field, text } of [...texts, ...shownUnits(file, length)])
      document.setField(cell, field, text);
    document.setUnits({ length });
  });
};
