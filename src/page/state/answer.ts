import type { Slip } from '../../engine/rows/results.ts';
import { textOf } from '../../engine/slips/fields.ts';
import type { Sheet } from './sheet.ts';

/** The text a question is about, as it is stored. */
export const textAsked = (sheet: Sheet, cell: string, slip: Slip): string => {
  const record = sheet.line(cell)?.record;
  return record ? textOf(record, slip.field) : '';
};

/** Puts what a question offers in the place of what was asked about. */
export const takeOffer = (sheet: Sheet, cell: string, slip: Slip): void => {
  if (slip.offer !== undefined) sheet.document.setField(cell, slip.field, slip.offer);
};

/** Answers that it is meant as it stands: this text is not asked about so again, here or in another browser. */
export const sayRight = (sheet: Sheet, cell: string, slip: Slip): void => {
  const dismissed = sheet.line(cell)?.record.dismissed ?? [];
  sheet.document.setField(cell, 'dismissed', [
    ...dismissed.map((one) => ({ ...one })),
    { slip: slip.key, text: textAsked(sheet, cell, slip) },
  ]);
};

/** The first line with an open question, from the one below `from` round to it. */
export const nextAsked = (sheet: Sheet, from: string | undefined): string | undefined => {
  const { order } = sheet.state;
  const start = from === undefined ? 0 : order.indexOf(from) + 1;
  return [...order.slice(start), ...order.slice(0, start)].find(
    (id) => (sheet.line(id)?.result?.slips.length ?? 0) > 0,
  );
};
