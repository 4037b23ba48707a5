import type { Slipway } from './guess.ts';
import { signedCount, withDivisions } from './rewrite.ts';

/** Share of the readings of a gauge whose sign is the wrong way round, and of one of a list alone (common practice, no source). */
const MIRRORED = 1 / 50;
const ONE_MIRRORED = 1 / 40;

/** A gauge read from its setting with the sign the wrong way round. */
export const mirrored: Slipway = (asked) => {
  const { datum, indices, value } = asked;
  const set = datum.set;
  if (!set) return [];
  return [
    {
      slip: 'mirrored',
      value: 2 * set.size.value - value,
      share: indices.length === datum.literals.length ? MIRRORED : ONE_MIRRORED,
      question: 'Is the sign of the gauge the other way round?',
      offer: () =>
        withDivisions(
          datum,
          set,
          new Map(indices.map((i) => [i, signedCount(-(set.divisions[i] as number) || 0)])),
        ),
    },
  ];
};
