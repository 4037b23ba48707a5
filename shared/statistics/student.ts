/**
 * Student's t, for coverage factors at few degrees of freedom (JCGM 100, G.3). The distribution function by the
 * incomplete beta function's continued fraction (Abramowitz and Stegun 26.5.8, 26.7.1), the quantile by bisection.
 */

/** Natural logarithm of the gamma function for x > 0, to about 1e-14 (Stirling's series above 15). */
const logGamma = (x: number): number => {
  let shift = 0;
  let z = x;
  while (z < 15) {
    shift += Math.log(z);
    z += 1;
  }
  const w = 1 / (z * z);
  const series = (1 / 12 - w * (1 / 360 - w * (1 / 1260 - w * (1 / 1680 - w / 1188)))) / z;
  return (z - 0.5) * Math.log(z) - z + Math.log(2 * Math.PI) / 2 + series - shift;
};

const TINY = 1e-300;

/** Continued fraction of the regularised incomplete beta function, by Lentz's method. */
const betaFraction = (a: number, b: number, x: number): number => {
  const guarded = (v: number): number => (Math.abs(v) < TINY ? TINY : v);
  let c = 1;
  let d = 1 / guarded(1 - ((a + b) * x) / (a + 1));
  let h = d;
  for (let m = 1; m < 500; m++) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    d = 1 / guarded(1 + even * d);
    c = guarded(1 + even / c);
    h *= d * c;
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    d = 1 / guarded(1 + odd * d);
    c = guarded(1 + odd / c);
    const step = d * c;
    h *= step;
    if (Math.abs(step - 1) < 1e-15) break;
  }
  return h;
};

/** Regularised incomplete beta function I_x(a, b). */
const incompleteBeta = (x: number, a: number, b: number): number => {
  if (x <= 0) return 0;
  if (x >= 1) return 1;
  const front = Math.exp(logGamma(a + b) - logGamma(a) - logGamma(b) + a * Math.log(x) + b * Math.log(1 - x));
  return x < (a + 1) / (a + b + 2)
    ? (front * betaFraction(a, b, x)) / a
    : 1 - (front * betaFraction(b, a, 1 - x)) / b;
};

/** Probability of lying further than `t` from the middle, both sides together. `dof` above zero, not Infinity. */
export const studentBeyond = (t: number, dof: number): number =>
  incompleteBeta(dof / (dof + t * t), dof / 2, 0.5);
