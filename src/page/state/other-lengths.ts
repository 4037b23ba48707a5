import { handbook } from '../../../cells/handbook.ts';
import type { CellRecord } from '../../../shared/sheet/format.ts';
import {
  type LengthUnit,
  type QuantityAt,
  settledTexts,
  shownUnits,
  textsInDoubt,
} from '../../document/sharing/own-units.ts';
import { settle } from '../../document/sharing/settle.ts';
import { kindsOf } from '../../engine/rows/kinds-of.ts';
import type { SheetContext } from './context.ts';
import { loadLibrary } from './library.ts';
import { quantityAt } from './quantity-at.ts';

const NAMED = 3;
const LENGTHS = { in: 'inches', mm: 'millimetres' } as const;

/**
 * Shows the sheet in other lengths, down to the lines shown in thou or in micrometres. A number without a unit, as a file
 * from elsewhere may have it, first gets the one it has had so far: no value changes by the switch, and none comes by it. All
 * of it is one step to undo.
 */
export const toOtherLengths = async (
  { sheet, notices }: Pick<SheetContext, 'sheet' | 'notices'>,
  length: LengthUnit,
): Promise<void> => {
  const library = await loadLibrary(kindsOf(sheet.document.cells()));
  const { document } = sheet;
  const inLibrary = quantityAt(library);
  const file = document.toFile();
  if (length === file.units.length) return;
  const quantity: QuantityAt = Object.assign(
    (cell: CellRecord, field: string) =>
      inLibrary(cell, field) ??
      (field === 'entry' ? sheet.line(cell.id)?.result?.outputs.value?.quantity : undefined),
    { shown: inLibrary.shown },
  );
  const doubts = textsInDoubt(file, length, quantity, handbook);
  if (doubts.length > 0) {
    const named = doubts.slice(0, NAMED).map(({ cell, text }) => `“${text}” at ${sheet.titleOf(cell.id)}`);
    const more = doubts.length > NAMED ? ` and ${doubts.length - NAMED} more` : '';
    notices.say(
      `Still in ${LENGTHS[file.units.length]}: ${named.join(', ')}${more} would be taken for ${LENGTHS[length]}, and which unit is meant has not been said. Put the unit behind it first.`,
    );
    return;
  }
  const texts = settledTexts(file, length, quantity, handbook);
  const { title, variants } = settle(file, { quantityAt: quantity, handbook }).file;
  document.batch('units of the sheet', () => {
    for (const { cell, field, text } of [...texts, ...shownUnits(file, length)])
      document.setField(cell, field, text);
    if (title.referenceTemperature !== file.title.referenceTemperature)
      document.setTitle('referenceTemperature', title.referenceTemperature);
    if (variants && JSON.stringify(variants) !== JSON.stringify(file.variants))
      document.setVariants(variants);
    document.setUnits({ length });
  });
};
