import type { Limits } from '../../../shared/sheet/format.ts';
import type { Expr } from '../../language/syntax/syntax.ts';
import type { LimitPlan } from './assembled.ts';
import type { CellBuilder } from './builder.ts';
import { minus, rowRef } from './expr.ts';
import { type LimitPart, partRow, type RowKey } from './key.ts';

const NAMES = { lower: 'lower limit', upper: 'upper limit', wear: 'wear limit' } as const;

/** Makes the row of one limit out of its text: its key, undefined where there is no such limit. */
export type LimitReader = (text: string, key: RowKey, field: string) => RowKey | undefined;

/**
 * Rows of the limits and of the margins to them. A check reads margins, so a limit may be a formula and carry spread
 * of its own, and what it shares with the value drops out.
 *
 * @param values keys of the least, the greatest and the single value that are judged
 */
export function limitRows(
  build: CellBuilder,
  base: RowKey,
  limits: Limits,
  field: string,
  values: { least: RowKey; greatest: RowKey },
  read: LimitReader,
): LimitPlan | undefined {
  const plan: LimitPlan = {};
  const row = (which: 'lower' | 'upper' | 'wear'): RowKey | undefined => {
    const text = limits[which]?.trim();
    if (text) return read(text, partRow(base, which), `${field}.${which}`);
    // A template asks for it: until it is there, that side is not taken for one without a limit.
    return limits[`${which}Example`] === undefined
      ? undefined
      : build.blank(partRow(base, which), `\`${build.name}\`: the ${NAMES[which]} is to be filled in.`);
  };
  const margin = (part: LimitPart, left: Expr, right: Expr): RowKey =>
    build.formula(partRow(base, part), minus(left, right));
  const lower = row('lower');
  if (lower) {
    plan.lower = lower;
    plan.lowerMargin = margin('above-lower', rowRef(values.least), rowRef(lower));
  }
  const upper = row('upper');
  if (upper) {
    plan.upper = upper;
    plan.upperMargin = margin('below-upper', rowRef(upper), rowRef(values.greatest));
  }
  const wear = row('wear');
  if (wear) {
    plan.wear = wear;
    plan.wearAbove = margin('below-wear', rowRef(wear), rowRef(values.greatest));
    plan.wearBelow = margin('above-wear', rowRef(values.least), rowRef(wear));
  }
  if (!lower && !upper && !wear) return undefined;
  if (values.least !== values.greatest) [plan.least, plan.greatest] = [values.least, values.greatest];
  if (limits.metalOn) plan.metalOn = limits.metalOn;
  if (limits.rule) plan.rule = limits.rule;
  return plan;
}
