import type { DecisionRule } from '../sheet/format.ts';
import { coverageFactor, expandedFactor } from '../statistics/coverage.ts';
import { normalTail } from '../statistics/normal.ts';
import { studentBeyond } from '../statistics/student.ts';
import { type CheckMode, type Grade, type Place, STATES, type Verdict } from './states.ts';
import { wordsOf } from './words.ts';

export type { CheckState } from './states.ts';

export interface CheckVerdict {
  /** Against the limits for a new part; the only verdict where there is no wear limit. */
  asNew: Verdict;
  /** Against the wear limit, for a part in service. Absent where there is none, or the part was just made. */
  inService?: Verdict;
  /** The rule the guard band followed. */
  rule: DecisionRule;
  /**
   * Standard uncertainties each side of the centre in the band that the verdict went by, where the rule takes one: the
   * band lies within the limits, across one or outside just as the verdict says.
   */
  k?: number;
  /** The verdict follows from draws (JCGM 101, JCGM 106), where linear propagation is not good enough. */
  method?: 'draws';
  /** Probability of conformance to the limits of a new part, by the draws. */
  conformance?: number;
  /** One line for people: `not proven as new; proven serviceable`. */
  words: string;
  /** Why it is not proven, where the figures alone do not show it. */
  note?: string;
  /** Of what alone it is proven, where that is less than the part: the place, the direction that was read. */
  where?: string;
}

/**
 * Distance from a value to a limit with its own spread, SI, positive inside: value - lower, upper - value. The limit's
 * spread, and what it shares with the value, are in it.
 */
export interface Margin {
  value: number;
  /** Worst case; where draws decide, their band. */
  low: number;
  high: number;
  /** Centre of the statistical figure. */
  centre: number;
  /** Standard uncertainty. */
  u: number;
  /**
   * Effective degrees of freedom; Infinity where absent. The factor 2 of an expanded uncertainty becomes that
   * of Student's t, as ISO 14253-2 has it for few readings; a probability of conformance is that of Student's t too.
   */
  dof?: number;
  /** Share of the draws in which the limit is missed, where draws decide. */
  drawn?: number;
  /**
   * How far those sources reach, SI, whose doubt is known in part only: readings with neither gauge nor ±. A part is
   * proven by a measured value with its uncertainty (JCGM 106, 7.2), never by figures alone.
   */
  unstated?: number;
}

export interface JudgeInput {
  mode: CheckMode;
  rule: DecisionRule;
  lower?: Margin;
  upper?: Margin;
  /** Margin to the wear limit; `side` is where wear leads: `high` for a clearance, `low` for a shaft. */
  wear?: Margin & { side: 'low' | 'high' };
  metalOn?: 'low' | 'high';
  /** Judged as new only. */
  justMade?: boolean;
  /** An input is missing or in error. */
  waiting?: boolean | 'in error';
  /** Why its doubt is known in part only, where it is: told where nothing is proven for it. */
  unstated?: string | undefined;
  /**
   * Draws decide: the share beyond a limit with which the verdict stands among so many, and whether it waits for more.
   */
  drawn?: { draws: number; clear: number; isLast: boolean; within: number };
  /** Size of the value compared, SI: what is a trillionth of it is arithmetic, not a miss. */
  scale?: number;
}

const CONFORMANCE = 0.95;
/** One-sided and two-sided 95 % points of the normal distribution. */
const K95 = { one: 1.6448536269514722, two: 1.959963984540054 } as const;
/** From so many degrees of freedom on Student's t is the normal distribution to the digits of a verdict. */
const MANY = 1e4;

/** Standard uncertainties that leave 5 % on one side, or on both together. */
const factor = (dof: number, sides: 'one' | 'two'): number =>
  dof < MANY ? coverageFactor(dof, sides === 'one' ? 2 * CONFORMANCE - 1 : CONFORMANCE) : K95[sides];

/** Probability beyond `x` standard uncertainties on one side. */
const beyond = (x: number, dof: number): number => {
  if (!(dof < MANY)) return normalTail(x);
  const both = studentBeyond(Math.abs(x), dof) / 2;
  return x < 0 ? 1 - both : both;
};

/** A margin under a rule: the interval of its spread, and the probability that the limit is missed. */
interface Edge {
  at: Place;
  /** Which way outside lies. */
  way: 'low' | 'high';
  value: number;
  low: number;
  high: number;
  centre: number;
  u: number;
  dof: number;
  /** Only under the rule of conformance probability. */
  missed?: number;
  /** Share of the draws that miss it. */
  drawn?: number;
  /** Something in it cannot be computed. */
  unsure: boolean;
  /** What of the spread is doubt known in part only, and may be many times as much. */
  unstated: number;
}

