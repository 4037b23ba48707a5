import { type Slipway, USUAL } from './guess.ts';
import { scaled } from './shifted.ts';

/** A radius where a diameter is meant, or the other way round. */
export const radius: Slipway = (asked) =>
  [2, 0.5].map((factor) => ({
    slip: 'radius',
    value: asked.value * factor,
    share: USUAL / 2,
    question: factor > 1 ? 'Is that a radius?' : 'Is that doubled, as if a radius had been read?',
    offer: () => scaled(asked, factor),
  }));
