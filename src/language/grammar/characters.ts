import type { InputStream } from '@lezer/lr';

/** What the tokenizers know of single characters, by code unit. */
export const isDigit = (c: number): boolean => c >= 48 && c <= 57;

export const isBlank = (c: number): boolean =>
  c === 32 || c === 9 || c === 0xa0 || c === 0x2009 || c === 0x202f;

export const isLatin = (c: number): boolean => (c >= 65 && c <= 90) || (c >= 97 && c <= 122);

/** Letters, micro signs, degree, percent, per mille, capital delta: what a unit may begin with. */
export const isUnitLetter = (c: number): boolean =>
  isLatin(c) || c === 0xb5 || c === 0x3bc || c === 0xb0 || c === 37 || c === 0x2030 || c === 0x394;

export const isUnitPart = (c: number): boolean => isUnitLetter(c) || c === 95;

/** Inch marks: " ″ ” */
export const isInchMark = (c: number): boolean => c === 34 || c === 0x2033 || c === 0x201d;

/** Foot marks, and arc minutes behind degrees: ' ′ ’ */
export const isFootMark = (c: number): boolean => c === 39 || c === 0x2032 || c === 0x2019;

export const isUnitStart = (c: number): boolean => isUnitLetter(c) || isInchMark(c) || isFootMark(c);

/** First offset from `at` where `test` fails. */
export const run = (input: InputStream, at: number, test: (c: number) => boolean): number => {
  let end = at;
  while (test(input.peek(end))) end += 1;
  return end;
};

export const slice = (input: InputStream, from: number, to: number): string => {
  let text = '';
  for (let at = from; at < to; at += 1) text += String.fromCharCode(input.peek(at));
  return text;
};
