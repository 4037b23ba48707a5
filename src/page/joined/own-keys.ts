import {
  ABOUT_PATH,
  type About,
  joinLink,
  KEYS_PATH,
  type KeyRecord,
  type KeyWish,
  type NewKey,
} from '../../document/sharing/wire.ts';

/** Why the server did not do it, in its own words. */
class Refused extends Error {}

const ask = async (key: string, path: string, init: RequestInit = {}): Promise<unknown> => {
  let answer: Response;
  try {
    answer = await fetch(path, {
      ...init,
      headers: { authorization: `Bearer ${key}`, 'content-type': 'application/json' },
    });
  } catch {
    throw new Refused('The server is not reached.');
  }
  const said: unknown = await answer.json().catch(() => undefined);
  if (answer.ok) return said;
  const { message } = (said ?? {}) as { message?: unknown };
  throw new Refused(typeof message === 'string' ? message : `The server answers ${answer.status}.`);
};

/** Keys that have not ended, the last made first. */
export const livingKeys = async (key: string): Promise<KeyRecord[]> => {
  const list = (await ask(key, KEYS_PATH)) as KeyRecord[];
  return list.filter(({ ended }) => ended === undefined).sort((a, b) => b.made - a.made);
};

export const makeKey = (key: string, wish: KeyWish): Promise<NewKey> =>
  ask(key, KEYS_PATH, { method: 'POST', body: JSON.stringify(wish) }) as Promise<NewKey>;

export const endKey = (key: string, id: string): Promise<unknown> =>
  ask(key, `${KEYS_PATH}/${encodeURIComponent(id)}`, { method: 'DELETE' });

/** The link for another device: at an address that the network reaches, also where this page came by one of this machine. */
export const linkWith = async ({ key, sheet }: NewKey): Promise<string> => {
  const { addresses } = (await (await fetch(ABOUT_PATH)).json()) as About;
  const own = /^(localhost|127\.\d+\.\d+\.\d+|\[::1\])$/.test(location.hostname);
  return joinLink((own && addresses?.[0]) || location.origin, key, sheet);
};
