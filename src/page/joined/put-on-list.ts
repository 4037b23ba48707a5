import type { ListState, SharedList } from '../../document/joined/shared-list.ts';
import type { Ended } from '../../document/joined/shop-line.ts';
import { MOST_EQUIPMENT } from '../../document/sharing/shared-equipment.ts';
import { endedWords } from './ended-words.ts';
import { listOver } from './list-over.ts';

const READS_ONLY =
  'This device came with a key that only reads: it can neither share with the shop nor end that. Join by a link that writes.';

const refusalWords = (why: Ended | 'full'): string => {
  switch (why) {
    case 'key-reads-only':
      return READS_ONLY;
    case 'full':
      return `The shop shares ${MOST_EQUIPMENT} gauges, presses and metals, as many as the list takes: share one no longer first.`;
    case 'update-refused':
      return 'The server refused it, as none that its list holds. Nothing was shared, and what is here stays here.';
    case 'sheet-full':
      return 'The server’s list has reached the size it takes. Nothing was shared, and what is here stays here.';
    default:
      return endedWords(why);
  }
};

const waitWords = ({ line, trouble }: ListState): string => {
  if (line === 'away') return 'The server is not reached; it is tried again as long as this page is open.';
  if (trouble === undefined) return 'Asking the server …';
  return `The server cannot store it just now${trouble === 'full' ? ': its disk is full' : ''}. It is tried again as long as this page is open.`;
};

/**
 * Writes to the list of what is shared, and says how that stands until the server has stored it.
 * @returns whether it is stored there
 */
export const putOnList = async (
  key: string,
  write: (list: SharedList) => Promise<Ended | 'full' | undefined>,
  say: (words: string) => void,
): Promise<boolean> => {
  say('Asking the server …');
  const list = await listOver(key);
  say(waitWords(list.state.get()));
  const stop = list.state.observe((now) => say(waitWords(now)));
  try {
    await list.answered();
    const why = await write(list);
    if (why !== undefined) say(refusalWords(why));
    return why === undefined;
  } finally {
    stop();
    list.close();
  }
};
