import type { SyntaxNode } from '@lezer/common';
import type { Unit } from '../../../shared/units/unit.ts';
import { findUnit } from '../../../shared/units/units.ts';
import { type Amount, readAmount, toLiteral } from '../values/amount.ts';
import { children, complain, type Reading, remedy, replaced, sliceOf, wanted } from '../values/reading.ts';
import { fitsKind, withUnit } from '../values/settle.ts';
import { decimalEcho } from './echo.ts';
import type { ReadForm } from './form.ts';

/**
 * `20 under` is twenty thou under size in every shop that works in inches; `.020 under` is inches. A shop that works in
 * millimetres writes 0.25 under, and is asked about whole numbers.
 */
const settleOffset = (r: Reading, amount: Amount): Unit | undefined => {
  if (amount.unit) return amount.unit;
  const { length } = r.context.units;
  const small = amount.ratio.n < amount.ratio.d;
  const tenth = amount.ratio.n * 10n >= amount.ratio.d;
  const take = (symbol: string): Unit | undefined => {
    r.edits.push({ from: amount.to, to: amount.to, insert: ` ${symbol}` });
    return findUnit(symbol);
  };
  // Journals go by .010 and .020 in, or by 0.25 and 0.5 mm: a quarter inch under and two hundredths of a millimetre are neither.
  if (small && tenth === (length === 'in') && amount.ratio.n !== 0n) return askSystem(r, amount);
  if (small) return take(length);
  if (length === 'in' && amount.ratio.d === 1n) return take('thou');
  if (length === 'in') return askWhole(r, amount);
  const text = sliceOf(r, amount);
  const choices = [
    `${text} thou`,
    `${Number(amount.ratio.n) / Number(amount.ratio.d) / 100} mm`,
    `${text} mm`,
  ].map((size) => remedy(replaced(r, amount, size)));
  return complain(
    r,
    'ask',
    `${r.text.trim()}: is that ${choices.map((c) => c.label).join(', or ')}?`,
    amount,
    choices,
  );
};

/** 2.23 under: thousandths are whole in this, and a size is no offset. */
const askWhole = (r: Reading, amount: Amount): undefined => {
  const choices = ['thou', 'in', 'mm'].map((unit) => withUnit(r, amount.to, unit));
  return complain(
    r,
    'ask',
    `${r.text.trim()}: is that ${choices.map((c) => c.label).join(', or ')}? A size is written without under or over.`,
    amount,
    choices,
  );
};

const askSystem = (r: Reading, amount: Amount): undefined => {
  const choices = ['in', 'mm'].map((unit) => withUnit(r, amount.to, unit));
  return complain(
    r,
    'ask',
    `${r.text.trim()}: is that ${choices.map((c) => c.label).join(' or ')}?`,
    amount,
    choices,
  );
};

/** 20 under, .25 mm over: how far from the original size. Under is negative. */
export const readOffset = (r: Reading, value: SyntaxNode, side: SyntaxNode): ReadForm | undefined => {
  const amount = readAmount(r, children(value), wanted(r));
  if (!amount) return undefined;
  if (amount.ratio.n < 0n)
    return complain(
      r,
      'syntax',
      `${r.text.trim()}: under and over already say which way; leave out the sign.`,
      amount,
    );
  const unit = settleOffset(r, amount);
  const size = unit && toLiteral(r, amount, unit);
  if (!unit || !size || !fitsKind(r, size, amount.unitSpan)) return undefined;
  const under = /^u/i.test(sliceOf(r, side));
  const sheet = findUnit(r.context.units.length) ?? unit;
  return {
    entry: { kind: 'offset', value: { ...size, value: under ? -size.value : size.value } },
    echo: `${decimalEcho(size.value, sheet)} ${under ? 'under' : 'over'} size`,
  };
};
