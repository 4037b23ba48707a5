import { type Slipway, USUAL } from './guess.ts';
import { scaled } from './shifted.ts';

/** A minus in front of a size, as a slip of the key or a gauge read from the wrong side leaves it. */
export const sign: Slipway = (asked) =>
  asked.datum.set || asked.value >= 0
    ? []
    : [
        {
          slip: 'sign',
          value: -asked.value,
          share: USUAL,
          question: 'Is the minus meant?',
          offer: () => scaled(asked, -1),
        },
      ];
