import { isNone, isRationalExponent, powerDimension } from '../../../shared/dimension.ts';
import { type Problem, problem } from '../../../shared/problem.ts';
import type { ValueType } from '../syntax/syntax.ts';
import { describeType } from '../syntax/wording.ts';
import type { ArgType } from './function.ts';
import {
  dimensionOf,
  NUMBER,
  named,
  needNoPoint,
  needPlain,
  needQuantity,
  quantity,
  UNKNOWN,
} from './types.ts';

/** Type of base ^ exponent. A dimension can only be raised to a power that is known before computing. */
export const powerType = (base: ArgType, exponent: ArgType): ValueType | Problem => {
  const fraction = fractionWithUnit(exponent);
  if (fraction) return fraction;
  const wrong =
    needQuantity(base, 'A power') ?? needNoPoint(base, 'A power') ?? needPlain(exponent, 'A power');
  if (wrong) return wrong;
  const dim = dimensionOf(base.type);
  if (!dim) return UNKNOWN;
  if (isNone(dim)) return NUMBER;
  const power = exponent.constant;
  if (power === undefined) {
    return problem(
      'dimension',
      `${named(base)} is ${describeType(base.type)}: its power must be a number written out, not ${named(exponent)}.`,
      { from: exponent.from, to: exponent.to },
    );
  }
  const raised = dim.map((e) => e * power);
  if (!raised.every(isRationalExponent) || raised.some((e) => Math.abs(e) > 60)) {
    return problem(
      'dimension',
      `${named(base)} is ${describeType(base.type)}: it can be raised to whole powers, halves, thirds, quarters and fifths, not to ${named(exponent)}.`,
      { from: exponent.from, to: exponent.to },
    );
  }
  return quantity(powerDimension(dim, power));
};

/** `a^2/1 mm`: what was meant is a quotient, and what stands there a power of 2/1 mm. */
const fractionWithUnit = ({ text, from, to, type }: ArgType): Problem | undefined => {
  const [, top, rest] = /^(\d+)\/(\d.*[^\d\s.].*)$/.exec(text) ?? [];
  const dim = dimensionOf(type);
  if (top === undefined || !dim || isNone(dim)) return undefined;
  return problem(
    'dimension',
    `\`${text}\` is read as one figure with its unit, and a power is a plain number: write ^${top} / (${rest}).`,
    { from, to, choices: [{ label: `${top} / (${rest})` }] },
  );
};
