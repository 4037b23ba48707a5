const BITS = 11;
const BUCKETS = 1 << BITS;
const PASSES = [0, BITS, 2 * BITS] as const;

/**
 * Sorts single-precision numbers in place, in time that grows with their number alone: by the bits of their keys, the
 * lowest first. The bits of a float rise as it does once a negative one is turned over. Takes no NaN.
 */
export function sortFloats(values: Float32Array): Float32Array {
  const n = values.length;
  let keys = new Uint32Array(values.buffer, values.byteOffset, n).slice();
  let other = new Uint32Array(n);
  for (let i = 0; i < n; i++) {
    const bits = keys[i] as number;
    keys[i] = bits & 0x80000000 ? ~bits : bits | 0x80000000;
  }
  const starts = new Uint32Array(BUCKETS);
  for (const shift of PASSES) {
    starts.fill(0);
    for (let i = 0; i < n; i++) {
      const bucket = ((keys[i] as number) >>> shift) & (BUCKETS - 1);
      starts[bucket] = (starts[bucket] as number) + 1;
    }
    let sum = 0;
    for (let b = 0; b < BUCKETS; b++) {
      const count = starts[b] as number;
      starts[b] = sum;
      sum += count;
    }
    for (let i = 0; i < n; i++) {
      const key = keys[i] as number;
      const bucket = (key >>> shift) & (BUCKETS - 1);
      const at = starts[bucket] as number;
      other[at] = key;
      starts[bucket] = at + 1;
    }
    [keys, other] = [other, keys];
  }
  const out = new Uint32Array(values.buffer, values.byteOffset, n);
  for (let i = 0; i < n; i++) {
    const key = keys[i] as number;
    out[i] = key & 0x80000000 ? key & 0x7fffffff : ~key;
  }
  return values;
}
