import type { Slip } from '../results.ts';
import { answers } from './answers.ts';
import type { Datum } from './datum.ts';
import { decimal } from './decimal.ts';
import {
  type Expectation,
  fromGroup,
  fromLimits,
  fromPair,
  fromPlan,
  median,
  outside,
  supports,
} from './expectation.ts';
import { frame } from './frame.ts';
import type { Asked, Guess, Slipway } from './guess.ts';
import { INTERFERENCE_PER_DIAMETER, interferenceQuestion } from './interference.ts';
import { mirrored } from './mirrored.ts';
import { otherUnit } from './other-unit.ts';
import type { Pair } from './pairs.ts';
import { radius } from './radius.ts';
import type { SlipSheet } from './sheet.ts';
import { swappedDigits } from './swapped-digits.ts';
import { turn } from './turn.ts';
import { written } from './written.ts';

/** The likeliest first: of several that explain a reading the first is asked about. */
const SLIPWAYS: readonly Slipway[] = [otherUnit, radius, decimal, frame, turn, mirrored, swappedDigits];

/** What is known of a text without asking its neighbours. */
export interface OwnView {
  slips: Slip[];
  /** Something else than the other part of a fit bears it out. */
  supported: boolean;
}

const levelOf = (datum: Datum): number => median(datum.literals.map((one) => one.value));

/** Slips that the text's own list, plan and limits show. */
export function ownView(datum: Datum, sheet: SlipSheet): OwnView {
  const level = levelOf(datum);
  const expected = ownExpectations(datum, sheet);
  const within = groupSlips(datum, expected, sheet);
  if (within.length > 0) return { slips: within, supported: false };
  if (datum.offset) return { slips: [], supported: false };
  if (expected.some((one) => supports(level, one))) return { slips: [], supported: true };
  const found = levelSlip(datum, level, expected);
  return { slips: found ? [found] : [], supported: false };
}

const ownExpectations = (datum: Datum, sheet: SlipSheet): Expectation[] =>
  [fromPlan(datum, sheet), fromLimits(datum, sheet)].filter((one) => one !== undefined);

/** The slip that the other part of a fit shows, where the text's own neighbours are silent. */
export function pairSlip(datum: Datum, pair: Pair, sheet: SlipSheet): Slip | undefined {
  const expected = fromPair(datum, pair, sheet);
  if (!expected || datum.offset) return undefined;
  return levelSlip(datum, levelOf(datum), [expected]);
}

/** The slip that brings an interference typed as such into the usual range of its diameter, or the bare question. */
export function ratioSlip(
  datum: Datum,
  interference: number,
  diameter: number,
  sheet: SlipSheet,
): Slip | undefined {
  const message = interferenceQuestion(interference, diameter);
  if (message === undefined) return undefined;
  const expected: Expectation = {
    by: 'pair',
    low: INTERFERENCE_PER_DIAMETER.low * diameter,
    high: INTERFERENCE_PER_DIAMETER.high * diameter,
    slack: 0,
    worn: undefined,
    said: `what is usual on ${sheet.size(diameter, datum)}`,
  };
  const asked: Asked = { datum, indices: datum.literals.map((_, i) => i), value: interference };
  for (const slipway of [decimal, otherUnit, radius])
    for (const guess of slipway(asked))
      if (outside(interference, expected) > 0 && outside(guess.value, expected) === 0)
        return { ...worded(asked, guess, expected), key: `interference:${datum.field}` };
  return { key: `interference:${datum.field}`, field: datum.field, message };
}

/** Single readings that stand apart from the rest of their list. */
function groupSlips(datum: Datum, expected: readonly Expectation[], sheet: SlipSheet): Slip[] {
  const n = datum.literals.length;
  if (n < 2) return [];
  const found: Slip[] = [];
  // Of two readings the last is asked about first: it was typed last, with the other one in sight.
  const order = datum.literals.map((_, i) => (n === 2 ? 1 - i : i));
  for (const index of order) {
    const value = datum.literals[index]?.value as number;
    if (n === 2 && (found.length > 0 || expected.some((one) => supports(value, one)))) continue;
    const others = fromGroup(datum, index, sheet);
    const slip = others && likeliest({ datum, indices: [index], value }, [others]);
    if (slip) found.push(slip);
  }
  // Where half the list is out nobody knows which half.
  return found.length * 2 > n ? [] : found.sort((a, b) => (a.key < b.key ? -1 : 1));
}

function levelSlip(datum: Datum, level: number, expected: readonly Expectation[]): Slip | undefined {
  if (expected.length === 0) return undefined;
  const values = datum.literals.map((one) => one.value);
  const range = Math.max(...values) - Math.min(...values);
  const asked: Asked = { datum, indices: values.map((_, i) => i), value: level };
  // A part that is worn so much is worn unevenly: its own readings say that it is wear.
  const sound = expected.filter((one) => !one.worn || outside(level, one) > 8 * range);
  return likeliest(asked, sound);
}

function likeliest(asked: Asked, expected: readonly Expectation[]): Slip | undefined {
  for (const slipway of SLIPWAYS)
    for (const guess of slipway(asked))
      for (const one of expected) if (answers(asked.value, guess, one)) return worded(asked, guess, one);
  return undefined;
}

function worded({ datum, indices, value }: Asked, guess: Guess, expected: Expectation): Slip {
  const whole = indices.length === datum.literals.length;
  const which = whole ? '' : `#${(indices[0] as number) + 1}`;
  const size = (si: number): string => written(si, datum);
  const gap = size(outside(value, expected));
  const side = value > expected.high ? 'above' : 'below';
  const what =
    whole && indices.length > 1
      ? `The readings, about ${size(value)},`
      : (datum.literals[indices[0] as number]?.text ?? size(value));
  const verb = whole && indices.length > 1 ? 'are' : 'is';
  const offer = guess.offer();
  const instead = offer === undefined ? ` It would be ${size(guess.value)}.` : '';
  return {
    key: `${guess.slip}:${datum.field}${which}`,
    field: datum.field,
    message: `${what} ${verb} ${gap} ${side} ${expected.said}. ${guess.question}${instead}`,
    ...(offer === undefined ? {} : { offer }),
  };
}
