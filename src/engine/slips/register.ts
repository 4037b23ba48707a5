import type { AssembledCell } from '../rows/assembled.ts';
import { cellOf, type RowKey } from '../rows/key.ts';
import type { SheetScope } from '../rows/scope.ts';
import { setOfAlike } from './alike.ts';
import { type Closing, closingsOf, interferenceOf } from './close-in.ts';
import { readingsOf } from './copied.ts';
import { type Counted, countedOf } from './counted.ts';
import { type Datum, dataOf } from './datum.ts';
import { type Gauged, gaugedOf, setInOf } from './gauge-range.ts';
import { type Follower, followersOf, type Pair, type Ratio, relationsOf } from './pairs.ts';
import { type Warmth, warmthsOf } from './warm-parts.ts';

/** What can be asked about one cell, read from its texts once. */
export interface Sheaf {
  cell: AssembledCell;
  data: Datum[];
  pairs: Pair[];
  ratios: Ratio[];
  warmths: Warmth[];
  gauged: Gauged[];
  followers: Follower[];
  closings: Closing[];
  counted: Counted | undefined;
  /** The set of lines alike that it is one of. */
  alike: string | undefined;
  /** Nothing in it could be asked about, and it binds no other cell's sizes. */
  silent: boolean;
}

const add = <K, V>(to: Map<K, Set<V>>, key: K, value: V): void => {
  const set = to.get(key);
  if (set) set.add(value);
  else to.set(key, new Set([value]));
};

const NONE: ReadonlySet<string> = new Set();
/** More lines than this are no set: they are a table. */
const MOST_ALIKE = 24;

/** A size bound to more others than this is what all of them are held against. */
const MOST_BOUND = 6;
/** So far what is asked of one hangs on what is read of others: whether those next to it, and next to them, are odd. */
const HOPS = 4;

/** The texts of a sheet that questions are about, and which differences bind them. */
export class Register {
  readonly sheaves = new Map<string, Sheaf>();
  private readonly byKey = new Map<RowKey, Datum>();
  private readonly pairsBySide = new Map<RowKey, Set<Pair>>();
  private readonly pairByRow = new Map<RowKey, Pair>();
  private readonly ratiosByKey = new Map<RowKey, Set<Ratio>>();
  /** By gauge: the cells read with it, and the gauges set in it. */
  private readonly byGauge = new Map<string, Set<string>>();
  private readonly followersByBase = new Map<RowKey, Set<Follower>>();
  private readonly bySet = new Map<string, Set<string>>();
  private readonly byReadings = new Map<string, Set<Datum>>();
  /** Cells asked about after every edit: with a temperature, by limits anywhere downstream; that say by how much a bore closed in. */
  private readonly always = new Set<string>();
  /** Rows of the interferences, by cell. */
  readonly pressed = new Map<string, RowKey>();

  take(cells: readonly AssembledCell[], gone: readonly string[], scope: SheetScope, reference: string): void {
    for (const id of gone) this.drop(id);
    for (const cell of cells) {
      this.drop(cell.id);
      const record = scope.records.get(cell.id);
      if (!record) continue;
      const data = dataOf(record, scope);
      const { pairs, ratios } = relationsOf(cell, record);
      const warmths = warmthsOf(record, scope, reference);
      const gauged = gaugedOf(record, scope);
      const counted = countedOf(record, scope);
      const followers = followersOf(cell);
      const closings = closingsOf(cell, record, scope);
      const pressed = interferenceOf(cell, record);
      if (pressed !== undefined) this.pressed.set(cell.id, pressed);
      for (const one of followers) add(this.followersByBase, one.base, one);
      const alike = data.length > 0 && record.role !== 'cell' ? setOfAlike(record) : undefined;
      const bound =
        pairs.length > 0 ||
        ratios.length > 0 ||
        warmths.length > 0 ||
        gauged.length > 0 ||
        closings.length > 0 ||
        counted !== undefined;
      const silent = !bound && data.length === 0 && !record.tolerance?.trim();
      this.sheaves.set(cell.id, {
        cell,
        data,
        pairs,
        ratios,
        warmths,
        gauged,
        followers,
        closings,
        counted,
        alike,
        silent,
      });
      if (alike !== undefined) add(this.bySet, alike, cell.id);
      for (const datum of data) {
        this.byKey.set(datum.key, datum);
        const readings = readingsOf(datum);
        if (readings !== undefined) add(this.byReadings, readings, datum);
      }
      for (const pair of pairs) {
        this.pairByRow.set(pair.output.planned as RowKey, pair);
        for (const side of [pair.from, pair.taken]) add(this.pairsBySide, side, pair);
      }
      for (const ratio of ratios) add(this.ratiosByKey, ratio.interference, ratio);
      if (warmths.length > 0 || closings.length > 0) this.always.add(cell.id);
      for (const { gauge } of gauged) add(this.byGauge, gauge, cell.id);
      const setIn = setInOf(record, scope);
      if (setIn !== undefined) add(this.byGauge, setIn, cell.id);
    }
  }

  private drop(id: string): void {
    const old = this.sheaves.get(id);
    if (!old) return;
    for (const datum of old.data) {
      this.byKey.delete(datum.key);
      const readings = readingsOf(datum);
      const same = readings === undefined ? undefined : this.byReadings.get(readings);
      same?.delete(datum);
      if (same?.size === 0) this.byReadings.delete(readings as string);
    }
    for (const pair of old.pairs) {
      this.pairByRow.delete(pair.output.planned as RowKey);
      for (const side of [pair.from, pair.taken]) this.pairsBySide.get(side)?.delete(pair);
    }
    for (const ratio of old.ratios) this.ratiosByKey.get(ratio.interference)?.delete(ratio);
    for (const readers of this.byGauge.values()) readers.delete(id);
    for (const one of old.followers) this.followersByBase.get(one.base)?.delete(one);
    if (old.alike !== undefined) this.bySet.get(old.alike)?.delete(id);
    this.sheaves.delete(id);
    this.always.delete(id);
    this.pressed.delete(id);
  }

