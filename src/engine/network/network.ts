import { problem } from '../../../shared/problem.ts';
import type { RowKey } from '../rows/key.ts';
import type { RowBody, RowDefinition, RowProof } from '../rows/row.ts';
import { type Bits, bit, members, NO_BITS, sameBits, union } from './bits.ts';
import { Cases } from './cases.ts';
import type { EngineFunction } from './functions.ts';
import { type Content, type Grid, highColumn, lowColumn, PROBLEM_CALL } from './grid.ts';
import type { CornerEnd, CornerLayout, Row } from './layout.ts';
import { findRings, roundTrip } from './rings.ts';
import { SlotPool } from './slots.ts';
import { isHeld, SolvedRows } from './solved-rows.ts';
import { compileTemplate, fillTemplate, type Template } from './template.ts';
import { TiesAcross } from './ties-across.ts';

/**
 * Rows, what they refer to and which sources are upstream of each; decides what the grid holds and which cases a row
 * has, and writes only what differs. A row has a case only where the source of the case is upstream of it; elsewhere
 * it equals its nominal.
 */
export class Network {
  readonly rows = new Map<RowKey, Row>();
  private readonly bySlot: (Row | undefined)[] = [];
  private readonly rowSlots = new SlotPool();
  /** Pairs of columns, handed out to sources and to corners alike. */
  readonly columnSlots = new SlotPool();
  private readonly sourceRows: (Row | undefined)[] = [];
  /** Sources whose degrees of freedom are computed. */
  /** Every row after those it uses. */
  order: readonly Row[] = [];
  private ranks: number[] = [];
  /** Changes with the ranks. */
  private ranking = 0;
  corners: CornerLayout[] = [];
  private readonly ties = new TiesAcross();
  private readonly solved = new SolvedRows();
  private readonly cases: Cases;
  /** Rows of which nothing on the grid changed, but what is said of them, or how their spread is taken. */
  private readonly restated = new Set<Row>();

  constructor(
    private readonly grid: Grid,
    functions: ReadonlyMap<string, EngineFunction>,
    /** Name of a cell for people, for the message about a ring. */
    private readonly nameOf: (owner: string) => string,
  ) {
    this.cases = new Cases(grid, functions);
    grid.caseOf = (slot, column) => {
      const row = this.bySlot[slot];
      return row && this.cases.value(row, column);
    };
  }

  /** Computes what was written: nominals on the grid, then the cases. Gives the rows in which anything changed. */
  settle(): Set<number> {
    const touched = this.grid.settle();
    this.cases.settle(touched, (slot) => this.bySlot[slot], this.order);
    for (const row of this.restated) for (const user of row.usedBy) this.restated.add(user);
    for (const row of this.restated) touched.add(row.slot);
    this.restated.clear();
    return touched;
  }

  /** Cells are called otherwise: what is said below them names them. */
  recall(owners: ReadonlySet<string>): void {
    if (owners.size === 0) return;
    for (const row of this.rows.values()) if (owners.has(row.owner)) this.restated.add(row);
    if ([...this.rows.values()].some((row) => row.ring)) this.restructure(new Set());
  }

  rowAt(slot: number): Row | undefined {
    return this.bySlot[slot];
  }

  /**
   * Sources upstream of a row in an order that does not depend on how the sheet came about (that of their keys), so
   * that sums over them come out the same to the last bit.
   */
  sourcesInOrder(row: Row): readonly number[] {
    if (row.ordered.ranking !== this.ranking) {
      const places = row.members.map((source, i) => ({
        source,
        at: 2 * i,
        rank: this.ranks[source] as number,
      }));
      places.sort((a, b) => a.rank - b.rank);
      row.ordered = {
        ranking: this.ranking,
        sources: places.map((one) => one.source),
        at: places.map((one) => one.at),
      };
    }
    return row.ordered.sources;
  }

  sourceRow(source: number): Row | undefined {
    return this.sourceRows[source];
  }

  /** Takes new and changed rows in and old ones out, and writes what follows from it. Gives the rows whose layout changed. */
  update(upserts: readonly RowDefinition[], gone: readonly RowKey[]): Set<Row> {
    const dirty = new Set<Row>();
    for (const key of gone) this.remove(key, dirty);
    const rewire: Row[] = [];
    const plain = this.solved.take(this.ties.weigh(upserts, gone), gone);
    for (const definition of plain) this.upsert(definition, dirty, rewire);
    if (!this.solved.isEmpty)
      for (const definition of this.solved.written(this.rows)) this.upsert(definition, dirty, rewire);
    if (rewire.length === 0 && gone.length === 0) return dirty;
    for (const row of rewire) this.connect(row);
    const changed = this.restructure(dirty);
    for (const row of changed) this.lay(row);
    return changed;
  }

