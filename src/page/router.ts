import { createSignal, onCleanup } from 'solid-js';

/** Where the page is, as the part of the address behind `#`. */
export type Place =
  | { view: 'home' }
  | { view: 'sheet'; id: string }
  | { view: 'book'; kind?: string }
  | { view: 'unknown'; address: string };

export const placeOf = (hash: string): Place => {
  const path = hash.replace(/^#/, '');
  if (path === '' || path === '/') return { view: 'home' };
  const book = /^\/book(?:\/([\w-]*))?$/.exec(path);
  if (book) return { view: 'book', ...(book[1] ? { kind: book[1] } : {}) };
  const sheet = /^\/sheet\/([\w-]+)$/.exec(path);
  return sheet?.[1] ? { view: 'sheet', id: sheet[1] } : { view: 'unknown', address: path };
};

export const addressOfSheet = (id: string): string => `#/sheet/${id}`;

export const addressOfBook = (): string => '#/book';

export const addressInBook = (kind: string): string => `#/book/${kind}`;

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
