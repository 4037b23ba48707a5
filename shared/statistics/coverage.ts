import { normalTail } from './normal.ts';
import { studentBeyond } from './student.ts';

const beyond = (k: number, dof: number): number =>
  Number.isFinite(dof) ? studentBeyond(k, dof) : 2 * normalTail(k);

/**
 * Factor on the standard uncertainty that covers a share `p` of a figure with so many effective degrees of freedom: the
 * two-sided point of Student's t, of the normal distribution where they are Infinity (JCGM 100, G.3.2 and G.6.4).
 * NaN where `dof` is not above zero. Takes a fraction of a degree as it is, where the guide cuts it off or interpolates.
 */
export const coverageFactor = (dof: number, p = 0.95): number => {
  if (!(dof > 0) || !(p > 0 && p < 1)) return Number.NaN;
  let high = 1;
  while (beyond(high, dof) > 1 - p) high *= 2;
  let low = 0;
  for (let i = 0; i < 200 && high - low > 1e-14 * high; i++) {
    const middle = (low + high) / 2;
    if (beyond(middle, dof) > 1 - p) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
};

/** Share of a normal figure that two standard uncertainties cover. */
const TWO_SIGMA = 0.9544997361036416;
/** From so many degrees of freedom on Student's t is the normal distribution to the digits of a spread. */
const MANY = 1e6;
const expanded = new Map<number, number>();

/**
 * Factor of an expanded uncertainty: 2 where the doubt itself is not in doubt, else that of Student's t for the same
 * share (JCGM 100, Table G.2, its column 95.45 %).
 */
export const expandedFactor = (dof: number): number => {
  if (!(dof < MANY)) return 2;
  let factor = expanded.get(dof);
  if (factor === undefined) {
    factor = coverageFactor(dof, TWO_SIGMA);
    if (expanded.size > 1000) expanded.clear();
    expanded.set(dof, factor);
  }
  return factor;
};
