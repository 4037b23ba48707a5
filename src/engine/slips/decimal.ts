import type { GaugeSetting } from '../../language/syntax/syntax.ts';
import type { Datum } from './datum.ts';
import { type Asked, type Guess, type Slipway, USUAL } from './guess.ts';
import { signedCount, withDivision, withDivisions } from './rewrite.ts';
import { scaled } from './shifted.ts';

const FACTORS = [10, 0.1] as const;

/** A decimal point one place out; of a gauge read in divisions, tenths for thousandths. */
export const decimal: Slipway = (asked) =>
  asked.datum.set
    ? FACTORS.flatMap((factor) => ofDivisions(asked, factor) ?? [])
    : FACTORS.map((factor) => ({
        slip: 'decimal',
        value: asked.value * factor,
        share: USUAL / FACTORS.length,
        question: 'Is the decimal point one place out?',
        offer: () => scaled(asked, factor),
      }));

function ofDivisions({ datum, indices, value }: Asked, factor: number): Guess | undefined {
  const set = datum.set;
  if (!set) return undefined;
  const whole = indices.length === datum.literals.length;
  return {
    slip: 'decimal',
    value: set.size.value + (value - set.size.value) * factor,
    share: USUAL / FACTORS.length,
    question: 'Are these tenths for thousandths, or thousandths for tenths?',
    offer: () =>
      whole ? withDivision(datum, set, set.division.value * factor) : counted(datum, indices, factor),
  };
}

/** The counts of divisions times `factor`, where that leaves one place at most. */
function counted(datum: Datum, indices: readonly number[], factor: number): string | undefined {
  const set = datum.set as GaugeSetting;
  const counts = indices.map((i) => [i, (set.divisions[i] as number) * factor] as const);
  if (!counts.every(([, count]) => Math.abs(count * 10 - Math.round(count * 10)) < 1e-9)) return undefined;
  const texts = new Map(counts.map(([i, count]) => [i, signedCount(Number(count.toFixed(1)))]));
  return withDivisions(datum, set, texts);
}