  private upsert(definition: RowDefinition, dirty: Set<Row>, rewire: Row[]): void {
    const old = this.rows.get(definition.key);
    const body = definition.body;
    if (old) {
      const before = old.definition.body;
      if (!sameProof(old.definition.proof, definition.proof)) this.restated.add(old);
      old.definition = definition;
      if (body.kind === 'number' && before.kind === 'number') {
        this.put(old, body.value);
        return;
      }
      const next = templatesOf(definition);
      if (!sameStatement(before, body)) this.restated.add(old);
      const same =
        before.kind === body.kind &&
        (body.kind !== 'formula' || (before.kind === 'formula' && !before.held === !body.held)) &&
        old.template?.signature === next.template?.signature &&
        old.low?.signature === next.low?.signature &&
        old.high?.signature === next.high?.signature &&
        keysOf(old).size === old.uses.length;
      if (same && body.kind === 'source') {
        this.putNominal(old);
        this.cases.restate(old);
        return;
      }
      if (same && body.kind === 'formula') return;
      old.template = next.template;
      old.low = next.low;
      old.high = next.high;
      dirty.add(old);
      rewire.push(old);
      return;
    }
    const slot = this.rowSlots.take();
    const { template, low, high } = templatesOf(definition);
    const row: Row = {
      key: definition.key,
      owner: definition.owner,
      slot,
      definition,
      template,
      low,
      high,
      uses: [],
      usedBy: [],
      sources: NO_BITS,
      members: [],
      ordered: { ranking: -1, sources: [], at: [] },
      source: undefined,
      ring: undefined,
      place: 0,
      content: null,
      cases: undefined,
      bound: undefined,
      wanted: false,
      figure: undefined,
      broken: undefined,
      seat: undefined,
    };
    this.rows.set(row.key, row);
    this.bySlot[slot] = row;
    dirty.add(row);
    rewire.push(row);
  }

  private remove(key: RowKey, dirty: Set<Row>): void {
    const row = this.rows.get(key);
    if (!row) return;
    for (const used of row.uses) without(used.usedBy, row);
    for (const user of row.usedBy) {
      user.uses = user.uses.filter((other) => other !== row);
      dirty.add(user);
    }
    this.put(row, null);
    this.cases.clear(row);
    if (row.source !== undefined) this.freeSource(row);
    this.rows.delete(key);
    this.bySlot[row.slot] = undefined;
    this.rowSlots.give(row.slot);
    dirty.delete(row);
    this.restated.delete(row);
  }

  private freeSource(row: Row): void {
    if (row.source === undefined) return;
    this.sourceRows[row.source] = undefined;
    this.columnSlots.give(row.source);
    row.source = undefined;
  }

  private connect(row: Row): void {
    for (const used of row.uses) without(used.usedBy, row);
    row.uses = [];
    for (const key of keysOf(row)) {
      const used = this.rows.get(key);
      if (used) {
        row.uses.push(used);
        used.usedBy.push(row);
      }
    }
    const isSource = row.definition.body.kind === 'source';
    if (isSource && row.source === undefined) {
      row.source = this.columnSlots.take();
      this.sourceRows[row.source] = row;
    } else if (!isSource && row.source !== undefined) this.freeSource(row);
  }

  /** Orders the rows, finds rings, carries the source sets down; gives every row whose cells may have to change. */
  private restructure(dirty: ReadonlySet<Row>): Set<Row> {
    const { order, rings } = findRings(this.rows.values());
    const changed = new Set<Row>(dirty);
    for (const [row, ring] of rings) {
      const round = roundTrip(ring, (member) => this.nameOf(member.owner));
      const message = `These hang on each other in a ring: ${round}. ${this.wayOutOf(ring.ring)}`;
      if (row.ring?.message !== message) {
        changed.add(row);
        this.restated.add(row);
      }
      row.ring = problem('ring', message, { origin: this.nameOf(row.owner), originId: row.owner });
    }
    this.ranks = [];
    this.ranking++;
    this.sourceRows
      .filter((row) => row !== undefined)
      .sort((a, b) => (a.key < b.key ? -1 : 1))
      .forEach((row, rank) => {
        this.ranks[row.source as number] = rank;
      });
    this.order = order;
    order.forEach((row, place) => {
      row.place = place;
      if (!rings.has(row) && row.ring) {
        row.ring = undefined;
        changed.add(row);
        this.restated.add(row);
      }
      const sources = this.sourcesOf(row);
      if (sameBits(row.sources, sources)) return;
      row.sources = sources;
      row.members = members(sources);
      changed.add(row);
    });
    for (const row of [...changed]) for (const user of row.usedBy) changed.add(user);
    return changed;
  }

