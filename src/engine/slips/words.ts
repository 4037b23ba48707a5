import type { CellRecord } from '../../../shared/sheet/format.ts';

/** Words of the trade for a surface that surrounds, and for one that is surrounded. */
const HOLE =
  /\b(bores?|holes?|eyes?|sockets?|cylinders?|pockets?|counterbores?|recess|reamed|i\.?d|inside)\b/;
/** Of a housing, its bore, where nothing says that it is another size of it. */
const HOUSING =
  /\bhousings?\b(?!.*\b(?:width|length|face|faces|height|depth|thickness|shoulder|flange|wall)\b)/;
const SHAFT =
  /\b(shafts?|journals?|pins?|spindles?|arbors?|mandrels?|pistons?|stems?|necks?|plungers?|plugs?|pivots?|axles?|dowels?|tenons?|shanks?|rams?|o\.?d|outside|crankpins?|trunnions?|spigots?|gudgeons?|countershafts?|crankshafts?|camshafts?|layshafts?)\b/;
/** Of a bearing on its shaft, where nothing says that it is in a bore. */
const SEAT = /\b(seat|seats)\b/;
const SEAT_IN = /\bseats? in\b/;
/** Inserts made over or under to suit the other part: which way says nothing about hole or shaft. */
const INSERT = /\b(bush|bushing|bearing|shell|liner|sleeve|insert|ring|build|built|plated|sprayed)\b/;
const CLEARANCE = /\b(clearance|play|float)\b/;
const INTERFERENCE = /\b(interference|squeeze)\b/;

/** Name and label of a cell as words. */
export const wordsOf = (record: Pick<CellRecord, 'name' | 'label'> | undefined, more = ''): string =>
  `${record?.name ?? ''} ${record?.label ?? ''} ${more}`.replaceAll('_', ' ').toLowerCase();

export type Surface = 'hole' | 'shaft';

/** What comes after these tells which one it is, and not what. */
const OF_WHICH = /\s(?:of|for|in|at|on|to|with)\s|[,;(].*$/;

/** Where the last of such words begins; below nothing where there is none. */
const lastOf = (of: RegExp, words: string): number =>
  [...words.matchAll(new RegExp(of, 'g'))].at(-1)?.index ?? -1;

/**
 * Hole or shaft by its words; undefined where they say neither, or both in different parts. Of two side by side the last
 * one counts: a gudgeon eye is an eye.
 */
export function surfaceOf(words: string): Surface | undefined {
  const hole = HOLE.test(words);
  if (!hole && !SHAFT.test(words))
    return HOUSING.test(words) || SEAT_IN.test(words) ? 'hole' : SEAT.test(words) ? 'shaft' : undefined;
  if (!hole || !SHAFT.test(words)) return hole ? 'hole' : 'shaft';
  const head = words.trim().split(OF_WHICH)[0] as string;
  const [bore, shaft] = [lastOf(HOLE, head), lastOf(SHAFT, head)];
  if (bore === shaft) return undefined;
  return bore > shaft ? 'hole' : 'shaft';
}

/** As what it wears: a liner that says nothing else does so inside. */
export const wearsAs = (words: string): Surface | undefined =>
  surfaceOf(words) ?? (/\b(liners?|barrels?)\b/.test(words) ? 'hole' : undefined);

export const isInsert = (words: string): boolean => INSERT.test(words);

export type FitWord = 'clearance' | 'interference';

/** What a difference of two sizes is called. */
export function fitWordOf(words: string): FitWord | undefined {
  if (INTERFERENCE.test(words)) return 'interference';
  return CLEARANCE.test(words) ? 'clearance' : undefined;
}
