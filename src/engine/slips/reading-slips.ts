import type { Slip } from '../rows/results.ts';
import { answers } from './answers.ts';
import { isApart } from './apart.ts';
import { type Belief, byExpectation, byGroup } from './belief.ts';
import type { Datum } from './datum.ts';
import { decimal } from './decimal.ts';
import {
  type Expectation,
  fromGroup,
  fromLimits,
  fromPlan,
  isBeyondOnlyLimit,
  median,
  outside,
  supports,
} from './expectation.ts';
import { frame } from './frame.ts';
import type { Asked, Guess, Slipway } from './guess.ts';
import { INTERFERENCE_PER_DIAMETER, interferenceQuestion } from './interference.ts';
import { mirrored } from './mirrored.ts';
import { missingDigit } from './missing-digit.ts';
import { missingPoint } from './missing-point.ts';
import { odds } from './odds.ts';
import { otherUnit } from './other-unit.ts';
import { radius } from './radius.ts';
import type { SlipSheet } from './sheet.ts';
import { sign } from './sign.ts';
import { swappedDigits } from './swapped-digits.ts';
import { turn } from './turn.ts';
import { written } from './written.ts';

/** The likeliest first: of several that explain a reading the first is asked about. */
const SLIPWAYS: readonly Slipway[] = [
  sign,
  otherUnit,
  radius,
  decimal,
  frame,
  turn,
  mirrored,
  swappedDigits,
  missingPoint,
  missingDigit,
];

/** What is known of a text without asking its neighbours. */
export interface OwnView {
  slips: Slip[];
  /** Something else than the other part of a fit bears it out. */
  supported: boolean;
}

const levelOf = (datum: Datum): number => median(datum.literals.map((one) => one.value));

/**
 * Slips that the text's own list, plan and limits show. Where two readings stand against each other, `pairs` may tell
 * which of them is meant.
 */
export function ownView(datum: Datum, pairs: () => readonly Expectation[], sheet: SlipSheet): OwnView {
  const level = levelOf(datum);
  const expected = ownExpectations(datum, sheet);
  const within = groupSlips(datum, expected, pairs, sheet);
  if (within.length > 0) return { slips: within, supported: false };
  if (datum.offset) return { slips: [], supported: false };
  if (expected.some((one) => supports(level, one))) return { slips: [], supported: true };
  const found = levelSlip(datum, level, expected, [], sheet);
  return { slips: found ? [found] : [], supported: false };
}

const ownExpectations = (datum: Datum, sheet: SlipSheet): Expectation[] =>
  [fromPlan(datum, sheet), fromLimits(datum, sheet)].filter((one) => one !== undefined);

