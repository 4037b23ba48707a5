import { FAULTS } from '../../language/bounds/bound.ts';
import type { Enclosure } from '../../language/bounds/enclose.ts';
import type { Enclosures } from './enclosures.ts';
import { type Grid, highColumn, lowColumn } from './grid.ts';
import type { Row } from './layout.ts';
import type { Network } from './network.ts';
import { scaleOf } from './scale.ts';

const MEASURED = 1;
const PLANNED = 2;
const MODEL = 4;
/** Whoever takes it in follows by a model. */
const FACTOR = 8;
/** Neither plan nor part, and stops no proof: measuring equipment, a count. */
const SETTLED = 16;

export interface Standing {
  mode: 'plan' | 'calculation' | 'part';
  /** Nothing in it is a plan and something was measured: its doubt is that of readings. */
  isRead: boolean;
}

const OWN = { measured: MEASURED, planned: PLANNED, model: MODEL, factor: FACTOR, settled: SETTLED } as const;

/** What of a row's own formula stops proof, by what is written there. */
const spotBits = (row: Row): number =>
  (row.definition.proof?.spots ?? []).reduce((bits, { is }) => bits | OWN[is], 0);

/** What moves a row: rows, and what stands in its own formula. */
interface Influence {
  uses: readonly Row[];
  spots: number;
}

/**
 * Tells a plan from a part and from what a model predicts. A part's figure was measured itself, or follows by geometry
 * alone from sizes that were. What counts is what the figure moves with: a row, or a number in a formula, whose slope is
 * nothing over the whole spread does not count, whatever the text names; and of what was measured something must be seen to
 * move it. For one state of the sheet.
 */
export class Provenance {
  private readonly known = new Map<Row, number>();
  private readonly moved = new Map<Row, number>();
  private readonly ranges = new Map<Row, readonly [number, number]>();
  private readonly influences = new Map<Row, Influence>();

  constructor(
    private readonly network: Network,
    private readonly grid: Grid,
    private readonly enclosures: Enclosures,
  ) {}

  of(row: Row): Standing {
    let bits = this.walk(row, this.known, (at) => at.uses, spotBits);
    // Something measured must be seen to move it: what its readings leave where it is (one less itself) is proven by none.
    let isSeen = (bits & MEASURED) !== 0 && (bits !== MEASURED || this.isSeen(row, (at) => at.uses));
    // Only where there is something to prove does it matter what is named without moving anything.
    if (isSeen && bits !== MEASURED) {
      this.enclose(row);
      const usesOf = (at: Row): readonly Row[] => this.influence(at).uses;
      bits = this.walk(row, this.moved, usesOf, (at) => this.influence(at).spots);
      isSeen = (bits & MEASURED) !== 0 && this.isSeen(row, usesOf);
    }
    const isRead = isSeen && (bits & PLANNED) === 0;
    if (bits & MODEL) return { mode: 'calculation', isRead };
    return { mode: isRead ? 'part' : 'plan', isRead };
  }

  /** Walks up without recursion: a chain may be thousands long. */
  private walk(
    row: Row,
    known: Map<Row, number>,
    usesOf: (row: Row) => readonly Row[],
    spotsOf: (row: Row) => number,
  ): number {
    const way = [{ row, uses: this.usesFor(row, usesOf), next: 0 }];
    if (!known.has(row)) known.set(row, 0);
    else return known.get(row) as number;
    for (let at = way.at(-1); at; at = way.at(-1)) {
      const used = at.uses[at.next++];
      if (used) {
        if (known.has(used)) continue;
        known.set(used, 0);
        way.push({ row: used, uses: this.usesFor(used, usesOf), next: 0 });
        continue;
      }
      way.pop();
      known.set(at.row, this.bitsOf(at.row, at.uses, known, spotsOf));
    }
    return known.get(row) as number;
  }

  /** What a row takes its standing from; nothing where it has one of its own. */
  private usesFor(row: Row, usesOf: (row: Row) => readonly Row[]): readonly Row[] {
    const { proof } = row.definition;
    if (proof?.is) return [];
    const uses = usesOf(row);
    return proof?.aside ? uses.filter((used) => !proof.aside?.includes(used.key)) : uses;
  }

  private bitsOf(
    row: Row,
    uses: readonly Row[],
    known: ReadonlyMap<Row, number>,
    spotsOf: (row: Row) => number,
  ): number {
    const { proof, body } = row.definition;
    if (proof?.is) return OWN[proof.is];
    let bits = spotsOf(row);
    if (proof?.aside) bits |= SETTLED;
    for (const used of uses) bits |= known.get(used) ?? 0;
    const isAlias = body.kind === 'formula' && body.expr.kind === 'ref';
    if (bits & FACTOR && !isAlias) {
      bits &= ~FACTOR;
      bits |= proof?.basis === 'geometry' ? SETTLED : MODEL;
    }
    if (proof?.basis === 'model') bits |= MODEL;
    if (proof?.ofReadings && !(bits & MEASURED)) bits |= PLANNED;
    return bits;
  }

