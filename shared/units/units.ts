import { type Dimension, dimension, sameDimension, timesDimension } from '../dimension.ts';
import { type Problem, problem } from '../problem.ts';
import type { SheetUnits } from '../sheet/format.ts';
import { normal, readCompound } from './compound.ts';
import { ambiguous, forceOfMass } from './definitions.ts';
import { nearest } from './nearest.ts';
import { product, table, unitNamed } from './registry.ts';
import type { Unit } from './unit.ts';

export { fromSI, toSI, type Unit } from './unit.ts';

/** What is known about the place a unit is typed in. */
export interface UnitContext {
  /** Wanted there: `lb` and `short_ton` read as forces where a force, a pressure or a torque is wanted. */
  dimension?: Dimension;
  /** A point on a temperature scale is wanted: K and degR are points there. Elsewhere they are differences. */
  point?: boolean;
  /** The sheet's settings for the words that need one. */
  ton?: SheetUnits['ton'];
  tenth?: SheetUnits['tenth'];
}

const ACCELERATION = dimension(1, 0, -2);
const MAX_LENGTH = 64;

const asked = new Map(ambiguous.flatMap((entry) => entry.words.map((word) => [word, entry] as const)));

/** Every symbol, alias and word that names a unit, those that must be asked about included. For the tokenizer. */
export const unitSymbols: ReadonlySet<string> = new Set(
  [...table.values()]
    .flatMap(({ unit, aliases }) => [unit.symbol, ...aliases])
    .flatMap((name) => (name.includes('µ') ? [name, name.replace('µ', 'μ')] : [name]))
    .concat([...asked.keys()]),
);

/** A defined unit by symbol or alias; compounds that are not defined, and words to ask about, are not found. */
export const findUnit = (symbol: string): Unit | undefined => unitNamed(symbol);

const asPoint = (unit: Unit): Unit => ({ ...unit, offset: 0, point: true });

/** Simple and defined compound units of a dimension in the order to offer them; K counts as point and as difference. */
export const unitsOfDimension = (dim: Dimension, point?: boolean): Unit[] =>
  [...table.values()]
    .map(({ unit }) => unit)
    .filter((unit) => sameDimension(unit.dimension, dim))
    .filter((unit) => point !== false || !unit.point)
    .filter((unit) => point !== true || unit.point || unit.symbol === 'K' || unit.symbol === 'degR')
    .map((unit) => (point === true && !unit.point ? asPoint(unit) : unit));

const choiceLabel = (unit: Unit): string => {
  const definition = table.get(unit.symbol);
  return definition
    ? `${unit.label} = ${definition.text.replace(/^1\/(10+) (\w+)$/, (_, ten: string, of: string) => `${1 / Number(ten)} ${of}`)}`
    : unit.label;
};

/** The question for a word with several meanings. Without a setting, a choice's `entry` is the unit text alone. */
const ask = (word: string, from: number, to: number): Problem => {
  const entry = asked.get(word)!;
  const units = entry.units.map((symbol) => unitNamed(symbol)!);
  const choices = units.map((unit) => ({
    label: choiceLabel(unit),
    ...(entry.setting ? { setting: { name: entry.setting, value: unit.symbol } } : { entry: unit.symbol }),
  }));
  return problem(
    'ask',
    `"${word}" means more than one unit: ${entry.question} is it? ${choices.map((c) => c.label).join(', or ')}.`,
    {
      from,
      to,
      choices,
    },
  );
};

const unknown = (word: string, from: number, to: number): Problem => {
  const near = nearest(word, unitSymbols);
  const hint = near.length > 0 ? ` Is ${near.join(' or ')} meant?` : '';
  return problem('unknown-unit', `There is no unit "${word.slice(0, MAX_LENGTH)}".${hint}`, {
    from,
    to,
    ...(near.length > 0 ? { choices: near.map((symbol) => ({ label: symbol, entry: symbol })) } : {}),
  });
};

/** The word of the sheet's setting, as a unit symbol; undefined when it is not settled. */
const settled = (word: string, context: UnitContext): string | undefined => {
  const setting = asked.get(word)?.setting;
  const symbol = setting && context[setting];
  return symbol && word.startsWith('tonf') ? forceOfMass[symbol] : symbol;
};

/** `key` with every symbol put through `change`. */
const rewrite = (key: string, change: (symbol: string) => string | undefined): string =>
  key.replace(/[A-Za-zµ°‰%Δ_]+/gu, (symbol) => change(symbol) ?? symbol);

const build = (key: string, text: string): Unit | Problem => {
  const defined = unitNamed(key);
  if (defined) return defined;
  const compound = readCompound(key);
  if ('fault' in compound) {
    return compound.fault === 'stroke'
      ? problem(
          'syntax',
          `"${text}" can be read in two ways: put what stands below the stroke in parentheses, as in W/(m.K).`,
        )
      : unknown(text, 0, text.length);
  }
  const [first] = compound.factors;
  if (compound.factors.length === 1 && first?.power === 1) {
    return unitNamed(first.symbol) ?? unknown(first.symbol, 0, text.length);
  }
  const unit = product(key, compound.factors, unitNamed);
  if (!('unknown' in unit)) return unit;
  const from = Math.max(text.indexOf(unit.unknown), 0);
  return unknown(unit.unknown, from, Math.min(from + unit.unknown.length, text.length));
};

const cache = new Map<string, Unit | Problem>();

const cached = (key: string, text = key): Unit | Problem => {
  const known = cache.get(text);
  if (known) return known;
  const built = build(key, text);
  if (cache.size > 1000) cache.clear();
  cache.set(text, built);
  return built;
};

export const isUnit = (found: Unit | Problem): found is Unit => 'symbol' in found;

/**
 * Reads a unit: a symbol, an alias, or a compound such as `lbf/in2`, `N·m`, `um/(m.K)`, `1/degF`. A temperature scale
 * is a point only where it stands alone. The problem carries the span of the word concerned within `text`.
 */
export const parseUnit = (text: string, context: UnitContext = {}): Unit | Problem => {
  if (text.length > MAX_LENGTH)
    return problem('too-big', `A unit has at most ${MAX_LENGTH} characters; this has ${text.length}.`);
  let key = normal(text);
  if (key === '') return problem('unknown-unit', 'A unit is missing here.');
  const wordsAsked = (key.match(/[A-Za-z_]+/gu) ?? []).filter((word) => asked.has(word));
  for (const word of wordsAsked) {
    const from = text.indexOf(word);
    if (!settled(word, context)) return ask(word, from, from + word.length);
  }
  if (wordsAsked.length > 0) key = rewrite(key, (symbol) => settled(symbol, context));

  const unit = cached(key, wordsAsked.length > 0 ? key : text);
  if (!isUnit(unit)) return unit;
  if (context.point && !unit.point && (unit.symbol === 'K' || unit.symbol === 'degR')) return asPoint(unit);
  if (!context.dimension || sameDimension(unit.dimension, context.dimension)) return unit;
  if (sameDimension(timesDimension(unit.dimension, ACCELERATION), context.dimension)) {
    const force = cached(rewrite(key, (symbol) => forceOfMass[unitNamed(symbol)?.symbol ?? symbol]));
    if (isUnit(force) && sameDimension(force.dimension, context.dimension)) return force;
  }
  return unit;
};
