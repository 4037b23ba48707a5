import { powerDimension } from '../../../shared/dimension.ts';
import { type ArgType, numeric, type SheetFunction } from './function.ts';
import { powerType } from './power.ts';
import { settled, TIE } from './settled.ts';
import {
  dimensionOf,
  NUMBER,
  needNoPoint,
  needPlain,
  needQuantity,
  quantity,
  UNKNOWN,
  unify,
} from './types.ts';

const plain = (name: string) => (args: readonly ArgType[]) =>
  args.map((arg) => needPlain(arg, name)).find((wrong) => wrong) ?? NUMBER;

const one = (
  name: string,
  purpose: string,
  compute: (x: number) => number | { message: string },
): SheetFunction => ({
  name,
  purpose,
  takes: ['number'],
  args: { min: 1, max: 1 },
  type: plain(name),
  compute: numeric(compute),
});

/** Roots, powers and logarithms, as OASIS OpenFormula 1.3 has them. Angles are radians in SI. */
export const math: readonly SheetFunction[] = [
  {
    name: 'ABS',
    purpose: 'size without its sign',
    takes: ['value'],
    args: { min: 1, max: 1 },
    type: ([a]) => needQuantity(a!, 'ABS') ?? needNoPoint(a!, 'ABS') ?? a!.type,
    compute: numeric((x) => Math.abs(x)),
  },
  {
    name: 'SIGN',
    purpose: '1 above zero, 0 at zero, -1 below',
    takes: ['value'],
    args: { min: 1, max: 1 },
    type: ([a]) => needQuantity(a!, 'SIGN') ?? needNoPoint(a!, 'SIGN') ?? NUMBER,
    compute: numeric((x, scale = 0) => (Math.abs(x) <= TIE * scale ? 0 : Math.sign(x))),
  },
  {
    name: 'SQRT',
    purpose: 'square root',
    takes: ['value'],
    args: { min: 1, max: 1 },
    type: ([a]) => {
      const wrong = needQuantity(a!, 'SQRT') ?? needNoPoint(a!, 'SQRT');
      const dim = dimensionOf(a!.type);
      return wrong ?? (dim ? quantity(powerDimension(dim, 0.5)) : UNKNOWN);
    },
    compute: numeric((x) =>
      x < 0 ? { message: `the root of ${x}, which is below zero, is not a number` } : Math.sqrt(x),
    ),
  },
  {
    name: 'POWER',
    purpose: 'a value raised to a power, as value ^ power',
    takes: ['value', 'power'],
    args: { min: 2, max: 2 },
    type: ([base, exponent]) => powerType(base!, exponent!),
    compute: numeric((x, y) => {
      if (x === 0 && y < 0) return { message: 'division by zero: 0 raised to a power below zero' };
      if (x < 0 && !Number.isInteger(y)) return { message: `${x}, which is below zero, has no power ${y}` };
      return x ** y;
    }),
  },
  one('EXP', 'e raised to a power', Math.exp),
  one('LN', 'natural logarithm', (x) => (x > 0 ? Math.log(x) : noLogarithm(x))),
  one('LOG10', 'logarithm to base 10', (x) => (x > 0 ? Math.log10(x) : noLogarithm(x))),
  {
    name: 'LOG',
    purpose: 'logarithm to a base, 10 unless given',
    takes: ['number', 'base'],
    args: { min: 1, max: 2 },
    type: plain('LOG'),
    compute: numeric((x, base = 10) => {
      if (!(x > 0)) return noLogarithm(x);
      if (!(base > 0) || base === 1) return { message: `${base} cannot be the base of a logarithm` };
      return base === 10 ? Math.log10(x) : Math.log(x) / Math.log(base);
    }),
  },
  {
    name: 'MOD',
    purpose: 'what is left after whole divisions; takes the sign of the divisor',
    takes: ['value', 'divisor'],
    args: { min: 2, max: 2 },
    type: (args) => {
      const wrong = args
        .map((arg) => needQuantity(arg, 'MOD') ?? needNoPoint(arg, 'MOD'))
        .find((found) => found);
      return wrong ?? unify(args, 'MOD needs two of one kind');
    },
    compute: numeric((x, y, scale = 0) => {
      if (y === 0) return { message: 'MOD divides by zero' };
      const quotient = settled(x / y, scale / Math.abs(y));
      return Number.isInteger(quotient) ? 0 : x - y * Math.floor(quotient);
    }),
  },
];

const noLogarithm = (x: number): number | { message: string } =>
  Number.isNaN(x) ? x : { message: `${x} has no logarithm: it is not above zero` };
