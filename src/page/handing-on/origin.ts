import type { SheetFile } from '../../../shared/sheet/format.ts';
import type { News } from '../../document/sharing/template-news.ts';
import type { Origin } from '../../document/sharing/template-of.ts';
import type { Shop } from '../../document/storage/shop.ts';
import { offers } from './templates.ts';

/** The template of a job, with what it has to tell it. */
export interface JobOrigin extends Origin {
  news: News[];
  /** Where the job says another thing than its author locked in. */
  departures: News[];
}

export const originOfJob = async (shop: Shop, job: SheetFile): Promise<JobOrigin | undefined> => {
  const { from } = job;
  if (!from) return undefined;
  // Only those of its name are compared, so only those are fetched.
  const named = offers.filter(({ template, title }) => template && title.title === from.title);
  const [{ originOf }, { newsOf, departures }, supplied] = await Promise.all([
    import('../../document/sharing/template-of.ts'),
    import('../../document/sharing/template-news.ts'),
    Promise.all(named.map(({ file }) => file())),
  ]);
  const origin = await originOf(shop, from, supplied);
  if (!origin) return undefined;
  return {
    ...origin,
    news: origin.current ? [] : newsOf(job, origin.template, origin.base),
    departures: departures(job, origin.base ?? origin.template),
  };
};
