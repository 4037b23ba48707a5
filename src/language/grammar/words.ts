/** Words of the trade in an entry. Each is read as one only where the grammar allows it, so a formula never meets them. */
import { ExternalTokenizer, type InputStream, type Stack } from '@lezer/lr';
import { isBlank, isLatin, run, slice } from './characters.ts';
import { Drill, diameter, div, of, Side, set, Thread, Tir, to } from './entry.grammar.terms';

const WORDS: ReadonlyArray<readonly [pattern: RegExp, term: number]> = [
  [/^(under|over)(\s?size)?$/i, Side],
  [/^(u\/s|o\/s)$/i, Side],
  [/^(tir|fim|t\.i\.r\.|f\.i\.m\.)$/i, Tir],
  [/^set$/i, set],
  [/^(divs?|divisions?)\.?$/i, div],
  [/^of$/i, of],
  [/^to$/i, to],
  [/^dia\.?$/i, diameter],
];

const SIZE = String.raw`(?:\d+[ -]\d+/\d+|\d+/\d+)`;
const DRILLS = new RegExp(
  String.raw`^(?:#\s?\d+|no\.?\s?\d+(?=\s*drill)|letter [a-z](?![a-z])|(?:letter )?[a-z](?=\s+drill)|${SIZE}["″]?(?=\s*drill)|\d+(?:[.,]\d+)?\s?mm(?=\s*drill))(?:\s*(?:tap )?drill)?$`,
  'i',
);
const CLASS = String.raw`(?:\s?-?\s?\d[a-z](?:\d[a-z])?)?`;
const THREADS = new RegExp(
  `^(?:M\\d+(?:[.,]\\d+)?(?:\\s?[x×]\\s?\\d*[.,]?\\d+)?${CLASS}` +
    `|${SIZE}-\\d+(?:\\s?-?\\s?[A-Z]{2,5})?${CLASS}` +
    `|(?:#\\s?|no\\.?\\s?)?\\d+-\\d+\\s?-?\\s?UN[A-Z]{0,3}${CLASS}` +
    `|#\\s?\\d+-\\d+${CLASS}` +
    `|(?:${SIZE}|\\d+)["″]?\\s?(?:UNC|UNF|UNEF|NPT|NPTF|NPS|BSW|BSF|BSP|BSPP|BSPT|BSB|BA)${CLASS}` +
    `|(?:G|Rp?|Rc)\\s?(?:${SIZE}|\\d+)A?)$`,
  'i',
);

const MAX = 60;

/** What is left of a line, if it is short enough to be a designation: those stand alone. */
const rest = (input: InputStream): string => {
  const end = run(input, 0, (c) => c >= 32 && c !== 124 && c !== 59);
  return end > MAX || input.peek(end) >= 0 ? '' : slice(input, 0, end);
};

const isWordPart = (c: number): boolean => isLatin(c) || c === 46 || c === 47;

const readWord = (input: InputStream, stack: Stack): void => {
  if (input.next === 0xd8 || input.next === 0xf8 || input.next === 0x2300) {
    if (stack.canShift(diameter)) input.acceptToken(diameter, 1);
    return;
  }
  if (stack.canShift(Drill)) {
    const text = rest(input).trimEnd();
    if (text !== '' && DRILLS.test(text)) return void input.acceptToken(Drill, text.length);
    if (text !== '' && THREADS.test(text)) return void input.acceptToken(Thread, text.length);
  }
  if (!isLatin(input.next)) return;
  let end = run(input, 0, isWordPart);
  const word = slice(input, 0, end);
  for (const [pattern, term] of WORDS) {
    if (!stack.canShift(term) || !pattern.test(word)) continue;
    if (term === Side) {
      const size = run(input, end, isBlank);
      const stop = run(input, size, isLatin);
      if (/^size$/i.test(slice(input, size, stop))) end = stop;
    }
    input.acceptToken(term, end);
    return;
  }
};

export const words = new ExternalTokenizer(readWord, { contextual: true });
