import type { SyntaxNode } from '@lezer/common';
import { isNone, sameDimension } from '../../../shared/dimension.ts';
import type { Unit } from '../../../shared/units/unit.ts';
import { type Sort, sortOfUnit } from '../syntax/sort.ts';
import type { Span, Spread } from '../syntax/syntax.ts';
import { describeType, short } from '../syntax/wording.ts';
import { type Amount, differenceSI, readAmount } from './amount.ts';
import type { Handbook } from './context.ts';
import { isNumberNode, readNumber } from './number.ts';
import { children, complain, type Reading, remedy, replaced, sliceOf, type Want } from './reading.ts';
import { asksWhole } from './whole-spread.ts';

/** A spread as typed, before the unit of what it belongs to is known. */
export interface TypedSpread extends Span {
  form: 'within' | 'deviations';
  /** One amount for ±, upper and lower otherwise. */
  amounts: Amount[];
  k?: number;
}

const SHARES = new Set(['%', 'permille', 'ppm']);

export const isShare = (unit: Pick<Unit, 'symbol'> | undefined): boolean =>
  unit !== undefined && SHARES.has(unit.symbol);

const readWithin = (r: Reading, node: SyntaxNode, want: Want): TypedSpread | undefined => {
  const amountNode = node.getChild('Amount');
  const amount = amountNode && readAmount(r, children(amountNode), want);
  const coverage = node.getChild('Coverage');
  if (!amount) return undefined;
  const span = { from: node.from, to: node.to };
  if (amount.ratio.n < 0n)
    return complain(r, 'syntax', `${sliceOf(r, node)}: a figure after ± has no sign.`, node);
  if (!coverage) return { form: 'within', amounts: [amount], ...span };
  const numberNode = children(coverage).find(isNumberNode);
  const number = numberNode && readNumber(r, numberNode);
  const k = number ? Number(number.ratio.n) / Number(number.ratio.d) : Number.NaN;
  if (!(k > 0)) return complain(r, 'range', 'A coverage factor is a number above 0, usually 2.', coverage);
  return { form: 'within', amounts: [amount], k, ...span };
};

/** Reads a Spread or a Within node. */
export const readSpread = (r: Reading, node: SyntaxNode, want: Want): TypedSpread | undefined => {
  const within = node.name === 'Within' ? node : node.getChild('Within');
  if (within) return readWithin(r, within, want);
  const amounts: Amount[] = [];
  for (const side of [node.getChild('Upper'), node.getChild('Lower')]) {
    const amountNode = side?.getChild('Amount');
    const amount = amountNode && readAmount(r, children(amountNode), want);
    if (!amount) return undefined;
    amounts.push(amount);
  }
  return { form: 'deviations', amounts, from: node.from, to: node.to };
};

/** The unit a spread brings, where it is not a share of the value. */
export const unitOfSpread = (spread: TypedSpread | undefined): Unit | undefined =>
  spread?.amounts.map(({ unit }) => unit).find((unit) => unit !== undefined && !isShare(unit));

/** Nothing but a share of the value: ± 5 %. */
export const isShareOnly = (spread: TypedSpread): boolean =>
  unitOfSpread(spread) === undefined && spread.amounts.some(({ unit }) => isShare(unit));

/** Ends of a spread in SI. `unit` is that of the value it stands behind; bare amounts take each other's, else that. */
export const resolveSpread = (r: Reading, typed: TypedSpread, unit: Unit): Spread | undefined => {
  if (asksWhole(r, typed, unit)) return undefined;
  const own = typed.amounts.map((amount) => amount.unit).find((found) => found !== undefined);
  const units = typed.amounts.map((amount) => amount.unit ?? own ?? unit);
  const percent = units.every(isShare) && !isShare(unit);
  const sort = (of: Unit): Sort | undefined =>
    sortOfUnit(of.symbol, of.dimension) ?? (isNone(of.dimension) ? 'plain' : undefined);
  for (const [i, used] of units.entries()) {
    const isOneSort = used === unit || !sort(used) || !sort(unit) || sort(used) === sort(unit);
    const isSame = sameDimension(used.dimension, unit.dimension) && isOneSort;
    if (percent || (isSame && !(isShare(used) && !isNone(unit.dimension)))) continue;
    const [value, spread] = [unit, used].map((of) =>
      describeType({
        kind: 'quantity',
        dimension: of.dimension,
        point: of === unit && of.point,
        sort: sort(of),
      }),
    );
    return complain(
      r,
      'dimension',
      `The value is ${value}, its spread ${short(sliceOf(r, typed))} is ${spread}.`,
      typed.amounts[i] as Amount,
    );
  }
  if (percent && (unit.point || r.kind?.point))
    return complain(
      r,
      'dimension',
      `${short(sliceOf(r, typed))} of a temperature on a scale says nothing, for its zero is where somebody put it: write the spread in degrees, such as ± 2 K.`,
      typed,
    );
  const sizes = typed.amounts.map((amount, i) => differenceSI(amount, units[i] as Unit));
  const k = typed.k === undefined ? {} : { k: typed.k };
  const [first = 0, second = 0] = sizes;
  if (!sizes.every(Number.isFinite))
    return complain(r, 'range', 'This spread is beyond what can be computed with.', typed);
  if (typed.form === 'within') return { low: -first, high: first, percent, form: 'within', ...k };
  if (first < second) {
    const [upper, lower] = typed.amounts.map((amount) => sliceOf(r, amount));
    const entry = replaced(
      r,
      { from: typed.amounts[0]!.from, to: typed.amounts[1]!.to },
      `${lower} ${upper}`,
    );
    return complain(
      r,
      'ask',
      `The upper deviation ${upper} lies below the lower ${lower}: are they the wrong way round?`,
      typed,
      [remedy(entry)],
    );
  }
  return { low: second, high: first, percent, form: 'deviations' };
};

/** Limit deviations of an ISO 286 class at a nominal size. */
export const resolveClass = (
  r: Reading,
  handbook: Handbook,
  nominal: number,
  designation: string,
  span: Span,
): Spread | undefined => {
  const found = handbook.classLimits(nominal, designation);
  if ('problem' in found) return complain(r, 'unknown-key', `${designation}: ${found.problem}`, span);
  return { low: found.low, high: found.high, percent: false, form: 'class', designation };
};
