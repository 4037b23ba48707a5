import type { SyntaxNode } from '@lezer/common';
import { isNone, sameDimension } from '../../../shared/dimension.ts';
import type { Problem } from '../../../shared/problem.ts';
import { numberRatio, over, plus, type Ratio, ratioNumber, times } from '../../../shared/units/exact.ts';
import { type Unit, unitRatio } from '../../../shared/units/unit.ts';
import { findUnit, isUnit, parseUnit } from '../../../shared/units/units.ts';
import type { Literal, Span } from '../syntax/syntax.ts';
import { short } from '../syntax/wording.ts';
import { isNumberNode, readNumber } from './number.ts';
import {
  children,
  complain,
  type Reading,
  remedy,
  replaced,
  signBefore,
  sliceOf,
  type Want,
} from './reading.ts';

/** A signed number and its unit, where one was typed, before it is settled what a bare one means. */
export interface Amount extends Span {
  ratio: Ratio;
  digits?: number;
  unit?: Unit;
  unitSpan?: Span;
}

/** Words that must be settled once a sheet; the settled symbol is stored, so that no later change moves a value. */
const SETTLED = /(?<![A-Za-z_])(tons?|tons?f|tenths?)(?![A-Za-z_])/;

/** A mil is a thousandth of an inch, and in many a shop that works in millimetres a millimetre. */
const askMil = (r: Reading, node: Span): undefined => {
  const choices = ['thou', 'mm'].map((unit) => remedy(replaced(r, node, unit)));
  return complain(
    r,
    'ask',
    `"${sliceOf(r, node)}" is a thousandth of an inch to some and a millimetre to others: which is it?`,
    node,
    choices,
  );
};

/** Words of a drawing behind a size that are no unit: 2.25 dia, 2.250 max. */
const asideOf = (r: Reading, node: Span, text: string): Pick<Problem, 'message' | 'choices'> | undefined => {
  const bare = replaced(r, node, '').trimEnd();
  const entry = /^(dia|diam|diameter|od|id)$/i.test(text)
    ? `dia ${bare.trim()}`
    : /^drill$/i.test(text) && /^\d+$/.test(bare.trim())
      ? `#${bare.trim()}`
      : /^(max|nom|approx|ref|typ|bsc|basic)$/i.test(text)
        ? bare
        : undefined;
  if (entry === undefined || r.text.trimStart().startsWith('=')) return undefined;
  return {
    message: `"${text}" is no unit: is ${entry.trim()} meant?`,
    choices: [remedy(entry)],
  };
};

const readUnit = (r: Reading, node: Span, want: Want): Unit | undefined => {
  const text = sliceOf(r, node);
  const { ton, tenth, length } = r.context.units;
  if (length === 'mm' && /^mils?$/.test(text)) return askMil(r, node);
  const found = parseUnit(text, { ...want, ton, tenth });
  if (isUnit(found)) {
    if (SETTLED.test(text)) r.edits.push({ from: node.from, to: node.to, insert: found.symbol });
    return found;
  }
  if (found.kind === 'unknown-unit') {
    const aside = asideOf(r, node, text);
    if (aside) {
      r.problems.push({ ...found, ...aside, from: node.from, to: node.to });
      return undefined;
    }
  }
  const from = node.from + (found.from ?? 0);
  const to = node.from + (found.to ?? text.length);
  const choices = (found.choices ?? []).map((choice) =>
    choice.entry === undefined ? choice : { ...choice, entry: replaced(r, { from, to }, choice.entry) },
  );
  if (found.kind === 'unknown-unit' && r.text.trimStart().startsWith('=')) {
    choices.push({
      label: `times the cell ${short(text)}`,
      entry: `${r.text.slice(0, node.from).trimEnd()} * ${r.text.slice(node.from)}`,
    });
    found.message += ` If ${short(text)} is a cell, write * before it.`;
  }
  r.problems.push({ ...found, from, to, ...(choices.length > 0 ? { choices } : {}) });
  return undefined;
};

const smaller = (r: Reading, first: Unit, node: SyntaxNode, want: Want): Unit | undefined => {
  const mark = sliceOf(r, node);
  const angle = isNone(first.dimension);
  if (angle && (node.name === 'Minute' || /^(min|minutes?)$/.test(mark))) return findUnit('arcmin');
  if (angle && (node.name === 'Second' || /^(s|sec|seconds?)$/.test(mark))) return findUnit('arcsec');
  const second = node.name === 'Unit' ? readUnit(r, node, want) : undefined;
  if (node.name === 'Unit' && !second) return undefined;
  if (
    second &&
    !second.point &&
    !first.point &&
    sameDimension(second.dimension, first.dimension) &&
    second.factor < first.factor
  ) {
    return second;
  }
  return complain(
    r,
    'syntax',
    `"${mark}" does not go on from ${first.label}: write degrees and minutes (30 deg 15'), feet and inches (5 ft 3 in), or one unit.`,
    node,
  );
};

