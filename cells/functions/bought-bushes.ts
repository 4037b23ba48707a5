import type { TradeFunction } from '../record/cell.ts';
import { limitDeviations } from '../tables/iso286/iso286.ts';
import { sizeSteps } from '../tables/iso286/steps.ts';
import { isProblem } from '../tables/table.ts';
import {
  TURNED_BUSH_STEP,
  turnedBushFits,
  wrappedBushFits,
  wrappedBushOutside,
  wrappedBushSteps,
} from '../tables/wrapped-bushes.ts';

type End = 'upper' | 'lower';

const fits = (make: string) =>
  make === 'wrapped' ? wrappedBushFits : make === 'turned' ? turnedBushFits : undefined;

/** Sizes at which a deviation jumps, metres. */
const bushSteps = (make = ''): readonly number[] =>
  make === 'wrapped' ? [...wrappedBushSteps, ...sizeSteps] : [TURNED_BUSH_STEP, ...sizeSteps];

const outsideOf = (make: string, nominal: number) =>
  make === 'wrapped'
    ? wrappedBushOutside(nominal)
    : limitDeviations(nominal, turnedBushFits.outside(nominal));

const deviation = (
  name: string,
  purpose: string,
  read: (make: string, nominal: number) => { upper: number; lower: number } | { problem: string },
  end: End,
): TradeFunction => ({
  name,
  purpose,
  takes: [
    { name: 'make', text: true },
    { name: 'nominal', quantity: 'length' },
  ],
  gives: 'length',
  compute: (make, nominal) => {
    if (!fits(String(make))) return { message: `There are no bushes "${String(make)}": wrapped or turned.` };
    const size = Math.round(Number(nominal) * 1e9) / 1e6;
    // ISO 4379 lists bores of 6 to 200 mm; the outside of the largest is 230 mm.
    if (make === 'turned' && (size < 6 || size > 230))
      return { message: `ISO 4379 has bushes of 6 to 200 mm bore; ${size} mm is outside it.` };
    const found = read(String(make), Number(nominal));
    return isProblem(found) ? { message: found.problem } : found[end];
  },
  movement: { moves: { nominal: 'rising' }, jumps: (make) => bushSteps(make), steps: true },
  source: 'ISO 3547 (DIN 1494); ISO 4379:2018 (from memory) with ISO 286-2:2010: the table of bought bushes',
});

const fitted = (make: string, nominal: number) =>
  limitDeviations(nominal, (fits(make) ?? turnedBushFits).boreFitted);

const functions: readonly TradeFunction[] = [
  deviation(
    'BUSHOUTSIDEUPPER',
    'Upper limit deviation of the outside of a bought bush, before it is fitted.',
    outsideOf,
    'upper',
  ),
  deviation(
    'BUSHOUTSIDELOWER',
    'Lower limit deviation of the outside of a bought bush, before it is fitted.',
    outsideOf,
    'lower',
  ),
  deviation(
    'BUSHBOREUPPER',
    'Upper limit deviation of the bore of a bought bush, fitted in a housing H7.',
    fitted,
    'upper',
  ),
  deviation(
    'BUSHBORELOWER',
    'Lower limit deviation of the bore of a bought bush, fitted in a housing H7.',
    fitted,
    'lower',
  ),
];

export default functions;
