import { findUnit } from '../../../shared/units/units.ts';
import type { Datum } from './datum.ts';
import { type Guess, type Slipway, USUAL } from './guess.ts';
import { divisionSpans, numberSpan, withDivisions } from './rewrite.ts';

/** A number as it was typed: a size, or a count of divisions from a setting. */
interface Typed {
  sign: string;
  /** Its figures, without a sign. */
  text: string;
  valueOf(text: string): number;
  put(text: string): string | undefined;
}

function typedAt(datum: Datum, index: number): Typed | undefined {
  const { set } = datum;
  if (set) {
    const written = divisionSpans(datum, set)?.[index]?.text.replaceAll(' ', '');
    if (written === undefined) return undefined;
    const sign = /^[+-]/.exec(written)?.[0] ?? '';
    return {
      sign,
      text: written.slice(sign.length),
      valueOf: (text) => set.size.value + Number(sign + text) * set.division.value,
      put: (text) => withDivisions(datum, set, new Map([[index, sign + text]])),
    };
  }
  const literal = datum.literals[index];
  const span = literal && numberSpan(datum, literal);
  const unit = findUnit(literal?.unit ?? '');
  if (!span || !unit) return undefined;
  return {
    sign: '',
    text: datum.text.slice(span.from, span.to),
    // Many are tried: a size that is only weighed need not be exact to the last bit.
    valueOf: (text) => Number(text.replace(',', '.')) * unit.factor,
    put: (text) => datum.text.slice(0, span.from) + text + datum.text.slice(span.to),
  };
}

/**
 * A slip of the keys in one number: what else its figures may have been. `ways` is in how many ways it can be made in a
 * number of so many digits.
 */
export const retyped =
  (
    slip: string,
    question: string,
    others: (text: string) => string[],
    ways: (digits: number) => number = () => 1,
  ): Slipway =>
  ({ datum, indices }) => {
    const index = indices[0];
    if (index === undefined || indices.length !== 1) return [];
    const typed = typedAt(datum, index);
    if (!typed || !/^\d*[.,]?\d+$/.test(typed.text)) return [];
    return [...new Set(others(typed.text))].map(
      (text): Guess => ({
        slip,
        value: typed.valueOf(text),
        share: USUAL / Math.max(1, ways(text.replace(/\D/g, '').length)),
        ...(datum.set ? {} : { text }),
        question,
        offer: () => typed.put(text),
      }),
    );
  };
