import type { Thread } from '../../../cells/tables/threads/threads.ts';
import { threadByDesignation } from '../../../cells/tables/threads/threads.ts';

/** The thread of a designation that must be readable. */
export const thread = (text: string): Thread => {
  const found = threadByDesignation(text);
  if ('problem' in found) throw new Error(found.problem);
  return found;
};
