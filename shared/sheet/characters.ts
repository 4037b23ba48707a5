import { LOOK_ALIKES } from './look-alikes.ts';

/** Characters that make a text look other than it is. */

/**
 * Direction marks, zero-width characters, fillers that count as letters, and controls but for tab and line ends: nothing
 * anyone sees. What only chooses the look of the character before it (a coloured sign) hides nothing.
 */
const UNSEEN = /(?![\t\n\r\p{Variation_Selector}])[\p{Cc}\p{Cf}\p{Default_Ignorable_Code_Point}\u2800]/u;

export const hasUnseen = (text: string): boolean => UNSEEN.test(text);

/** The text with unseen characters written out: `bore⟨U+202E⟩`. */
export const revealed = (text: string): string =>
  [...text]
    .map((c) =>
      UNSEEN.test(c) ? `⟨U+${(c.codePointAt(0) as number).toString(16).toUpperCase().padStart(4, '0')}⟩` : c,
    )
    .join('');

/** Greek letters that formulas use beside the Latin ones they resemble. */
const OF_FORMULAS = new Set('αγνρσυ');

const twinOf = new Map(
  LOOK_ALIKES.trim()
    .split('\n')
    .flatMap((line) => {
      const [latin = '', all = ''] = line.split(' ');
      return [...all].filter((one) => !OF_FORMULAS.has(one)).map((one) => [one, latin] as const);
    }),
);

/** The text as it looks: twins as their Latin letter, compatibility forms folded, unseen characters gone. */
export const looks = (text: string): string =>
  [...text.normalize('NFKC')]
    .filter((c) => !UNSEEN.test(c) && !/\p{Variation_Selector}/u.test(c))
    .map((c) => twinOf.get(c) ?? c)
    .join('');

/** Latin letters beside letters of another script that print like Latin ones. */
export const mixesScripts = (text: string): boolean =>
  /\p{Script=Latin}/u.test(text) &&
  [...text].some((c) => twinOf.has(c) && !/[\p{Script=Latin}\p{Script=Common}]/u.test(c));

/** Halves of a character that stand alone, as a broken text may hold them, become the replacement character. */
export const wellFormed = (text: string): string => text.replace(/\p{Surrogate}/gu, '\ufffd');
