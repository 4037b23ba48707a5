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
