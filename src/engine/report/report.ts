import { type CheckVerdict, type JudgeInput, judge, type Margin } from '../../../shared/checks/check.ts';
import { gradeOf, type Place } from '../../../shared/checks/states.ts';
import type { Problem } from '../../../shared/problem.ts';
import { formatQuantity } from '../../../shared/quantities/figures.ts';
import { displayUnit } from '../../../shared/quantities/quantities.ts';
import type { DecisionRule, SheetUnits } from '../../../shared/sheet/format.ts';
import type { Fault } from '../bounds/fault.ts';
import { clearShare } from '../draws/looks.ts';
import type { Asked } from '../draws/tally.ts';
import { type Grid, NOMINAL } from '../network/grid.ts';
import type { Row } from '../network/layout.ts';
import type { Network } from '../network/network.ts';
import type { Standing } from '../network/provenance.ts';
import type { AssembledCell, LimitPlan, OutputPlan } from '../rows/assembled.ts';
import type { RowKey } from '../rows/key.ts';
import type { CellResult, Drawn, Figure, LimitFigures, OutputResult, Remark, Slip } from '../rows/results.ts';
import { caseProblem, problemOf, unboundedProblem } from './problems.ts';
import { turnRemark } from './turns.ts';
import { OWN_DOUBT, type Unstated, unstatedOf, unstatedWords } from './unstated.ts';
import { whereRead } from './where-read.ts';

/** What the reporter asks the engine. */
export interface Reading {
  network: Network;
  grid: Grid;
  rule: DecisionRule;
  units: SheetUnits;
  figure(key: RowKey): Figure | undefined;
  nameOf(id: string): string;
  standing(row: Row): Standing;
  drawnOf(asked: Asked): Drawn | undefined;
  /** How many times as wide as linear propagation has it a margin may be where its verdict turns. */
  mostWide(margin: Row, rule: DecisionRule): number;
  /** Why a row has no bounds. */
  fault(row: Row): Fault | undefined;
  slips(id: string): Slip[];
  /** The way taken in place of that of a cell. */
  aside(id: string): string | undefined;
}

/** Puts together what a cell shows, from its plan and the rows as they stand. */
export function reportCell(cell: AssembledCell, from: Reading): CellResult {
  const outputs: Record<string, OutputResult> = {};
  const { id, problems, echoes } = cell;
  const aside = from.aside(id);
  for (const plan of cell.outputs) {
    const output = reportOutput(cell, plan, from);
    outputs[plan.name] = aside === undefined ? output : unjudged(output);
  }
  const slips = from.slips(id);
  const remarks = remarksOf(cell, outputs, slips, from);
  const feeds = [...cell.feeds];
  if (aside === undefined) return { id, outputs, problems, remarks, slips, echoes, feeds };
  return { id, aside, outputs, problems, remarks: [], slips: [], echoes, feeds };
}

/** Of a way that is not taken: its figures stand, and nothing is said of them. */
function unjudged({ drawn: _drawn, ...output }: OutputResult): OutputResult {
  return { ...output, check: judge({ mode: 'plan', rule: output.check.rule }) };
}

function reportOutput(cell: AssembledCell, plan: OutputPlan, from: Reading): OutputResult {
  const { network, grid } = from;
  const planned = plan.planned ? from.figure(plan.planned) : undefined;
  const measured = plan.measured ? from.figure(plan.measured) : undefined;
  const difference = plan.difference ? from.figure(plan.difference) : undefined;
  const replanned = plan.replanned ? from.figure(plan.replanned) : undefined;
  const standing = plan.measured ?? plan.planned;
  const row = standing === undefined ? undefined : network.rows.get(standing);
  const value = row ? grid.nominal(row.slot) : undefined;
  let problem: Problem | undefined;
  if (row && typeof value === 'object')
    problem = problemOf(network, grid, { row, column: NOMINAL }, value, cell.id, from.nameOf);
  const broken = typeof value === 'number' ? row?.broken : undefined;
  if (row && broken) problem = caseProblem(network, grid, row, broken, cell.id, from.nameOf);
  else if (row?.figure && row.figure.high - row.figure.low === Number.POSITIVE_INFINITY) {
    const fault = from.fault(row);
    if (fault) problem = unboundedProblem(fault, row.figure, cell.id, from.nameOf);
  }
  const idle = problem?.optional === true && problem.originId === cell.id;
  const limits = plan.limits ? limitFigures(plan.limits, from) : undefined;
  const result: OutputResult = {
    stands: plan.stands,
    ...check(cell.id, plan, row, value, limits, from, idle, broken?.unknown === true, problem),
  };
  if (plan.quantity) result.quantity = plan.quantity;
  if (plan.label) result.label = plan.label;
  if (plan.display) result.display = plan.display;
  if (planned) result.planned = withAim(planned, plan, from);
  if (measured) result.measured = measured;
  if (difference) result.difference = difference;
  if (replanned) result.replanned = replanned;
  if (typeof value === 'boolean') result.logical = value;
  if (limits) result.limits = limits;
  if (problem) result.problem = problem;
  if (idle) result.idle = true;
  return result;
}

