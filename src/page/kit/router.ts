import { createSignal, onCleanup } from 'solid-js';

/** Where the page is, as the part of the address behind `#`. */
export type Place =
  | { view: 'home' }
  /** A sheet: its lines, its drawn chain, or one reading at a time at the machine. */
  | { view: 'sheet'; id: string; part?: SheetPart }
  | { view: 'book'; kind?: string }
  /** A sheet from elsewhere: the one in the code, else one that is still to be chosen. */
  | { view: 'open'; code?: string }
  /** The link of a shop's server, with its key; of one sheet alone perhaps. */
  | { view: 'join'; key?: string; sheet?: string }
  | { view: 'unknown'; address: string };

export type SheetPart = 'chain' | 'bench';

export const placeOf = (hash: string): Place => {
  const path = hash.replace(/^#/, '');
  if (path === '' || path === '/') return { view: 'home' };
  const book = /^\/book(?:\/([\w-]*))?$/.exec(path);
  if (book) return { view: 'book', ...(book[1] ? { kind: book[1] } : {}) };
  const open = /^\/open(?:\/(.*))?$/s.exec(path);
  if (open) return { view: 'open', ...(open[1] ? { code: open[1] } : {}) };
  const join = /^\/join(?:\/([\w-]{22})(?:\/([\w-]{1,64}))?)?$/.exec(path);
  if (join) return { view: 'join', ...(join[1] && { key: join[1] }), ...(join[2] && { sheet: join[2] }) };
  const sheet = /^\/sheet\/([\w-]+)(?:\/(chain|bench))?$/.exec(path);
  if (!sheet?.[1]) return { view: 'unknown', address: path };
  return { view: 'sheet', id: sheet[1], ...(sheet[2] ? { part: sheet[2] as SheetPart } : {}) };
};

/**
 * Where a text leads that is the link of a shop's server: within this page, or to a page of another address. Undefined for
 * any other text.
 */
export const hashOfJoinLink = (
  text: string,
  page: string,
): { hash: string; elsewhere?: undefined } | { elsewhere: string; hash?: undefined } | undefined => {
  if (!URL.canParse(text.trim())) return undefined;
  const url = new URL(text.trim());
  if (!/^https?:$/.test(url.protocol) || placeOf(url.hash).view !== 'join' || url.hash === '#/join')
    return undefined;
  return url.origin === new URL(page).origin ? { hash: url.hash } : { elsewhere: url.href };
};

export const addressOfSheet = (id: string, part?: SheetPart): string =>
  `#/sheet/${id}${part ? `/${part}` : ''}`;

export const addressOfBook = (): string => '#/book';

export const addressInBook = (kind: string): string => `#/book/${kind}`;

export const addressToOpen = (): string => '#/open';

/** Goes on without leaving the present address behind: nothing leads back to it. */
export const goInstead = (address: string): void => {
  location.replace(address);
};

export const go = (address: string): void => {
  location.hash = address;
};

/** The present place, following the address; call it inside a component. */
export const createPlace = () => {
  const [place, setPlace] = createSignal<Place>(placeOf(location.hash));
  const follow = () => setPlace(placeOf(location.hash));
  addEventListener('hashchange', follow);
  onCleanup(() => removeEventListener('hashchange', follow));
  return place;
};
