import { sameDimension } from '../../shared/dimension.ts';
import { quantityKind } from '../../shared/quantities/quantities.ts';
import { isUnit, parseUnit, toSI } from '../../shared/units/units.ts';
import type { TradeFunction } from '../record/cell.ts';

interface Pair {
  /** m */
  depth: number;
  /** N */
  force: number;
}

type Message = { message: string };

const MOST_PAIRS = 500;
/** `1.2`, `1,2`, `.5`, `27/64`, `1 1/2`, and what stands behind it as the unit. */
const numberAndUnit = /^\+?((?:\d+[ -])?\d+\/\d+|(?:\d+[.,]?\d*|[.,]\d+)(?:e[+-]?\d+)?)\s*([^\d\s.,/:].*)$/i;
/** A depth and a force with no colon: a space, a tab or a comma behind the unit of the first. */
const noColon = /^(\+?[\d.,][\d.,/ -]*\s*[^\d\s.,/:]+)[\s,|]+(\+?[\d.,].*)$/;

/** `1,234` may be one and a bit or more than a thousand: it is asked, never guessed. */
const inThousands = /^\d{1,3},\d{3}$/;

const numberOf = (text: string): number => {
  const fraction = /^(?:(\d+)[ -])?(\d+)\/(\d+)$/.exec(text);
  return fraction
    ? Number(fraction[1] ?? 0) + Number(fraction[2]) / Number(fraction[3])
    : Number(text.replace(',', '.'));
};

const quantity = (text: string, name: 'length' | 'force', pair: string): number | Message => {
  const read = numberAndUnit.exec(text.trim());
  const dimension = quantityKind(name)?.dimension;
  if (!read || !dimension)
    return { message: `"${pair}" is not a depth and a force, each with its unit, such as 2 mm: 1.2 kN.` };
  const unit = parseUnit(read[2] as string, { dimension });
  if (!isUnit(unit)) return { message: `"${pair}": ${unit.message}` };
  const digits = read[1] as string;
  if (inThousands.test(digits))
    return {
      message: `"${pair}": is ${digits} ${digits.replace(',', '.')} or ${digits.replace(',', '')}? Write it so.`,
    };
  if (!Number.isFinite(numberOf(digits))) return { message: `"${pair}": ${digits} is no number.` };
  if (!sameDimension(unit.dimension, dimension))
    return {
      message: `"${pair}": ${unit.symbol} is no unit of ${name}. Depth first, then force: 2 mm: 1.2 kN.`,
    };
  return toSI(numberOf(digits), unit);
};

/** `2 mm: 1.2 kN; 4 mm: 2.3 kN`, or a pair a line as out of a table: depth and force, a unit with each. */
export const readTrace = (text: string): Pair[] | Message => {
  const parts = text
    .split(/[;\n]/)
    .map((part) => part.trim())
    .filter((part) => part !== '');
  if (parts.length > MOST_PAIRS)
    return { message: `A trace has at most ${MOST_PAIRS} pairs; this has ${parts.length}.` };
  const pairs: Pair[] = [];
  for (const part of parts) {
    const shown = part.length > 40 ? `${part.slice(0, 40)}...` : part;
    const [depthText, forceText, more] = part.includes(':')
      ? part.split(':')
      : (noColon.exec(part)?.slice(1, 3) ?? [part]);
    if (depthText === undefined || forceText === undefined || more !== undefined)
      return { message: `"${shown}" is not a depth and a force with a colon between, such as 2 mm: 1.2 kN.` };
    const depth = quantity(depthText, 'length', shown);
    if (typeof depth === 'object') return depth;
    const force = quantity(forceText, 'force', shown);
    if (typeof force === 'object') return force;
    pairs.push({ depth, force });
  }
  if (new Set(pairs.map(({ depth }) => depth)).size < 2)
    return { message: 'A trace needs pairs at two depths or more: one alone shows no line.' };
  return pairs;
};

/** Least squares through the origin: slope and its standard error, N/m. Of two pairs or more. */
export const slopeThroughOrigin = (pairs: readonly Pair[]): { slope: number; error: number } => {
  const squares = pairs.reduce((sum, { depth }) => sum + depth ** 2, 0);
  const slope = pairs.reduce((sum, { depth, force }) => sum + depth * force, 0) / squares;
  const rest = pairs.reduce((sum, { depth, force }) => sum + (force - slope * depth) ** 2, 0);
  return { slope, error: Math.sqrt(rest / (pairs.length - 1) / squares) };
};

const functions: readonly TradeFunction[] = [
  {
    name: 'RAMSLOPE',
    purpose:
      'Force gained for a length of travel, by least squares through the origin over a trace of depth and force.',
    takes: [{ name: 'trace', text: true }],
    gives: 'stiffness',
    compute: (text) => {
      const pairs = readTrace(String(text));
      return 'message' in pairs ? pairs : slopeThroughOrigin(pairs).slope;
    },
    source: 'least squares; F = mu pi D p x',
  },
  {
    name: 'RAMSLOPEDOUBT',
    purpose: 'Standard uncertainty of that slope, from the scatter of the trace about it.',
    takes: [{ name: 'trace', text: true }],
    gives: 'stiffness',
    compute: (text) => {
      const pairs = readTrace(String(text));
      return 'message' in pairs ? pairs : slopeThroughOrigin(pairs).error;
    },
    source: 'least squares; JCGM 100:2008, H.3 (straight line, here through the origin)',
  },
];

export default functions;
