/**
 * The enhanced Wichmann-Hill generator that JCGM 101:2008, C.3.2 recommends: period about 2^121, every draw from four
 * states. Constants as Wichmann and Hill published them in 2006 (Computational Statistics and Data Analysis 51,
 * 1614-1622), seen in independent implementations of it; that the guide's table has the same ones is from memory. The
 * same seed gives the same draws on every machine.
 */
const A = [11600, 47003, 23000, 33000] as const;
const B = [185127, 45688, 93368, 65075] as const;
const C = [10379, 10479, 19423, 8123] as const;
const D = [2147483579, 2147483543, 2147483423, 2147483123] as const;

export class Random {
  private a: number;
  private b: number;
  private c: number;
  private d: number;

  /** @param seed any whole number; the four states are spread from it. */
  constructor(seed: number) {
    const state = spread(seed);
    [this.a, this.b, this.c, this.d] = D.map((modulus) => 1 + (state() % (modulus - 1))) as [
      number,
      number,
      number,
      number,
    ];
  }

  /** Uniform, above 0 and below 1. */
  next(): number {
    this.a = step(this.a, 0);
    this.b = step(this.b, 1);
    this.c = step(this.c, 2);
    this.d = step(this.d, 3);
    const sum = this.a / D[0] + this.b / D[1] + this.c / D[2] + this.d / D[3];
    const r = sum - Math.floor(sum);
    return r > 0 ? r : Number.MIN_VALUE;
  }
}

/** a times the state, modulo d, without leaving 31 bits (Schrage). */
function step(state: number, i: 0 | 1 | 2 | 3): number {
  const above = Math.floor(state / B[i]);
  const next = A[i] * (state - B[i] * above) - C[i] * above;
  return next < 0 ? next + D[i] : next;
}

/** Well mixed 32-bit numbers from a seed (the finaliser of MurmurHash3 over a counter). */
function spread(seed: number): () => number {
  let counter = seed >>> 0;
  return () => {
    counter = (counter + 0x9e3779b9) >>> 0;
    let x = counter;
    x = Math.imul(x ^ (x >>> 16), 0x85ebca6b);
    x = Math.imul(x ^ (x >>> 13), 0xc2b2ae35);
    return (x ^ (x >>> 16)) >>> 0;
  };
}
