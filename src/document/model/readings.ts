import { isPlain } from './fields.ts';
import { between, spread } from './order.ts';

/**
 * A list of readings lies in the document taken apart: each reading under a key of its own, so that the desk and the pad at
 * the machine may add to one list at the same time and lose none, and what stands behind them all (unit and doubt) under
 * the key of the field. A field that holds a text is no such list.
 */
export interface ListHead {
  /** Behind the last reading, with the blank before it: ` in ± 0.0002 in`. */
  list: string;
}

export interface ReadingElement {
  /** Place along the length, from 1. */
  place: number;
  /** Its order within the place, ties by key. */
  at: string;
  text: string;
  /** What a bare number counted as when it was read. */
  unit: string;
}

/** An element with the end of its key. */
export type Keyed = readonly [id: string, element: ReadingElement];

const MARK = '#';

export const elementKey = (path: string, id: string): string => `${path}${MARK}${id}`;

/** The field that a key belongs to: its own, or that of the list the reading stands in. */
export const fieldOfKey = (key: string): string => {
  const at = key.indexOf(MARK, 1);
  return at < 0 ? key : key.slice(0, at);
};

export const isElementKey = (key: string): boolean => fieldOfKey(key) !== key;

export const isHead = (value: unknown): value is ListHead =>
  isPlain(value) &&
  typeof value.list === 'string' &&
  Object.keys(value).length === 1 &&
  TAIL.test(value.list);

/** A number as a shop writes it, and a unit of its own perhaps. */
const NUMBER = String.raw`[+-]?(?:\d[\d.,]*|[.,]\d+)(?:[ -]\d+\/\d+|\/\d+)?`;
const UNIT = String.raw`(?:[ \u00a0]?["'′″]|[ \u00a0]?[a-zµμ°][a-zµμ°_]{0,15}\d?)`;
const WHOLE_NUMBER = new RegExp(`^${NUMBER}$`, 'iu');
const WHOLE_UNIT = new RegExp(`^${UNIT}$`, 'iu');
const FIRST_UNIT = new RegExp(`^${UNIT}`, 'iu');
const READING = new RegExp(`^${NUMBER}${UNIT}?$`, 'iu');
const LAST = new RegExp(
  `^(${NUMBER})(${UNIT}?(?:[ \\u00a0]*(?:±|\\+\\/?-)[ \\u00a0]*${NUMBER}${UNIT}?)?)$`,
  'iu',
);
const TAIL = new RegExp(`^${UNIT}?(?:[ \\u00a0]*(?:±|\\+\\/?-)[ \\u00a0]*${NUMBER}${UNIT}?)?$`, 'iu');

/** An element that lies in the document; undefined for what is none: it may come from anywhere. */
export const elementIn = (value: unknown): ReadingElement | undefined => {
  if (!isPlain(value)) return undefined;
  const { place, at, text, unit } = value;
  return Number.isInteger(place) &&
    (place as number) >= 1 &&
    (place as number) <= 10_000 &&
    typeof at === 'string' &&
    /^[0-9A-Za-z]{1,200}$/.test(at) &&
    typeof text === 'string' &&
    READING.test(text) &&
    typeof unit === 'string' &&
    (unit === '' || WHOLE_UNIT.test(unit)) &&
    Object.keys(value).length === 4
    ? (value as unknown as ReadingElement)
    : undefined;
};

export interface TakenApart {
  places: string[][];
  tail: string;
}

/** @returns undefined for what is no plain list of readings: a formula, a range, a text. */
export const takeApart = (text: string): TakenApart | undefined => {
  const places = text.split('|').map((place) => place.split(';').map((reading) => reading.trim()));
  const last = places.at(-1)!;
  const [, number, tail] = LAST.exec(last.at(-1)!) ?? [];
  if (number === undefined || tail === undefined) return undefined;
  last[last.length - 1] = number;
  return places.flat().every((reading) => READING.test(reading)) ? { places, tail } : undefined;
};

export const countOf = ({ places }: TakenApart): number => places.flat().length;

export const putTogether = ({ places, tail }: TakenApart): string =>
  places.map((place) => place.join('; ')).join(' | ') + tail;

/** The unit in a tail: what a bare reading before it counts as. */
const unitOf = (tail: string): string => FIRST_UNIT.exec(tail)?.[0].trim() ?? '';

const hasUnit = (text: string): boolean => !WHOLE_NUMBER.test(text);

/** A reading that counted as another unit than those about it says so. */
const shownOf = ({ text, unit }: ReadingElement, common: string): string =>
  unit === common || unit === '' || hasUnit(text) ? text : `${text} ${unit}`;

const inOrder = (elements: readonly Keyed[]): Keyed[] =>
  [...elements].sort(([i, a], [k, b]) =>
    a.place !== b.place
      ? a.place - b.place
      : a.at !== b.at
        ? a.at < b.at
          ? -1
          : 1
        : i < k
          ? -1
          : i > k
            ? 1
            : 0,
  );

