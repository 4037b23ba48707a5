import { Difference, Negative, Sum } from '../../language/bounds/arithmetic.ts';
import { type Bound, FAULTS, TURN } from '../../language/bounds/bound.ts';
import { Choice } from '../../language/bounds/branches.ts';
import { addDown, addUp } from '../../language/bounds/directed.ts';
import { Extreme, Size } from '../../language/bounds/kinks.ts';
import type { Row, RowBound } from '../network/layout.ts';
import { slopesOf } from './bounds.ts';
import type { Cone } from './cone.ts';

/** Ends of a part of a formula, rounded outward, and whether each of them comes about. */
export interface Known {
  lo: number;
  hi: number;
  isLow: boolean;
  isHigh: boolean;
}

interface Part extends Known {
  /** By member: it moves this part. */
  moving: readonly boolean[];
}

interface Means {
  cone(): Cone;
  /** Loads the ports of the row with all that its sources can be. */
  load(): void;
  /** By member, the end at which what has these slopes is lowest; 0 where it goes both ways. */
  waysOf(slopes: Float64Array, lo: number, hi: number): readonly (-1 | 0 | 1)[];
  endOf(source: number, way: -1 | 1): number;
}

/**
 * Ends of a row by its formula's outermost operations: ABS(a - b) is largest where a - b is at one of its ends, and what
 * has no source in common is at its ends at once. What stands under these has to go one way with every source, so that its
 * own ends are corners. Undefined where the outermost operation is another.
 */
export function knownByParts(row: Row, bound: RowBound, means: Means): Known | undefined {
  const { enclosure } = bound;
  if (!enclosure) return undefined;
  const { root, ports } = enclosure;

  /** Encloses everything once more: a look at a corner has left its own ends behind. */
  const afresh = (): void => {
    means.load();
    root.forward();
  };

  const cornered = (node: Bound): Part | undefined => {
    afresh();
    if (node.flags & (FAULTS | TURN)) return undefined;
    for (const port of ports) port.dlo = port.dhi = 0;
    node.back(1, 1);
    const slopes = slopesOf(bound, row.members.length);
    const moving = row.members.map((_, m) => slopes[2 * m] !== 0 || slopes[2 * m + 1] !== 0);
    const ways = means.waysOf(slopes, node.lo, node.hi);
    if (ways.some((way) => way === 0)) return undefined;
    const at = (side: -1 | 1): { lo: number; hi: number; isKnown: boolean } => {
      const ends = new Map(
        row.members.map((source, m) => [
          source,
          means.endOf(source, ((ways[m] as -1 | 1) * -side) as -1 | 1),
        ]),
      );
      means.cone().pin([], (source) => ends.get(source) ?? Number.NaN);
      return { lo: node.lo, hi: node.hi, isKnown: (node.flags & (FAULTS | TURN)) === 0 };
    };
    const [low, high] = [at(-1), at(1)];
    if (!low.isKnown || !high.isKnown) return undefined;
    return { lo: low.lo, hi: high.hi, isLow: true, isHigh: true, moving };
  };

  const of = (node: Bound): Part | undefined => {
    if (node instanceof Size) {
      const x = of(node.parts[0] as Bound);
      return x && size(x);
    }
    if (node instanceof Negative) {
      const x = of(node.parts[0] as Bound);
      return x && { lo: 0 - x.hi, hi: 0 - x.lo, isLow: x.isHigh, isHigh: x.isLow, moving: x.moving };
    }
    if (node instanceof Choice) {
      afresh();
      // A guard that is certain all over says nothing: what it guards does.
      if (node.taken) return of(node.taken);
    }
    if (node instanceof Extreme) return extreme(node.parts.map(of), node.way);
    const whole = cornered(node);
    if (whole || !(node instanceof Sum || node instanceof Difference)) return whole;
    const [x, y] = node.parts.map(of);
    if (!x || !y || !isApart([x, y])) return undefined;
    const moving = x.moving.map((one, m) => one || (y.moving[m] as boolean));
    return node instanceof Sum
      ? {
          lo: addDown(x.lo, y.lo),
          hi: addUp(x.hi, y.hi),
          isLow: x.isLow && y.isLow,
          isHigh: x.isHigh && y.isHigh,
          moving,
        }
      : {
          lo: addDown(x.lo, -y.hi),
          hi: addUp(x.hi, -y.lo),
          isLow: x.isLow && y.isHigh,
          isHigh: x.isHigh && y.isLow,
          moving,
        };
  };
  const found = of(root);
  afresh();
  return found;
}

function size(x: Part): Part {
  const isFar = 0 - x.lo >= x.hi;
  const far = { hi: Math.max(0 - x.lo, x.hi), isHigh: isFar ? x.isLow : x.isHigh };
  const { moving } = x;
  if (x.lo > 0) return { lo: x.lo, isLow: x.isLow, ...far, moving };
  if (x.hi < 0) return { lo: 0 - x.hi, isLow: x.isHigh, ...far, moving };
  // Without a jump it passes through nothing on its way from one end to the other.
  return { lo: 0, isLow: x.isLow && x.isHigh, ...far, moving };
}

/** The greatest is greatest where one of them is; it is least where all are at once, which they are with no source in common. */
function extreme(parts: readonly (Part | undefined)[], way: -1 | 1): Part | undefined {
  if (!parts.every((part) => part !== undefined)) return undefined;
  const at = (side: 'lo' | 'hi'): number =>
    (way > 0 ? Math.max : Math.min)(...parts.map((part) => part[side]));
  const [lo, hi] = [at('lo'), at('hi')];
  const isApartAll = isApart(parts);
  const any = (side: 'lo' | 'hi', told: 'isLow' | 'isHigh', end: number): boolean =>
    parts.some((part) => part[side] === end && part[told]);
  const all = (told: 'isLow' | 'isHigh'): boolean => isApartAll && parts.every((part) => part[told]);
  return {
    lo,
    hi,
    isLow: way > 0 ? all('isLow') : any('lo', 'isLow', lo),
    isHigh: way > 0 ? any('hi', 'isHigh', hi) : all('isHigh'),
    moving: (parts[0] as Part).moving.map((_, m) => parts.some((part) => part.moving[m])),
  };
}

/** No source moves two of them. */
const isApart = (parts: readonly Part[]): boolean =>
  (parts[0]?.moving ?? []).every((_, m) => parts.filter((part) => part.moving[m]).length < 2);
