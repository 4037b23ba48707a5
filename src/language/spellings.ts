import type { Role } from '../../shared/sheet/format.ts';

/** Characters that a telephone or a word processor makes of 1/2 and the like. */
const VULGAR: Readonly<Record<string, string>> = {
  '¼': '1/4',
  '½': '1/2',
  '¾': '3/4',
  '⅓': '1/3',
  '⅔': '2/3',
  '⅕': '1/5',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
};

const NUMBER = String.raw`\d*\.?\d+(?:[eE][-+]?\d+)?`;
const SIZE = String.raw`\d*\.\d+`;

type Spelling = (text: string, role: Role | undefined) => string | undefined;

const vulgar: Spelling = (text) => {
  const plain = text.replace(
    /(\d?)\s*([¼½¾⅓⅔⅕⅛⅜⅝⅞])/g,
    (_, before: string, mark: string) => `${before && `${before} `}${VULGAR[mark]}`,
  );
  return plain === text ? undefined : plain;
};

/** 1,234.5 */
const grouped: Spelling = (text) =>
  /^\d{1,3}(,\d{3})+\.\d/.test(text) ? text.replace(/,(?=\d{3}(?!\d))/g, '') : undefined;

/** 2'-3" */
const feetAndInches: Spelling = (text) =>
  /^\d+\s*['′’]\s*-\s*\d/.test(text) ? text.replace(/(['′’])\s*-\s*/, '$1 ') : undefined;

/** 120 ft lbs, 120 foot pounds, 160 N-m */
const torque: Spelling = (text) => {
  const match = new RegExp(`^(${NUMBER})\\s*([A-Za-z]+)[\\s.-]*([A-Za-z]+)$`).exec(text);
  if (!match) return undefined;
  const word = (unit: string): string =>
    unit
      .replace(/^(foot|feet)$/i, 'ft')
      .replace(/^inch(es)?$/i, 'in')
      .replace(/^(lbs|pounds?)$/i, 'lb');
  const [one, other] = [word(match[2] as string), word(match[3] as string)];
  if (/^(ft|in)$/.test(one) && /^lbf?$/.test(other)) return `${match[1]} ${one}-${other}`;
  if (/^lbf?$/.test(one) && /^(ft|in)$/.test(other)) return `${match[1]} ${one}.${other}`;
  return /^(N|kN|kgf|mN)$/.test(one) && /^m{1,2}$/.test(other) ? `${match[1]} ${one}.${other}` : undefined;
};

/** 6.4e-6 /F: a reciprocal without its 1. */
const reciprocal: Spelling = (text) => {
  const match = new RegExp(`^(${NUMBER})\\s*/\\s*(?:deg\\s?|°\\s?)?([CFK])$`).exec(text);
  if (!match) return undefined;
  const unit = match[2] === 'K' ? 'K' : `deg${match[2]}`;
  return `${match[1]} 1/${unit}`;
};

/** 1.7500 1.7502 1.7498: readings as they were called out. */
const calledOut: Spelling = (text, role) =>
  role === 'measured' && new RegExp(`^${SIZE}(\\s+${SIZE})+(\\s*[A-Za-z"]+)?$`).test(text)
    ? text.replace(/(?<=\d)\s+(?=[\d.])/g, '; ')
    : undefined;

/** 2.2515/2.2510: limits of size as a drawing stacks them. */
const stacked: Spelling = (text) => {
  const match = new RegExp(`^(${SIZE})\\s*/\\s*(${SIZE})(\\s*[A-Za-z"]+)?$`).exec(text);
  if (!match) return undefined;
  const [low, high] = [match[1] as string, match[2] as string].sort((a, b) => Number(a) - Number(b));
  return `${low}..${high}${match[3] ?? ''}`;
};

/** 10-32: a numbered thread without its mark. */
const numberedThread: Spelling = (text) => (/^(0|[1-9]|1[0-2])-\d\d$/.test(text) ? `#${text}` : undefined);

const SPELLINGS: readonly Spelling[] = [
  vulgar,
  grouped,
  feetAndInches,
  torque,
  reciprocal,
  calledOut,
  stacked,
  numberedThread,
];

/** What a text was probably meant for that cannot be read as it stands: to be offered, never put in silently. */
export const spellingsOf = (text: string, role: Role | undefined): string[] =>
  SPELLINGS.map((spelling) => spelling(text, role)).filter((found) => found !== undefined);

/** Deviations with a bare zero, `+0.025 0` and `0/-0.016`, as drawings have them; with its sign. */
export const signedZero = (text: string): string | undefined => {
  const after = /^(\+[^/]*?)\s*\/?\s*(?<![\d.,])(0(?:[.,]0*)?)$/.exec(text);
  if (after) return `${after[1]} -${after[2]}`;
  const before = /^(0(?:[.,]0*)?)\s*\/?\s*([-−–].*)$/.exec(text);
  return before ? `+${before[1]} ${before[2]}` : undefined;
};