/**
 * A doubt known in part only is taken to be at most so many times what is counted of it: a judgement of our own, after
 * the shop's rule of a gauge ten times as fine as what it is to tell (common practice, no source).
 */
const WORST = 10;

/** Doubt known in part only, where it may turn a verdict: not where even that many times as much is less than what is known. */
const openDoubt = (margin: Margin, noise: number): number => {
  const { unstated = 0 } = margin;
  const reach = (margin.high - margin.low) / 2;
  const known = reach < Number.POSITIVE_INFINITY ? reach - unstated : 0;
  return unstated <= noise || WORST * unstated <= known ? 0 : unstated;
};

/** Arithmetic on doubles leaves a value that stands on its limit a hair beside it: that hair counts as nothing. */
const cleaned = (x: number, noise: number): number => (Math.abs(x) <= noise ? 0 : x);

const edge = (
  at: Place,
  way: 'low' | 'high',
  margin: Margin,
  { rule, mode }: Pick<JudgeInput, 'rule' | 'mode'>,
  noise: number,
): Edge => {
  const dof = margin.dof ?? Number.POSITIVE_INFINITY;
  const half = (rule === 'iso14253-2017' ? factor(dof, 'one') : expandedFactor(dof)) * margin.u;
  // A nominal may lie at the very end of its own limits (50 H7), or outside (50 p6): the bare figure of a plan is the
  // centre. That of a part is what was read, however far to one side its doubt reaches.
  const isCentred = rule === 'simple' && mode === 'plan' && !Number.isNaN(margin.centre);
  const bare = isCentred ? margin.centre : margin.value;
  const [low, high] =
    rule === 'simple'
      ? [bare, bare]
      : rule === 'worst-case' || margin.drawn !== undefined
        ? [margin.low, margin.high]
        : [margin.centre - half, margin.centre + half];
  // The worst case is known on its own, also where some source at an end leaves the row without a value.
  const figures =
    rule === 'worst-case' ? [margin.value, margin.low, margin.high] : [margin.value, margin.centre, margin.u];
  const centre = cleaned(margin.centre, noise);
  const base = {
    at,
    way,
    value: bare,
    low: cleaned(low, noise),
    high: cleaned(high, noise),
    centre,
    u: margin.u,
    dof,
    unsure: rule !== 'simple' && figures.some(Number.isNaN),
    unstated: mode !== 'plan' && rule !== 'simple' ? openDoubt(margin, noise) : 0,
    ...(margin.drawn === undefined ? {} : { drawn: margin.drawn }),
  };
  if (rule !== 'iso14253-2017') return base;
  const missed = margin.u > 0 ? beyond(centre / margin.u, dof) : centre >= 0 ? 0 : 1;
  return { ...base, missed };
};

/** Outside whatever there is to its spread: one limit is missed so surely by itself. */
const isOut = (e: Edge): boolean => !e.unsure && e.high + (WORST - 1) * e.unstated < 0;

/** By how much of the spread the limits are missed together: those of one value lie on opposite sides of it. */
const missedBy = (edges: readonly Edge[], one: (e: Edge) => number | undefined): number =>
  Math.min(
    1,
    edges.reduce((sum, e) => sum + (one(e) ?? 1), 0),
  );

/**
 * By the rule of conformance probability, outside as surely as it would have to be inside: next to none of a spread
 * lies between the limits, and it may be so wide as to leave open on which side of them.
 */
const isOutOfBoth = (edges: readonly Edge[], { drawn, rule }: Pick<JudgeInput, 'drawn' | 'rule'>): boolean =>
  rule === 'iso14253-2017' &&
  edges.length > 1 &&
  edges.every((e) => !e.unsure && e.unstated === 0) &&
  (drawn
    ? // A draw without a value misses both limits, and counts once.
      edges.every((e) => e.at !== 'wear') && drawn.draws > 0 && drawn.within <= drawn.clear
    : missedBy(edges, (e) => e.missed) >= CONFORMANCE);

/** Nearer to a limit than a quarter of the band between two; with one limit, nearer than half the spread's width. */
const isNear = (edges: readonly Edge[], noise: number): boolean => {
  const [a, b] = edges;
  // In service it is wear that comes on: near the other limit is where a new part begins.
  if (a && b)
    return (a.at === 'wear' ? a.value : Math.min(a.value, b.value)) < (a.value + b.value) / 4 - noise;
  return a !== undefined && a.low < (a.high - a.low) / 2;
};

