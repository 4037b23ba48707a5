import { normalTail } from './normal.ts';

const known = new Map<number, number>();

/**
 * How far the greatest of `n` normal figures lies above their middle on average, in standard deviations: half of what quality
 * charts call d2. The integral of 1 - F^n - (1 - F)^n from the middle outwards, by Simpson's rule.
 */
export function expectedGreatest(n: number): number {
  let found = known.get(n);
  if (found === undefined) {
    const at = (x: number): number => 1 - (1 - normalTail(x)) ** n - normalTail(x) ** n;
    const [end, steps] = [9, 600];
    const h = end / steps;
    let sum = at(0) + at(end);
    for (let i = 1; i < steps; i++) sum += (i % 2 === 1 ? 4 : 2) * at(i * h);
    found = (sum * h) / 3;
    if (known.size > 1000) known.clear();
    known.set(n, found);
  }
  return found;
}