  datum(key: RowKey): Datum | undefined {
    return this.byKey.get(key);
  }

  /** What was read of parts that were cut to this size, give or take a step. */
  madeTo(key: RowKey): Datum[] {
    const found = [...(this.followersByBase.get(key) ?? [])].map(({ made }) => this.byKey.get(made));
    return found.filter((one) => one !== undefined).sort((a, b) => (a.key < b.key ? -1 : 1));
  }

  /** The reading that the plan of a part stands a step away from. */
  baseOf({ cell, key }: Datum): Datum | undefined {
    const base = this.sheaves.get(cell)?.followers.find(({ made }) => made === key)?.base;
    return base === undefined ? undefined : this.byKey.get(base);
  }

  /** Texts in the same field of the lines alike. */
  alike({ cell, field }: Datum): Datum[] {
    const others = this.othersAlike(cell);
    return [...others].flatMap((id) =>
      id === cell ? [] : (this.sheaves.get(id)?.data.filter((one) => one.field === field) ?? []),
    );
  }

  /** Texts of other cells with the very same readings. */
  sameAs(datum: Datum): Datum[] {
    const readings = readingsOf(datum);
    const same = readings === undefined ? undefined : this.byReadings.get(readings);
    if (!same || same.size < 2) return [];
    return [...same].filter(({ cell }) => cell !== datum.cell).sort((a, b) => (a.key < b.key ? -1 : 1));
  }

  private othersAlike(id: string): ReadonlySet<string> {
    const alike = this.sheaves.get(id)?.alike;
    const all = alike === undefined ? undefined : this.bySet.get(alike);
    return all && all.size <= MOST_ALIKE ? all : NONE;
  }

  /** Differences that a size stands in, in the order of their rows. */
  pairsOf(key: RowKey): Pair[] {
    const found = this.pairsBySide.get(key);
    if (!found || found.size === 0) return [];
    return [...found].sort((a, b) => ((a.output.planned as RowKey) < (b.output.planned as RowKey) ? -1 : 1));
  }

  /** The sizes that stand in a difference with it, that it was cut to, or that were cut to it; of very many none. */
  boundTo(datum: Datum): Datum[] {
    const pairs = this.pairsBySide.get(datum.key);
    const made = this.followersByBase.get(datum.key);
    if ((pairs?.size ?? 0) + (made?.size ?? 0) > MOST_BOUND) return [];
    const keys = [
      ...[...(pairs ?? [])].map(({ from, taken }) => (from === datum.key ? taken : from)),
      ...[...(made ?? [])].map((one) => one.made),
    ];
    const base = this.baseOf(datum);
    const found = keys.map((key) => this.byKey.get(key)).filter((one) => one !== undefined);
    return base ? [...found, base] : found;
  }

  /** True where a size stands in no difference, is no interference set against a diameter, and is like no other. */
  isAlone({ key, cell }: Datum): boolean {
    return (
      !this.followersByBase.get(key)?.size &&
      !this.pairsBySide.get(key)?.size &&
      !this.ratiosByKey.get(key)?.size &&
      this.othersAlike(cell).size < 2
    );
  }

  /** The diameters an interference is set against. */
  ratiosOf(key: RowKey): Ratio[] {
    return [...(this.ratiosByKey.get(key) ?? [])].sort((a, b) => (a.diameter < b.diameter ? -1 : 1));
  }

  /** The cells whose questions may change when those in `changed` do: both sides of every difference they stand in. */
  around(changed: Iterable<string>): Set<string> {
    const all = new Set<string>(this.always);
    const open = new Set(changed);
    // A gauge is moved by no reading of it, so these are its cells and no more.
    for (const id of open) for (const reader of this.byGauge.get(id) ?? []) open.add(reader);
    for (const id of open) {
      const sheaf = this.sheaves.get(id);
      if (!sheaf || sheaf.silent) continue;
      all.add(id);
      for (const other of this.othersAlike(id)) all.add(other);
      for (const datum of sheaf.data) for (const { cell } of this.sameAs(datum)) all.add(cell);
      for (const ratio of sheaf.ratios) {
        const cell = this.byKey.get(ratio.interference)?.cell;
        if (cell !== undefined) all.add(cell);
      }
      const bind = (pair: Pair): void => {
        all.add(pair.cell);
        for (const side of [pair.from, pair.taken]) all.add(cellOf(side));
      };
      for (const { base } of sheaf.followers) all.add(cellOf(base));
      for (const pair of sheaf.pairs) bind(pair);
      for (const datum of sheaf.data) for (const pair of this.pairsBySide.get(datum.key) ?? []) bind(pair);
      for (const ratio of sheaf.ratios) {
        const pair = this.pairByRow.get(ratio.interference);
        if (pair) bind(pair);
      }
      this.reach(sheaf.data, all);
    }
    return all;
  }

  /** Cells of the sizes bound to these, and to those, so far as one hangs on the other. */
  private reach(data: readonly Datum[], all: Set<string>): void {
    const seen = new Set(data);
    let next: readonly Datum[] = data;
    for (let hop = 0; hop < HOPS && next.length > 0; hop++)
      next = next
        .flatMap((one) => this.boundTo(one))
        .filter((one) => {
          const isNew = !seen.has(one);
          seen.add(one);
          if (isNew) all.add(one.cell);
          return isNew;
        });
  }
}
