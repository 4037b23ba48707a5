/**
 * The leading digits that the next reading of a place shares with the last one, near always: all but the last two behind
 * the decimal mark. Empty for a fraction or a whole number.
 */
export const leadingDigits = (last: string | undefined): string => {
  const [, whole, mark, decimals] = /^([+-]?\d*)([.,])(\d+)$/.exec(last?.trim() ?? '') ?? [];
  return decimals === undefined
    ? ''
    : `${whole}${mark}${decimals.slice(0, Math.max(0, decimals.length - 2))}`;
};

const numberOf = (text: string): number => Number(text.replace(',', '.'));

/** As large as the reading before: a reading of its own, and no last digits of one. */
const isOneItself = (digits: string, last: string): boolean => {
  const ratio = numberOf(digits) / Math.abs(numberOf(last));
  return ratio > 0.5 && ratio < 2;
};

/**
 * The reading that the last digits of one stand for, behind those it shares with the reading before or, in the place for
 * what was measured, with the plan: `1.7481; 79` is offered as `1.7481; 1.7479`, and never read so.
 * @param plan size that is read there, as written; a first reading begins as it does
 */
export const begunReading = (
  text: string,
  at: number,
  plan: string | undefined,
): { from: number; reading: string } | undefined => {
  if (text.slice(at).trim() !== '' || /^\s*(=|set\b)/i.test(text)) return undefined;
  const before = text.slice(0, at);
  const [typed = ''] = /(?<=^\s*|[;|]\s*)\d{1,3}$/.exec(before) ?? [];
  const from = at - typed.length;
  const [last = plan] = /(?<=^\s*|[;|]\s*)[+-]?\d*[.,]\d+(?=\s*[;|]\s*$)/.exec(before.slice(0, from)) ?? [];
  if (typed === '' || last === undefined) return undefined;
  // Behind a reading of another form the plan says nothing.
  if (last === plan && from > before.search(/\S/)) return undefined;
  const shared = leadingDigits(last);
  return shared === '' || isOneItself(typed, last) ? undefined : { from, reading: shared + typed };
};
