/** SHA-256 (FIPS 180-4) of the UTF-8 form of a text, in lower-case hexadecimal. Synchronous, which WebCrypto is not. */
export const sha256 = (text: string): string => {
  const bytes = new TextEncoder().encode(text);
  const blocks = Math.ceil((bytes.length + 9) / 64);
  const padded = new Uint8Array(blocks * 64);
  padded.set(bytes);
  padded[bytes.length] = 0x80;
  const view = new DataView(padded.buffer);
  view.setUint32(padded.length - 8, Math.floor(bytes.length / 2 ** 29));
  view.setUint32(padded.length - 4, (bytes.length * 8) >>> 0);

  const state = Uint32Array.from(START);
  const w = new Uint32Array(64);
  for (let block = 0; block < padded.length; block += 64) {
    for (let i = 0; i < 16; i += 1) w[i] = view.getUint32(block + i * 4);
    for (let i = 16; i < 64; i += 1) {
      const x = w[i - 15]!;
      const y = w[i - 2]!;
      const s0 = turn(x, 7) ^ turn(x, 18) ^ (x >>> 3);
      const s1 = turn(y, 17) ^ turn(y, 19) ^ (y >>> 10);
      w[i] = w[i - 16]! + s0 + w[i - 7]! + s1;
    }
    let [a, b, c, d, e, f, g, h] = state as unknown as [
      number,
      number,
      number,
      number,
      number,
      number,
      number,
      number,
    ];
    for (let i = 0; i < 64; i += 1) {
      const t1 = h + (turn(e, 6) ^ turn(e, 11) ^ turn(e, 25)) + ((e & f) ^ (~e & g)) + ROUND[i]! + w[i]!;
      const t2 = (turn(a, 2) ^ turn(a, 13) ^ turn(a, 22)) + ((a & b) ^ (a & c) ^ (b & c));
      [h, g, f, e, d, c, b, a] = [g, f, e, (d + t1) >>> 0, c, b, a, (t1 + t2) >>> 0];
    }
    for (const [i, x] of [a, b, c, d, e, f, g, h].entries()) state[i] = state[i]! + x;
  }
  return [...state].map((word) => word.toString(16).padStart(8, '0')).join('');
};

const turn = (x: number, by: number): number => (x >>> by) | (x << (32 - by));

const primes: number[] = [];
for (let n = 2; primes.length < 64; n += 1) if (primes.every((p) => n % p !== 0)) primes.push(n);

/** First 32 bits of the fractional part, in integers: a cube root of a double is not sure to the last bit. */
const fraction = (prime: number, root: 2 | 3): number => {
  const target = BigInt(prime) << BigInt(32 * root);
  let low = 0n;
  let high = 1n << 40n;
  while (high - low > 1n) {
    const middle = (low + high) >> 1n;
    if (middle ** BigInt(root) <= target) low = middle;
    else high = middle;
  }
  return Number(low & 0xffffffffn);
};

const START = primes.slice(0, 8).map((p) => fraction(p, 2));
const ROUND = primes.map((p) => fraction(p, 3));
