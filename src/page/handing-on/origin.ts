import type { CellRecord, SheetFile } from '../../../shared/sheet/format.ts';
import type { News } from '../../document/sharing/template-news.ts';
import type { Origin } from '../../document/sharing/template-of.ts';
import type { Shop } from '../../document/storage/shop.ts';
import { kindsOf } from '../../engine/rows/kinds-of.ts';
import { loadLibrary } from '../state/library.ts';
import { offers } from './templates.ts';

/** The template of a job, with what it has to tell it. */
export interface JobOrigin extends Origin {
  news: News[];
  /** The template with its units written out, and read in the lengths of the job. */
  own: SheetFile;
  /** Its lines with numbers whose unit nobody knows, where the job is in other lengths: they are not offered. */
  unclear: CellRecord[];
  /** Where the job says another thing than its author locked in. */
  departures: News[];
}

export const originOfJob = async (shop: Shop, job: SheetFile): Promise<JobOrigin | undefined> => {
  const { from } = job;
  if (!from) return undefined;
  // Only those of its name are compared, so only those are fetched.
  const named = offers.filter(({ template, title }) => template && title.title === from.title);
  const [
    { originOf },
    { newsOf, departures },
    { inOwnUnits },
    { settle },
    { quantityAt },
    { handbook },
    supplied,
  ] = await Promise.all([
    import('../../document/sharing/template-of.ts'),
    import('../../document/sharing/template-news.ts'),
    import('../../document/sharing/own-units.ts'),
    import('../../document/sharing/settle.ts'),
    import('../state/quantity-at.ts'),
    import('../../../cells/handbook.ts'),
    Promise.all(named.map(({ file }) => file())),
  ]);
  const origin = await originOf(shop, from, supplied);
  if (!origin) return undefined;
  const { template, base } = origin;
  const files = [job, template, ...(base ? [base] : [])];
  const at = quantityAt(await loadLibrary(files.flatMap(({ cells }) => kindsOf(cells))));
  // Compared with the unit behind every number: an inch template and a job in millimetres mean the same by the same figure.
  const settled = (file: SheetFile) => settle(file, { quantityAt: at, handbook }).file;
  const { file: own, kept } = inOwnUnits(settled(template), job.units.length, at);
  const unclear = new Set(kept.map(({ id }) => id));
  const here = settled(job);
  const then = base && settled(base);
  const told = (news: News[]) => news.filter(({ id }) => !unclear.has(id));
  return {
    ...origin,
    own,
    unclear: kept,
    news: origin.current ? [] : told(newsOf(here, own, then)),
    departures: told(departures(here, then ?? own)),
  };
};
