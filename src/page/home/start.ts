import type { SheetFile } from '../../../shared/sheet/format.ts';
import { FORMAT, VERSION } from '../../../shared/sheet/format.ts';
import { addressOfSheet, addressToOpen, go } from '../kit/router.ts';
import { today } from '../kit/today.ts';
import { tellOnArrival } from '../state/arrival.ts';
import { loadShop } from '../state/load-shop.ts';

const open = async (file: SheetFile): Promise<void> => {
  const shop = await loadShop();
  go(addressOfSheet(await shop.create(file)));
};

/** A job from a template: it remembers which one it came from. */
export const startFromTemplate = async (template: SheetFile): Promise<void> => {
  const [shop, { begunFrom }] = await Promise.all([loadShop(), import('../handing-on/begin.ts')]);
  const { id, word } = await begunFrom(shop, template);
  if (word) tellOnArrival(word);
  go(addressOfSheet(id));
};

export const startEmpty = (length: 'in' | 'mm'): Promise<void> =>
  open({
    format: FORMAT,
    version: VERSION,
    title: { title: 'New job', date: today() },
    units: { length },
    rule: 'iso14253-2013',
    cells: [],
  });

export const openCopy = async (file: SheetFile): Promise<void> => {
  const { preferred } = await import('../state/own-units.ts');
  const { file: own, word } = await preferred(structuredClone(file));
  if (word) tellOnArrival(word);
  await open(own);
};

/** Reads a file and goes to look at it; nothing is taken over yet. @returns what is wrong with it, where it is no sheet. */
export const lookAt = async (file: File): Promise<string | undefined> => {
  const { readFile, setArrival } = await import('../handing-on/arrivals.ts');
  const read = await readFile(file);
  if (typeof read === 'string') return read;
  setArrival(read);
  go(addressToOpen());
  return undefined;
};
