import type { SheetFile } from '../../../shared/sheet/format.ts';
import type { News } from '../../document/sharing/template-news.ts';
import type { Origin } from '../../document/sharing/template-of.ts';
import type { Shop } from '../../document/storage/shop.ts';
import { loadOffers } from '../home/templates.ts';

/** The template of a job, with what it has to tell it. */
export interface JobOrigin extends Origin {
  news: News[];
  /** Where the job says another thing than its author locked in. */
  departures: News[];
}

export const originOfJob = async (shop: Shop, job: SheetFile): Promise<JobOrigin | undefined> => {
  if (!job.from) return undefined;
  const [{ originOf }, { newsOf, departures }, offers] = await Promise.all([
    import('../../document/sharing/template-of.ts'),
    import('../../document/sharing/template-news.ts'),
    loadOffers(),
  ]);
  const supplied = offers.flatMap(({ file }) => (file.template ? [file] : []));
  const origin = await originOf(shop, job.from, supplied);
  if (!origin) return undefined;
  return {
    ...origin,
    news: origin.current ? [] : newsOf(job, origin.template, origin.base),
    departures: departures(job, origin.base ?? origin.template),
  };
};