/** The slip that the other part of a fit shows, where the text's own neighbours are silent. */
export function pairSlip(datum: Datum, expected: Expectation, sheet: SlipSheet): Slip | undefined {
  if (datum.offset) return undefined;
  return levelSlip(datum, levelOf(datum), [expected], ownExpectations(datum, sheet), sheet);
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
function groupSlips(
  datum: Datum,
  expected: readonly Expectation[],
  pairs: () => readonly Expectation[],
  sheet: SlipSheet,
): Slip[] {
  const n = datum.literals.length;
  if (n < 2) return [];
  const step = sheet.step(datum);
  const around = [...expected, ...(n === 2 ? pairs() : [])].map((one) => byExpectation(one, step));
  const found: Likely[] = [];
  datum.literals.forEach(({ value }, index) => {
    if (n === 2 && expected.some((one) => supports(value, one))) return;
    const others = fromGroup(datum, index, sheet);
    const beliefs = [byGroup(datum, index, step), ...around];
    const likely = others && likeliest({ datum, indices: [index], value }, [others], beliefs, sheet);
    if (likely) found.push(likely);
  });
  if (found.length === 0) return apartIn(datum, around, sheet);
  if (n === 2 && found.length === 2) {
    const [first, last] = found as [Likely, Likely];
    // Where nothing tells which, the last is asked about: it was typed with the other one in sight.
    if (first.odds > last.odds + TELLING) return [first.slip];
    // A repair of the wrong one of two would make it worse.
    const { offer: _, ...asked } = last.slip;
    return last.odds > first.odds + TELLING ? [last.slip] : [asked];
  }
  // One question a list: about the reading that is likeliest out.
  if (found.length * 2 <= n) return [found.reduce((a, b) => (b.odds > a.odds ? b : a)).slip];
  // Where half the list is out nobody knows which half, unless one reading far off makes the rest look odd.
  const [best, next] = found.sort((a, b) => b.odds - a.odds);
  return best && next && best.odds > next.odds + TELLING ? [best.slip] : [];
}

/** The reading of a list that stands farthest apart from the rest, where no slip explains it. */
function apartIn(datum: Datum, around: readonly Belief[], sheet: SlipSheet): Slip[] {
  const values = datum.literals.map((one) => one.value);
  if (values.length < 3) return [];
  const middle = median(values);
  const off = values.map((one) => Math.abs(one - middle));
  const index = off.indexOf(Math.max(...off));
  const value = values[index] as number;
  const others = fromGroup(datum, index, sheet);
  const gap = others ? outside(value, others) : 0;
  if (!others || !isApart(value, gap, [byGroup(datum, index, sheet.step(datum)), ...around])) return [];
  const mean = (list: readonly number[]): number => list.reduce((a, b) => a + b, 0) / list.length;
  const cost = Math.abs(mean(values) - mean(values.toSpliced(index, 1)));
  const told = ` It moves the mean by ${sheet.size(cost, datum)}.`;
  return [unexplained({ datum, indices: [index], value }, others, cost, told)];
}

/** The slip of a whole text that `expected` shows; `also` is known of it beside. */
function levelSlip(
  datum: Datum,
  level: number,
  expected: readonly Expectation[],
  also: readonly Expectation[],
  sheet: SlipSheet,
): Slip | undefined {
  if (expected.length === 0) return undefined;
  const values = datum.literals.map((one) => one.value);
  const range = Math.max(...values) - Math.min(...values);
  const asked: Asked = { datum, indices: values.map((_, i) => i), value: level };
  // A part that is worn so much is worn unevenly: its own readings say that it is wear.
  const sound = expected.filter((one) => !one.worn || outside(level, one) > 8 * range);
  const step = sheet.step(datum);
  const beliefs = [...expected, ...also].map((one) => byExpectation(one, step));
  const named = likeliest(asked, sound, beliefs, sheet)?.slip;
  if (named) return named;
  const nearest = expected.reduce((a, b) => (outside(level, a) <= outside(level, b) ? a : b));
  const gap = outside(level, nearest);
  return sound.length === expected.length && isApart(level, gap, beliefs)
    ? unexplained(asked, nearest, gap, '')
    : undefined;
}

/** Farther off than all that is known allows, and no slip explains it. */
function unexplained(asked: Asked, expected: Expectation, cost: number, told: string): Slip {
  const question = `Is it read and written down right?${told}`;
  const guess = { slip: 'apart', value: asked.value, reach: 0, question, offer: () => undefined };
  return { ...worded(asked, guess, expected, false), cost };
}

interface Likely {
  slip: Slip;
  odds: number;
  /** What it would be, SI. */
  value: number;
}

/** Odds, as a logarithm, from which on it is asked: a question costs little beside a part that is scrapped. */
const WORTH_ASKING = Math.log(1 / 4);
/** Odds, as a logarithm, that tell one explanation from another. */
const TELLING = Math.log(3);

/**
 * The likeliest explanation of a reading. Plain slips by whether they answer one expectation, in their order; those that
 * may be right by chance by their odds, where these are worth a question and no plain one is likelier.
 */
function likeliest(
  asked: Asked,
  expected: readonly Expectation[],
  beliefs: readonly Belief[],
  sheet: SlipSheet,
): Likely | undefined {
  const all: { value: number; odds: number }[] = [];
  const isIn = !isBeyondOnlyLimit(asked.value, asked.datum, sheet);
  let plain: Likely | undefined;
  let chance: Likely | undefined;
  for (const slipway of SLIPWAYS) {
    const guesses = slipway(asked);
    for (const guess of guesses) {
      // A repair that contradicts the only limit is none.
      if (isIn && isBeyondOnlyLimit(guess.value, asked.datum, sheet)) continue;
      const plainly =
        guess.share === undefined && !plain && expected.find((each) => answers(asked.value, guess, each));
      if (plainly)
        plain = {
          slip: worded(asked, guess, plainly),
          odds: odds(asked.value, guess, 1, beliefs),
          value: guess.value,
        };
      const first = expected[0];
      const even = odds(asked.value, guess, guesses.length, beliefs);
      all.push({ value: guess.value, odds: even });
      if (first && even > (chance?.odds ?? WORTH_ASKING))
        chance = { slip: worded(asked, guess, first), odds: even, value: guess.value };
    }
  }
  const best = chance && chance.odds > (plain?.odds ?? WORTH_ASKING) ? chance : plain;
  if (!best) return undefined;
  // A repair is offered where it explains clearly better than all else, to the places that are read.
  const same = 2 * sheet.step(asked.datum);
  const isClear = all.every(
    ({ value, odds: other }) => Math.abs(value - best.value) <= same || other < best.odds - CLEARLY,
  );
  if (isClear && isReadable(best.slip.offer, asked.datum)) return best;
  const { offer: _, ...slip } = best.slip;
  return { ...best, slip };
}

/** Odds, as a logarithm, by which a repair must lead. */
const CLEARLY = Math.log(6);

/** An entry offered is written to no more places than the readings are, or than such a gauge is usually read to. */
function isReadable(offer: string | undefined, datum: Datum): boolean {
  if (offer === undefined) return true;
  const places = (text: string): number =>
    Math.max(0, ...[...text.matchAll(/[.,](\d+)/g)].map(([, digits]) => (digits as string).length));
  return places(offer) <= Math.max(places(datum.text), datum.system === 'in' ? 4 : 3);
}

function worded({ datum, indices, value }: Asked, guess: Guess, expected: Expectation, tells = true): Slip {
  const whole = indices.length === datum.literals.length;
  const which = whole ? '' : `#${(indices[0] as number) + 1}`;
  const size = (si: number): string => written(si, datum);
  const gap = size(outside(value, expected));
  const side = value > expected.high ? 'above' : 'below';
  const what =
    whole && indices.length > 1
      ? `The readings, about ${size(value)},`
      : (datum.literals[indices[0] as number]?.text ?? size(value));
  const several = whole && indices.length > 1;
  const apart =
    outside(value, expected) > 0
      ? `${several ? 'are' : 'is'} ${gap} ${side} ${expected.said}`
      : `${several ? 'do' : 'does'} not go with ${expected.said}`;
  const offer = guess.offer();
  const instead = offer === undefined && tells ? ` It would be ${size(guess.value)}.` : '';
  return {
    key: `${guess.slip}:${datum.field}${which}`,
    field: datum.field,
    message: `${what} ${apart}. ${guess.question}${instead}`,
    ...(offer === undefined ? {} : { offer }),
    cost: Math.abs(guess.value - value) / (whole ? 1 : datum.literals.length),
  };
}
