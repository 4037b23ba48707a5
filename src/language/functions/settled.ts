/** Share of the largest operand that is arithmetic on doubles, and no difference. */
export const TIE = 1e-12;

/** The whole number that `x` stands for where it is one but for rounding; else itself. */
export const settled = (x: number, scale: number): number => {
  const near = Math.round(x);
  return Math.abs(x - near) <= TIE * Math.max(scale, Math.abs(x)) ? near : x;
};
