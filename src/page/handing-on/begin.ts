import type { SheetFile } from '../../../shared/sheet/format.ts';
import type { Shop } from '../../document/storage/shop.ts';
import { today } from '../kit/today.ts';
import { preferred } from '../state/own-units.ts';

/** A job from a template, in the lengths this shop prefers; the template is kept as it is, to tell later what changed. */
export const begunFrom = async (shop: Shop, template: SheetFile): Promise<{ id: string; word?: string }> => {
  const [{ jobOf }, { keepTemplate }] = await Promise.all([
    import('../../document/template.ts'),
    import('../../document/sharing/template-of.ts'),
  ]);
  const { file, word } = await preferred(
    jobOf(template, await shop.printer.print(template), { date: today() }),
  );
  const id = await shop.create(file);
  // The job is open all the same where this cannot be stored: only the comparison is coarser then.
  void keepTemplate(shop, template).catch(() => undefined);
  return { id, ...(word && { word }) };
};
