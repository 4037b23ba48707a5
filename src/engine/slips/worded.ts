import type { Slip } from '../rows/results.ts';
import { type Expectation, outside } from './expectation.ts';
import type { Asked, Guess } from './guess.ts';
import { written } from './written.ts';

/** The question as it is put: how far off, against what, what it may be, and the text in its place. */
export function worded(
  { datum, indices, value }: Asked,
  guess: Guess,
  expected: Expectation,
  tells = true,
): Slip {
  const whole = indices.length === datum.literals.length;
  const which = whole ? '' : `#${(indices[0] as number) + 1}`;
  const size = (si: number): string => written(si, datum);
  const gap = size(outside(value, expected));
  const side = value > expected.high ? 'above' : 'below';
  const what =
    whole && indices.length > 1
      ? `The readings, about ${size(value)},`
      : (datum.literals[indices[0] as number]?.text ?? size(value));
  const several = whole && indices.length > 1;
  const apart =
    outside(value, expected) > 0
      ? `${several ? 'are' : 'is'} ${gap} ${side} ${expected.said}`
      : `${several ? 'do' : 'does'} not go with ${expected.said}`;
  const offer = guess.offer();
  const instead = offer === undefined && tells ? ` It would be ${size(guess.value)}.` : '';
  return {
    key: `${guess.slip}:${datum.field}${which}`,
    field: datum.field,
    message: `${what} ${apart}. ${guess.question}${instead}`,
    ...(offer === undefined ? {} : { offer }),
    cost: Math.abs(guess.value - value) / (whole ? 1 : datum.literals.length),
  };
}
