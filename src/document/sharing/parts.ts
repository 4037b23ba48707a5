import { crc32 } from './crc32.ts';

/** Parts a code is cut into at most: more than anybody would scan. */
export const MOST_PARTS = 16;
const LONGEST = 3000;

/** One of several texts that together are a code: `2.4.1a2b3c4d.` and its piece; the sum is that of the whole code. */
export interface CodePart {
  /** Counted from 1. */
  k: number;
  of: number;
  /** CRC-32 of the whole code, hexadecimal. */
  sum: string;
  piece: string;
}

/** Parts of one code that have come so far. */
export interface Gathered {
  of: number;
  sum: string;
  pieces: Record<number, string>;
}

const sumOf = (code: string): string => crc32(new TextEncoder().encode(code)).toString(16).padStart(8, '0');

/**
 * A code in parts of at most about `length` characters, all of a size.
 * @returns one part for a code that is short enough; nothing for one of more than {@link MOST_PARTS}.
 */
export const partsOf = (code: string, length: number): string[] => {
  const of = Math.ceil(code.length / length);
  if (of <= 1) return [code];
  if (of > MOST_PARTS) return [];
  const each = Math.ceil(code.length / of);
  const sum = sumOf(code);
  return Array.from(
    { length: of },
    (_, i) => `${i + 1}.${of}.${sum}.${code.slice(i * each, (i + 1) * each)}`,
  );
};

/** The parts in what was scanned or pasted: bare or as links, one or several. */
export const partsIn = (text: string): CodePart[] =>
  [...text.matchAll(/(?<![\w.-])(\d{1,2})\.(\d{1,2})\.([0-9a-f]{8})\.([\w-]+)/g)].flatMap(
    ([, k = '', of = '', sum = '', piece = '']) => {
      const part = { k: Number(k), of: Number(of), sum, piece };
      const fits = part.of >= 2 && part.of <= MOST_PARTS && part.k >= 1 && part.k <= part.of;
      return fits && piece.length <= LONGEST ? [part] : [];
    },
  );

/** Puts a part to those that came before; one of another code begins anew. */
export const gather = (before: Gathered | undefined, { k, of, sum, piece }: CodePart): Gathered =>
  before?.sum === sum && before.of === of
    ? { of, sum, pieces: { ...before.pieces, [k]: piece } }
    : { of, sum, pieces: { [k]: piece } };

/** Numbers of the parts that are still to come. */
export const missing = ({ of, pieces }: Gathered): number[] =>
  Array.from({ length: of }, (_, i) => i + 1).filter((k) => pieces[k] === undefined);

/** @returns the code once all of it is there; nothing where its parts do not belong together. */
export const joined = ({ of, sum, pieces }: Gathered): string | undefined => {
  const code = Array.from({ length: of }, (_, i) => pieces[i + 1] ?? '').join('');
  return sumOf(code) === sum ? code : undefined;
};
