import type { SheetFile } from '../../../shared/sheet/format.ts';
import type { Shop } from '../../document/storage/shop.ts';
import { kindsOf } from '../../engine/rows/kinds-of.ts';
import { today } from '../kit/today.ts';
import { loadLibrary } from '../state/library.ts';
import { preferred } from '../state/own-units.ts';

/** The shop's own gauges and presses filled in, and a word of which. */
const equipped = async (shop: Shop, job: SheetFile): Promise<{ file: SheetFile; word?: string }> => {
  if ((await shop.setting('equipment')) === undefined) return { file: job };
  const { equipmentOf, withEquipment } = await import('../../document/sharing/own-equipment.ts');
  const kept = await equipmentOf(shop);
  const { kinds } = await loadLibrary(kindsOf(job.cells));
  const own = (kind: string) => kinds.get(kind)?.inputs.filter(({ ofShop }) => ofShop === 'filled') ?? [];
  const { file, taken } = withEquipment(job, kept, own);
  if (taken.length === 0) return { file };
  return { file, word: `Filled in from this shop’s own equipment: ${taken.join('; ')}.` };
};

/** A job from a template, in the lengths this shop prefers; the template is kept as it is, to tell later what changed. */
export const begunFrom = async (shop: Shop, template: SheetFile): Promise<{ id: string; word?: string }> => {
  const [{ jobOf }, { keepTemplate }] = await Promise.all([
    import('../../document/template.ts'),
    import('../../document/sharing/template-of.ts'),
  ]);
  const own = await preferred(jobOf(template, await shop.printer.print(template), { date: today() }));
  // What the shop has is a help: a job begins without it too.
  const { file, word } = await equipped(shop, own.file).catch(() => ({ file: own.file, word: undefined }));
  const id = await shop.create(file);
  // The job is open all the same where this cannot be stored: only the comparison is coarser then.
  void keepTemplate(shop, template).catch(() => undefined);
  const words = [own.word, word].filter((one) => one !== undefined).join(' ');
  return { id, ...(words && { word: words }) };
};
