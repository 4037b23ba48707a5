import { INTERFERENCE_PER_DIAMETER } from './interference.ts';
import type { Pair } from './pairs.ts';
import type { FitRange } from './sheet.ts';

/** Limits of a difference as computed, SI. */
export interface PairLimits {
  lower?: number | undefined;
  upper?: number | undefined;
  wear?: number | undefined;
}

/**
 * What a difference of two sizes ought to be: by its own limits, else, of an interference, by its diameter. `diameter`
 * is undefined where the difference is not known to be an interference.
 */
export function fitRange(
  pair: Pair,
  limits: PairLimits,
  diameter: number | undefined,
  name: string,
): FitRange | undefined {
  const { lower, upper, wear } = limits;
  const most = [upper, wear].filter((one) => one !== undefined);
  if (lower !== undefined && most.length > 0)
    return { low: lower, high: Math.max(...most), said: `the limits of ${name}` };
  if (most.length > 0 && pair.word === 'clearance')
    return { low: 0, high: Math.max(...most), said: `the limits of ${name}` };
  if (diameter === undefined) return undefined;
  return {
    low: INTERFERENCE_PER_DIAMETER.low * diameter,
    high: INTERFERENCE_PER_DIAMETER.high * diameter,
    said: `the usual interference of ${name}`,
  };
}
