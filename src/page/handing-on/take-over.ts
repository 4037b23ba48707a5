import type { SheetFile } from '../../../shared/sheet/format.ts';
import type { Shop } from '../../document/storage/shop.ts';
import { addressOfSheet, goInstead } from '../kit/router.ts';
import { tellOnArrival } from '../state/arrival.ts';
import { inLengths, preferred } from './own-units.ts';

const opened = (id: string, word?: string): void => {
  if (word) tellOnArrival(word);
  // The address may hold the whole sheet: it need not stay in the browser's memory of addresses.
  goInstead(addressOfSheet(id));
};

/** Puts a sheet that came in beside what is here, and opens it. */
export const takeAsNew = async (shop: Shop, file: SheetFile): Promise<void> => {
  const { file: own, word } = await preferred(file);
  opened(await shop.create(own), word);
};

/** A job from a template that came in; the template itself is kept too, so that the job can be compared with it. */
export const beginJob = async (shop: Shop, template: SheetFile): Promise<void> => {
  const { begunFrom } = await import('./begin.ts');
  await shop.create(template);
  const { id, word } = await begunFrom(shop, template);
  opened(id, word);
};

/**
 * Makes a sheet that is here say what the one that came in says. What it said is kept as a revision, and the change is
 * one step to take back.
 * @returns what kept it from being done, in words.
 */
export const takeInPlace = async (shop: Shop, id: string, file: SheetFile): Promise<string | undefined> => {
  const sheet = await shop.open(id);
  if (!('document' in sheet)) return sheet.message;
  const { file: own, word = '' } = await inLengths(file, sheet.document.units().length);
  await shop.revise(id, 'before the sheet that came in was taken over');
  sheet.document.become(own, 'the sheet that came in');
  await sheet.close();
  opened(id, `Taken over. What the sheet said before is kept in its history. ${word}`.trim());
  return undefined;
};
