/** Cells upstream of a cell, and cells downstream of it, by what feeds each cell. Ids; a ring is walked once. */
export function chainOf(
  cell: string,
  cells: ReadonlyMap<string, { feeds: ReadonlySet<string> }>,
): { upstream: string[]; downstream: string[] } {
  const users = new Map<string, string[]>();
  for (const [id, { feeds }] of cells)
    for (const feed of feeds) {
      const list = users.get(feed);
      if (list) list.push(id);
      else users.set(feed, [id]);
    }
  const walk = (next: (id: string) => Iterable<string>): string[] => {
    const seen = new Set<string>();
    const open = [...next(cell)];
    for (let id = open.pop(); id !== undefined; id = open.pop()) {
      if (seen.has(id) || id === cell) continue;
      seen.add(id);
      open.push(...next(id));
    }
    return [...seen];
  };
  return {
    upstream: walk((id) => cells.get(id)?.feeds ?? []),
    downstream: walk((id) => users.get(id) ?? []),
  };
}
