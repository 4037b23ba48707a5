import { retyped } from './retyped.ts';

/** Share of the readings written without their point (common practice, no source). */
const LEFT_OUT = 1 / 300;

/** The decimal point left out: `33168` may have been `3.3168`. */
export const missingPoint = retyped('missing-point', LEFT_OUT, 'Is the decimal point missing?', (text) =>
  /[.,]/.test(text)
    ? []
    : Array.from({ length: text.length - 1 }, (_, i) => `${text.slice(0, i + 1)}.${text.slice(i + 1)}`),
);
