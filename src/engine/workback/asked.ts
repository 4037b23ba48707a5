import { isUnit, parseUnit } from '../../../shared/units/units.ts';
import type { Computed } from '../computed.ts';
import { numberOf } from '../rows/texts.ts';
import type { FigurePlace } from '../trial/place.ts';
import { type Fixed, inputAt, type Movable } from './inputs.ts';
import type { AskedQuestion, Question, Steps, StockSize, Want } from './question.ts';
import { figureName, planAt } from './work-back.ts';
import { unitOf } from './written.ts';

/** Something asked that cannot be read: why, and what to write. */
export interface Unread {
  message: string;
}

const PLACES = {
  middle: 'middle',
  'lower limit': 'lower',
  'upper limit': 'upper',
  'wear limit': 'wear',
} as const;
const isPlace = (text: string): text is keyof typeof PLACES => Object.hasOwn(PLACES, text);

/** Reads where a figure is wanted: `3 thou`, `middle`, `lower limit`, `upper limit`, `wear limit`. */
export function readWant(book: Computed, figure: FigurePlace, text: string): Want | Unread {
  const words = text.trim().toLowerCase().replace(/\s+/g, ' ');
  if (isPlace(words)) return { at: PLACES[words] };
  const plan = planAt(book, figure);
  const name = figureName(book, figure);
  const { entry, problems } = book.scope.texts.entry(text, plan?.quantity, 'given', plan?.display);
  if (problems[0]) return { message: problems[0].message };
  const value = numberOf(entry);
  if (value === undefined)
    return {
      message: `Say where \`${name}\` is wanted: a value, middle, lower limit, upper limit or wear limit.`,
    };
  return { at: 'value', value };
}

/** Reads a whole question as it is typed. */
export function readQuestion(book: Computed, asked: AskedQuestion): Question | Unread {
  const want = readWant(book, asked.figure, asked.want);
  if ('message' in want) return want;
  const input = inputAt(book, asked.change);
  const between = asked.between?.trim() ? readBetween(book, input, asked.between) : undefined;
  if (between && 'message' in between) return between;
  const steps = asked.steps?.trim() ? readSteps(book, input, asked.steps) : undefined;
  if (steps && 'message' in steps) return steps;
  return {
    figure: asked.figure,
    want,
    change: asked.change,
    ...(between ? { between } : {}),
    ...(steps ? { steps } : {}),
  };
}

function readBetween(
  book: Computed,
  input: Movable | Fixed,
  text: string,
): readonly [number, number] | Unread {
  const quantity = 'stays' in input ? undefined : input.quantity;
  const { entry, problems } = book.scope.texts.entry(text, quantity, 'given');
  if (entry.kind === 'range' && problems.length === 0 && entry.low.value !== entry.high.value)
    return [entry.low.value, entry.high.value];
  return {
    message: problems[0]?.message ?? 'Write the range to search by its two ends, as in 2.0 in .. 2.5 in.',
  };
}

function readSteps(book: Computed, input: Movable | Fixed, text: string): Steps | Unread {
  const quantity = 'stays' in input ? undefined : input.quantity;
  if (/^drills?$/i.test(text.trim())) {
    if (quantity === 'length') return { of: 'drills' };
    return { message: 'A drill is a length, and that input is none.' };
  }
  if (text.includes(';')) return readStock(book, input, text);
  // A step of a temperature is a difference.
  const of = quantity === 'temperature' ? 'temperature difference' : quantity;
  const { entry, problems } = book.scope.texts.entry(text, of, 'given');
  const step = numberOf(entry);
  if (problems.length === 0 && step !== undefined && step > 0) return { of: 'step', step };
  return {
    message:
      problems[0]?.message ??
      `Write the step to make it in, as in 0.0005 in; or drills; or the sizes there are, as in ${STOCK}.`,
  };
}

/** Sizes with semicolons between them; the unit behind the last counts for those before it that have none. */
function readStock(book: Computed, input: Movable | Fixed, text: string): Steps | Unread {
  const quantity = 'stays' in input ? undefined : input.quantity;
  const shown = 'stays' in input ? undefined : unitOf(book, input);
  const parts = text
    .split(';')
    .map((part) => AMOUNT.exec(part))
    .filter((part) => part?.[0].trim() !== '');
  const last = parts.at(-1)?.[2];
  const sizes: StockSize[] = [];
  for (const part of parts) {
    const [whole = '', number = '', symbol = last] = part ?? [];
    const unit = symbol === undefined ? shown : parseUnit(symbol);
    const full = symbol === undefined ? number : `${number} ${symbol}`;
    if (!/\d/.test(number) || unit === undefined || !isUnit(unit))
      return { message: `“${(whole || text).trim()}” is no size: write those there are, as in ${STOCK}.` };
    const { entry, problems } = book.scope.texts.entry(full, quantity, 'given');
    const value = numberOf(entry);
    if (problems[0] || value === undefined)
      return { message: problems[0]?.message ?? `“${full}” is no size.` };
    sizes.push({ text: number, unit, value });
  }
  if (sizes.length === 0) return { message: `Write the sizes there are, as in ${STOCK}.` };
  return { of: 'stock', sizes: sizes.sort((a, b) => a.value - b.value) };
}

/** A number, plain or with a fraction, and what stands behind it. */
const AMOUNT = /^\s*([-+]?\d[\d.\s/]*?|)\s*([^\d\s./].*?)?\s*$/u;
const STOCK = '1 in; 1 1/4 in; 35 mm';
