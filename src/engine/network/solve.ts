import { formatQuantity } from '../../../shared/quantities/figures.ts';
import { isUnit, parseUnit } from '../../../shared/units/units.ts';
import { type BlockFunction, compileClosure } from '../../language/compile/closure.ts';
import type { EngineFunction } from './functions.ts';
import { type Ring, ringOf, slotIn } from './ring.ts';
import { BLOCK, findCrossings, spaced } from './roots.ts';
import { SolvedBound } from './solved-bound.ts';

/** Its name in the grid. */
export const SOLVE = 'SOLVE_RING';

/** Steps to a decade, and decades, of the values that are tried first; lengths from a tenth of a micrometre to a hundred metres. */
const STEPS = 24;
const LENGTHS = [-7, 2] as const;
const ALL = [-9, 12] as const;
/** Arithmetic, beside the size that is looked for. */
const NOISE = 4e-15;
/** A length from which on one is a size, and not a difference, m. */
const SIZE = 5e-3;
const MOST_TOLD = 3;
const MOST_KNOWN = 100;

/** Tells the size that comes out of a ring as it goes in; where there is none, or more than one, in words. */
export const solveFunction = (functions: ReadonlyMap<string, EngineFunction>): EngineFunction => {
  const known = new Map<string, Solver>();
  const solverOf = (text: string): Solver => {
    let solver = known.get(text);
    if (!solver) {
      if (known.size >= MOST_KNOWN) known.clear();
      solver = new Solver(ringOf(text), functions);
      known.set(text, solver);
    }
    return solver;
  };
  return {
    name: SOLVE,
    args: { min: 1, max: Number.POSITIVE_INFINITY },
    compute: (text, ...outside) => solverOf(String(text)).solve(outside.map(Number)),
    bound: ([text, ...outside]) => {
      const ring = ringOf(String(text));
      const parts = outside.filter((one) => typeof one !== 'string');
      return new SolvedBound(parts, ring, functions, (values) => {
        const found = solverOf(String(text)).solve(values);
        return typeof found === 'number' ? found : undefined;
      });
    },
  };
};

class Solver {
  private readonly runs: BlockFunction[];
  private readonly blocks: Float64Array[];
  private readonly points: Float64Array;

  constructor(
    private readonly ring: Ring,
    functions: ReadonlyMap<string, EngineFunction>,
  ) {
    const { outside, formulas } = ring;
    this.runs = formulas.map((formula) => compileClosure(formula, slotIn(ring), functions));
    this.blocks = Array.from({ length: 1 + outside + formulas.length }, () => new Float64Array(BLOCK));
    const [from, to] = ring.isLength ? LENGTHS : ALL;
    const sizes = Array.from({ length: (to - from) * STEPS + 1 }, (_, i) => 10 ** (from + i / STEPS));
    this.points = Float64Array.from([...sizes.map((size) => -size).reverse(), 0, ...sizes]);
  }

  solve(outside: readonly number[]): number | { message: string } {
    outside.forEach((value, i) => {
      this.blocks[1 + i]?.fill(value);
    });
    const { crossings, nearest, isFlat } = findCrossings((x, n) => this.distance(x, n), this.points, NOISE);
    const roots: number[] = [];
    for (const one of crossings) {
      if (one.is === 'root') roots.push(one.at);
      else if (one.is === 'level') {
        if (one.to - one.from > 1e-9 * Math.abs(one.to))
          return this.message('any size does, so that none is told by it');
        roots.push((one.from + one.to) / 2);
      }
    }
    const found = this.sizesAmong(roots.map((at) => this.polished(at)));
    const [only] = found;
    if (only !== undefined && found.length === 1) return only;
    if (found.length > 1) {
      const told = found.slice(0, MOST_TOLD).map((at) => this.amount(at));
      const more = found.length > MOST_TOLD ? ' and others' : '';
      return this.message(`${found.length} sizes do (${told.join(', ')}${more})`);
    }
    if (!nearest) return this.message('nothing that goes in gives anything');
    const jump = crossings.find(({ is }) => is === 'jump' || is === 'pole');
    if (jump && jump.is !== 'level')
      return this.message(`no size does: it is passed over at ${this.amount(jump.at)}`);
    // At the very end of what is tried it only comes nearer without end.
    const isEnd = Math.abs(nearest.at) >= (this.points.at(-1) as number);
    return this.message(
      isFlat || isEnd
        ? 'no size does'
        : `no size does; the nearest is ${this.amount(nearest.at)}, and more or less comes out`,
    );
  }

  /** How far what comes out is from what goes in, beside the larger of the two. */
  private distance(x: Float64Array, n: number): Float64Array {
    const out = this.through(x, n);
    const apart = new Float64Array(n);
    for (let i = 0; i < n; i++) {
      const [from, to] = [x[i] as number, out[i] as number];
      apart[i] = from === to ? 0 : (to - from) / Math.max(Math.abs(from), Math.abs(to));
    }
    return apart;
  }

  private through(x: Float64Array, n: number): Float64Array {
    const { blocks, runs } = this;
    (blocks[0] as Float64Array).set(x.subarray(0, n));
    const first = 1 + this.ring.outside;
    runs.forEach((run, i) => {
      (blocks[first + i] as Float64Array).set(run(blocks, n).subarray(0, n));
    });
    return blocks[first + runs.length - 1] as Float64Array;
  }

  /** Looked for again close by, where doubles lie closer together than over the whole range. */
  private polished(at: number): number {
    const reach = 1e-4 * Math.abs(at);
    const { crossings } = findCrossings(
      (x, n) => this.distance(x, n),
      spaced(at - reach, at + reach, BLOCK),
      NOISE,
    );
    const places = crossings.flatMap((one) =>
      one.is === 'root' ? [one.at] : one.is === 'level' ? [(one.from + one.to) / 2] : [],
    );
    const off = (place: number): number => Math.abs(place - at);
    return places.sort((a, b) => off(a) - off(b))[0] ?? at;
  }

  /** No size of a part is less than nothing, where one above it answers as well. */
  private sizesAmong(roots: readonly number[]): number[] {
    const distinct: number[] = [];
    for (const at of roots)
      if (!distinct.some((one) => Math.abs(one - at) <= 1e-9 * Math.abs(at))) distinct.push(at);
    if (!this.ring.isLength || distinct.length < 2) return distinct;
    const sizes = distinct.filter((at) => at >= SIZE);
    const isSize = distinct.some((at) => at <= -SIZE) || distinct.every((at) => Math.abs(at) >= SIZE);
    return isSize && sizes.length > 0 && distinct.every((at) => at >= SIZE || at <= -SIZE) ? sizes : distinct;
  }

  private amount(si: number): string {
    const unit = parseUnit(this.ring.unit, this.ring.isPoint ? { point: true } : {});
    return isUnit(unit) ? formatQuantity(si, unit).replaceAll('\u00a0', ' ') : String(si);
  }

  private message(why: string): { message: string } {
    return {
      message: `It is solved so that what comes out round the ring is what goes in, and ${why}. Give one of the ring a value of its own.`,
    };
  }
}
