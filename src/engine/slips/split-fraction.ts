import type { Slip } from '../rows/results.ts';
import type { Datum } from './datum.ts';
import { type Expectation, supports } from './expectation.ts';
import { numberSpan } from './rewrite.ts';

/** The mixed number that `11/8` may have been: whole inches, then a fraction in lowest terms. */
function mixed(top: string, bottom: string): string | undefined {
  const below = Number(bottom);
  for (let at = 1; at < top.length; at++) {
    const rest = Number(top.slice(at));
    if (top[at] !== '0' && rest < below && rest % 2 === 1) return `${top.slice(0, at)} ${rest}/${bottom}`;
  }
  return undefined;
}

/** `11/8` where `1 1/8` was meant: a shop writes no fraction above one. Nothing is asked where the size fits as it is. */
export function splitFraction(datum: Datum, expected: readonly Expectation[]): Slip | undefined {
  const literal = datum.literals[0];
  if (!literal || datum.literals.length > 1 || datum.set) return undefined;
  if (expected.some((one) => supports(literal.value, one))) return undefined;
  const span = numberSpan(datum, literal);
  const match = span && datum.text.slice(span.from, span.to).match(/^(\d+)\s*\/\s*(\d+)$/);
  if (!span || !match) return undefined;
  const [whole, top, bottom] = match as unknown as [string, string, string];
  const meant = Number(top) > Number(bottom) ? mixed(top, bottom) : undefined;
  if (!meant) return undefined;
  return {
    key: `fraction:${datum.field}`,
    field: datum.field,
    message: `${whole} is ${Number((Number(top) / Number(bottom)).toFixed(6))}. Is ${meant} meant?`,
    offer: datum.text.slice(0, span.from) + meant + datum.text.slice(span.to),
  };
}
