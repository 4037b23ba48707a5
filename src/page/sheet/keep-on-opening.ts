import type { OpenSheet } from '../../document/storage/open-sheet.ts';
import type { Shop } from '../../document/storage/shop.ts';

/** States kept by themselves lie at least so far apart, milliseconds. */
const APART = 3_600_000;

/**
 * Keeps a state of the sheet when somebody takes it up again, where it has changed since the last kept state: the way
 * back from a day's work is there though nobody thought of it.
 */
export const keepOnOpening = async (shop: Shop, { id, document }: OpenSheet): Promise<void> => {
  if (document.order().length === 0) return;
  const last = (await shop.revisions(id)).at(-1);
  if (last && Date.now() - last.time < APART) return;
  if (last && (await shop.printer.isOf(last.fingerprint, document.toFile()))) return;
  await shop.revise(id, 'as it was opened');
};
