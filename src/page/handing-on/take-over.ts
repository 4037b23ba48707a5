import type { SheetFile } from '../../../shared/sheet/format.ts';
import { roomIn } from '../../document/room.ts';
import { type Taken, takeDifferences } from '../../document/sharing/take-differences.ts';
import type { Shop } from '../../document/storage/shop.ts';
import { addressOfSheet, goInstead } from '../kit/router.ts';
import { tellOnArrival } from '../state/arrival.ts';
import { inLengths, preferred } from '../state/own-units.ts';
import { settled } from '../state/printer.ts';

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

/** What the sheet that is here says with what is chosen of the other, or why that cannot be chosen. */
const withChosen = async (
  here: SheetFile,
  came: SheetFile,
  taken: Taken,
): Promise<{ file: SheetFile; word: string } | string> => {
  let files: [SheetFile, SheetFile] = [here, came];
  // A number without a unit means what the units of its own sheet make of it: taken alone it would mean something else.
  if (JSON.stringify(here.units) !== JSON.stringify(came.units)) {
    const [mine, theirs] = await Promise.all([settled(here), settled(came)]);
    if (mine.bare || theirs.bare)
      return 'The two sheets are in different units and hold numbers without a unit: single lines would change their value. Take all of it, or take it over as a new sheet.';
    files = [mine.file, theirs.file];
  }
  const { file, along } = takeDifferences(...files, taken);
  const names = along.map((cell) => cell.label || cell.name || 'a line without a name').join(', ');
  return {
    file,
    word: along.length > 0 ? `What is taken goes by new lines, which came along: ${names}.` : '',
  };
};

/**
 * Makes a sheet that is here say what the one that came in says, or what is chosen of it. What it said is kept as a
 * revision, and the change is one step to take back.
 * @returns what kept it from being done, in words.
 */
export const takeInPlace = async (
  shop: Shop,
  id: string,
  file: SheetFile,
  taken?: Taken,
): Promise<string | undefined> => {
  const sheet = await shop.open(id);
  if (!('document' in sheet)) return sheet.message;
  const { file: whole, word: lengths = '' } = await inLengths(file, sheet.document.units().length);
  const chosen = taken && (await withChosen(sheet.document.toFile(), whole, taken));
  if (typeof chosen === 'string') {
    await sheet.close();
    return chosen;
  }
  const { file: own, word } = chosen ?? { file: whole, word: lengths };
  const full = roomIn(own);
  if (full) {
    await sheet.close();
    return full.message;
  }
  await shop.revise(id, 'before the sheet that came in was taken over');
  sheet.document.become(own, 'the sheet that came in');
  await sheet.close();
  opened(id, `Taken over. What the sheet said before is kept in its history. ${word}`.trim());
  return undefined;
};
