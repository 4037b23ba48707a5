import type { ListState, SharedList } from '../../document/joined/shared-list.ts';
import { lineOf } from './lines.ts';

/** The list of what is shared, by a key; its code is fetched when it is first used. To be closed. */
export const listOver = async (key: string): Promise<SharedList> => {
  const [line, { SharedList }] = await Promise.all([
    lineOf(key),
    import('../../document/joined/shared-list.ts'),
  ]);
  return SharedList.over(line);
};

/** Tells how the list stands, now and with every change. @returns what ends that */
export const followList = async (key: string, tell: (now: ListState) => void): Promise<() => void> => {
  const list = await listOver(key);
  tell(list.state.get());
  const stop = list.state.observe(tell);
  return () => {
    stop();
    list.close();
  };
};