/** The text of a list; without a head, as where one took the list away while another added to it, each says its unit. */
export const listText = (elements: readonly Keyed[], head: ListHead | undefined): string => {
  const sorted = inOrder(elements);
  if (sorted.length === 0) return '';
  const units = new Set(sorted.map(([, { unit }]) => unit));
  const tail = head?.list ?? (units.size === 1 && [...units][0] ? ` ${[...units][0]}` : '');
  const common = unitOf(tail);
  const places: string[][] = [];
  let last: number | undefined;
  for (const [, element] of sorted) {
    if (element.place !== last) places.push([]);
    last = element.place;
    places.at(-1)!.push(shownOf(element, common));
  }
  const mixed = sorted.some(([, { text, unit }]) => unit !== common && unit !== '' && !hasUnit(text));
  const end = places.at(-1)!.at(-1)!;
  // Of units that differ each is said. What stands behind all of them has no place behind a unit of the last one's own.
  if ((!mixed && !hasUnit(end)) || tail === '') return putTogether({ places, tail });
  const bare = tail.slice(/^[ \u00a0]*/.exec(tail)![0].length + common.length);
  for (const place of places)
    for (const [k, text] of place.entries())
      if (common !== '' && !hasUnit(text)) place[k] = `${text} ${common}`;
  return putTogether({ places, tail: bare });
};

/** What to write so that a list says another text: by key, undefined where a reading goes. */
export type ElementChanges = Map<string, ReadingElement | undefined>;

/**
 * The fewest readings are touched: those at both ends that stay are left alone, between them one is put in place of
 * another as far as they go. A reading that somebody else adds meanwhile stays, whatever is written here.
 */
export const changesTo = (
  before: readonly Keyed[],
  head: ListHead | undefined,
  wanted: TakenApart,
  fresh: () => string,
): ElementChanges => {
  const old = inOrder(before);
  const was = unitOf(head?.list ?? '');
  const unit = unitOf(wanted.tail);
  const now = wanted.places.flatMap((place, k) => place.map((text) => ({ place: k + 1, text })));
  const alike = (i: number, k: number) =>
    shownOf(old[i]![1], was) === now[k]!.text && (old[i]![1].unit === unit || hasUnit(now[k]!.text));
  const most = Math.min(old.length, now.length);
  let start = 0;
  while (start < most && alike(start, start)) start += 1;
  let end = 0;
  while (end < most - start && alike(old.length - 1 - end, now.length - 1 - end)) end += 1;

  const ids: string[] = [];
  const places: Array<string | undefined> = [];
  const paired = old.length - start - end;
  for (let k = 0; k < now.length; k += 1) {
    const from =
      k < start
        ? k
        : k >= now.length - end
          ? old.length - (now.length - k)
          : k - start < paired
            ? k
            : undefined;
    ids.push(from === undefined ? fresh() : old[from]![0]);
    // Its order holds within its own place alone.
    places.push(from !== undefined && old[from]![1].place === now[k]!.place ? old[from]![1].at : undefined);
  }
  const orders = ordersOf(
    places,
    now.map(({ place }) => place),
  );
  const changes: ElementChanges = new Map();
  const kept = new Set(ids);
  for (const [id] of old) if (!kept.has(id)) changes.set(id, undefined);
  const known = new Map(old);
  now.forEach(({ place, text }, k) => {
    const had = known.get(ids[k]!);
    const stays = had && shownOf(had, unit) === text && (had.unit === unit || hasUnit(text));
    const next: ReadingElement = {
      place,
      at: orders[k]!,
      text: stays ? had.text : text,
      unit: stays ? had.unit : unit,
    };
    if (!had || (['place', 'at', 'text', 'unit'] as const).some((field) => had[field] !== next[field]))
      changes.set(ids[k]!, next);
  });
  return changes;
};

/** Orders within each place: those there are, and new ones between them; all anew where they leave no room. */
const ordersOf = (had: ReadonlyArray<string | undefined>, places: readonly number[]): string[] => {
  const orders: string[] = [];
  for (let from = 0; from < places.length; ) {
    let to = from;
    while (to < places.length && places[to] === places[from]) to += 1;
    const mine = had.slice(from, to);
    const known = mine.filter((at) => at !== undefined);
    const rising = known.every((at, k) => k === 0 || known[k - 1]! < at);
    if (!rising) orders.push(...spread('', undefined, mine.length));
    else {
      let low = '';
      mine.forEach((at, k) => {
        const next = mine.slice(k).find((one) => one !== undefined);
        low = at ?? between(low, next);
        orders.push(low);
      });
    }
    from = to;
  }
  return orders;
};

/** The elements of a list in the fields of a cell, by field. What is none is left out. */
export const listsIn = (fields: Iterable<readonly [string, unknown]>): Map<string, Keyed[]> => {
  const lists = new Map<string, Keyed[]>();
  for (const [key, value] of fields) {
    const path = fieldOfKey(key);
    const element = path === key ? undefined : elementIn(value);
    if (!element) continue;
    const list = lists.get(path);
    const keyed: Keyed = [key.slice(path.length + 1), element];
    if (list) list.push(keyed);
    else lists.set(path, [keyed]);
  }
  return lists;
};

/** The fields of a cell as they are read: lists as texts. A text that stands in place of a list is what counts. */
export const withLists = (fields: Iterable<readonly [string, unknown]>): Array<[string, unknown]> => {
  const all = [...fields];
  const lists = listsIn(all);
  const out: Array<[string, unknown]> = [];
  for (const [key, value] of all) if (!isElementKey(key) && !isHead(value)) out.push([key, value]);
  if (lists.size === 0) return out;
  const own = new Map(all);
  for (const [path, elements] of lists) {
    const head = own.get(path);
    if (typeof head !== 'string') out.push([path, listText(elements, isHead(head) ? head : undefined)]);
  }
  return out;
};
