import type { LimitPlan } from '../rows/assembled.ts';
import type { LimitFigures } from '../rows/results.ts';
import type { Reading } from './reading.ts';

export function limitFigures(plan: LimitPlan, from: Pick<Reading, 'figure'>): LimitFigures {
  const figures: LimitFigures = {};
  for (const which of ['lower', 'upper', 'wear'] as const) {
    const key = plan[which];
    const figure = key === undefined ? undefined : from.figure(key);
    if (figure) figures[which] = figure;
  }
  const [least, greatest] = [plan.least, plan.greatest].map((key) => key && from.figure(key));
  if (least && greatest && least.value !== greatest.value) figures.ends = { least, greatest };
  if (plan.metalOn) figures.metalOn = plan.metalOn;
  return figures;
}

/**
 * Where wear leads: past the upper limit (a clearance, a bore) or past the lower one (a shaft). Undefined where neither
 * the limits of a new part nor the side on which metal is still on say so.
 */
export function wearSide(limits: LimitFigures): 'low' | 'high' | undefined {
  const wear = limits.wear?.value;
  if (wear === undefined) return undefined;
  if (limits.upper && wear >= limits.upper.value) return 'high';
  if (limits.lower && wear <= limits.lower.value) return 'low';
  return limits.metalOn === 'high' ? 'low' : limits.metalOn === 'low' ? 'high' : undefined;
}

export const isTurned = ({ lower, upper }: LimitFigures): boolean =>
  lower !== undefined && upper !== undefined && lower.value > upper.value;

/** A wear limit that no wear leads to. */
export const isAgainst = (limits: LimitFigures): boolean =>
  limits.metalOn !== undefined && wearSide(limits) === limits.metalOn;
