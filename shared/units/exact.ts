/**
 * Exact rational arithmetic for unit factors. A double is taken for the shortest decimal that reads back to it, which
 * is what a person typed: 2.2515 in becomes the double nearest to 0.0571881 m, with one rounding in the whole way.
 */
export interface Ratio {
  n: bigint;
  /** Positive. */
  d: bigint;
}

const gcd = (a: bigint, b: bigint): bigint => (b === 0n ? (a < 0n ? -a : a) : gcd(b, a % b));

const ratio = (n: bigint, d: bigint): Ratio => {
  const g = gcd(n, d);
  return d < 0n ? { n: -n / g, d: -d / g } : { n: n / g, d: d / g };
};

export const ONE: Ratio = { n: 1n, d: 1n };

export const times = (a: Ratio, b: Ratio): Ratio => ratio(a.n * b.n, a.d * b.d);
export const over = (a: Ratio, b: Ratio): Ratio => ratio(a.n * b.d, a.d * b.n);
export const plus = (a: Ratio, b: Ratio): Ratio => ({ n: a.n * b.d + b.n * a.d, d: a.d * b.d });

export const power = (a: Ratio, exponent: number): Ratio => {
  const e = BigInt(Math.abs(exponent));
  return exponent < 0 ? ratio(a.d ** e, a.n ** e) : { n: a.n ** e, d: a.d ** e };
};

const DECIMAL = /^(-?)(\d*)(?:\.(\d*))?(?:[eE]([+-]?\d+))?$/;

/** Exact value of a decimal text such as `-2.25e-6`; undefined when it is not one. */
export const decimalRatio = (text: string): Ratio | undefined => {
  const match = DECIMAL.exec(text);
  if (!match) return undefined;
  const [, sign, whole = '', fraction = '', exponent] = match;
  if (whole + fraction === '') return undefined;
  const digits = BigInt(whole + fraction) * (sign ? -1n : 1n);
  const e = Number(exponent ?? 0) - fraction.length;
  return e < 0 ? { n: digits, d: 10n ** BigInt(-e) } : { n: digits * 10n ** BigInt(e), d: 1n };
};

/** `25.4`, `5/9`: a decimal or a fraction of two. */
export const readRatio = (text: string): Ratio | undefined => {
  const [above = '', below, ...more] = text.split('/');
  const n = decimalRatio(above);
  const d = below === undefined ? ONE : decimalRatio(below);
  return n && d && d.n !== 0n && more.length === 0 ? over(n, d) : undefined;
};

/** `x` must be finite. */
export const numberRatio = (x: number): Ratio => decimalRatio(String(x)) as Ratio;

export const writeRatio = (a: Ratio): string => `${a.n}/${a.d}`;

const QUOTIENT_DIGITS = 25;

/** Nearest double. A last digit 1 stands for any remainder, so that the reading of the text breaks ties rightly. */
export const ratioNumber = (a: Ratio): number => {
  if (a.n === 0n) return 0;
  const shift = QUOTIENT_DIGITS + a.d.toString().length - a.n.toString().length;
  const n = shift > 0 ? a.n * 10n ** BigInt(shift) : a.n;
  const d = shift < 0 ? a.d * 10n ** BigInt(-shift) : a.d;
  const sticky = n % d === 0n ? '0' : '1';
  return Number(`${n / d}${sticky}e${-shift - 1}`);
};
