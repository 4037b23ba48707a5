import type { Belief } from './belief.ts';

/** How often a reading is written down wrong in a way that no slip explains (common practice, no source). */
const OTHERWISE = 1 / 100;
/** Every order of magnitude by which it is then out is about as likely: so many of them, as a logarithm. */
const ORDERS = 10;
/** Odds, as a logarithm, from which on a reading is asked about that no slip explains. */
const WORTH_ASKING = Math.log(2);

/**
 * True where a value lies farther from what is expected than all that is known allows: it is likelier to be written down
 * wrong, whatever the slip, than to be so.
 *
 * @param gap how far it lies from what is expected, SI
 */
export const isApart = (value: number, gap: number, beliefs: readonly Belief[]): boolean =>
  gap > 0 &&
  Math.log(OTHERWISE / (2 * gap * ORDERS)) - beliefs.reduce((sum, belief) => sum + belief(value), 0) >
    WORTH_ASKING;
