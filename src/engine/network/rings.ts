import type { Row } from './layout.ts';

/** A ring of references, each row using the next and the last the first, and where in it a row is. */
export interface InRing {
  ring: readonly Row[];
  at: number;
}

/**
 * Orders rows so that each comes after the rows it uses. Rows of a ring cannot be ordered: they are given with the
 * shortest ring they are in, whatever order the rows come in, and come before what hangs below them.
 */
export function findRings(rows: Iterable<Row>): { order: Row[]; rings: Map<Row, InRing> } {
  const waiting = new Map<Row, number>();
  for (const row of rows) waiting.set(row, row.uses.length);
  const order: Row[] = [];
  release(waiting, order);
  const rings = new Map<Row, InRing>();
  if (waiting.size === 0) return { order, rings };
  for (const knot of knotsOf([...waiting.keys()], waiting)) ringsOf(knot, rings);
  // With the members standing still (each says so), the rows below them can be ordered after all.
  for (const row of rings.keys()) {
    order.push(row);
    waiting.delete(row);
  }
  for (const row of waiting.keys()) waiting.set(row, row.uses.filter((used) => waiting.has(used)).length);
  release(waiting, order);
  return { order, rings };
}

/** Takes out of `waiting` what waits for nothing, and what waited for that only, on and on. */
function release(waiting: Map<Row, number>, order: Row[]): void {
  const ready = [...waiting].filter(([, left]) => left === 0).map(([row]) => row);
  for (let row = ready.pop(); row; row = ready.pop()) {
    order.push(row);
    waiting.delete(row);
    for (const user of row.usedBy) {
      const left = waiting.get(user);
      if (left === undefined) continue;
      waiting.set(user, left - 1);
      if (left === 1) ready.push(user);
    }
  }
}

/** A row on the way down: its place on the way, and the least place that leads back from it. */
interface Visit {
  row: Row;
  next: number;
  place: number;
  back: number;
}

/** Rows that all lead to each other, knot by knot (Tarjan's strongly connected components, without recursion). */
function knotsOf(rows: readonly Row[], among: ReadonlyMap<Row, number>): Row[][] {
  const knots: Row[][] = [];
  const met = new Map<Row, Visit>();
  const open: Row[] = [];
  const isOpen = new Set<Row>();
  for (const start of rows) {
    if (met.has(start)) continue;
    const way: Visit[] = [];
    const enter = (row: Row): void => {
      const visit = { row, next: 0, place: met.size, back: met.size };
      met.set(row, visit);
      way.push(visit);
      open.push(row);
      isOpen.add(row);
    };
    enter(start);
    for (let at = way.at(-1); at; at = way.at(-1)) {
      const used = at.row.uses[at.next++];
      if (used) {
        const known = met.get(used);
        if (!known && among.has(used)) enter(used);
        else if (known && isOpen.has(used)) at.back = Math.min(at.back, known.place);
        continue;
      }
      way.pop();
      const above = way.at(-1);
      if (above) above.back = Math.min(above.back, at.back);
      if (at.back < at.place) continue;
      const knot = open.splice(open.indexOf(at.row));
      for (const row of knot) isOpen.delete(row);
      if (knot.length > 1 || at.row.uses.includes(at.row)) knots.push(knot);
    }
  }
  return knots;
}

/** Rings looked for in one knot; what is still without one then is given the first. */
const MOST_RINGS = 50;

function ringsOf(knot: readonly Row[], rings: Map<Row, InRing>): void {
  const members = new Set(knot);
  const sorted = [...knot].sort((a, b) => (a.key < b.key ? -1 : 1));
  let found = 0;
  for (const start of sorted) {
    if (rings.has(start)) continue;
    const ring =
      found < MOST_RINGS ? shortestRing(start, members) : (rings.get(sorted[0] as Row)?.ring ?? []);
    found++;
    if (!ring.includes(start)) rings.set(start, { ring, at: 0 });
    ring.forEach((row, at) => {
      if (!rings.has(row)) rings.set(row, { ring, at });
    });
  }
}

/** The shortest way from a row through what it uses back to it. */
function shortestRing(start: Row, members: ReadonlySet<Row>): Row[] {
  const from = new Map<Row, Row>();
  const queue = [start];
  for (const row of queue) {
    for (const used of row.uses) {
      if (used === start) {
        const ring = [row];
        for (let at = row; at !== start; ) {
          at = from.get(at) as Row;
          ring.push(at);
        }
        return ring.reverse();
      }
      if (!members.has(used) || from.has(used)) continue;
      from.set(used, row);
      queue.push(used);
    }
  }
  return [start];
}

const MOST_NAMED = 12;

/** `a → b → a` for people, from where a row stands; the middle of a long ring is left out. */
export function roundTrip({ ring, at }: InRing, nameOf: (row: Row) => string): string {
  const names: string[] = [];
  const add = (row: Row): void => {
    const name = nameOf(row);
    if (name !== names.at(-1)) names.push(name);
  };
  const n = ring.length;
  const seen = Math.min(n, 4 * MOST_NAMED);
  for (let i = 0; i < seen; i++) add(ring[(at + i) % n] as Row);
  if (names.length > 1 && names.at(-1) === names[0] && seen === n) names.pop();
  if (seen === n && names.length <= MOST_NAMED) return [...names, names[0]].join(' → ');
  return [...names.slice(0, MOST_NAMED - 4), '…', names[0]].join(' → ');
}
