/** Decimal rounding as it is done on paper: half away from zero, of the figure in decimal, not of its binary form. */

const MAX_DIGITS = 17;
/** Digits that arithmetic on doubles leaves sound; the noise behind them must not decide a half. */
const SOUND_DIGITS = 12;

interface Digits {
  negative: boolean;
  digits: bigint;
  /** Value = digits x 10^exponent. */
  exponent: number;
}

const digitsOf = (x: number, precision: number): Digits => {
  const [mantissa = '0', exponent = '0'] = Math.abs(x)
    .toExponential(precision - 1)
    .split('e');
  const [whole = '0', fraction = ''] = mantissa.split('.');
  return { negative: x < 0, digits: BigInt(whole + fraction), exponent: Number(exponent) - fraction.length };
};

/** Power of ten of the leading digit; 0 for 0. */
export const magnitude = (x: number): number =>
  x === 0 ? 0 : Number(Math.abs(x).toExponential().split('e')[1]);

/**
 * `x`, finite, to `decimals` places; negative places round to tens, hundreds. Never `-0`.
 */
export const roundedText = (x: number, decimals: number): string => {
  const wanted = magnitude(x) + decimals + 2;
  const { negative, digits, exponent } = digitsOf(x, Math.min(MAX_DIGITS, Math.max(SOUND_DIGITS, wanted)));
  const drop = -exponent - decimals;
  let units = drop <= 0 ? digits * 10n ** BigInt(-drop) : digits / 10n ** BigInt(drop);
  if (drop > 0 && (digits % 10n ** BigInt(drop)) * 2n >= 10n ** BigInt(drop)) units += 1n;
  const plain = units.toString();
  const sign = negative && units !== 0n ? '-' : '';
  if (decimals <= 0) return units === 0n ? '0' : sign + plain + '0'.repeat(-decimals);
  const padded = plain.padStart(decimals + 1, '0');
  return `${sign}${padded.slice(0, -decimals)}.${padded.slice(-decimals)}`;
};

/** True when `x` has no more than `decimals` places, noise aside. */
export const fitsDecimals = (x: number, decimals: number): boolean =>
  x === 0 || Math.abs(Number(roundedText(x, decimals)) - x) <= Math.abs(x) * 10 ** -SOUND_DIGITS;

/** Without the zeros behind the last figure, but with at least `least` places. */
export const trimmedText = (text: string, least: number): string => {
  const point = text.indexOf('.');
  if (point < 0) return text;
  let end = text.length;
  while (end > point + 1 + least && text[end - 1] === '0') end -= 1;
  return text.slice(0, end === point + 1 ? point : end);
};