/**
 * Size to aim for while cutting to an unequal tolerance: a quarter of the band in from the limit on the side where a
 * miss can still be reworked; the middle where that side is not known (common practice, no source).
 */
function withAim(figure: Figure, plan: OutputPlan, from: Reading): Figure {
  const source = plan.tolerance === undefined ? undefined : from.network.rows.get(plan.tolerance);
  if (source?.source === undefined) return figure;
  const ends = from.figure(source.key);
  if (!ends) return figure;
  const below = ends.low - ends.value;
  const above = ends.high - ends.value;
  const band = above - below;
  if (band <= 0 || Math.abs(below + above) <= 1e-9 * band) return figure;
  const side = plan.metalOn;
  const aim = side === 'low' ? below + band / 4 : side === 'high' ? above - band / 4 : (below + above) / 2;
  return { ...figure, aim: figure.value + aim };
}

export function limitFigures(plan: LimitPlan, from: Pick<Reading, 'figure'>): LimitFigures {
  const figures: LimitFigures = {};
  for (const which of ['lower', 'upper', 'wear'] as const) {
    const key = plan[which];
    const figure = key === undefined ? undefined : from.figure(key);
    if (figure) figures[which] = figure;
  }
  if (plan.metalOn) figures.metalOn = plan.metalOn;
  return figures;
}

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

