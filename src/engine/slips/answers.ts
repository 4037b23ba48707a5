import { type Expectation, outside } from './expectation.ts';
import type { Guess } from './guess.ts';

/**
 * True where a value lies out of what is expected and the guess puts it right, and neither by chance: what is
 * expected must be narrow beside the step between them, and where wear could have led the value there, the guess must
 * hit it without slack.
 */
export function answers(value: number, guess: Guess, expected: Expectation): boolean {
  const before = outside(value, expected);
  const after = outside(guess.value, expected);
  const { low, high, slack, worn } = expected;
  if (before <= slack) return false;
  const byWear = worn === 'either' || (value > high ? worn === 'high' : worn === 'low');
  const allowed = byWear ? 0 : Math.max(slack, guess.reach);
  return (
    after <= allowed && before >= 2 * after && high - low + 2 * allowed <= 0.7 * Math.abs(guess.value - value)
  );
}
