import { FAULTS, LOST, type Port } from '../../language/bounds/bound.ts';
import { addDown, addUp, productDown, productUp } from '../../language/bounds/directed.ts';
import { enclose } from '../../language/bounds/enclose.ts';
import { isEmpty } from '../network/bits.ts';
import type { EngineFunction } from '../network/functions.ts';
import type { Grid } from '../network/grid.ts';
import type { Row, RowBound } from '../network/layout.ts';
import type { Network } from '../network/network.ts';
import { forwardOver } from './narrow.ts';
import { newBound } from './new-bound.ts';

const ALL = Number.POSITIVE_INFINITY;

/**
 * Bounds of every row that has sources, over all that these can be at once: the ends of its value, and its slopes in each
 * source. Worked out row by row from the bounds of the rows it uses; the slopes in turn narrow the ends (a mean value
 * form), so that what two rows share drops out of their difference however long the chain.
 */
export class Bounds {
  private dirty = new Uint8Array(0);

  constructor(
    private readonly grid: Grid,
    private readonly functions: ReadonlyMap<string, EngineFunction>,
    private readonly network: Pick<Network, 'sourceRow' | 'sourcesInOrder'>,
  ) {}

  /**
   * Works out anew what depends on the rows touched, and adds the rows whose bounds moved. `order` has each row after those
   * it uses.
   */
  settle(touched: Set<number>, order: readonly Row[]): void {
    if (this.dirty.length < order.length) this.dirty = new Uint8Array(2 * order.length);
    else this.dirty.fill(0, 0, order.length);
    const { dirty } = this;
    for (const row of order) {
      let isStale = touched.has(row.slot);
      if (!isStale) for (const used of row.uses) if (dirty[used.place] === 1) isStale = true;
      if (!isStale) continue;
      if (isEmpty(row.sources)) {
        row.bound = undefined;
        dirty[row.place] = 1;
        continue;
      }
      row.bound ??= newBound();
      if (row.source === undefined ? this.follow(row, row.bound) : this.stand(row, row.bound)) {
        dirty[row.place] = 1;
        touched.add(row.slot);
      }
      row.bound.worst = undefined;
    }
  }

  /** Encloses a row over all that its sources can be at once; its enclosure then holds what each part of it comes to. */
  over(row: Row, bound: RowBound): void {
    const { enclosure } = bound;
    if (!enclosure) return;
    forwardOver(
      enclosure,
      (isMiddle) => {
        row.uses.forEach((used, i) => {
          this.load(enclosure.ports[i] as Port, used, isMiddle);
        });
      },
      () => this.reach(row, slopesOf(bound, row.members.length)),
    );
  }

  /** How far its sources can take a row, or a part of its formula, from where it stands with them in the middle. */
  private reach(row: Row, slopes: Float64Array): readonly [down: number, up: number] {
    let below = 0;
    let above = 0;
    // In an order that does not depend on how the sheet came about, so that the sum comes out the same.
    const sources = this.network.sourcesInOrder(row);
    for (let i = 0; i < sources.length; i++) {
      const m = (row.ordered.at[i] as number) / 2;
      const source = this.network.sourceRow(sources[i] as number)?.bound;
      if (!source) continue;
      const down = addDown(source.lo, -source.middleHi);
      const up = addUp(source.hi, -source.middleLo);
      const [low, high] = [slopes[2 * m] as number, slopes[2 * m + 1] as number];
      below = addDown(below, productDown(low, high, down, up));
      above = addUp(above, productUp(low, high, down, up));
    }
    return [below, above];
  }

  /** A source: between its ends. */
  private stand(row: Row, bound: RowBound): boolean {
    const [low = Number.NaN, high = Number.NaN] = row.cases?.values ?? [];
    let lo = Math.min(low, high);
    let hi = Math.max(low, high);
    let flags = 0;
    if (!Number.isFinite(lo + hi)) {
      lo = -ALL;
      hi = ALL;
      flags = LOST;
    }
    if (bound.lo === lo && bound.hi === hi && bound.flags === flags && bound.members === row.members)
      return false;
    bound.lo = lo;
    bound.hi = hi;
    bound.flags = flags;
    bound.middleLo = flags ? lo : Math.min(hi, lo + (hi - lo) / 2);
    bound.middleHi = flags ? hi : bound.middleLo;
    bound.members = row.members;
    bound.slopes = Float64Array.of(1, 1);
    return true;
  }