function check(
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
  if (found < wanted) return plainly({ waiting: waitsFor(limitProblem(cell, own, from)) });
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
  const judged = (more: Partial<JudgeInput>, each: (one: Margin, which: Place) => Margin): CheckVerdict =>
    judge({
      mode,
      rule,
      justMade: plan.justMade,
      unstated: unstatedWords(cell, doubts, from.nameOf),
      ...(typeof value === 'number' ? { scale: Math.abs(value) } : {}),
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
  let drawn = row && drawnOf(row, keys, rule, false, from);
  let verdict = drawn ? undefined : byLinear();
  if (verdict && row && (rule === 'iso14253-2013' || rule === 'iso14253-2017') && isEdge(verdict))
    drawn = drawnOf(row, keys, rule, true, from);
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
  check: CheckVerdict;
  drawn?: Drawn;
}

/** What draws tell of a row by its margins; undefined where they are not asked for, or some case cannot be computed at all. */
function drawnOf(
  row: Row,
  keys: Partial<Record<'lower' | 'upper' | 'wear', RowKey | undefined>>,
  rule: DecisionRule,
  isEdge: boolean,
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
  return from.drawnOf({ row, margins, rule, ...(isEdge ? { isEdge } : {}) });
}

const PLAN: Standing = { mode: 'plan', isRead: false };

/**
 * Where wear leads: past the upper limit (a clearance, a bore) or past the lower one (a shaft). Undefined where neither
 * the limits of a new part nor the side on which metal is still on say so.
 */
export function wearSide(limits: LimitFigures): 'low' | 'high' | undefined {
  const wear = limits.wear?.value;
  if (wear === undefined) return undefined;
  if (limits.upper && wear >= limits.upper.value) return 'high';
  if (limits.lower && wear <= limits.lower.value) return 'low';
  return limits.metalOn === 'high' ? 'low' : limits.metalOn === 'low' ? 'high' : undefined;
}

const UNDIRECTED: Remark = {
  grade: 'error',
  message:
    'Does wear lead above the wear limit, as in a bore, or below it, as on a shaft? Say on which side metal is still on, or give the limits of a new part.',
};
const AGAINST: Remark = {
  grade: 'error',
  message:
    'The wear limit lies on the side where metal is still on, and wear leads the other way: is its figure right, and the side?',
};
const INSIDE: Remark = {
  grade: 'caution',
  message:
    'The wear limit lies between the limits of a new part: a part could be in as new and worn out at once.',
};

const TURNED: Remark = {
  grade: 'error',
  message: 'The lower limit lies above the upper, so no size can be in: are they the wrong way round?',
};

const isTurned = ({ lower, upper }: LimitFigures): boolean =>
  lower !== undefined && upper !== undefined && lower.value > upper.value;

/** A limit so many times the value, or the value of it, is as often one of the two in millimetres. */
const isOtherUnit = (limit: number | undefined, value: number | undefined): boolean => {
  const ratio = Math.abs((limit ?? 0) / (value || 1));
  const times = ratio > 1 ? ratio : 1 / ratio;
  return times > 25.4 / 1.05 && times < 25.4 * 1.05;
};

const OTHER_UNIT: Remark = {
  grade: 'caution',
  message:
    'A limit and the value lie apart by about 25.4 times: is one of the two in millimetres, and read as inches?',
};

/** A wear limit that no wear leads to. */
const isAgainst = (limits: LimitFigures): boolean =>
  limits.metalOn !== undefined && wearSide(limits) === limits.metalOn;

/** What is odd about the limits of one output. */
function limitRemarks(plan: LimitPlan, { planned, measured, quantity }: OutputPlan, from: Reading): Remark[] {
  const limits = limitFigures(plan, from);
  const { lower, upper, wear } = limits;
  const standing = measured ?? planned;
  const value = standing === undefined ? undefined : from.figure(standing)?.value;
  if (quantity === 'length' && [lower, upper, wear].some((limit) => isOtherUnit(limit?.value, value)))
    return [OTHER_UNIT];
  if (isTurned(limits)) return [TURNED];
  if (!wear) return [];
  if (wearSide(limits) === undefined) return [UNDIRECTED];
  if (isAgainst(limits)) return [AGAINST];
  const inside = lower && upper && wear.value > lower.value && wear.value < upper.value;
  return inside ? [INSIDE] : [];
}

/** Says of a size that was measured by how much it came out beyond the tolerance it was to be made to. */
function toleranceRemarks(plan: OutputPlan, from: Reading): Remark[] {
  const tolerance = plan.ownTolerance === undefined ? undefined : from.figure(plan.ownTolerance);
  const planned = plan.planned === undefined ? undefined : from.figure(plan.planned);
  const measured = plan.measured === undefined ? undefined : from.figure(plan.measured);
  if (!tolerance || !planned || !measured) return [];
  const above = measured.value - (planned.value + (tolerance.high - tolerance.value));
  const below = planned.value + (tolerance.low - tolerance.value) - measured.value;
  const by = Math.max(above, below);
  if (!(by > Math.abs(planned.value) * 1e-12)) return [];
  const unit = displayUnit(plan.quantity, from.units, plan.display);
  const step = unit.point ? { ...unit, point: false, offset: 0 } : unit;
  const text = formatQuantity(by, step, { spread: by });
  const side = above > 0 ? 'above' : 'below';
  return [{ grade: 'caution', message: `Came out ${text} ${side} its own tolerance.`, paper: true }];
}

/** Why nothing is proven by readings of other cells; of its own, its cautions say it. */
function unstatedRemarks(outputs: Readonly<Record<string, OutputResult>>): Remark[] {
  const notes = new Set<string>();
  for (const { check, problem } of Object.values(outputs))
    if (check.note !== undefined && !problem && check.note !== OWN_DOUBT) notes.add(check.note);
  return [...notes].map((message) => ({ grade: 'caution', message }));
}

function remarksOf(
  cell: AssembledCell,
  outputs: Readonly<Record<string, OutputResult>>,
  slips: readonly Slip[],
  from: Reading,
): Remark[] {
  const remarks: Remark[] = cell.cautions.map((message) => ({ grade: 'caution', message }));
  remarks.push(...unstatedRemarks(outputs));
  const turns = turnRemark(cell, from.network);
  if (turns) remarks.push(turns);
  // What is asked about the entry, with what answers it, is not said again.
  const asked = slips.some(({ key }) => key.startsWith('other-unit:'));
  for (const output of cell.outputs)
    if (output.limits)
      remarks.push(
        ...limitRemarks(output.limits, output, from).filter((one) => !asked || one !== OTHER_UNIT),
      );
  for (const output of cell.outputs) remarks.push(...toleranceRemarks(output, from));
  for (const validity of cell.validity) {
    const row = from.network.rows.get(validity.key);
    const value = row ? from.grid.nominal(row.slot) : undefined;
    const fails = value === false || (typeof value === 'object' && value.message === validity.otherwise);
    if (fails) remarks.push({ grade: validity.grade, message: validity.otherwise });
  }
  for (const usual of cell.usual) {
    const row = from.network.rows.get(usual.key);
    const value = row ? from.grid.nominal(row.slot) : undefined;
    if (typeof value === 'number' && (value < usual.low || value > usual.high))
      remarks.push({
        grade: 'caution',
        message: `${usual.label}: outside the usual ${usual.words}. Check the figure and its unit.`,
      });
  }
  return remarks;
}
