/** Tells of each of some conditions whether it holds at each of some values. */
export type Holds = (xs: Float64Array) => readonly Uint8Array[];

/** Part of a range in which every condition that counts holds, as far as trials tell. */
export interface RoughPiece {
  low: number;
  high: number;
}

interface Rough {
  pieces: RoughPiece[];
  /** Numbers of the checks that hold nowhere in the range, as far as trials tell. */
  never: number[];
}

/** Values tried between two neighbours of which a condition holds at one alone. */
const SPLIT = 15;
const MOST_PASSES = 14;

/** A change of one condition, somewhere between two values. */
interface Turn {
  condition: number;
  from: number;
  to: number;
  /** Holds at `to`. */
  rises: boolean;
}

/**
 * Finds the parts of a range in which every check holds. A check is some conditions, each to one side as a rule (not below
 * a limit, not above another), so that a part much narrower than the values tried are apart is found by where they change:
 * each change is narrowed to `near`, keeping the side on which it holds. A check that holds nowhere is left out.
 *
 * @param checks conditions of each check, by number
 * @param xs values to try, rising
 */
export function roughPieces(
  holds: Holds,
  checks: readonly (readonly number[])[],
  xs: Float64Array,
  near: number,
): Rough {
  const tried = holds(xs);
  const never: number[] = [];
  const counted: number[] = [];
  checks.forEach((conditions, check) => {
    const isSeen = xs.some((_, i) => conditions.every((one) => tried[one]?.[i] === 1));
    if (isSeen || partsOf(holds, conditions, tried, xs, near).length > 0) counted.push(...conditions);
    else never.push(check);
  });
  return { pieces: counted.length === 0 ? [] : partsOf(holds, counted, tried, xs, near), never };
}

function partsOf(
  holds: Holds,
  conditions: readonly number[],
  tried: readonly Uint8Array[],
  xs: Float64Array,
  near: number,
): RoughPiece[] {
  const n = xs.length;
  const at = (condition: number, i: number): boolean => tried[condition]?.[i] === 1;
  // A stretch between neighbours is out where some condition holds at neither.
  const isOut = Array.from({ length: n - 1 }, (_, i) =>
    conditions.some((one) => !at(one, i) && !at(one, i + 1)),
  );
  const turns: (Turn & { stretch: number })[] = [];
  isOut.forEach((out, stretch) => {
    if (out) return;
    const [from, to] = [xs[stretch] as number, xs[stretch + 1] as number];
    for (const condition of conditions)
      if (at(condition, stretch) !== at(condition, stretch + 1))
        turns.push({ condition, from, to, rises: at(condition, stretch + 1), stretch });
  });
  for (let pass = 0; pass < MOST_PASSES && turns.some(({ from, to }) => to - from > near); pass++)
    narrow(holds, turns, near);
  const parts: RoughPiece[] = [];
  let low = conditions.every((one) => at(one, 0)) ? (xs[0] as number) : undefined;
  const close = (high: number): void => {
    if (low !== undefined && high >= low) parts.push({ low, high });
    low = undefined;
  };
  isOut.forEach((out, i) => {
    if (out) {
      close(xs[i] as number);
      return;
    }
    const own = turns.filter(({ stretch }) => stretch === i);
    const falls = own.filter(({ rises }) => !rises).map(({ from }) => from);
    const rises = own.filter((one) => one.rises).map(({ to }) => to);
    if (falls.length > 0 && rises.length > 0) {
      const [from, to] = [Math.max(...rises), Math.min(...falls)];
      if (to >= from) parts.push({ low: from, high: to });
    } else if (falls.length > 0) close(Math.min(...falls));
    else if (rises.length > 0) low = Math.max(...rises);
  });
  close(xs[n - 1] as number);
  return parts;
}

/** Splits each turn in parts and keeps the one in which it lies. */
function narrow(holds: Holds, turns: Turn[], near: number): void {
  const open = turns.filter(({ from, to }) => to - from > near);
  const inner = open.map(({ from, to }) =>
    Array.from({ length: SPLIT }, (_, k) => from + ((to - from) * (k + 1)) / (SPLIT + 1)),
  );
  const found = holds(Float64Array.from(inner.flat()));
  open.forEach((turn, t) => {
    const xs = [turn.from, ...(inner[t] as number[]), turn.to];
    const held = [turn.rises ? 0 : 1];
    for (let k = 0; k < SPLIT; k++) held.push(found[turn.condition]?.[t * SPLIT + k] as number);
    held.push(turn.rises ? 1 : 0);
    // Of several changes the one next to the side on which it holds.
    const at = turn.rises ? held.lastIndexOf(0) : held.indexOf(0) - 1;
    turn.from = xs[at] as number;
    turn.to = xs[at + 1] as number;
  });
}

/** Values through a range: closer and closer about one of them, and evenly over the whole. */
export function spreadOut(low: number, high: number, about: number, count: number): Float64Array {
  const found = new Set<number>([low, high, Math.min(high, Math.max(low, about))]);
  const even = Math.round(count / 3);
  for (let i = 1; i < even; i++) found.add(low + ((high - low) * i) / even);
  const reach = high - low;
  const side = Math.round(count / 3);
  for (let i = 0; i < side; i++) {
    const step = reach * 10 ** (-7 + (7 * i) / side);
    if (about + step < high) found.add(about + step);
    if (about - step > low) found.add(about - step);
  }
  return Float64Array.from([...found].sort((a, b) => a - b));
}
