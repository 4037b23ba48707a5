import type { Slipway } from './guess.ts';
import { signedCount, withDivisions } from './rewrite.ts';

/** Share of the readings of a gauge whose sign is the wrong way round (common practice, no source). */
const MIRRORED = 1 / 50;

/** A gauge read from its setting with the sign the wrong way round. */
export const mirrored: Slipway = (asked) => {
  const { datum, indices, value } = asked;
  const set = datum.set;
  if (!set) return [];
  return [
    {
      slip: 'mirrored',
      value: 2 * set.size.value - value,
      share: MIRRORED,
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
