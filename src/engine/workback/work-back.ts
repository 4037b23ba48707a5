import { formatNumber, formatQuantity } from '../../../shared/quantities/figures.ts';
import { displayUnit } from '../../../shared/quantities/quantities.ts';
import type { Unit } from '../../../shared/units/units.ts';
import type { Computed } from '../computed.ts';
import { BLOCK, type Crossing, type Distance, findCrossings, type Search } from '../network/roots.ts';
import type { OutputPlan } from '../rows/assembled.ts';
import { numberOf } from '../rows/texts.ts';
import { nominalOf, Path } from '../trial/path.ts';
import type { FigurePlace } from '../trial/place.ts';
import { inputAt, type Movable, reach } from './inputs.ts';
import type { Answer, Question, Solution } from './question.ts';
import { rangeAbout, trialsOver, widened } from './range.ts';
import { type Wanted, wantedOf } from './wanted.ts';
import { entryWith, unitOf, type Written, waysToWrite } from './written.ts';

/** So much of what is wanted is nothing when an answer is written down. */
const NEAR = 1e-5;
/** A trillionth of a size is arithmetic. */
const NOISE = 1e-13;

/** A question about numbers, made ready: what moves, what is watched, and how far it is from where it is wanted. */
export interface Work {
  book: Computed;
  plan: OutputPlan;
  wanted: Wanted;
  input: Movable;
  /** The input as it stands, SI; undefined while nothing stands there. */
  present: number | undefined;
  /** What the entry says less what the row stands at, SI. */
  shift: number;
  distance: Distance;
  /** What the figure comes to in each trial of the last block. */
  figures(): Float64Array;
}

export const planAt = (book: Computed, { cell, output }: FigurePlace): OutputPlan | undefined =>
  book.cells.get(cell)?.outputs.find((one) => one.name === output);

export const figureName = (book: Computed, { cell, output }: FigurePlace): string => {
  const called = book.scope.called(cell);
  return book.scope.records.get(cell)?.role === 'cell' ? `${called}.${output}` : called;
};

/** True of a figure whose own entry says nothing yet. */
function isUnread(book: Computed, { cell }: FigurePlace): boolean {
  const record = book.scope.records.get(cell);
  if (!record || record.role === 'cell') return false;
  return book.scope.texts.entry(record.entry ?? '', record.quantity, record.role).problems.length > 0;
}

/** Makes a question ready, or says why it has no answer. */
export function prepare(book: Computed, { figure, want, change }: Question): Work | string {
  const plan = planAt(book, figure);
  const name = `\`${figureName(book, figure)}\``;
  if (!plan) return `${name} has no value.`;
  const wanted = wantedOf(book, plan, want);
  if (typeof wanted === 'string') return `${name} ${wanted}`;
  const input = inputAt(book, change);
  if ('stays' in input) return input.stays;
  const { free } = input;
  if (!free) return `\`${input.name}\` is a row of a table: its rows are tried one by one.`;
  const path = new Path(book, [free], wanted.rows, wanted.cases, BLOCK);
  if (!wanted.rows.some((row) => path.reaches(row)))
    return isUnread(book, figure)
      ? `The entry of ${name} cannot be read: put it right first.`
      : `\`${input.name}\` has no influence on ${name}: nothing leads from the one to the other.`;
  const half = free.moves === 'spread' ? (reach(free.row) as number) : undefined;
  const at = nominalOf(book, free.row);
  const present = half ?? (Number.isNaN(at) ? undefined : at);
  const typed = free.moves === 'spread' ? undefined : numberOf(input.entry);
  const into = new Float64Array(BLOCK);
  const factors = new Float64Array(BLOCK);
  return {
    book,
    plan,
    wanted,
    input,
    present,
    shift: typed !== undefined && present !== undefined ? typed - present : 0,
    distance: (trials, n) => {
      let values = trials;
      if (half !== undefined) {
        for (let i = 0; i < n; i++) factors[i] = (trials[i] as number) / half;
        values = factors;
      }
      path.run([values], n);
      wanted.distance(path, n, into);
      return into;
    },
    figures: () => path.nominal(wanted.figure),
  };
}

/** Works a figure back to an input that is a number. */
export function workBack(book: Computed, question: Question): Answer {
  const work = prepare(book, question);
  if (typeof work === 'string') return { solutions: [], reason: work };
  const { between, search } = searched(work, question);
  const found = search.crossings.flatMap((crossing) => solutionOf(work, crossing));
  const solutions = distinct(found);
  if (solutions.length > 0) return { solutions, between };
  return { solutions, between, reason: reasonWhy(work, question, search, between) };
}

