import { isNone } from '../../../shared/dimension.ts';
import { problem } from '../../../shared/problem.ts';
import { describeType } from '../syntax/wording.ts';
import { type ArgType, numeric, type SheetFunction } from './function.ts';
import { settled } from './settled.ts';
import { dimensionOf, NUMBER, named, needNoPoint, needPlain, needQuantity, unify } from './types.ts';

/**
 * Rounding to decimal places works on the shortest decimal that reads back as the double, which is what a person sees:
 * ROUND(2.675; 2) is 2.68, ROUND(1.005; 2) is 1.01. Halves go away from zero.
 */
const shift = (x: number, places: number): number => {
  const [digits, exponent = '0'] = String(x).split('e');
  return Number(`${digits}e${Number(exponent) + places}`);
};

const MAX_PLACES = 300;

const decimals =
  (round: (x: number, scale: number) => number) =>
  (x: number, places = 0, scale = 0) => {
    if (!Number.isFinite(x)) return x;
    const whole = Math.trunc(places);
    if (Math.abs(whole) > MAX_PLACES)
      return { message: `${places} decimal places are more than can be kept` };
    const shifted = shift(Math.abs(x), whole);
    return Math.sign(x) * shift(round(shifted, scale * 10 ** whole), -whole) || 0;
  };

const multiple =
  (name: string, round: (x: number, scale: number) => number) =>
  (x: number, step = 1, scale = 0) => {
    if (step === 0) return x === 0 ? 0 : { message: `${name} needs a step other than 0` };
    const size = Math.abs(step);
    // A quotient that lies within a trillionth of a step of a whole one is taken for it.
    return round(x / size, Math.max(1, scale / size)) * size || 0;
  };

const up = (x: number, scale: number): number => Math.ceil(settled(x, scale));
const down = (x: number, scale: number): number => Math.floor(settled(x, scale));
const toNearest = (x: number, scale: number): number =>
  Math.sign(x) * Math.floor(settled(Math.abs(x) + 0.5, scale));

const dimensioned = (arg: ArgType): boolean => {
  const dim = dimensionOf(arg.type);
  return dim !== undefined && !isNone(dim);
};

const toPlaces = (
  name: string,
  purpose: string,
  round: (x: number, scale: number) => number,
): SheetFunction => ({
  name,
  purpose,
  takes: ['number', 'places'],
  args: { min: 1, max: 2 },
  type: ([value, places]) => {
    const wrong = needQuantity(value!, name) ?? (places && needPlain(places, name));
    if (wrong) return wrong;
    if (!dimensioned(value!)) return NUMBER;
    return problem(
      'dimension',
      `${name} counts decimal places, and ${named(value!)} is ${describeType(value!.type)}, which has none without a unit: give a step instead, such as MROUND(${value!.text}; 0.001 in).`,
      { from: value!.from, to: value!.to },
    );
  },
  compute: numeric(decimals(round)),
});

const toMultiple = (
  name: string,
  purpose: string,
  round: (x: number, scale: number) => number,
  min: number,
): SheetFunction => ({
  name,
  purpose,
  takes: ['value', 'step'],
  args: { min, max: 2 },
  type: (args) => {
    const wrong = args.map((arg) => needQuantity(arg, name) ?? needNoPoint(arg, name)).find((found) => found);
    if (wrong) return wrong;
    if (args.length > 1) return unify(args, `${name} needs a step of the same kind`);
    if (!dimensioned(args[0]!)) return NUMBER;
    return problem(
      'dimension',
      `${named(args[0]!)} is ${describeType(args[0]!.type)}: give ${name} a step, such as ${name}(${args[0]!.text}; 0.001 in).`,
      { from: args[0]!.from, to: args[0]!.to },
    );
  },
  compute: numeric(multiple(name, round)),
});

/** As OASIS OpenFormula 1.3 has them, CEILING and FLOOR without a mode: up and down, with either sign of the value. */
export const rounding: readonly SheetFunction[] = [
  toPlaces('ROUND', 'to decimal places, halves away from zero', toNearest),
  toPlaces('ROUNDUP', 'to decimal places, away from zero', up),
  toPlaces('ROUNDDOWN', 'to decimal places, toward zero', down),
  toMultiple('CEILING', 'up to a multiple of the step', up, 1),
  toMultiple('FLOOR', 'down to a multiple of the step', down, 1),
  toMultiple('MROUND', 'to the nearest multiple of the step', toNearest, 2),
  {
    name: 'INT',
    purpose: 'down to a whole number',
    takes: ['number'],
    args: { min: 1, max: 1 },
    type: ([arg]) => needPlain(arg!, 'INT') ?? NUMBER,
    compute: numeric((x, scale = 0) => down(x, scale)),
  },
];
