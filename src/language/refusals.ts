import { constantOf } from './syntax/constant.ts';
import type { Expr, Literal, Span } from './syntax/syntax.ts';
import { complain, type Reading, replaced } from './values/reading.ts';

/**
 * Formulas the grammar reads in one way and a shop may have meant in another: refused with both readings offered,
 * rather than computed in silence.
 */
export const refuse = (r: Reading, expr: Expr): void => {
  switch (expr.kind) {
    case 'binary':
      refuse(r, expr.left);
      refuse(r, expr.right);
      if (expr.op === '^') powerOfQuantity(r, expr.left, expr.right, expr);
      if (expr.op === '-') mixedWithHyphen(r, expr.left, expr.right, expr);
      if (expr.op === '/') fractionAfterStroke(r, expr.right);
      break;
    case 'compare':
      refuse(r, expr.left);
      refuse(r, expr.right);
      break;
    case 'negate':
    case 'group':
      refuse(r, expr.of);
      break;
    case 'call':
      for (const arg of expr.args) refuse(r, arg);
      if (/^(SIN|COS|TAN)$/.test(expr.fn) && expr.args[0]) bareAngle(r, expr.fn, expr.args[0]);
  }
};

const offer = (r: Reading, span: Span, insert: string) => ({
  label: insert,
  entry: replaced(r, span, insert),
});

/** Number and unit of a literal as typed; compounds have none. */
const parts = (r: Reading, literal: Literal): { number: string; unit: string } | undefined => {
  const match = /^([\d.,\s/eE+-]*\d\.?)\s*([^\d\s].*)$/.exec(r.text.slice(literal.from, literal.to));
  return match ? { number: match[1] as string, unit: match[2] as string } : undefined;
};

/** 2 in^2: two square inches, or the square of two inches? */
const powerOfQuantity = (r: Reading, left: Expr, right: Expr, span: Span): void => {
  if (left.kind !== 'literal' || left.unit === undefined) return;
  const found = parts(r, left);
  const exponent = r.text.slice(right.from, right.to);
  const text = r.text.slice(left.from, left.to);
  const simple = found && /^[234]$/.test(exponent) && /^[A-Za-zµ]+$/.test(found.unit);
  complain(
    r,
    'ask',
    `${r.text.slice(span.from, span.to)}: is the unit raised to the power, or the whole quantity?`,
    span,
    [
      ...(simple ? [offer(r, span, `${found.number} ${found.unit}${exponent}`)] : []),
      offer(r, span, `(${text})^${exponent}`),
    ],
  );
};

/** 2-1/4 in: two and a quarter, or a difference? */
const mixedWithHyphen = (r: Reading, left: Expr, right: Expr, span: Span): void => {
  if (left.kind !== 'literal' || right.kind !== 'literal' || left.unit !== undefined) return;
  const whole = r.text.slice(left.from, left.to);
  const part = r.text.slice(right.from, right.to);
  const found = parts(r, right);
  if (!/^\d+$/.test(whole) || !/^\d+\/\d+/.test(part) || !found) return;
  complain(
    r,
    'ask',
    `${r.text.slice(span.from, span.to)}: is this the mixed number ${whole} ${part}, or a difference?`,
    span,
    [offer(r, span, `${whole} ${part}`), offer(r, span, `${whole} ${found.unit} - ${part}`)],
  );
};

/** x/2/3 in: divided by two thirds of an inch, or by two and then by three inches? */
const fractionAfterStroke = (r: Reading, right: Expr): void => {
  if (right.kind !== 'literal') return;
  const text = r.text.slice(right.from, right.to);
  const match = /^(\d+)\/(\d+.*)$/.exec(text);
  if (!match) return;
  complain(r, 'ask', `${text} right after a stroke: is it one fraction, or are these two divisions?`, right, [
    offer(r, right, `(${text})`),
    offer(r, right, `${match[1]}/(${match[2]})`),
  ]);
};

/** SIN(30): degrees on the drawing, radians in the standard. */
const bareAngle = (r: Reading, fn: string, arg: Expr): void => {
  const value = constantOf(arg);
  if (value === undefined || value === 0) return;
  const text = r.text.slice(arg.from, arg.to);
  const size = arg.kind === 'literal' ? text : `(${text}) * 1`;
  complain(r, 'ask', `${fn} needs an angle; ${text} has no unit: is it in degrees or in radians?`, arg, [
    offer(r, arg, `${size} deg`),
    offer(r, arg, `${size} rad`),
  ]);
};
