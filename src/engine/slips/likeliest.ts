import type { Slip } from '../rows/results.ts';
import { type Belief, byRange, together, usualScatter } from './belief.ts';
import type { Datum } from './datum.ts';
import { decimal } from './decimal.ts';
import { type Expectation, fromLimits, isBeyond, onlyLimit, outside, supports } from './expectation.ts';
import { extraDigit } from './extra-digit.ts';
import { frame } from './frame.ts';
import { type Asked, type Guess, type Slipway, USUAL } from './guess.ts';
import { mirrored } from './mirrored.ts';
import { missingDigit } from './missing-digit.ts';
import { missingPoint } from './missing-point.ts';
import { otherUnit } from './other-unit.ts';
import { mostOfPlaces, placesOdds } from './places.ts';
import { radius } from './radius.ts';
import { divisionSpans } from './rewrite.ts';
import type { SlipSheet } from './sheet.ts';
import { sign } from './sign.ts';
import { swappedDigits } from './swapped-digits.ts';
import { turn } from './turn.ts';
import { worded } from './worded.ts';
import { usualStep } from './written.ts';
import { wrongDigit } from './wrong-digit.ts';

/** Of two that explain a reading equally well the first is named. */
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
  extraDigit,
  wrongDigit,
];

/** How often a reading is written down wrong in a way that no slip explains (common practice, no source). */
const OTHERWISE = 1 / 100;
/** Every order of magnitude by which it is then out is about as likely: so many of them, as a logarithm. */
const ORDERS = 10;
/** Below so many times what readings usually scatter by, nothing sets a slip apart. */
const UNSEEN = 8;
/** Odds, as a logarithm, from which on it is asked: a question costs little beside a part that is scrapped. */
const WORTH_ASKING = Math.log(3 / 10);
/** Of a whole line, against what the sheet says of it: it moves all that follows, and not one part of a mean. */
const WORTH_OF_ALL = Math.log(1 / 5);
/** A count of divisions alone has no list, point or unit that would show it. */
const WORTH_COUNTED = Math.log(1 / 12);
/** And of one whose sign may be turned, or its digits swapped, which so many are. */
const WORTH_TURNED = Math.log(1 / 6);
/** Beyond so many divisions a gauge is seldom read from its setting: it would be set nearer (common practice, no source). */
const COUNTED_TO = 25;
/**
 * A part out of its limits by less than they are wide is common; farther out a count, which nothing else would show, is
 * better read once more. On the side to which the part wears it is repaired because it is out, and by more (common
 * practice, no source).
 */
const FAR_OUT = { worn: 3, else: 1 } as const;
/** What a sum of decimals is off by, in such widths, and more. */
const HAIR = 1e-6;
/** A count of divisions is seldom written with a nought in front, or to less than a quarter; as a logarithm. */
const SELDOM = Math.log(1 / 50);
/** Odds, as a logarithm, by which a repair must lead all other explanations together. */
const CLEARLY = Math.log(9);
/** No more than this do the shares of all that can become of a reading add up to. */
const ALL_SHARES = Math.log(0.2);

export interface Likely {
  slip: Slip;
  /** That something went wrong, to that it did not; as a logarithm. */
  odds: number;
}

const sum = (odds: readonly number[]): number => {
  const most = Math.max(...odds, Number.NEGATIVE_INFINITY);
  return Number.isFinite(most)
    ? most + Math.log(odds.reduce((all, one) => all + Math.exp(one - most), 0))
    : most;
};

/**
 * What became of a reading, where it is likelier to have been written down wrong than to be so. The odds of a slip are how
 * much better the size it would have been suits all that is known, times how often such a slip is made of it; beside
 * them stands whatever no slip explains. A repair is offered where its odds lead those of all else.
 *
 * @param expected what it is asked about against
 * @param told how far off it is, where not by what is expected; what is said besides where no slip explains it, and what it costs
 */
