import { type Dimension, isNone } from '../../shared/dimension.ts';
import type { Problem } from '../../shared/problem.ts';
import { kindsOf } from '../../shared/quantities/quantities.ts';

const BASES = ['length', 'mass', 'time', 'temperature'] as const;

const article = (noun: string): string => (/^[aeiou]/.test(noun) ? `an ${noun}` : `a ${noun}`);

const raised = (base: string, power: number): string => {
  if (power === 1) return base;
  const whole = Number.isInteger(power);
  const twice = Number.isInteger(power * 2);
  return `${base}^${whole ? power : twice ? `(${power * 2}/2)` : `(${Number(power.toFixed(4))})`}`;
};

/** What a dimension is, with its article, for a message: `a length`, `a torque or an energy`, `length^2/time`. */
export const describeDimension = (dim: Dimension, point = false): string => {
  if (isNone(dim)) return 'a plain number';
  const kinds = kindsOf(dim, point);
  if (kinds.length > 0) return kinds.map((k) => article(k.label)).join(' or ');
  const parts = BASES.map((base, i) => ({ base, power: dim[i] as number }));
  const above = parts.filter(({ power }) => power > 0).map(({ base, power }) => raised(base, power));
  const below = parts.filter(({ power }) => power < 0).map(({ base, power }) => raised(base, -power));
  const under = below.length > 1 ? `(${below.join('·')})` : below[0];
  return (above.join('·') || '1') + (under ? `/${under}` : '');
};

/** A problem as it is shown in cell `here`: one that began elsewhere says where. */
export const wordProblem = (problem: Problem, here?: string): string =>
  problem.origin !== undefined && problem.origin !== here
    ? `${problem.origin}: ${problem.message}`
    : problem.message;
