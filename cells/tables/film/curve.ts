/**
 * A smooth curve through points with rising x that neither overshoots nor turns between them (Fritsch and Carlson, SIAM
 * J. Numer. Anal. 17 (1980) 238-246). `x` outside the points is held at the nearer end.
 */
export const curve = (xs: readonly number[], ys: readonly number[], x: number): number => {
  const n = xs.length;
  const at = (list: readonly number[], i: number): number => list[i] as number;
  const slopes = xs.slice(1).map((to, i) => (at(ys, i + 1) - at(ys, i)) / (to - at(xs, i)));
  const tangent = (i: number): number => {
    if (i === 0) return at(slopes, 0);
    if (i === n - 1) return at(slopes, n - 2);
    const [before, after] = [at(slopes, i - 1), at(slopes, i)];
    if (before * after <= 0) return 0;
    const [left, right] = [at(xs, i) - at(xs, i - 1), at(xs, i + 1) - at(xs, i)];
    const [one, two] = [2 * right + left, right + 2 * left];
    return (one + two) / (one / before + two / after);
  };
  if (x <= at(xs, 0)) return at(ys, 0);
  if (x >= at(xs, n - 1)) return at(ys, n - 1);
  const i = Math.max(0, xs.findIndex((to) => to >= x) - 1);
  const width = at(xs, i + 1) - at(xs, i);
  const t = (x - at(xs, i)) / width;
  return (
    at(ys, i) * (1 + 2 * t) * (1 - t) ** 2 +
    tangent(i) * width * t * (1 - t) ** 2 +
    at(ys, i + 1) * t * t * (3 - 2 * t) -
    tangent(i + 1) * width * t * t * (1 - t)
  );
};