/** 1 deg 75', 5 ft 14 in: the smaller unit makes up a whole one of the larger. Is a figure wrong? */
const askCarried = (r: Reading, nodes: SyntaxNode[], total: Ratio, unit: Unit): undefined => {
  const span = { from: nodes[0]?.from ?? 0, to: nodes.at(-1)?.to ?? 0 };
  const entry = total.d === 1n ? replaced(r, span, `${total.n} ${unit.symbol}`) : undefined;
  return complain(
    r,
    'ask',
    `${sliceOf(r, span)}: the smaller part comes to a whole one of the larger or more. Is a figure wrong${entry ? `, or is ${entry.trim()} meant` : ''}?`,
    span,
    entry ? [remedy(entry)] : undefined,
  );
};

/** 30 deg 15' 20", 5 ft 3 1/2 in: one value in its first unit. */
const readCompound = (r: Reading, nodes: SyntaxNode[], want: Want): Omit<Amount, keyof Span> | undefined => {
  let first: Unit | undefined;
  let before: Unit | undefined;
  let sum: Ratio | undefined;
  let carried = false;
  for (let i = 0; i + 1 < nodes.length; i += 2) {
    const number = readNumber(r, nodes[i] as SyntaxNode);
    const mark = nodes[i + 1] as SyntaxNode;
    const unit = first ? smaller(r, first, mark, want) : readUnit(r, mark, want);
    if (!number || !unit) return undefined;
    first ??= unit;
    const part = over(times(number.ratio, unitRatio(unit)), unitRatio(first));
    sum = sum ? plus(sum, part) : part;
    // Exact: 60' is a degree, 59.99' is not.
    if (before) carried ||= ratioNumber(over(times(number.ratio, unitRatio(unit)), unitRatio(before))) >= 1;
    before = unit;
  }
  const isWanted = !want.dimension || (first && sameDimension(first.dimension, want.dimension));
  if (carried && isWanted && first && before && sum)
    return askCarried(r, nodes, over(times(sum, unitRatio(first)), unitRatio(before)), before);
  return first && sum ? { ratio: sum, unit: first, unitSpan: nodes[1] } : undefined;
};

/** A signed amount from a run of nodes: number, number and unit, or a compound. */
export const readAmount = (r: Reading, nodes: SyntaxNode[], want: Want): Amount | undefined => {
  const flat = nodes.flatMap((node) =>
    isNumberNode(node) ? [node] : node.name === 'Whole' ? children(node) : [node],
  );
  const head = flat[0];
  if (!head) return undefined;
  const inner = head.name === 'Compound' ? children(head) : flat;
  const first = inner[0] as SyntaxNode;
  const last = inner.at(-1) as SyntaxNode;
  const { sign, from } = signBefore(r, first.from);
  const span = { from, to: last.to };
  const signed = (ratio: Ratio): Ratio => (sign < 0 ? { n: -ratio.n, d: ratio.d } : ratio);
  if (head.name === 'Compound') {
    const compound = readCompound(r, inner, want);
    return compound && { ...compound, ...span, ratio: signed(compound.ratio) };
  }
  const number = readNumber(r, first);
  const unitNode = inner.find((node) => node.name === 'Unit');
  const unit = unitNode ? readUnit(r, unitNode, want) : undefined;
  if (!number || (unitNode && !unit)) return undefined;
  return {
    ...number,
    ...span,
    ratio: signed(number.ratio),
    ...(unit ? { unit, unitSpan: unitNode as SyntaxNode } : {}),
  };
};

const exact = (ratio: Ratio, unit: Unit, difference: boolean): number =>
  ratioNumber(
    times(unit.offset && !difference ? plus(ratio, numberRatio(unit.offset)) : ratio, unitRatio(unit)),
  );

/** SI size of an amount taken as a difference: a spread, a division. */
export const differenceSI = (amount: Amount, unit: Unit): number => exact(amount.ratio, unit, true);

/** The literal an amount becomes in `unit`, its own or the one that was settled for it; nearest double in SI. */
export const toLiteral = (r: Reading, amount: Amount, unit: Unit): Literal | undefined => {
  const value = exact(amount.ratio, unit, false);
  const { from, to } = amount;
  if (!Number.isFinite(value)) {
    return complain(
      r,
      'range',
      `${short(r.text.slice(from, to))} is beyond what can be computed with.`,
      amount,
    );
  }
  if (unit.point && value < 0) {
    return complain(
      r,
      'range',
      `${short(r.text.slice(from, to))} lies below absolute zero, -273.15 degC or -459.67 degF: check the figure and its unit.`,
      amount,
    );
  }
  const bare = amount.unit === undefined;
  return {
    kind: 'literal',
    value,
    dimension: unit.dimension,
    point: unit.point,
    bare,
    ...(unit.symbol === '' ? {} : { unit: unit.symbol }),
    ...(amount.digits === undefined ? {} : { digits: amount.digits }),
    text: r.text.slice(from, to).replaceAll(',', '.') + (bare && unit.symbol !== '' ? ` ${unit.symbol}` : ''),
    from,
    to,
  };
};