/** By draws: within, or beyond one limit, surely enough whatever chance may have added or taken. */
const gradeByDraws = (
  edges: readonly Edge[],
  input: JudgeInput,
  noise: number,
): Grade | 'settling' | undefined => {
  const { drawn, rule } = input;
  if (!drawn) return undefined;
  if (edges.some((e) => e.unsure || e.unstated > 0)) return 'open';
  if (drawn.draws === 0) return 'settling';
  const shares = edges.map((e) => e.drawn ?? 1);
  if (shares.some((share) => share >= 1 - drawn.clear) || isOutOfBoth(edges, input)) return 'out';
  const missed = rule === 'iso14253-2017' ? missedBy(edges, (e) => e.drawn) : Math.max(...shares);
  if (missed > drawn.clear) return drawn.isLast ? 'open' : 'settling';
  return isNear(edges, noise) ? 'near' : 'in';
};

const grade = (edges: readonly Edge[], input: JudgeInput, noise: number): Grade => {
  if (edges.some(isOut) || isOutOfBoth(edges, input)) return 'out';
  if (edges.some((e) => e.unsure || e.unstated > 0)) return 'open';
  if (edges.every((e) => e.missed !== undefined)) {
    if (missedBy(edges, (e) => e.missed) > 1 - CONFORMANCE) return 'open';
  } else if (edges.some((e) => e.low < 0)) return 'open';
  return isNear(edges, noise) ? 'near' : 'in';
};

/** What of a comparison is arithmetic on doubles and no miss. */
const noiseOf = (margins: readonly Margin[], scale = 0): number =>
  Math.max(Math.max(0, ...margins.map((m) => Math.abs(m.value))) * 1e-9, scale * 1e-12);

/** Whether one limit alone is kept by a rule, as {@link judge} has it of a plan, without its words. */
export const keepsLimit = (margin: Margin, rule: DecisionRule, scale?: number): boolean => {
  if (Number.isNaN(margin.value)) return false;
  const noise = noiseOf([margin], scale);
  const input: JudgeInput = { rule, mode: 'plan' };
  const found = grade([edge('lower', 'low', margin, input, noise)], input, noise);
  return found === 'in' || found === 'near';
};

/** The limit a verdict turns on: one surely missed, else one that cannot be computed, else the likeliest missed. */
const turningOn = (edges: readonly Edge[], found: Grade): Edge => {
  if (found !== 'near' && edges.every((e) => e.drawn !== undefined && !e.unsure))
    return edges.reduce((a, b) => ((b.drawn as number) > (a.drawn as number) ? b : a));
  const surely = edges.find(isOut) ?? edges.find((e) => e.unsure);
  if (surely) return surely;
  return edges.reduce((a, b) => {
    if (found === 'near') return a.at !== 'wear' && b.value < a.value ? b : a;
    const [pa, pb] = [a.missed ?? 0, b.missed ?? 0];
    if (pa !== pb) return pb > pa ? b : a;
    return b.low < a.low ? b : a;
  });
};

interface Found extends Verdict {
  grade?: Grade;
  /** Outside, and open on which side. */
  isEitherSide?: boolean;
}

const isOutOf = (e: Edge, { drawn }: JudgeInput): boolean =>
  drawn ? (e.drawn ?? 0) >= 1 - drawn.clear : isOut(e);

const verdict = (edges: readonly Edge[], input: JudgeInput, noise: number): Found => {
  if (edges.length === 0) return { state: 'no limits' };
  const found = gradeByDraws(edges, input, noise) ?? grade(edges, input, noise);
  if (found === 'settling') return { state: 'being settled' };
  const turning = turningOn(edges, found);
  const by = 0 - turning.value;
  const base = { state: STATES[input.mode][found], grade: found };
  // It is the doubt that decides nothing, and no limit is to blame.
  const isIdle = found === 'open' && turning.unstated > 0 && turning.low >= 0;
  const isEitherSide = found === 'out' && !isOutOf(turning, input);
  if (found === 'in' || isIdle) return { ...base, by };
  if (isEitherSide) return { ...base, by, isEitherSide };
  if (found === 'near' || !input.metalOn) return { ...base, at: turning.at, by };
  return { ...base, at: turning.at, side: turning.way === input.metalOn ? 'metal on' : 'metal gone', by };
};

