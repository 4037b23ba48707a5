import type { SyntaxNode } from '@lezer/common';
import type { Unit } from '../../../shared/units/unit.ts';
import { findUnit } from '../../../shared/units/units.ts';
import type { Literal, Spread } from '../syntax/syntax.ts';
import { type Amount, differenceSI, readAmount } from '../values/amount.ts';
import { children, complain, type Reading, remedy, sliceOf, wanted } from '../values/reading.ts';
import { settleLiterals } from '../values/settle.ts';
import { readSpread, resolveClass, resolveSpread, type TypedSpread, unitOfSpread } from '../values/spread.ts';
import { asksTwoOrOne } from './commas.ts';
import { decimalEcho } from './echo.ts';
import type { ReadForm } from './form.ts';

const HOLE = /^[A-Z]/;

/** 50H7/g6: a hole class and a shaft class on one nominal. */
const readFit = (r: Reading, nominal: Literal, hole: SyntaxNode, shaft: SyntaxNode): ReadForm | undefined => {
  const [first, second] = [sliceOf(r, hole), sliceOf(r, shaft)];
  if (!HOLE.test(first) || HOLE.test(second)) {
    const entry = `${r.text.slice(0, hole.from)}${second}/${first}${r.text.slice(shaft.to)}`;
    const swapped = HOLE.test(second) && !HOLE.test(first);
    return complain(
      r,
      'syntax',
      `${first}/${second}: a fit names the hole first with a capital, then the shaft with a small letter, as in H7/g6.`,
      { from: hole.from, to: shaft.to },
      swapped ? [remedy(entry)] : undefined,
    );
  }
  for (const [cls, span] of [
    [first, hole],
    [second, shaft],
  ] as const) {
    if (!resolveClass(r, r.context.handbook, nominal.value, cls, span)) return undefined;
  }
  if (r.context.role === 'chosen') return askPart(r, hole, shaft);
  return { entry: { kind: 'fit', nominal, hole: first, shaft: second }, echo: `nominal ${nominal.text}` };
};

/** A size that is cut is the hole or the shaft: a fit names both. */
const askPart = (r: Reading, hole: SyntaxNode, shaft: SyntaxNode): undefined => {
  const size = r.text.slice(0, hole.from).trimEnd();
  const choices = [hole, shaft].map((part) => remedy(`${size} ${sliceOf(r, part)}`));
  return complain(
    r,
    'ask',
    `${r.text.slice(hole.from, shaft.to)} names the classes of a hole and of its shaft: which is cut here, ${choices.map((c) => c.label).join(' or ')}?`,
    { from: hole.from, to: shaft.to },
    choices,
  );
};

/** A tolerance behind a reading: what was meant is its doubt, or the cell is no reading. */
const toleranceOnReading = (
  r: Reading,
  typed: TypedSpread | SyntaxNode,
  literal: Literal,
  unit: Unit,
): undefined => {
  const text = r.text.slice(typed.from, typed.to);
  const widest =
    'amounts' in typed
      ? typed.amounts.reduce((a, b) =>
          differenceSI(abs(b), b.unit ?? unit) > differenceSI(abs(a), a.unit ?? unit) ? b : a,
        )
      : undefined;
  const bare = r.text.slice(0, typed.from).trimEnd();
  const size = widest ? sliceOf(r, widest).replace(/^[-+−–]\s*/, '') : '';
  const entries = [...(widest ? [`${bare} ± ${size}`] : []), bare];
  return complain(
    r,
    'ask',
    `${text} is a tolerance, and ${literal.text} a reading: a reading has a doubt, ± one figure. A size to be cut is not measured but chosen.`,
    typed,
    entries.map(remedy),
  );
};

const abs = (amount: Amount): Amount =>
  amount.ratio.n < 0n ? { ...amount, ratio: { ...amount.ratio, n: -amount.ratio.n } } : amount;

const isFraction = (text: string): boolean => /\d\s*\/\s*\d/.test(text);

const SMALL = /^(thou|tenth_in|tenth_mm|um|uin|nm)$/;

/** Fractions, compounds and small units are where a misreading hides: they are shown as a decimal of a common unit. */
const echoOf = (r: Reading, literal: Literal, unit: Unit): string | undefined => {
  const sheet = findUnit(r.context.units.length);
  if (SMALL.test(unit.symbol) && sheet) return decimalEcho(literal.value, sheet);
  return isFraction(literal.text) || /['\u2032\u2019]/.test(literal.text)
    ? decimalEcho(literal.value, unit)
    : undefined;
};

/** ISO 286 counts in millimetres: on an inch sheet `50H7` may well be 50 mm. */
const askClassUnit = (r: Reading, amount: Amount): undefined => {
  const rest = r.text.slice(amount.to).trimStart();
  const choices = ['mm', 'in'].map((unit) => remedy(`${r.text.slice(0, amount.to)} ${unit} ${rest}`));
  return complain(
    r,
    'ask',
    `${r.text.trim()} has no unit, and classes such as ${rest} are laid down in millimetres: ${choices.map((c) => c.label).join(' or ')}?`,
    amount,
    choices,
  );
};

export const readValue = (r: Reading, value: SyntaxNode, nodes: SyntaxNode[]): ReadForm | undefined => {
  const number = children(value)[0];
  if (number && asksTwoOrOne(r, number)) return undefined;
  const want = wanted(r);
  const amount = readAmount(r, children(value), want);
  const spreadNode = nodes.find((node) => node.name === 'Spread' || node.name === 'Within');
  const typed = spreadNode && readSpread(r, spreadNode, want);
  if (!amount || (spreadNode && !typed)) return undefined;
  if (
    !amount.unit &&
    !typed &&
    nodes.some((node) => node.name === 'Fit') &&
    r.context.units.length === 'in'
  ) {
    return askClassUnit(r, amount);
  }
  const settled = settleLiterals(r, [amount], unitOfSpread(typed));
  const literal = settled?.literals[0];
  const unit = settled?.units[0];
  if (!literal || !unit) return undefined;
  const [hole, shaft] = nodes.filter((node) => node.name === 'Fit');
  if (hole && shaft && r.context.role !== 'measured') return readFit(r, literal, hole, shaft);
  let spread: Spread | undefined;
  if (r.context.role === 'measured' && (hole || typed?.form === 'deviations'))
    return toleranceOnReading(r, typed ?? (hole as SyntaxNode), literal, unit);
  if (typed) {
    spread = resolveSpread(r, typed, unit);
    if (!spread) return undefined;
  } else if (hole) {
    spread = resolveClass(r, r.context.handbook, literal.value, sliceOf(r, hole), hole);
    if (!spread) return undefined;
  }
  const tir = nodes.some((node) => node.name === 'Tir');
  const echo = echoOf(r, literal, unit);
  return {
    entry: { kind: 'value', value: literal, ...(spread ? { spread } : {}), ...(tir ? { tir } : {}) },
    ...(echo ? { echo } : {}),
  };
};