export function likeliest(
  asked: Asked,
  expected: readonly Expectation[],
  beliefs: readonly Belief[],
  sheet: SlipSheet,
  told?: { gap: number; cost: number; text: string },
): Likely | undefined {
  const { datum, value } = asked;
  const step = sheet.step(datum);
  const nearest = expected.reduce((a, b) => (outside(value, a) <= outside(value, b) ? a : b));
  const gap = told?.gap ?? outside(value, nearest);
  const gauge = sheet.gaugeOf(datum);
  const known =
    gauge?.low !== undefined && gauge.high !== undefined
      ? [...beliefs, byRange(gauge.low, gauge.high)]
      : beliefs;
  const bySize = together(known);
  const set = isLoneCount(datum) ? datum.set : undefined;
  const good = set
    ? (x: number): number =>
        bySize(x) - Math.log1p(((x - set.size.value) / set.division.value / COUNTED_TO) ** 2)
    : bySize;
  const isWhole = asked.indices.length === datum.literals.length;
  // Limits are known no better than they are written.
  const width = Math.max(nearest.high - nearest.low, usualStep(datum.system));
  const widths = set && nearest.by === 'limits' ? outside(value, nearest) / width - HAIR : 0;
  const isFar = widths > (isWearing(value, nearest) ? FAR_OUT.worn : FAR_OUT.else);
  const worth = isFar
    ? Number.NEGATIVE_INFINITY
    : set
      ? WORTH_COUNTED
      : isWhole
        ? WORTH_OF_ALL
        : WORTH_ASKING;
  const own = good(value) + (isOddlyCounted(asked) ? SELDOM : 0);
  const otherwise =
    gap > 0
      ? Math.log(OTHERWISE / (2 * (gap + UNSEEN * usualScatter(value, step)) * ORDERS)) - own
      : Number.NEGATIVE_INFINITY;
  // Most readings are so good that no guess, however well it suited, would be worth a question.
  const best = known.reduce((most, { peak }) => Math.max(most, peak), Number.NEGATIVE_INFINITY);
  const most = sum([ALL_SHARES + best - own + mostOfPlaces(asked), otherwise]);
  if (!(most > worth)) return undefined;
  const only = onlyLimit(datum, sheet);
  const isIn = only === undefined || !isBeyond(value, only);
  const all: { guess: Guess; odds: number }[] = [];
  // Nothing that is read is nought by a slip of its figures.
  for (const slipway of value === 0 || set?.divisions[0] === 0 ? [] : SLIPWAYS)
    for (const guess of slipway(asked)) {
      // A repair that contradicts the only limit is none.
      if (isIn && only && isBeyond(guess.value, only)) continue;
      const odds = Math.log(guess.share) + good(guess.value) - own + placesOdds(asked, guess);
      all.push({ guess, odds });
    }
  const from = isWhole ? sheet.copiedFrom(datum) : undefined;
  const copied = from === undefined ? Number.NEGATIVE_INFINITY : Math.log(USUAL) + best - own;
  const odds = sum([...all.map((one) => one.odds), otherwise, copied]);
  if (!(odds > worth)) return undefined;
  // The very same readings are elsewhere by no other slip.
  if (from !== undefined) {
    const question = `The same stands in ${from}. Is it copied from there? Then read this one again.`;
    return { slip: unrepaired(asked, nearest, 'copied', question, outside(value, nearest)), odds };
  }
  const first = all.reduce<(typeof all)[number] | undefined>(
    (a, b) => (a && a.odds >= b.odds ? a : b),
    undefined,
  );
  // A part somewhat out of its limits is no slip: a sign turned is the one that a count makes often.
  const isTurned = first?.guess.slip === 'mirrored';
  if (set && nearest.by === 'limits') {
    const isMade = isTurned || first?.guess.slip === 'swapped-digits';
    if (!isFar && !(isMade && odds > WORTH_TURNED && widths > FAR_OUT.else)) return undefined;
  } else if (set && (isTurned ? !(odds > WORTH_TURNED) : supports(value, nearest))) return undefined;
  if (!first || first.odds < otherwise || !explains(first.guess, value, nearest)) {
    // Farther off than all that is known allows.
    const question = `Is it read and written down right?${told?.text ?? ''}`;
    return { slip: unrepaired(asked, nearest, 'apart', question, told?.cost ?? gap), odds };
  }
  const against = outside(value, nearest) > 0 ? nearest : (expected[0] as Expectation);
  const slip = worded(asked, first.guess, against);
  const same = 2 * step;
  const [as, not] = [true, false].map((is) =>
    sum(
      all
        .filter(({ guess }) => Math.abs(guess.value - first.guess.value) <= same === is)
        .map((one) => one.odds),
    ),
  ) as [number, number];
  const isClear = as - sum([not, otherwise]) > CLEARLY;
  if (
    isClear &&
    isReadable(slip.offer, first.guess, datum, gauge) &&
    !isContradicted(asked, first.guess, sheet)
  )
    return { slip, odds };
  return { slip: worded(asked, { ...first.guess, offer: () => undefined }, against), odds };
}

