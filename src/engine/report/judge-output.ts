import { type CheckVerdict, type JudgeInput, judge, type Margin } from '../../../shared/checks/check.ts';
import { gradeOf, type Place } from '../../../shared/checks/states.ts';
import type { Problem } from '../../../shared/problem.ts';
import { clearShare } from '../draws/looks.ts';
import type { Asked } from '../draws/tally.ts';
import { NOMINAL } from '../network/grid.ts';
import type { Row } from '../network/layout.ts';
import type { Standing } from '../network/provenance.ts';
import { scaleOf } from '../network/scale.ts';
import type { LimitPlan, OutputPlan } from '../rows/assembled.ts';
import type { RowKey } from '../rows/key.ts';
import type { Drawn, LimitFigures } from '../rows/results.ts';
import { isAgainst, isTurned, wearSide } from './limit-figures.ts';
import { problemOf } from './problems.ts';
import type { Reading } from './reading.ts';
import { type Unstated, unstatedOf, unstatedWords } from './unstated.ts';
import { whereRead } from './where-read.ts';

/** What is asked or blank is waited for, and so is what stands in error in another line. */
const WAITED: ReadonlySet<string> = new Set(['blank', 'ask', 'upstream']);

/** Whether something is missing, or something that was entered in this line does not stand. */
const waitsFor = (problem: Problem | undefined): true | 'in error' =>
  problem === undefined || problem.waits || WAITED.has(problem.kind) ? true : 'in error';

/** Why one of the limits has no figure: what stands in error goes before what is missing. */
function limitProblem(cell: string, own: LimitPlan, from: Reading): Problem | undefined {
  const { network, grid } = from;
  const problems = [own.lower, own.upper, own.wear].flatMap((key) => {
    const row = key === undefined ? undefined : network.rows.get(key);
    const value = row && grid.nominal(row.slot);
    return row && typeof value === 'object'
      ? [problemOf(network, grid, { row, column: NOMINAL }, value, cell, from.nameOf)]
      : [];
  });
  return problems.find((one) => waitsFor(one) === 'in error') ?? problems[0];
}

