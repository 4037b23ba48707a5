import { type Drill, drillNotAbove, drillNotBelow } from '../../../cells/tables/drills.ts';
import { roundedText } from '../../../shared/rounding.ts';
import { fromSI, toSI, type Unit } from '../../../shared/units/units.ts';
import type { Solution, Steps, StockSize } from './question.ts';
import type { Work } from './work-back.ts';
import { entryWith, unitOf, type Written } from './written.ts';

/** A size that is a step to the last bits stands on it. */
const ON_STEP = 1e-9;

/**
 * The sizes that can be made on either side of an answer, and what the figure comes to with each. The one to aim for keeps
 * the limit; else it lies where metal is still on, and where nothing tells the side it is the nearest.
 */
export function steppedTo(work: Work, { value }: Solution, steps: Steps): Solution[] {
  if (value === undefined) return [];
  const at = value + work.shift;
  const sizes =
    steps.of === 'drills'
      ? drillsAbout(work, at)
      : steps.of === 'step'
        ? multiplesAbout(work, at, steps.step)
        : stockAbout(steps.sizes, at);
  if (sizes.length === 0) return [];
  const values = Float64Array.from(sizes, (size) => size.value - work.shift);
  const distances = work.distance(values, sizes.length).slice(0, sizes.length);
  const figures = work.figures();
  const unit = unitOf(work.book, work.input);
  const solutions = sizes.map((size, i): Solution & { distance: number } => ({
    value: values[i] as number,
    text: size.isEntry ? size.text : entryWith(work.input, size, size.unit ?? unit),
    figure: figures[i] as number,
    distance: distances[i] as number,
  }));
  const aim = aimOf(work, value, solutions);
  return solutions.map(({ distance: _, ...one }, i) => (i === aim ? { ...one, isAim: true } : one));
}

/** Of a bore the smaller size, of a shaft the larger: what is left on can still be taken off. */
function aimOf(
  { wanted, book, input }: Work,
  value: number,
  solutions: readonly (Solution & { distance: number })[],
): number {
  const noise = 1e-13 * wanted.scale;
  const off = (one: Solution): number => Math.abs((one.value as number) - value);
  const nearest = (of: (one: Solution & { distance: number }) => boolean): number => {
    let best = -1;
    solutions.forEach((one, i) => {
      if (of(one) && (best < 0 || off(one) < off(solutions[best] as Solution))) best = i;
    });
    return best;
  };
  if (wanted.isLimit) return nearest(({ distance }) => distance >= -noise);
  const side = book.scope.records.get(input.cell)?.limits?.metalOn;
  if (side && input.field === 'entry') {
    const found = nearest((one) =>
      side === 'low' ? (one.value as number) <= value : (one.value as number) >= value,
    );
    if (found >= 0) return found;
  }
  return nearest(({ figure }) => !Number.isNaN(figure));
}

type Size = Written & { isEntry?: true; unit?: Unit };

function multiplesAbout({ book, input }: Work, at: number, step: number): Size[] {
  const unit = unitOf(book, input);
  const count = at / step;
  const on = Math.abs(count - Math.round(count)) <= ON_STEP * Math.max(1, Math.abs(count));
  const counts = on ? [Math.round(count)] : [Math.floor(count), Math.ceil(count)];
  return counts.map((k) => sized(k * step, unit));
}

/** The two sizes of a stock on either side of a size, or the one that it is. */
function stockAbout(sizes: readonly StockSize[], at: number): Size[] {
  const slack = 1e-12 * Math.abs(at);
  const below = sizes.findLast(({ value }) => value <= at + slack);
  const above = sizes.find(({ value }) => value >= at - slack);
  const found = [below, above].filter((one) => one !== undefined);
  return found.filter((one, i) => found.indexOf(one) === i);
}

/** A size in as many places as it takes. */
function sized(si: number, unit: Unit): Size {
  const there = fromSI(si, unit);
  for (let places = 0; places < 12; places++) {
    const text = roundedText(there, places);
    if (Math.abs(toSI(Number(text), unit) - si) <= 1e-12 * Math.abs(si))
      return { text, value: toSI(Number(text), unit) };
  }
  return { text: String(there), value: si };
}

function drillsAbout({ book }: Work, at: number): Size[] {
  const series =
    book.settings.units.length === 'in' ? (['number', 'letter', 'fraction'] as const) : (['metric'] as const);
  const [below, above] = [drillNotAbove(at, series), drillNotBelow(at, series)];
  const found = [below, above].filter((one) => one !== undefined);
  const two = found.filter((one, i) => found.findIndex(({ name }) => name === one.name) === i);
  return two.map((drill) => ({ text: entryOf(drill), value: drill.diameter, isEntry: true }));
}

const entryOf = ({ name, series }: Drill): string =>
  series === 'letter' ? `${name} drill` : series === 'fraction' ? `${name} in` : name;