  private follow(row: Row, bound: RowBound): boolean {
    this.prepare(row, bound);
    const { enclosure, uses } = bound;
    if (!enclosure) return false;
    const { root, ports } = enclosure;
    for (let i = 0; i < uses.length; i++) this.load(ports[i] as Port, uses[i] as Row, true);
    root.forward();
    const { lo: middleLo, hi: middleHi } = root;
    const isKnown = (root.flags & FAULTS) === 0;
    this.over(row, bound);
    for (const port of ports) port.dlo = port.dhi = 0;
    root.back(1, 1);
    const slopes = slopesOf(bound, row.members.length);
    let { lo, hi } = root;
    if (isKnown) {
      const [down, up] = this.reach(row, slopes);
      const [below, above] = [addDown(middleLo, down), addUp(middleHi, up)];
      if (below > lo && below <= hi) lo = below;
      if (above < hi && above >= lo) hi = above;
    }
    const { flags } = root;
    // Where it has no value it has no end either, whatever ABS, MAX or a condition make of that.
    if (flags & LOST) [lo, hi] = [-ALL, ALL];
    const same =
      bound.lo === lo &&
      bound.hi === hi &&
      bound.middleLo === middleLo &&
      bound.middleHi === middleHi &&
      bound.flags === flags &&
      bound.members === row.members &&
      isSame(bound.slopes, slopes);
    bound.lo = lo;
    bound.hi = hi;
    bound.middleLo = middleLo;
    bound.middleHi = middleHi;
    bound.flags = flags;
    bound.members = row.members;
    bound.slopes = slopes;
    return !same;
  }

  /** Makes what the formula asks for, where formula or rows used are others than before. */
  private prepare(row: Row, bound: RowBound): void {
    const { body } = row.definition;
    if (body.kind !== 'formula') return;
    if (bound.template !== row.template || bound.uses !== row.uses) {
      const slots = new Map(row.uses.map((used, i) => [used.key as string, i]));
      bound.enclosure = enclose(
        body.expr,
        row.uses.length,
        (ref) => slots.get(ref.name) ?? -1,
        this.functions,
      );
      bound.template = row.template;
      bound.uses = row.uses;
      bound.placed = [];
    }
    const isPlaced =
      bound.members === row.members && row.uses.every((used, i) => bound.placed[i] === used.members);
    if (isPlaced) return;
    bound.placed = row.uses.map((used) => used.members);
    const places = new Map(row.members.map((source, m) => [source, m]));
    bound.places = row.uses.map((used) =>
      Int32Array.from(used.members, (source) => places.get(source) as number),
    );
  }

  /** What a port holds of the row behind it: its ends, or where it is with every source in the middle. */
  private load(port: Port, used: Row, isMiddle: boolean): void {
    const { bound } = used;
    if (bound) {
      port.lo = isMiddle ? bound.middleLo : bound.lo;
      port.hi = isMiddle ? bound.middleHi : bound.hi;
      port.flags = bound.flags & FAULTS;
      return;
    }
    const value = this.grid.nominal(used.slot);
    const known = typeof value !== 'object' && value !== undefined;
    port.lo = known ? Number(value) : -ALL;
    port.hi = known ? Number(value) : ALL;
    port.flags = known ? 0 : LOST;
  }
}

const isSame = (a: Float64Array, b: Float64Array): boolean => {
  if (a.length !== b.length) return false;
  for (let i = 0; i < a.length; i++) if (!Object.is(a[i], b[i])) return false;
  return true;
};

/** Slopes of a row, or of a part of its formula, in each member, by those that stand at the ports. */
export const slopesOf = ({ enclosure, uses, places }: RowBound, members: number): Float64Array => {
  const slopes = new Float64Array(2 * members);
  const ports = enclosure?.ports ?? [];
  for (let i = 0; i < uses.length; i++) {
    const { dlo, dhi } = ports[i] as Port;
    const inner = (uses[i] as Row).bound?.slopes;
    if (!inner || (dlo === 0 && dhi === 0)) continue;
    const place = places[i] as Int32Array;
    for (let j = 0; j < place.length; j++) {
      const at = 2 * (place[j] as number);
      const [low, high] = [inner[2 * j] as number, inner[2 * j + 1] as number];
      slopes[at] = addDown(slopes[at] as number, productDown(dlo, dhi, low, high));
      slopes[at + 1] = addUp(slopes[at + 1] as number, productUp(dlo, dhi, low, high));
    }
  }
  return slopes;
};
