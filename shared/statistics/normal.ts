/**
 * Upper tail of the standard normal distribution, 1 - Phi(x), to about 1e-14 relative: a power series near the middle,
 * a continued fraction in the tail (Abramowitz and Stegun 26.2.10 and 26.2.14).
 */
export const normalTail = (x: number): number => {
  if (Number.isNaN(x)) return Number.NaN;
  if (x < 0) return 1 - normalTail(-x);
  const density = Math.exp((-x * x) / 2) / Math.sqrt(2 * Math.PI);
  if (x < 2.5) {
    let term = x;
    let sum = x;
    for (let n = 3; Math.abs(term) > 1e-18 && n < 300; n += 2) {
      term *= (x * x) / n;
      sum += term;
    }
    return 0.5 - density * sum;
  }
  let fraction = 0;
  for (let n = 120; n >= 1; n -= 1) fraction = n / (x + fraction);
  return density / (x + fraction);
};
