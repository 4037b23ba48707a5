import type { Belief } from './belief.ts';
import type { Guess } from './guess.ts';

/** How often a reading is written down wrong in one certain way (common practice, no source). */
const USUAL = 1 / 300;

/**
 * Odds, as a logarithm, that a reading was meant to be what the guess says rather than what it is: how much better the
 * guess suits all that is known, times how often such a slip is made, shared among the ways to make it.
 */
export function odds(value: number, guess: Guess, ways: number, beliefs: readonly Belief[]): number {
  const better = beliefs.reduce((sum, belief) => sum + belief(guess.value) - belief(value), 0);
  return better + Math.log((guess.share ?? USUAL) / ways);
}
