import type { Row } from './layout.ts';

/**
 * Orders rows so that each comes after the rows it uses. Rows that cannot be ordered stand in a ring of references, or
 * hang below one: the former are given with the ring as a list of rows, each using the next; the latter come last in order.
 */
export function findRings(rows: Iterable<Row>): { order: Row[]; rings: Map<Row, Row[]> } {
  const waiting = new Map<Row, number>();
  const ready: Row[] = [];
  for (const row of rows) {
    waiting.set(row, row.uses.length);
    if (row.uses.length === 0) ready.push(row);
  }
  const order: Row[] = [];
  const release = (row: Row): void => {
    order.push(row);
    waiting.delete(row);
    for (const user of row.usedBy) {
      const left = (waiting.get(user) ?? 0) - 1;
      if (!waiting.has(user)) continue;
      waiting.set(user, left);
      if (left === 0) ready.push(user);
    }
  };
  for (let row = ready.pop(); row; row = ready.pop()) release(row);
  const rings = new Map<Row, Row[]>();
  if (waiting.size === 0) return { order, rings };

  const settled = new Set<Row>();
  for (const start of waiting.keys()) {
    const path: Row[] = [];
    const at = new Map<Row, number>();
    let row: Row | undefined = start;
    while (row && !settled.has(row)) {
      const seen = at.get(row);
      if (seen !== undefined) {
        const ring = path.slice(seen);
        for (const [i, member] of ring.entries()) rings.set(member, [...ring.slice(i), ...ring.slice(0, i)]);
        break;
      }
      at.set(row, path.length);
      path.push(row);
      row = row.uses.find((used) => waiting.has(used) && !settled.has(used));
    }
    for (const member of path) settled.add(member);
  }
  // With the ring members standing still (each says so), the rows below them can be ordered after all.
  const rest = [...waiting.keys()].filter((row) => !rings.has(row));
  const left = new Map(
    rest.map((row) => [row, row.uses.filter((used) => waiting.has(used) && !rings.has(used)).length]),
  );
  for (const row of rings.keys()) order.push(row);
  const open = rest.filter((row) => left.get(row) === 0);
  for (let row = open.pop(); row; row = open.pop()) {
    order.push(row);
    for (const user of row.usedBy) {
      if (!left.has(user)) continue;
      const n = (left.get(user) as number) - 1;
      left.set(user, n);
      if (n === 0) open.push(user);
    }
  }
  // Anything still left stands in a second ring that shares rows with the first: it says the same.
  const placed = new Set(order);
  for (const row of rest) {
    if (placed.has(row)) continue;
    order.push(row);
    const ring = rings.values().next().value as Row[];
    rings.set(row, [row, ...ring]);
  }
  return { order, rings };
}
