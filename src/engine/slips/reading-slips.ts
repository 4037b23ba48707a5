import type { Slip } from '../rows/results.ts';
import { type Belief, byExpectation, byGroup } from './belief.ts';
import type { Datum } from './datum.ts';
import { decimal } from './decimal.ts';
import {
  type Expectation,
  fromAlike,
  fromGroup,
  fromLimits,
  fromPlan,
  median,
  outside,
  supports,
} from './expectation.ts';
import type { Asked } from './guess.ts';
import { INTERFERENCE_PER_DIAMETER, interferenceQuestion } from './interference.ts';
import { isLoneCount, type Likely, likeliest } from './likeliest.ts';
import { otherUnit } from './other-unit.ts';
import { radius } from './radius.ts';
import type { SlipSheet } from './sheet.ts';
import { worded } from './worded.ts';

/** What is known of a text without asking its neighbours. */
export interface OwnView {
  slips: Slip[];
  /** Something else than the other part of a fit bears it out. */
  supported: boolean;
}

const levels = new WeakMap<Datum, number>();

/** The middle of its readings, found once: lines alike ask for it of each other. */
export function levelOf(datum: Datum): number {
  let level = levels.get(datum);
  if (level === undefined) {
    level = median(datum.literals.map((one) => one.value));
    levels.set(datum, level);
  }
  return level;
}

/** Odds, as a logarithm, that tell one explanation from another. */
export const TELLING = Math.log(3);

/**
 * Slips that the text's own list, plan, limits and the lines like it show. Where two readings stand against each other,
 * `pairs` may tell which of them is meant.
 */
export function ownView(datum: Datum, pairs: () => readonly Expectation[], sheet: SlipSheet): OwnView {
  const expected = ownExpectations(datum, sheet);
  const beside = datum.literals.length === 2 ? pairs() : [];
  // An edit elsewhere moves nothing of what most texts are held against.
  const against = JSON.stringify([
    sheet.beside(datum).map(placesOf).join(),
    expected,
    beside,
    sheet.limits(datum),
    sheet.gaugeOf(datum),
    sheet.copiedFrom(datum),
  ]);
  const known = views.get(datum);
  if (known?.against === against) return known.view;
  const view = viewAgainst(datum, expected, beside, sheet);
  views.set(datum, { against, view });
  return view;
}

const places = new WeakMap<Datum, string>();

/** How its readings are written: all that lines beside it are asked for. */
function placesOf(datum: Datum): string {
  let text = places.get(datum);
  if (text === undefined) {
    text = datum.literals.map(({ digits, unit }) => `${digits} ${unit}`).join();
    places.set(datum, text);
  }
  return text;
}

const literalsBeside = (datum: Datum, sheet: SlipSheet) =>
  sheet.beside(datum).flatMap(({ literals }) => literals);

const views = new WeakMap<Datum, { against: string; view: OwnView }>();

function viewAgainst(
  datum: Datum,
  expected: readonly Expectation[],
  pairs: readonly Expectation[],
  sheet: SlipSheet,
): OwnView {
  const level = levelOf(datum);
  const within = groupSlips(datum, expected, pairs, sheet);
  if (within.length > 0) return { slips: within, supported: false };
  if (datum.offset) return { slips: [], supported: false };
  // A count with the wrong sign is out by little: its odds are to tell.
  const isCounted = isLoneCount(datum);
  const bears = (one: Expectation): boolean =>
    isCounted ? outside(level, one) <= sheet.step(datum) : supports(level, one);
  if (expected.some(bears)) return { slips: [], supported: true };
  const found = levelSlip(datum, level, expected, [], sheet);
  return { slips: found ? [found.slip] : [], supported: false };
}

const ownExpectations = (datum: Datum, sheet: SlipSheet): Expectation[] =>
  [fromPlan(datum, sheet), fromLimits(datum, sheet), fromAlike(datum, sheet)].filter(
    (one) => one !== undefined,
  );

/** The slip that the other part of a fit shows, where the text's own neighbours are silent. */
export function pairSlip(datum: Datum, expected: Expectation, sheet: SlipSheet): Likely | undefined {
  if (datum.offset || supports(levelOf(datum), expected)) return undefined;
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
  return {
    key: `interference:${datum.field}`,
    field: datum.field,
    message,
    cost: outside(interference, expected),
  };
}

/** Nearer than so many times what the rest scatters by is nothing out of the ordinary. */
const ODD = 3;

const meanOf = (list: readonly number[]): number => list.reduce((a, b) => a + b, 0) / list.length;

/** Single readings that stand apart from the rest of their list. */
function groupSlips(
  datum: Datum,
  expected: readonly Expectation[],
  pairs: readonly Expectation[],
  sheet: SlipSheet,
): Slip[] {
  const values = datum.literals.map((one) => one.value);
  const n = values.length;
  if (n < 2) return [];
  const step = sheet.step(datum);
  let around: Belief[] | undefined;
  const found: Likely[] = [];
  values.forEach((value, index) => {
    if (n === 2 && expected.some((one) => supports(value, one))) return;
    const others = fromGroup(datum, index, sheet);
    const group = byGroup(datum, index, step);
    if (!others || group.odd < ODD) return;
    around ??= [...expected, ...pairs]
      .filter((one) => n === 2 || outside(levelOf(datum), one) < Math.abs(others.low) / 4)
      .map((one) => byExpectation(one, step));
    const cost = Math.abs(meanOf(values) - meanOf(values.toSpliced(index, 1)));
    const asked: Asked = { datum, indices: [index], value, beside: literalsBeside(datum, sheet) };
    const told = { gap: group.gap, cost, text: ` It moves the mean by ${sheet.size(cost, datum)}.` };
    // It is the list that it does not go with: the rest only tells what it may have been.
    const alone = likeliest(asked, [others], [group], sheet, told);
    const likely =
      alone && around.length > 0 ? likeliest(asked, [others], [group, ...around], sheet, told) : alone;
    if (likely) found.push(likely);
  });
  if (found.length === 0) return [];
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
  // One reading far off makes the rest look odd; where none leads nobody knows which is right.
  const [best, next] = found.sort((a, b) => b.odds - a.odds) as [Likely, Likely | undefined];
  if (!next || best.odds > next.odds + TELLING) return [best.slip];
  const { offer: _, ...asked } = best.slip;
  return [asked];
}

/** The slip of a whole text that `expected` shows; `also` is known of it beside. */
function levelSlip(
  datum: Datum,
  level: number,
  expected: readonly Expectation[],
  also: readonly Expectation[],
  sheet: SlipSheet,
): Likely | undefined {
  const values = datum.literals.map((one) => one.value);
  const range = Math.max(...values) - Math.min(...values);
  // A part that is worn so much is worn unevenly: its own readings say that it is wear.
  const sound = expected.filter((one) => !one.worn || outside(level, one) > 8 * range);
  if (sound.length === 0) return undefined;
  const step = sheet.step(datum);
  const uneven = values.length > 2 ? range : undefined;
  const beliefs = [...expected, ...also].map((one) => byExpectation(one, step, uneven));
  const asked = {
    datum,
    indices: values.map((_, i) => i),
    value: level,
    beside: literalsBeside(datum, sheet),
  };
  return likeliest(asked, sound, beliefs, sheet);
}
