import { toSI } from '../../../shared/units/unit.ts';
import { findUnit } from '../../../shared/units/units.ts';
import type { Guess, Slipway } from './guess.ts';
import { numberSpan } from './rewrite.ts';

/** A slip of the keys in one plain number: what else its text may have been. */
export const retyped =
  (slip: string, share: number, question: string, others: (text: string) => string[]): Slipway =>
  ({ datum, indices }) => {
    const index = indices[0];
    if (index === undefined || indices.length !== 1 || datum.set) return [];
    const literal = datum.literals[index];
    const span = literal && numberSpan(datum, literal);
    const unit = findUnit(literal?.unit ?? '');
    if (!span || !unit) return [];
    const text = datum.text.slice(span.from, span.to);
    if (!/^\d*[.,]?\d+$/.test(text)) return [];
    return others(text).map(
      (other): Guess => ({
        slip,
        value: toSI(Number(other.replace(',', '.')), unit),
        reach: 0,
        share,
        question,
        offer: () => datum.text.slice(0, span.from) + other + datum.text.slice(span.to),
      }),
    );
  };
