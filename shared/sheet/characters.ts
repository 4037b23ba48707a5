/** Characters that make a text look other than it is. */

/** Direction marks, zero-width characters and controls but for tab and line ends: nothing anyone sees. */
const UNSEEN = /(?![\t\n\r])[\p{Cc}\p{Cf}]/u;

export const hasUnseen = (text: string): boolean => UNSEEN.test(text);

/** The text with unseen characters written out: `bore⟨U+202E⟩`. */
export const revealed = (text: string): string =>
  [...text]
    .map((c) =>
      UNSEEN.test(c) ? `⟨U+${(c.codePointAt(0) as number).toString(16).toUpperCase().padStart(4, '0')}⟩` : c,
    )
    .join('');

/** Cyrillic and Greek letters that print like a Latin one; not those a formula uses, as rho and nu. */
const TWINS =
  'аa еe оo рp сc уy хx іi јj ѕs ԁd ԛq ԝw һh АA ВB ЕE КK МM НH ОO РP СC ТT УY ХX ІI ЈJ ЅS ΑA ΒB ΕE ΖZ ΗH ΙI ΚK ΜM ΝN ΟO ΡP ΤT ΥY ΧX οo';
const twinOf = new Map(TWINS.split(' ').map((pair) => [...pair] as [string, string]));

/** The text as it looks: twins as their Latin letter, compatibility forms folded, unseen characters gone. */
export const looks = (text: string): string =>
  [...text.normalize('NFKC')]
    .filter((c) => !UNSEEN.test(c))
    .map((c) => twinOf.get(c) ?? c)
    .join('');

/** Latin letters beside letters of another script that print like Latin ones. */
export const mixesScripts = (text: string): boolean =>
  /\p{Script=Latin}/u.test(text) && [...text].some((c) => twinOf.has(c));

/** Halves of a character that stand alone, as a broken text may hold them, become the replacement character. */
export const wellFormed = (text: string): string => text.replace(/\p{Surrogate}/gu, '\ufffd');