  /** One of the readings that may move the row is seen to; or one of them has no doubt by which it could be seen. */
  private isSeen(row: Row, usesOf: (row: Row) => readonly Row[]): boolean {
    const sources = new Set<number>();
    const seen = new Set<Row>([row]);
    for (const one of seen) {
      if (one.definition.proof?.is === 'measured') {
        const own = this.moversOf(one);
        if (one === row || !own || own.length === 0) return true;
        for (const source of own) sources.add(source);
      } else for (const used of this.usesFor(one, usesOf)) seen.add(used);
    }
    return this.moversOf(row)?.some((source) => sources.has(source)) ?? true;
  }

  /** Sources that move a row by themselves; undefined where that is not to be told. */
  private moversOf(row: Row): number[] | undefined {
    const nominal = this.grid.nominal(row.slot);
    const values = row.cases?.values;
    if (!values || typeof nominal !== 'number') return undefined;
    const rounding = 1e-12 * scaleOf(row, this.grid);
    const isMoved = (value: unknown): boolean =>
      typeof value !== 'number' || !(Math.abs(value - nominal) <= rounding);
    return this.network.sourcesInOrder(row).filter((_, i) => {
      const at = row.ordered.at[i] as number;
      return isMoved(values[at]) || isMoved(values[at + 1]);
    });
  }

  /** Encloses what is upstream of a row, each after what it takes in. */
  private enclose(row: Row): void {
    const all = new Set<Row>([row]);
    for (const one of all) for (const used of one.uses) all.add(used);
    for (const one of [...all].sort((a, b) => a.place - b.place)) this.range(one);
  }

  /** What moves a row somewhere in the spread: all of it that is not certain to leave it where it is. */
  private influence(row: Row): Influence {
    let found = this.influences.get(row);
    if (!found) {
      found = this.influenceOf(row);
      this.influences.set(row, found);
    }
    return found;
  }

  private influenceOf(row: Row): Influence {
    const { body, proof } = row.definition;
    const all: Influence = { uses: row.uses, spots: spotBits(row) };
    if (body.kind !== 'formula') return all;
    const spots = proof?.spots ?? NONE;
    const { own, slots, values, names, steps } = this.enclosures.spotted(row, body.expr, spots);
    for (const [name, value] of values) {
      const port = own.ports[slots.get(name) as number];
      if (port) port.lo = port.hi = value;
    }
    this.range(row, own);
    if (own.root.flags & FAULTS) return all;
    for (const port of own.ports) port.dlo = port.dhi = 0;
    own.root.back(1, 1);
    const isSloped = (name: string | undefined): boolean => {
      const port = name === undefined ? undefined : own.ports[slots.get(name) ?? -1];
      return port?.dlo !== 0 || port.dhi !== 0;
    };
    // A size that is rounded counts where the figure moves with what it is rounded to.
    const taken = new Set(steps.flatMap(({ name, of }) => (isSloped(name) ? of : [])));
    const moves = (name: string | undefined): boolean =>
      isSloped(name) || (name !== undefined && taken.has(name));
    return {
      uses: row.uses.filter(({ key }) => moves(key)),
      spots: spots.reduce((bits, { is }, i) => (moves(names[i]) ? bits | OWN[is] : bits), 0),
    };
  }

  /** What a row takes in over the spread of its sources. */
  private range(row: Row, own?: Enclosure): readonly [number, number] {
    const known = this.ranges.get(row);
    if (known && !own) return known;
    const found = this.rangeOf(row, own);
    this.ranges.set(row, found);
    return found;
  }

  private rangeOf(row: Row, own: Enclosure | undefined): readonly [number, number] {
    const value = this.grid.nominal(row.slot);
    const nominal = typeof value === 'boolean' ? Number(value) : value;
    if (typeof nominal !== 'number') return NOWHERE;
    const { body } = row.definition;
    if (row.members.length === 0 && !own) {
      if (row.uses.length === 0) return this.besidePlan(row, nominal);
      const isExact = row.uses.every((used) => {
        const [low, high] = this.range(used);
        return low === high;
      });
      if (isExact || body.kind !== 'formula') return [nominal, nominal];
    }
    if (body.kind === 'source' && row.source !== undefined) {
      const ends = [lowColumn(row.source), highColumn(row.source)].map((at) => this.grid.value(row.slot, at));
      const [low, high] = ends;
      if (typeof low !== 'number' || typeof high !== 'number') return NOWHERE;
      return [Math.min(nominal, low, high), Math.max(nominal, low, high)];
    }
    if (body.kind !== 'formula') return [nominal, nominal];
    const { root, ports } = own ?? this.enclosures.of(row, body.expr);
    for (const [i, used] of row.uses.entries()) {
      const port = ports[i];
      if (!port) continue;
      const [low, high] = this.range(used);
      port.lo = low;
      port.hi = high;
    }
    root.forward();
    return [root.lo, root.hi];
  }

  /** A plan without a spread moves by a hair: where it stands on a limit, that decides which way is taken. */
  private besidePlan(row: Row, nominal: number): readonly [number, number] {
    const hair = (this.known.get(row) ?? 0) & PLANNED ? Math.max(Math.abs(nominal), SMALL) * HAIR : 0;
    return [nominal - hair, nominal + hair];
  }
}

const HAIR = 1e-9;
/** Of nothing the hair is that of a millimetre, or of a thousandth of another unit, SI. */
const SMALL = 1e-3;
const NONE: readonly never[] = [];
const NOWHERE = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY] as const;
