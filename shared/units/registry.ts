import { type Dimension, dimension, NONE, powerDimension, timesDimension } from '../dimension.ts';
import { compoundLabel, type Factor, normal, readCompound } from './compound.ts';
import { definitions } from './definitions.ts';
import { decimalRatio, ONE, power, type Ratio, ratioNumber, readRatio, times, writeRatio } from './exact.ts';
import { type Unit, unitRatio } from './unit.ts';

/** Where a definition comes from, for the reference pages. */
export interface Definition {
  unit: Unit;
  aliases: readonly string[];
  /** As it stands in the definitions. */
  text: string;
  grade: 'exact' | 'derived';
  source: string;
}

/** Every unit by symbol, in the order of the definitions. */
export const table = new Map<string, Definition>();
/** Symbols and aliases in their normal spelling. */
const names = new Map<string, Unit>();

export const unitNamed = (name: string): Unit | undefined => names.get(normal(name));

const BASES: Readonly<Record<string, Dimension>> = {
  none: NONE,
  length: dimension(1),
  mass: dimension(0, 1),
  time: dimension(0, 0, 1),
  temperature: dimension(0, 0, 0, 1),
};

/** Product of units to powers. In a product a temperature point stands for its difference (1/degF, W/(m.degC)). */
export const product = (
  symbol: string,
  factors: ReadonlyArray<Factor>,
  find: (symbol: string) => Unit | undefined,
  scale: Ratio = ONE,
): Unit | { unknown: string } => {
  let value = scale;
  let dim = NONE;
  for (const factor of factors) {
    const unit = find(factor.symbol);
    if (!unit) return { unknown: factor.symbol };
    value = times(value, power(unitRatio(unit), factor.power));
    dim = timesDimension(dim, powerDimension(unit.dimension, factor.power));
  }
  const label = compoundLabel(symbol, (s) => (find(s)?.label ?? s).replace('Δ', ''));
  return {
    symbol,
    dimension: dim,
    factor: ratioNumber(value),
    ratio: writeRatio(value),
    point: false,
    label,
  };
};

const define = (symbol: string, text: string): Unit => {
  const base = /^base (\w+)$/.exec(text);
  if (base) {
    const dim = BASES[base[1] as string];
    if (dim) return { symbol, dimension: dim, factor: 1, ratio: '1/1', point: false, label: symbol };
  }
  const point = /^point (\S+) of (\S+)$/.exec(text);
  if (point) {
    const offset = decimalRatio(point[1] as string);
    const step = unitNamed(point[2] as string);
    if (offset && step) return { ...step, symbol, offset: ratioNumber(offset), point: true };
  }
  const [, scale, rest] = /^(?:([\d./]+) )?(.+)$/.exec(text) ?? [];
  const factor = scale === undefined ? ONE : readRatio(scale);
  const compound = readCompound(normal(rest ?? ''));
  if (factor && 'factors' in compound) {
    const unit = product(symbol, compound.factors, unitNamed, factor);
    if (!('unknown' in unit)) return unit;
  }
  throw new Error(`unit definition cannot be read: ${symbol} = ${text}`);
};

const enter = (name: string, unit: Unit): void => {
  const key = normal(name);
  if (names.has(key)) throw new Error(`unit defined twice: ${name}`);
  names.set(key, unit);
};

for (const line of definitions.split('\n')) {
  if (line === '' || line.startsWith('#')) continue;
  const [head = '', aliasText = '', label = '', grade = '', source = ''] = line
    .split(';')
    .map((part) => part.trim());
  const [symbol = '', text = ''] = head.split(' = ');
  if ((grade !== 'exact' && grade !== 'derived') || source === '')
    throw new Error(`unit without a source: ${line}`);
  const defined = define(symbol, text);
  const simple = /^[^./\d]+$/u.test(symbol);
  const unit = { ...defined, label: label || (simple ? symbol : defined.label) };
  const aliases = aliasText.split(/\s+/u).filter((alias) => alias !== '');
  for (const name of [symbol, ...aliases]) enter(name, unit);
  table.set(symbol, { unit, aliases, text, grade, source });
}
