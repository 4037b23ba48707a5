import { type Problem, problem } from '../../../shared/problem.ts';
import { type ArgType, numeric, type SheetFunction } from './function.ts';
import { ANGLE, isProblem, NUMBER, named, needNoPoint, needPlain, needQuantity, unify } from './types.ts';

/** SIN(30) is asked about: degrees on the drawing, radians in the standard. */
const angle =
  (name: string) =>
  ([arg]: readonly ArgType[]) => {
    const wrong = needPlain(arg!, name) ?? needAngle(arg!, name);
    if (wrong) return wrong;
    if (!arg!.bareNumber || arg!.constant === 0) return NUMBER;
    return problem(
      'ask',
      `${name} needs an angle; ${named(arg!)} has no unit: is it ${arg!.text} deg or ${arg!.text} rad?`,
      {
        from: arg!.from,
        to: arg!.to,
        choices: [{ label: `${arg!.text} deg` }, { label: `${arg!.text} rad` }],
      },
    );
  };

/** What was entered as a plain number is an angle in nobody's unit; a ratio of two lengths is one in radians. */
const needAngle = (arg: ArgType, name: string): Problem | undefined =>
  arg.type.kind === 'quantity' && arg.type.sort === 'plain' && arg.constant !== 0
    ? problem(
        'dimension',
        `${name} needs an angle; ${named(arg)} is a plain number: multiply it by 1 deg or by 1 rad, or make its cell an angle.`,
        { from: arg.from, to: arg.to },
      )
    : undefined;

const forward = (name: string, purpose: string, compute: (x: number) => number): SheetFunction => ({
  name,
  purpose,
  takes: ['angle'],
  args: { min: 1, max: 1 },
  type: angle(name),
  compute: numeric(compute),
});

const back = (name: string, purpose: string, compute: (x: number) => number): SheetFunction => ({
  name,
  purpose,
  takes: ['number'],
  args: { min: 1, max: 1 },
  type: ([arg]) => needPlain(arg!, name) ?? ANGLE,
  compute: numeric((x) => {
    const result = compute(x);
    return Number.isNaN(result) && !Number.isNaN(x)
      ? { message: `${name} of ${x}: it must lie between -1 and 1` }
      : result;
  }),
});

/** Trigonometry, as OASIS OpenFormula 1.3 has it: angles are radians, which is what an angle is in SI. */
export const angles: readonly SheetFunction[] = [
  forward('SIN', 'sine of an angle', Math.sin),
  forward('COS', 'cosine of an angle', Math.cos),
  forward('TAN', 'tangent of an angle', Math.tan),
  back('ASIN', 'angle whose sine is given', Math.asin),
  back('ACOS', 'angle whose cosine is given', Math.acos),
  back('ATAN', 'angle whose tangent is given', Math.atan),
  {
    name: 'ATAN2',
    purpose: 'angle of the point (x; y), from the x axis',
    takes: ['x', 'y'],
    args: { min: 2, max: 2 },
    type: (args) => {
      const wrong = args
        .map((arg) => needQuantity(arg, 'ATAN2') ?? needNoPoint(arg, 'ATAN2'))
        .find((found) => found);
      const type = wrong ?? unify(args, 'ATAN2 needs two of one kind');
      return isProblem(type) ? type : ANGLE;
    },
    compute: numeric((x, y) =>
      x === 0 && y === 0 ? { message: 'ATAN2 of (0; 0) has no angle' } : Math.atan2(y + 0, x + 0),
    ),
  },
  {
    name: 'PI',
    purpose: 'circumference over diameter',
    takes: [],
    args: { min: 0, max: 0 },
    type: () => NUMBER,
    compute: () => Math.PI,
  },
  {
    name: 'DEGREES',
    purpose: 'an angle as a plain number of degrees',
    takes: ['angle'],
    args: { min: 1, max: 1 },
    type: angle('DEGREES'),
    compute: numeric((x) => (x * 180) / Math.PI),
  },
  {
    name: 'RADIANS',
    purpose: 'an angle from a plain number of degrees',
    takes: ['number'],
    args: { min: 1, max: 1 },
    type: ([arg]) =>
      needPlain(arg!, 'RADIANS') ??
      (arg!.type.kind === 'quantity' && arg!.type.sort === 'angle'
        ? problem(
            'dimension',
            `RADIANS makes an angle of a plain number of degrees; ${named(arg!)} is an angle already.`,
            { from: arg!.from, to: arg!.to },
          )
        : ANGLE),
    compute: numeric((x) => (x * Math.PI) / 180),
  },
];
