/** Two maps that say the same, in whatever order. */
export const sameEntries = <K>(a: ReadonlyMap<K, unknown>, b: ReadonlyMap<K, unknown>): boolean =>
  a.size === b.size && [...a].every(([key, value]) => b.get(key) === value);
