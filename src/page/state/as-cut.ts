import type { CellRecord } from '../../../shared/sheet/format.ts';
import type { Sheet } from './sheet.ts';

/** Far smaller than the sizes it is worked out from: a clearance, an interference, a float. */
const SMALL_BESIDE_SIZES = 0.1;

/**
 * A worked-out line that can be read with a gauge: a size of the part, such as a bore when pressed. What is only the
 * difference of two parts is proven by reading the two. Before there are figures, the unit tells: a difference is
 * shown in a unit of its own.
 */
const isReadable = (sheet: Sheet, record: CellRecord): boolean => {
  if (record.display !== undefined) return false;
  const line = sheet.line(record.id);
  const planned = line?.result?.outputs.value?.planned?.value;
  const sizes = (line?.result?.feeds ?? []).flatMap((id) => {
    const value = sheet.line(id)?.result?.outputs;
    const figure = (value?.value ?? value?.mean)?.planned?.value;
    return figure === undefined ? [] : [Math.abs(figure)];
  });
  return (
    planned === undefined || sizes.length === 0 || Math.abs(planned) > SMALL_BESIDE_SIZES * Math.max(...sizes)
  );
};

/** A size and how far it may miss in one entry: `1.2517 ± 0.0002 in`, `50 mm h6`, `2.0 .. 2.1 in`. */
const HAS_TOLERANCE = /±|\+\/?-|\.\.|\d\s*(?:mm|in|")?\s*[a-zA-Z]{1,2}\d{1,2}\s*$/;

/** Whether a plain line plans a size that is read off the part once it is cut. */
export const isReadOffPart = (sheet: Sheet, record: CellRecord): boolean => {
  if (record.role !== 'chosen' && record.role !== 'worked') return false;
  if (record.measured) return true;
  if (record.role === 'chosen')
    return (
      (record.tolerance ?? record.limits ?? record.issued) !== undefined ||
      // Of a formula it is the spread of what it is worked out from; a difference is shown in a unit of its own.
      (record.display === undefined &&
        /^\s*[\d.+-]/.test(record.entry ?? '') &&
        HAS_TOLERANCE.test(record.entry!))
    );
  const quantity = record.quantity ?? sheet.line(record.id)?.result?.outputs.value?.quantity;
  return record.limits !== undefined && quantity === 'length' && isReadable(sheet, record);
};