export function judgeOutput(
  cell: string,
  plan: OutputPlan,
  row: Row | undefined,
  value: unknown,
  limits: LimitFigures | undefined,
  from: Reading,
  idle: boolean,
  unknownSpread: boolean,
  problem: Problem | undefined,
): Judged {
  const own = plan.limits;
  const rule = own?.rule ?? from.rule;
  const { mode, isRead } = row === undefined ? PLAN : from.standing(row);
  const wanted = [own?.lower, own?.upper, own?.wear].filter((key) => key !== undefined).length;
  const found = limits
    ? [limits.lower, limits.upper, limits.wear].filter((one) => one !== undefined).length
    : 0;
  const plainly = (more: Partial<JudgeInput> = {}): Judged => ({ check: judge({ mode, rule, ...more }) });
  if (idle) return plainly();
  if (row !== undefined && typeof value !== 'number' && typeof value !== 'boolean')
    return plainly({ waiting: waitsFor(problem) });
  if (!own || wanted === 0) return plainly();
  if (found < wanted) {
    const missing = limitProblem(cell, own, from);
    const judged = plainly({ waiting: waitsFor(missing) });
    return missing ? { ...judged, problem: missing } : judged;
  }
  if (unknownSpread) return plainly({ waiting: waitsFor(problem) });
  const doubts: Unstated[] = [];
  const margin = (key: RowKey | undefined): Margin | undefined => {
    const figure = key === undefined ? undefined : from.figure(key);
    if (!figure || key === undefined || !isRead || rule === 'simple') return figure;
    const doubt = unstatedOf(from.network, from.grid, from.network.rows.get(key));
    if (!doubt) return figure;
    doubts.push(doubt);
    return { ...figure, unstated: doubt.reach };
  };
  const lower = margin(own.lowerMargin);
  const upper = margin(own.upperMargin);
  const side = wearSide(limits as LimitFigures);
  if (isTurned(limits as LimitFigures) || (own.wear && isAgainst(limits as LimitFigures)))
    return plainly({ waiting: 'in error' });
  if (own.wear && side === undefined) return plainly({ waiting: true });
  const wearMargin = own.wear && (side === 'high' ? own.wearAbove : own.wearBelow);
  const wear = margin(wearMargin);
  const keys = { lower: own.lowerMargin, upper: own.upperMargin, wear: wearMargin };
  const scale = Math.max(
    ...Object.values(keys).map((key) => {
      const margin = key === undefined ? undefined : from.network.rows.get(key);
      return margin ? scaleOf(margin, from.grid) : 0;
    }),
  );
  const judged = (more: Partial<JudgeInput>, each: (one: Margin, which: Place) => Margin): CheckVerdict =>
    judge({
      mode,
      rule,
      justMade: plan.justMade,
      unstated: unstatedWords(cell, doubts, from.nameOf),
      ...(typeof value === 'number' ? { scale } : {}),
      ...(lower ? { lower: each(lower, 'lower') } : {}),
      ...(upper ? { upper: each(upper, 'upper') } : {}),
      ...(wear && own.wear && side ? { wear: { ...each(wear, 'wear'), side } } : {}),
      ...(own.metalOn ? { metalOn: own.metalOn } : {}),
      ...more,
    });
  const byLinear = (): CheckVerdict => judged({}, (one) => one);
  /** A verdict that a little more spread would turn. */
  const isEdge = (verdict: CheckVerdict): boolean => {
    const states = ({ asNew, inService }: CheckVerdict): string =>
      [asNew, inService].map((one) => (one ? gradeOf(one.state)?.replace('near', 'in') : '')).join();
    if (!/in|out/.test(states(verdict))) return false;
    const wider = (one: Margin, which: Place): Margin => {
      const key = keys[which];
      const margin = key === undefined ? undefined : from.network.rows.get(key);
      return margin ? { ...one, u: one.u * from.mostWide(margin, rule) } : one;
    };
    // How much of a figure lies within a narrow band depends on its whole shape.
    const isEither = [verdict.asNew, verdict.inService].some(
      (one) => one && gradeOf(one.state) === 'out' && one.at === undefined && one.side === undefined,
    );
    const isShaped = (which: Place): boolean => {
      const one: Margin = { value: 0, low: 0, high: 0, centre: 0, u: 1 };
      return wider(one, which).u > 1;
    };
    if (isEither && (['lower', 'upper', 'wear'] as const).some(isShaped)) return true;
    return states(judged({}, wider)) !== states(verdict);
  };
  let drawn = row && drawnOf({ row, rule, scale }, keys, from);
  let verdict = drawn ? undefined : byLinear();
  if (verdict && row && (rule === 'iso14253-2013' || rule === 'iso14253-2017') && isEdge(verdict))
    drawn = drawnOf({ row, rule, scale, isEdge: true }, keys, from);
  if (drawn) {
    const { draws, low: start, high: end, missed } = drawn;
    const byDraws = (one: Margin, which: Place): Margin => {
      if (draws === 0 || typeof value !== 'number') return one;
      // Distances to the ends of the band, as seen from this limit.
      const isAbove = which === 'upper' || (which === 'wear' && side === 'high');
      const [below, above] = [start - value, end - value];
      const [low, high] = isAbove
        ? [one.value - above, one.value - below]
        : [one.value + below, one.value + above];
      return { ...one, low, high, drawn: missed[which] ?? 1 };
    };
    verdict = judged({ drawn: { ...drawn, clear: draws > 0 ? clearShare(rule, draws) : 0 } }, byDraws);
  }
  if (!verdict) return plainly();
  const margins = [own.lowerMargin, own.upperMargin, side === 'high' ? own.wearAbove : own.wearBelow];
  const check =
    mode === 'part' && rule !== 'simple'
      ? whereRead(verdict, margins, from.network, from.grid, cell, from.nameOf)
      : verdict;
  return drawn ? { check, drawn } : { check };
}

/** A verdict, and what draws tell where they decide it. */
interface Judged {
  /** What keeps a limit from having a figure. */
  problem?: Problem;
  check: CheckVerdict;
  drawn?: Drawn;
}

/** What draws tell of a row by its margins; undefined where they are not asked for, or some case cannot be computed at all. */
function drawnOf(
  asked: Omit<Asked, 'margins'>,
  keys: Partial<Record<Place, RowKey | undefined>>,
  from: Reading,
): Drawn | undefined {
  const margins: Asked['margins'] = {};
  for (const which of ['lower', 'upper', 'wear'] as const) {
    const key = keys[which];
    const margin = key === undefined ? undefined : from.network.rows.get(key);
    if (!margin) continue;
    const figure = from.figure(margin.key);
    if (!figure || Number.isNaN(figure.centre)) return undefined;
    margins[which] = margin;
  }
  return from.drawnOf({ ...asked, margins });
}

const PLAN: Standing = { mode: 'plan', isRead: false };