function searched(
  work: Work,
  { between: asked, want }: Question,
): { between: readonly [number, number]; search: Search } {
  const { input, present, wanted } = work;
  const noise = NOISE * wanted.scale;
  const look = (range: readonly [number, number]): Search =>
    findCrossings(work.distance, trialsOver(range, present), noise);
  if (asked) {
    const between = [Math.min(...asked), Math.max(...asked)] as const;
    return { between, search: look(between) };
  }
  if (input.free?.moves === 'spread') {
    const between = [0, 20 * (present as number)] as const;
    return { between, search: look(between) };
  }
  const goal = want.at === 'value' ? want.value : nominalOf(work.book, wanted.figure);
  const near = rangeAbout(present, input.quantity, input.usual, goal || 0);
  const first = look(near);
  if (first.crossings.some(({ is }) => is === 'root' || is === 'level') || first.isFlat)
    return { between: near, search: first };
  const far = widened(near, input.quantity);
  return { between: far, search: look(far) };
}

function solutionOf(work: Work, crossing: Crossing): Solution[] {
  if (crossing.is === 'root') return [written(work, crossing.at)];
  if (crossing.is !== 'level') return [];
  const { from, to } = crossing;
  const { present } = work;
  // Of a stretch what lies nearest to the input as it stands; inside it, not on its very end.
  const inside = Math.min(Math.max(present ?? from, from + 0.01 * (to - from)), to - 0.01 * (to - from));
  return [{ ...written(work, inside), all: [from, to] }];
}

/**
 * An answer in the fewest places that still give what is wanted; of a limit on the side where it is kept.
 * @param exactly as it is, where the distance has no say
 */
export function written(work: Work, at: number, exactly = false): Solution {
  const { input, shift, wanted, book } = work;
  const unit = unitOf(book, input);
  const ways = waysToWrite(at + shift, unit, wanted.isLimit);
  if (ways.length === 0) return { value: at, text: '', figure: Number.NaN };
  const values = Float64Array.from(ways, ({ value }) => value - shift);
  const distances = work.distance(values, values.length);
  const figures = work.figures();
  const good = (i: number): boolean =>
    exactly
      ? Math.abs((values[i] as number) - at) <= NEAR * Math.abs(at)
      : wanted.isLimit
        ? (distances[i] as number) >= -NOISE * wanted.scale
        : Math.abs(distances[i] as number) <= NEAR * wanted.scale;
  const first = ways.findIndex((_, i) => good(i));
  const best = first >= 0 ? first : ways.length - 1;
  return {
    value: values[best] as number,
    text: entryWith(input, ways[best] as Written, unit),
    figure: figures[best] as number,
  };
}

/** One answer is told once, though two brackets end in it. */
function distinct(solutions: readonly Solution[]): Solution[] {
  const found: Solution[] = [];
  for (const one of solutions) if (!found.some(({ text }) => text === one.text)) found.push(one);
  return found;
}

const shown = (si: number, unit: Unit): string => formatQuantity(si, unit).replaceAll('\u00a0', ' ');

const rangeText = ([low, high]: readonly [number, number], unit: Unit): string =>
  `${formatNumber(low, unit)} to ${shown(high, unit)}`;

function reasonWhy(
  work: Work,
  question: Question,
  search: Search,
  between: readonly [number, number],
): string {
  const { input, wanted, plan, book } = work;
  const unit = unitOf(book, input);
  const of = displayUnit(plan.quantity, book.settings.units, plan.display);
  const name = `\`${figureName(book, question.figure)}\``;
  const range = `from ${rangeText(between, unit)}`;
  if (!search.nearest) return `${name} has no value with \`${input.name}\` anywhere ${range}.`;
  if (search.isFlat)
    return `\`${input.name}\` has no influence on ${name}: it stays the same with it anywhere ${range}.`;
  const figureAt = (at: number): number => {
    work.distance(Float64Array.of(at), 1);
    return work.figures()[0] as number;
  };
  for (const one of search.crossings) {
    if (one.is === 'jump') {
      const step = 1e-9 * Math.max(Math.abs(one.at), 1e-9);
      const [before, after] = [figureAt(one.at - step), figureAt(one.at + step)];
      return `${name} jumps past it: at ${shown(one.at, unit)} for \`${input.name}\` it goes from ${shown(before, of)} to ${shown(after, of)}, and is never between.`;
    }
    if (one.is === 'pole')
      return `${name} has no value at ${shown(one.at, unit)} for \`${input.name}\`, and goes beyond all bounds on both sides of it; nowhere ${range} does it come to what is wanted.`;
  }
  const { at } = search.nearest;
  const what = wanted.isLimit ? `comes nearest to keeping that limit` : `comes nearest`;
  return `Out of reach: with \`${input.name}\` ${range}, ${name} ${what} at ${shown(at, unit)}, where it is ${shown(figureAt(at), of)}. Search another range, or change another input.`;
}
