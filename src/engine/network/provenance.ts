import type { Enclosure } from '../../language/bounds/enclose.ts';
import type { Enclosures } from './enclosures.ts';
import { type Grid, highColumn, lowColumn } from './grid.ts';
import type { Row } from './layout.ts';
import type { Network } from './network.ts';

const MEASURED = 1;
const PLANNED = 2;
const MODEL = 4;
/** Whoever takes it in follows by a model. */
const FACTOR = 8;
const ALL = MEASURED | PLANNED | MODEL;

export interface Standing {
  mode: 'plan' | 'calculation' | 'part';
  /** Nothing in it is a plan and something was measured: its doubt is that of readings. */
  isRead: boolean;
}

/**
 * Tells a plan from a part and from what a model predicts. A part's figure was measured itself, or follows by geometry
 * alone from sizes that were. What counts is what the figure moves with: a row whose slope is nothing over the whole
 * spread does not count, whatever the text names; and of what was measured something must be seen to move it. For one state
 * of the sheet.
 */
export class Provenance {
  private readonly known = new Map<Row, number>();
  private readonly moved = new Map<Row, number>();
  private readonly ranges = new Map<Row, readonly [number, number]>();
  /** Rows whose enclosure holds their slopes. */
  private readonly sloped = new Set<Row>();

  constructor(
    private readonly network: Network,
    private readonly grid: Grid,
    private readonly enclosures: Enclosures,
  ) {}

  of(row: Row): Standing {
    let bits = this.walk(row, this.known, (at) => at.uses);
    // Only where there is something to prove does it matter what is named without moving anything.
    if ((bits & MEASURED) !== 0 && bits !== MEASURED) {
      this.enclose(row);
      bits = this.walk(row, this.moved, (at) => at.uses.filter((used) => this.moves(at, used)));
    }
    const isRead = (bits & (MEASURED | PLANNED)) === MEASURED && this.isSeen(row);
    if (bits & MODEL) return { mode: 'calculation', isRead };
    return { mode: isRead ? 'part' : 'plan', isRead };
  }

  /** Walks up without recursion: a chain may be thousands long. */
  private walk(row: Row, known: Map<Row, number>, usesOf: (row: Row) => readonly Row[]): number {
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
      known.set(at.row, this.bitsOf(at.row, at.uses, known));
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

  private bitsOf(row: Row, uses: readonly Row[], known: ReadonlyMap<Row, number>): number {
    const { proof } = row.definition;
    if (proof?.is === 'measured') return MEASURED;
    if (proof?.is === 'planned') return PLANNED;
    if (proof?.is === 'settled') return 0;
    if (proof?.is === 'factor') return FACTOR;
    let bits = 0;
    for (const used of uses) bits |= known.get(used) ?? 0;
    const isAlias = row.definition.body.kind === 'formula' && row.definition.body.expr.kind === 'ref';
    if (bits & FACTOR && !isAlias) {
      bits &= ALL;
      if (proof?.basis !== 'geometry') bits |= MODEL;
    }
    if (proof?.basis === 'model') bits |= MODEL;
    if (proof?.planned) bits |= PLANNED;
    return bits;
  }

  /** One of the readings upstream is seen to move the row; or none of them has a doubt by which it could be seen. */
  private isSeen(row: Row): boolean {
    const nominal = this.grid.nominal(row.slot);
    const values = row.cases?.values;
    let isAny = false;
    for (const [i, source] of this.network.sourcesInOrder(row).entries()) {
      const at = row.ordered.at[i] as number;
      if (this.network.sourceRow(source)?.definition.proof?.is !== 'measured') continue;
      isAny = true;
      if (values?.[at] !== nominal || values?.[at + 1] !== nominal) return true;
    }
    return !isAny;
  }

  /** Encloses what is upstream of a row, each after what it takes in. */
  private enclose(row: Row): void {
    const all = new Set<Row>([row]);
    for (const one of all) for (const used of one.uses) all.add(used);
    for (const one of [...all].sort((a, b) => a.place - b.place)) this.range(one);
  }

  /** False where it is certain that the other row does not move this one, wherever in the spread. */
  private moves(row: Row, used: Row): boolean {
    const { body } = row.definition;
    if (body.kind !== 'formula') return true;
    const found = this.enclosures.of(row, body.expr);
    if (!this.sloped.has(row)) {
      this.sloped.add(row);
      this.range(row, found);
      if (found.root.flags === 0) {
        for (const port of found.ports) port.dlo = port.dhi = 0;
        found.root.back(1, 1);
      }
    }
    if (found.root.flags !== 0) return true;
    const port = found.ports[row.uses.indexOf(used)];
    return port?.dlo !== 0 || port.dhi !== 0;
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
    if (row.members.length === 0 && !own) return [nominal, nominal];
    const { body } = row.definition;
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
}

const NOWHERE = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY] as const;
