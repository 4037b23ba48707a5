/**
 * Philox 4x32-10, the counter-based generator of Salmon, Moraes, Dror and Shaw (Parallel random numbers: as easy as
 * 1, 2, 3; Supercomputing 2011): a keyed mixing of a counter of four words, so that any draw of any stream is there
 * without those before it. Constants as published; held against the published known answers by the tests.
 */
const MULTIPLIERS = [0xd2511f53, 0xcd9e8d57] as const;
const WEYL = [0x9e3779b9, 0xbb67ae85] as const;
const ROUNDS = 10;

const [M0H, M0L, M1H, M1L] = [
  MULTIPLIERS[0] >>> 16,
  MULTIPLIERS[0] & 0xffff,
  MULTIPLIERS[1] >>> 16,
  MULTIPLIERS[1] & 0xffff,
];

/** Mixes the counter `c0..c3` under the key `k0, k1` into the four words at `at`. */
export function philox(
  out: Uint32Array | Int32Array,
  at: number,
  c0: number,
  c1: number,
  c2: number,
  c3: number,
  k0: number,
  k1: number,
): void {
  let [a, b, c, d, j, k] = [c0 | 0, c1 | 0, c2 | 0, c3 | 0, k0 | 0, k1 | 0];
  for (let round = 0; round < ROUNDS; round++) {
    // Upper halves of two products of 32 bits each, from products of 16 bits, which a double holds.
    const [al, ah] = [a & 0xffff, a >>> 16];
    const m = M0H * al + ((M0L * al) >>> 16);
    const n = M0L * ah + (m & 0xffff);
    const upper0 = (M0H * ah + (m >>> 16) + (n >>> 16)) | 0;
    const [cl, ch] = [c & 0xffff, c >>> 16];
    const p = M1H * cl + ((M1L * cl) >>> 16);
    const q = M1L * ch + (p & 0xffff);
    const upper1 = (M1H * ch + (p >>> 16) + (q >>> 16)) | 0;
    const lower0 = Math.imul(MULTIPLIERS[0], a);
    const lower1 = Math.imul(MULTIPLIERS[1], c);
    a = upper1 ^ b ^ j;
    b = lower1;
    c = upper0 ^ d ^ k;
    d = lower0;
    j = (j + WEYL[0]) | 0;
    k = (k + WEYL[1]) | 0;
  }
  out[at] = a;
  out[at + 1] = b;
  out[at + 2] = c;
  out[at + 3] = d;
}
