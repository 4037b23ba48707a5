import { type Dimension, isNone, NONE, sameDimension } from '../../../shared/dimension.ts';
import { type Problem, problem } from '../../../shared/problem.ts';
import { remedyFor, type Sort } from '../syntax/sort.ts';
import type { ValueType } from '../syntax/syntax.ts';
import { describeType, short } from '../syntax/wording.ts';
import type { ArgType } from './function.ts';

export const quantity = (dimension?: Dimension, point = false, sort?: Sort): ValueType => ({
  kind: 'quantity',
  ...(dimension ? { dimension } : {}),
  ...(point ? { point } : {}),
  ...(sort ? { sort } : {}),
});

export const NUMBER = quantity(NONE);
export const ANGLE = quantity(NONE, false, 'angle');
export const UNKNOWN = quantity();
export const LOGICAL: ValueType = { kind: 'logical' };

export const isProblem = (found: ValueType | Problem): found is Problem => 'message' in found;

export const named = (arg: Pick<ArgType, 'text'>): string => `\`${short(arg.text)}\``;

export const dimensionOf = (type: ValueType): Dimension | undefined =>
  type.kind === 'quantity' ? type.dimension : undefined;

export const isPoint = (type: ValueType): boolean => type.kind === 'quantity' && type.point === true;

/** Refuses logical values and texts where a quantity is needed. */
export const needQuantity = (arg: ArgType, where: string): Problem | undefined =>
  arg.type.kind === 'quantity'
    ? undefined
    : problem('dimension', `${where} needs a number; ${named(arg)} is ${describeType(arg.type)}.`, arg);

export const needPlain = (arg: ArgType, where: string): Problem | undefined => {
  const wrong = needQuantity(arg, where);
  const dim = dimensionOf(arg.type);
  if (wrong || !dim || isNone(dim)) return wrong;
  return problem(
    'dimension',
    `${where} needs a plain number; ${named(arg)} is ${describeType(arg.type)}: divide it by a quantity of its kind first.`,
    { from: arg.from, to: arg.to },
  );
};

/** A point on a temperature scale has no ratio and no sum: its zero is where somebody put it. */
export const needNoPoint = (arg: ArgType, where: string): Problem | undefined =>
  isPoint(arg.type)
    ? problem(
        'dimension',
        `${where} cannot take ${named(arg)}, a temperature on a scale: take a difference first, such as ${short(arg.text)} - 20 degC.`,
        { from: arg.from, to: arg.to },
      )
    : undefined;

export const needLogical = (arg: ArgType, where: string): Problem | undefined => {
  if (arg.type.kind === 'logical') return undefined;
  if (arg.type.kind === 'quantity' && !arg.type.dimension && !arg.zero) return undefined;
  return problem(
    'dimension',
    `${where} needs a comparison, such as a > b; ${named(arg)} is ${describeType(arg.type)}.`,
    {
      from: arg.from,
      to: arg.to,
    },
  );
};

/** Two arguments as one sentence that names both. */
export const clash = (a: ArgType, b: ArgType, cannot: string): Problem =>
  problem(
    'dimension',
    `${named(a)} is ${describeType(a.type)}, ${named(b)} is ${describeType(b.type)}: ${cannot}.`,
    {
      from: Math.min(a.from, b.from),
      to: Math.max(a.to, b.to),
    },
  );

const sortOf = ({ type }: ArgType): Sort | undefined => (type.kind === 'quantity' ? type.sort : undefined);

/** Arguments of one dimension that still do not go together: an angle and a ratio, a torque and an energy. */
export const mixedSorts = (args: readonly ArgType[], cannot: string): Problem | undefined => {
  const first = args.find((arg) => sortOf(arg) !== undefined);
  const sort = first && sortOf(first);
  if (!first || !sort) return undefined;
  const other = args.find((arg) => (sortOf(arg) ?? sort) !== sort);
  if (other) return clash(first, other, `${cannot}; ${remedyFor(sort)}`);
  const bare =
    sort === 'angle' ? args.find((arg) => arg.constant !== undefined && arg.constant !== 0) : undefined;
  return bare && askAngle(bare, `${named(bare)} beside ${named(first)}`);
};

/** A bare number where an angle is wanted: degrees on the drawing, radians in a formula. */
export const askAngle = ({ text, from, to }: Pick<ArgType, 'text' | 'from' | 'to'>, where: string): Problem =>
  problem('ask', `${where} has no unit, and an angle is wanted: degrees or radians?`, {
    from,
    to,
    choices: ['deg', 'rad'].map((unit) => ({
      label: /^[\d.]+$/.test(text) ? `${text} ${unit}` : `${text} * 1 ${unit}`,
    })),
  });

/** Common type of arguments that must be of one kind; an unknown one, and 0, fit everything but a temperature scale. */
export const unify = (args: readonly ArgType[], cannot: string): ValueType | Problem => {
  let known: ArgType | undefined;
  let unknown = false;
  for (const arg of args) {
    const dim = dimensionOf(arg.type);
    if (arg.type.kind === 'quantity' && !dim && !arg.zero) {
      unknown = true;
      continue;
    }
    if (arg.zero) continue;
    if (!known) {
      known = arg;
      continue;
    }
    const first = known.type;
    const same =
      first.kind === arg.type.kind &&
      (first.kind !== 'quantity' ||
        (sameDimension(first.dimension!, dim!) && isPoint(first) === isPoint(arg.type)));
    if (!same) return clash(known, arg, cannot);
  }
  const zero = args.find((arg) => arg.zero);
  if (!known) return unknown ? UNKNOWN : args.length > 0 ? NUMBER : UNKNOWN;
  if (zero && known.type.kind !== 'quantity') return clash(known, zero, cannot);
  const mixed = mixedSorts(args, cannot);
  if (mixed) return mixed;
  if (zero && isPoint(known.type))
    return clash(known, { ...zero, type: NUMBER }, `${cannot}; write the scale, such as 0 degC`);
  return known.type;
};
