/** Growing set of small whole numbers (source slots), 32 to a word. Immutable once shared: every operation gives a new one. */
export type Bits = readonly number[];

export const NO_BITS: Bits = [];

export const bit = (n: number): Bits => {
  const words = new Array<number>((n >> 5) + 1).fill(0);
  words[n >> 5] = 1 << (n & 31);
  return words;
};

export const union = (a: Bits, b: Bits): Bits => {
  if (a.length === 0 || a === b) return b;
  if (b.length === 0) return a;
  const long = a.length >= b.length ? a : b;
  const short = long === a ? b : a;
  const words = long.slice();
  for (let i = 0; i < short.length; i++) words[i] = (words[i] as number) | (short[i] as number);
  return words;
};

export const sameBits = (a: Bits, b: Bits): boolean => {
  if (a === b) return true;
  const n = Math.max(a.length, b.length);
  for (let i = 0; i < n; i++) if ((a[i] ?? 0) !== (b[i] ?? 0)) return false;
  return true;
};

export const isEmpty = (a: Bits): boolean => a.every((word) => word === 0);

/** Members in rising order. */
export const members = (bits: Bits): number[] => {
  const found: number[] = [];
  for (let w = 0; w < bits.length; w++) {
    let word = bits[w] as number;
    while (word !== 0) {
      const low = word & -word;
      found.push(w * 32 + (31 - Math.clz32(low)));
      word ^= low;
    }
  }
  return found;
};