  /** What to do about a ring that stands unsolved. */
  private wayOutOf(ring: readonly Row[]): string {
    const named = (rows: readonly Row[]): string[] => [
      ...new Set(rows.map(({ owner }) => this.nameOf(owner))),
    ];
    const [one, ...more] = named(ring.filter(({ definition }) => definition.solved));
    const [held] = named(ring.filter(({ definition }) => isHeld(definition)));
    if (more.length > 0)
      return `${[one, ...more].map((name) => `\`${name}\``).join(' and ')} are all to be solved in it, and one ring has one answer: have one of them solved, on its line, and not the others.`;
    if (one === undefined)
      return 'Give one of them a value of its own, or have one of them solved, on its line.';
    if (held !== undefined && held !== one)
      return `It cannot be solved at \`${one}\`, for \`${held}\` is chosen and stands still while a spread goes round: have \`${held}\` solved, on its line.`;
    return `It cannot be solved at \`${one}\` alone, for they hang on each other without it too: have another of them solved, or give one a value of its own.`;
  }

  private sourcesOf(row: Row): Bits {
    if (row.ring) return NO_BITS;
    const body = row.definition.body;
    if (body.kind === 'source') return bit(row.source as number);
    if (body.kind !== 'formula' || body.held) return NO_BITS;
    let all: Bits = NO_BITS;
    for (const used of row.uses) all = union(all, used.sources);
    return all;
  }

  /** Writes the nominal of a row where it differs, and lays out its cases. */
  private lay(row: Row): void {
    const body = row.definition.body;
    this.putNominal(row);
    const { columns, stands } = this.casesOf(row);
    if (columns.length === 0) this.cases.clear(row);
    else if (body.kind === 'source') this.cases.laySource(row, columns, stands);
    else if (body.kind === 'formula') this.cases.lay(row, body.expr, columns);
  }

  private putNominal(row: Row): void {
    const body = row.definition.body;
    if (row.ring || body.kind === 'problem') this.put(row, PROBLEM_CALL);
    else if (body.kind === 'number') this.put(row, body.value);
    else if (body.kind === 'source' && typeof body.nominal === 'number') this.put(row, body.nominal);
    else this.put(row, this.formula(row));
  }

  /** Columns in which a row has a value of its own; of a source also the end it stands at there. */
  private casesOf(row: Row): { columns: number[]; stands: CornerEnd[] } {
    const columns: number[] = [];
    const stands: CornerEnd[] = [];
    for (const source of row.members) {
      columns.push(lowColumn(source), highColumn(source));
      stands.push(-1, 1);
    }
    if (columns.length === 0) return { columns, stands };
    for (const corner of this.corners) {
      if (!corner.needs.has(row)) continue;
      columns.push(corner.column);
      stands.push(row.source === undefined ? 0 : corner.end(row.source));
    }
    return { columns, stands };
  }

  /** Lays out anew what a corner column changes of a row: that it has a case there, or at which end it stands. `closed`: the rows each row uses have not changed. */
  layCorner(corner: CornerLayout, row: Row, closed: boolean): void {
    const { cases } = row;
    const at = cases?.at.get(corner.column);
    const needed = corner.needs.has(row);
    const turned =
      at !== undefined && needed && row.source !== undefined && cases?.stands[at] !== corner.end(row.source);
    if (turned || needed !== (at !== undefined)) {
      const { columns, stands } = this.casesOf(row);
      this.cases.relay(row, columns, stands, closed);
    }
  }

  private formula(row: Row): string {
    const template = row.template as Template;
    return `=${fillTemplate(template, (hole) => {
      const used = this.rows.get(template.keys[hole] as RowKey);
      return used ? `$A${used.slot + 1}` : '#REF!';
    })}`;
  }

  private put(row: Row, content: Content): void {
    if (Object.is(row.content, content)) return;
    row.content = content;
    this.grid.write(row.slot, content);
  }
}

/** Takes a row out of a list of rows. */
const without = (rows: Row[], row: Row): void => {
  const at = rows.indexOf(row);
  if (at >= 0) rows.splice(at, 1);
};

const sameProof = (a: RowProof | undefined, b: RowProof | undefined): boolean =>
  a === b || JSON.stringify(a) === JSON.stringify(b);

/** True where two bodies say the same beyond what the grid holds: of a source how its ends are taken, of a problem its words. */
const sameStatement = (a: RowBody, b: RowBody): boolean => {
  if (a.kind === 'source' && b.kind === 'source') {
    const [one, other] = [a.ends, b.ends];
    return (
      one.distribution === other.distribution &&
      one.k === other.k &&
      one.dof === other.dof &&
      one.partial === other.partial &&
      one.where === other.where &&
      one.label === other.label
    );
  }
  if (a.kind === 'problem' && b.kind === 'problem')
    return JSON.stringify(a.problem) === JSON.stringify(b.problem);
  return a.kind === b.kind || b.kind !== 'problem';
};

/** Keys of every row that the formulas of a row refer to. */
const keysOf = (row: Pick<Row, 'template' | 'low' | 'high'>): Set<RowKey> =>
  new Set([...(row.template?.keys ?? []), ...(row.low?.keys ?? []), ...(row.high?.keys ?? [])]);

function templatesOf(definition: RowDefinition): Pick<Row, 'template' | 'low' | 'high'> {
  const body = definition.body;
  if (body.kind === 'formula')
    return { template: compileTemplate(body.expr), low: undefined, high: undefined };
  if (body.kind === 'source')
    return {
      template: typeof body.nominal === 'number' ? undefined : compileTemplate(body.nominal),
      low: typeof body.ends.low === 'number' ? undefined : compileTemplate(body.ends.low),
      high: typeof body.ends.high === 'number' ? undefined : compileTemplate(body.ends.high),
    };
  return { template: undefined, low: undefined, high: undefined };
}