/**
 * Standard uncertainties in the band to be shown. Under the rule of conformance probability the two-sided 95 %, nearer to
 * the one-sided where a limit stands between the two and conforms, or is missed, all the same: a band within the limits is
 * then proven, one across a limit is not, and one beyond is out.
 */
const shownFactor = (
  edges: readonly Edge[],
  { rule }: JudgeInput,
  found: Grade | undefined,
): number | undefined => {
  const [any] = edges;
  const dof = any?.dof ?? Number.POSITIVE_INFINITY;
  if (rule === 'iso14253-2013') return expandedFactor(dof);
  if (rule !== 'iso14253-2017') return undefined;
  const [one, two] = [factor(dof, 'one'), factor(dof, 'two')];
  if (found === undefined || found === 'open') return two;
  const gap =
    found === 'out'
      ? Math.max(...edges.map((e) => -e.centre / e.u))
      : Math.min(...edges.map((e) => e.centre / e.u));
  // Between the two it stands clear of the limit: one that touches it would say less than the verdict.
  return gap >= two ? two : (one + Math.max(one, gap)) / 2;
};

const byDraws = ({ drawn, lower, upper }: JudgeInput): Pick<CheckVerdict, 'method' | 'conformance'> =>
  !drawn || drawn.draws === 0
    ? {}
    : { method: 'draws', ...(lower || upper ? { conformance: drawn.within } : {}) };

const NOTE = 'One case within the spread cannot be computed, so nothing is proven.';

const EITHER_SIDE =
  'The spread is so much wider than the limits lie apart that next to none of it lies between them: on which side of them is open.';

const bare = ({ grade: _, isEitherSide: __, ...one }: Found): Verdict => one;

/**
 * Compares a value with its limits by the spread of its margins. The spread is, by rule: the worst case; centre ± 2u
 * (ISO 14253-1:2013, expanded uncertainty k = 2); 95 % conformance probability (ISO 14253-1:2017 default; JCGM 106),
 * both limits taken together, of a figure that is normal, or by Student's t where its degrees of freedom are few; or the
 * centre of it alone. Inside: `holds`, `proven in limits`, and *near the edge* where the value is nearer to a limit than a
 * quarter of the band. Outside: `misses`, `out of limits`. Between: `may miss`, `not proven`. What a model predicts
 * `holds by calculation`. A part is never proven where its doubt is known in part only, and out of limits only beyond ten
 * times what of it is known. In service the wear limit replaces the limit on its side and the other one stays.
 */
export const judge = (input: JudgeInput): CheckVerdict => {
  const { rule, lower, upper, wear } = input;
  const service = wear !== undefined && !input.justMade;
  const margins = [lower, upper, wear].filter((m) => m !== undefined);
  const missing = input.waiting || margins.some((m) => Number.isNaN(m.value));
  if (missing && (margins.length > 0 || input.waiting)) {
    const none: Verdict = { state: input.waiting === 'in error' ? 'entry in error' : 'waiting' };
    return { asNew: none, ...(service ? { inService: none } : {}), rule, words: none.state };
  }
  const noise = noiseOf(margins, input.scale);
  const low = lower && edge('lower', 'low', lower, input, noise);
  const high = upper && edge('upper', 'high', upper, input, noise);
  const present = (edges: ReadonlyArray<Edge | undefined>): Edge[] => edges.filter((e) => e !== undefined);

  const newEdges = present([low, high]);
  const asNew = verdict(newEdges, input, noise);
  const worn = service ? edge('wear', wear.side, wear, input, noise) : undefined;
  const wornEdges = worn ? present([worn, worn.way === 'high' ? low : high]) : [];
  const inService = worn ? verdict(wornEdges, input, noise) : undefined;
  const edges = [...newEdges, ...wornEdges];
  const isOpen = [asNew, inService].some((one) => one?.grade === 'open');
  const note = edges.some((e) => e.unsure)
    ? NOTE
    : isOpen && edges.some((e) => e.unstated > 0)
      ? input.unstated
      : [asNew, inService].some((one) => one?.isEitherSide)
        ? EITHER_SIDE
        : undefined;
  const k =
    newEdges.length > 0
      ? shownFactor(newEdges, input, asNew.grade)
      : shownFactor(wornEdges, input, inService?.grade);
  return {
    asNew: bare(asNew),
    ...(inService ? { inService: bare(inService) } : {}),
    rule,
    ...(k === undefined || edges.length === 0 || input.drawn ? {} : { k }),
    ...byDraws(input),
    words: wordsOf({ asNew, inService }),
    ...(note === undefined ? {} : { note }),
  };
};
