import type { Role } from '../../../shared/sheet/format.ts';

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

/** 2'-3", 5'3, 5ft 3-1/2in: the inches with their mark, a mixed number of them with its blank. */
const feetAndInches: Spelling = (text) => {
  const match =
    /^(\d+)\s*(?:['′’]|ft\.?|feet|foot)\s*-?\s*(\d[\d./ -]*?)\s*(?:["″”]|in\.?|inch(?:es)?)?$/.exec(text);
  return match ? `${match[1]}' ${match[2]?.replace(/(\d)\s*-\s*(?=\d+\/)/, '$1 ')}"` : undefined;
};

/** Look-alikes of a stroke, a hyphen and a degree sign, and full-width figures: what a word processor or a keyboard of another script puts. */
const lookAlikes: Spelling = (text) => {
  const plain = text
    .replace(/[\uff01-\uff5e]/g, (mark) => String.fromCharCode(mark.charCodeAt(0) - 0xfee0))
    .replace(/[\u2044\u2215]/g, '/')
    .replace(/[\u2010-\u2012\u2014]/g, '-')
    .replace(/\u00ba\s*/g, '\u00b0');
  return plain === text ? undefined : plain;
};

/** 2 - 1/16, 2–1/16, 2+1/16: two and a sixteenth. */
const mixedNumber: Spelling = (text) => {
  const [, whole, top = '', bottom = '', unit = ''] =
    /^(\d+)\s*[-+\u2010-\u2015−]\s*(\d+)\/(\d+)(\s*[A-Za-z"″”]*)$/.exec(text) ?? [];
  return whole !== undefined && Number(top) < Number(bottom) ? `${whole} ${top}/${bottom}${unit}` : undefined;
};

/** 12 345, 1 200.5 lbf: thousands parted by blanks. */
const blanks: Spelling = (text) =>
  /^\d{1,3}(?:[ \u00a0\u2009\u202f]\d{3})+(?:[.,]\d+)?(?:\s*[A-Za-z"].*)?$/.test(text)
    ? text.replace(/(?<=\d)[ \u00a0\u2009\u202f](?=\d{3}(?!\d))/g, '')
    : undefined;

/** 50 +0.025 0, 50 0 -0.016: a bare zero on one side, as drawings have it. */
const zeroDeviation: Spelling = (text, role) => {
  if (role === 'measured') return undefined;
  const match = /^(.*?\d(?:\s*[A-Za-z"]+)?)\s+([-+−–0].*)$/.exec(text);
  const spread = match && signedZero(match[2] as string);
  return spread ? `${match[1]} ${spread}` : undefined;
};

/** 2 sq in, 2000 lbs/sq. in. */
const powers: Spelling = (text) => {
  const plain = text
    .replace(/\b(?:sq|square)\.?\s*(in|ft|mm|cm|m)\b\.?/gi, '$12')
    .replace(/\b(?:cu|cubic)\.?\s*(in|ft|mm|cm|m)\b\.?/gi, '$13');
  return plain === text ? undefined : plain;
};

/** No. 8: the drill of that number. */
const numberedDrill: Spelling = (text) => {
  const match = /^(?:no\.?|number|nr\.?)\s*(\d{1,2})$/i.exec(text);
  return match ? `#${match[1]}` : undefined;
};

/** 72 degrees F */
const degrees: Spelling = (text) => {
  const match = new RegExp(`^([-+−]?\\s*${NUMBER})\\s*degrees?\\s*([CF])$`, 'i').exec(text);
  return match ? `${match[1]} deg${match[2]?.toUpperCase()}` : undefined;
};

const TONS: Readonly<Record<string, string>> = {
  long: 'long_ton',
  uk: 'long_ton',
  short: 'short_ton',
  us: 'short_ton',
  metric: 'tonne',
};

/** 2 long tons */
const ton: Spelling = (text) => {
  const match = new RegExp(`^(${NUMBER})\\s*(long|short|us|uk|metric)[ -]*tons?$`, 'i').exec(text);
  return match ? `${match[1]} ${TONS[(match[2] as string).toLowerCase()]}` : undefined;
};

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
  lookAlikes,
  mixedNumber,
  grouped,
  blanks,
  feetAndInches,
  zeroDeviation,
  powers,
  numberedDrill,
  degrees,
  ton,
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
