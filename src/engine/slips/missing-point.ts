import type { Slipway } from './guess.ts';
import { retyped } from './retyped.ts';

const pointed: Slipway = retyped('missing-point', 'Is the decimal point missing?', (text) =>
  /[.,]/.test(text)
    ? []
    : [
        ...Array.from({ length: text.length - 1 }, (_, i) => `${text.slice(0, i + 1)}.${text.slice(i + 1)}`),
        `0.${text}`,
        `0.0${text}`,
      ],
);

/**
 * The decimal point left out, with a nought in front of it or without: `33168` may have been `3.3168` or `0.33168`. Counts
 * of divisions have none.
 */
export const missingPoint: Slipway = (asked) => (asked.datum.set ? [] : pointed(asked));
