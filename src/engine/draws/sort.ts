/** Groups of single-precision numbers by the upper half of their bits: within one they differ by less than 1 %. */
const GROUPS = 1 << 16;

/** Rises as the number does: the bits of a float rise with it once those of a negative one are turned over. */
const group = (bits: number): number => (bits & 0x80000000 ? ~bits : bits | 0x80000000) >>> 16;

/**
 * Gives the value at a place from 0 among `values` in rising order, for the first `k` places and the last
 * `k`. What lies between is not sorted: that would take three times as long, and no coverage interval asks for it. Takes
 * no NaN.
 */
export function endsOf(values: Float32Array, k: number): (place: number) => number {
  const n = values.length;
  const sorted = (): ((place: number) => number) => {
    if (values.every((value) => value === values[0])) return () => values[0] as number;
    const all = values.slice().sort();
    return (place) => all[place] as number;
  };
  if (2 * k >= n) return sorted();
  const bits = new Uint32Array(values.buffer, values.byteOffset, n);
  const counts = new Uint32Array(GROUPS);
  for (let i = 0; i < n; i++) {
    const at = group(bits[i] as number);
    counts[at] = (counts[at] as number) + 1;
  }
  let below = 0;
  let last = -1;
  while (below < k) below += counts[++last] as number;
  let above = 0;
  let first = GROUPS;
  while (above < k) above += counts[--first] as number;
  if (last >= first) return sorted();
  const low = new Float32Array(below);
  const high = new Float32Array(above);
  const begin = n - above;
  for (let i = 0; i < n; i++) {
    const at = group(bits[i] as number);
    if (at <= last) low[--below] = values[i] as number;
    else if (at >= first) high[--above] = values[i] as number;
  }
  low.sort();
  high.sort();
  return (place) => (place < k ? low[place] : high[place - begin]) as number;
}