/** The count of a library cell, typed apart from its setting. */
export const isLoneCount = ({ set, field }: Datum): boolean =>
  set !== undefined && field.startsWith('inputs.');

/** Out on the side to which wear leads. */
const isWearing = (value: number, { worn, low }: Expectation): boolean =>
  worn === (value < low ? 'low' : 'high');

/** What leaves a good part of the gap is no explanation of it. */
const explains = ({ value }: Guess, asked: number, nearest: Expectation): boolean =>
  outside(asked, nearest) === 0 || outside(value, nearest) <= outside(asked, nearest) / 4;

function isOddlyCounted({ datum, indices }: Asked): boolean {
  const { set } = datum;
  if (!set || indices.length !== 1) return false;
  const text = divisionSpans(datum, set)?.[indices[0] as number]?.text.replaceAll(' ', '') ?? '';
  return /^[+-]?0\d/.test(text) || (Number(text) * 4) % 1 !== 0;
}

/** A question without a repair: none is known of what it may be. */
const unrepaired = (
  asked: Asked,
  expected: Expectation,
  slip: string,
  question: string,
  cost: number,
): Slip => ({
  ...worded(asked, { slip, value: asked.value, share: 1, question, offer: () => undefined }, expected, false),
  cost,
});

/** A size within limits is not put right by one that lies without. */
function isContradicted({ datum, value }: Asked, guess: Guess, sheet: SlipSheet): boolean {
  const limits = fromLimits(datum, sheet);
  return limits !== undefined && outside(value, limits) === 0 && outside(guess.value, limits) > 0;
}

/**
 * An entry offered is written to no more places than the readings are, or than such a gauge is usually read to; it lies
 * where its gauge reaches, and on its divisions or halfway between.
 */
function isReadable(
  offer: string | undefined,
  { slip, value }: Guess,
  datum: Datum,
  gauge: { low?: number; high?: number; step?: number } | undefined,
): boolean {
  if (offer === undefined) return true;
  const places = (text: string): number =>
    Math.max(0, ...[...text.matchAll(/[.,](\d+)/g)].map(([, digits]) => (digits as string).length));
  if (places(offer) > Math.max(places(datum.text), datum.system === 'in' ? 4 : 3)) return false;
  const { low, high, step } = gauge ?? {};
  if (low !== undefined && Math.abs(value) < low) return false;
  if (high !== undefined && Math.abs(value) > high) return false;
  if (step === undefined || slip === 'other-unit' || datum.literals.length > 1) return true;
  const halves = (x: number): boolean => Math.abs((2 * x) / step - Math.round((2 * x) / step)) < 1e-3;
  return halves(value) || !halves(datum.literals[0]?.value as number);
}
