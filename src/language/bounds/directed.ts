/**
 * Arithmetic with directed rounding on doubles: `...Down` is never above the true result, `...Up` never below it, and
 * both are the result itself where a double holds it exactly (so that 1 - 1 is 0, and a slope that cancels is none).
 * The rounding error of a sum or product is itself a double and is computed (Knuth's two-sum, Dekker's product).
 */

const HALF_ULP = 1.1102230246251568e-16;
const LEAST = 5e-324;
const MOST = Number.MAX_VALUE;

/** The next double below, or the one below that. */
export const down = (x: number): number => {
  const y = x - (Math.abs(x) * HALF_ULP + LEAST);
  // Infinity less infinity: what overflowed is still above every double.
  return Number.isNaN(y) && x > 0 ? MOST : y;
};

export const up = (x: number): number => -down(-x);

/** Several doubles down: for functions that are not rounded correctly. */
export const wellBelow = (x: number): number => x - (Math.abs(x) * 4e-16 + LEAST);
export const wellAbove = (x: number): number => -wellBelow(-x);

const sumError = (a: number, b: number, s: number): number => {
  const c = s - a;
  return a - (s - c) + (b - c);
};

export const addDown = (a: number, b: number): number => {
  const s = a + b;
  if (s - s !== 0) {
    // What is infinite on both sides cancels to anything.
    if (Number.isNaN(s)) return -Infinity;
    return s > 0 && Number.isFinite(a) && Number.isFinite(b) ? MOST : s;
  }
  return sumError(a, b, s) < 0 ? down(s) : s;
};

export const addUp = (a: number, b: number): number => 0 - addDown(-a, -b);

const SPLIT = 134217729;
/** Between these the error of a product is a double, and no part of it overflows. */
const LARGE = 1e140;
const SMALL = 1e-280;

/** Error of a product that neither overflows nor gets lost; NaN where it cannot be told. */
const productError = (a: number, b: number, p: number): number => {
  if (!(Math.abs(a) < LARGE && Math.abs(b) < LARGE && Math.abs(p) > SMALL)) return Number.NaN;
  const ca = SPLIT * a;
  const ah = ca - (ca - a);
  const al = a - ah;
  const cb = SPLIT * b;
  const bh = cb - (cb - b);
  const bl = b - bh;
  return ah * bh - p + ah * bl + al * bh + al * bl;
};

/** Nothing times anything is nothing: an infinite end stands for values without bound, not for one that is infinite. */
export const mulDown = (a: number, b: number): number => {
  if (a === 0 || b === 0) return 0;
  const p = a * b;
  if (p - p !== 0) return p > 0 && Number.isFinite(a) && Number.isFinite(b) ? MOST : p;
  return productError(a, b, p) >= 0 ? p : down(p);
};

export const mulUp = (a: number, b: number): number => 0 - mulDown(-a, b);

/** `b` is not 0. */
export const divDown = (a: number, b: number): number => {
  if (a === 0) return 0;
  if (!Number.isFinite(b)) return Number.isFinite(a) ? (a > 0 === b > 0 ? 0 : -LEAST) : -Infinity;
  const q = a / b;
  if (q - q !== 0) return q > 0 && Number.isFinite(a) ? MOST : q;
  const p = q * b;
  // a = q b + rest, and the rest over b is what q falls short by.
  const rest = a - p - productError(q, b, p);
  return (b > 0 ? rest >= 0 : rest <= 0) ? q : down(q);
};

export const divUp = (a: number, b: number): number => 0 - divDown(-a, b);

/** Lower end of [a, b] times [c, d]. */
export const productDown = (a: number, b: number, c: number, d: number): number => {
  if (a >= 0) return c >= 0 ? mulDown(a, c) : mulDown(b, c);
  if (b <= 0) return d <= 0 ? mulDown(b, d) : mulDown(a, d);
  if (c >= 0) return mulDown(a, d);
  if (d <= 0) return mulDown(b, c);
  return Math.min(mulDown(a, d), mulDown(b, c));
};

/** Upper end of [a, b] times [c, d]. */
export const productUp = (a: number, b: number, c: number, d: number): number =>
  0 - productDown(-b, -a, c, d);

/** Lower end of [a, b] over [c, d], of which 0 is at most one end: then what lies there has no bound. */
export const quotientDown = (a: number, b: number, c: number, d: number): number => {
  if (d <= 0) return quotientDown(-b, -a, -d, -c);
  if (a >= 0) return divDown(a, d);
  return c > 0 ? divDown(a, c) : -Infinity;
};

export const quotientUp = (a: number, b: number, c: number, d: number): number =>
  0 - quotientDown(-b, -a, c, d);
