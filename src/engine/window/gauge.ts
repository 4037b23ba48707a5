import { handbook } from '../../../cells/handbook.ts';
import { judge, type Margin } from '../../../shared/checks/check.ts';
import { isProven, type Place, type Verdict } from '../../../shared/checks/states.ts';
import { displayUnit } from '../../../shared/quantities/quantities.ts';
import type { CellRecord, DecisionRule, Measured, SheetFile } from '../../../shared/sheet/format.ts';
import { expandedFactor } from '../../../shared/statistics/coverage.ts';
import type { Unit } from '../../../shared/units/units.ts';
import { sizeOf } from '../../language/syntax/size-of.ts';
import { limitFigures, wearSide } from '../report/limit-figures.ts';
import type { OutputPlan } from '../rows/assembled.ts';
import type { RowKey } from '../rows/key.ts';
import { Texts } from '../rows/texts.ts';
import { TrialSheet } from '../trial/trial-sheet.ts';
import { writtenIn } from '../workback/written.ts';

export interface GaugeAsked {
  cell: string;
  /** `value` for a plain line. */
  output: string;
}

/** A gauge of the sheet, and what it would say of the size. */
interface GaugeSaid {
  cell: string;
  name: string;
  /** The size would be proven in limits by it. */
  proves: boolean;
  /** It does not reach the size. */
  isShort: boolean;
  /** Doubt it leaves of the size each way, SI: expanded, or by the worst case. */
  doubt?: number;
  /** The verdict. */
  words: string;
}

export interface GaugeFound {
  is: 'found';
  cell: string;
  output: string;
  rule: DecisionRule;
  /** The size that is to be proven, SI: as it was read, or as it is planned. */
  size: number;
  isRead: boolean;
  /** The greatest doubt of it each way that still proves it, SI: expanded, k = 2, or by the worst case. Infinity: any does. */
  needed: number;
  /** The limit that asks for it. */
  at: Place;
  gauges: GaugeSaid[];
}

export interface NoGauge {
  is: 'none';
  why: string;
}

/**
 * What doubt still proves a size by its limits, and which gauges of the sheet leave no more: each is tried by working the
 * line out, with all it depends on, with the size read with it. A size that was not measured yet is taken to come out as
 * it is planned, or at its aim where it has one.
 */
export function gaugesFor(trial: TrialSheet, { cell, output }: GaugeAsked): GaugeFound | NoGauge {
  const own = new TrialSheet(trial.library, 'all');
  try {
    own.load(upstreamOf(trial, cell));
    return answer(own, cell, output);
  } finally {
    own.destroy();
  }
}

/** The sheet with no other lines than one, its gauges, and what these depend on. */
function upstreamOf(trial: TrialSheet, cell: string): SheetFile {
  const wanted = new Set([
    cell,
    ...trial.sheet.cells.filter(({ kind }) => kind === 'gauge').map(({ id }) => id),
  ]);
  for (const id of wanted) for (const feed of trial.result(id)?.feeds ?? []) wanted.add(feed);
  return { ...trial.sheet, cells: trial.sheet.cells.filter(({ id }) => wanted.has(id)) };
}

function answer(trial: TrialSheet, cell: string, output: string): GaugeFound | NoGauge {
  const none = (why: string): NoGauge => ({ is: 'none', why });
  const record = trial.sheet.cells.find(({ id }) => id === cell);
  const plan = planOf(trial, cell, output);
  if (!record || !plan) return none('There is no such line in the sheet.');
  const called = record.name ?? record.label ?? record.id;
  if (!plan.limits) return none(`"${called}" has no limits to be proven by.`);
  const rule = plan.limits.rule ?? trial.sheet.rule;
  const reading = readingOf(trial, record, output);
  if ('why' in reading) return none(reading.why);
  const { size, isRead } = reading;
  // Its limits and how far it lies from them, with the size read, by whatever gauge.
  trial.put(reading.with(undefined));
  const need = neededDoubt(edgesOf(trial, cell, output), rule, Math.abs(size));
  if (!need) return none(`"${called}" waits for its limits.`);
  if (need.doubt === undefined)
    return none(
      `"${called}" ${isRead ? 'lies' : 'would lie'} on its ${need.at} limit or beyond it: no gauge proves it in.`,
    );
  const gauges = trial.sheet.cells.flatMap((one): GaugeSaid[] => {
    if (one.kind !== 'gauge' || !one.name || one.id === cell) return [];
    trial.put(reading.with(one.name));
    if (trial.isSettling) trial.settle();
    return [{ cell: one.id, name: one.label ?? one.name, ...saidOf(trial, cell, output, rule) }];
  });
  return { is: 'found', cell, output, rule, size, isRead, needed: need.doubt, at: need.at, gauges };
}

const planOf = (trial: TrialSheet, cell: string, output: string): OutputPlan | undefined =>
  trial
    .computed()
    .cells.get(cell)
    ?.outputs.find((one) => one.name === output);

/** Distance to a limit, positive inside, and the spread the limit has of its own; SI. */
interface LimitEdge {
  at: Place;
  value: number;
  /** How far the limit's own spread takes it inward. */
  own: number;
  u: number;
  /** Of a wear limit: where wear leads. */
  side?: 'low' | 'high';
}

/** The limits a size is to be proven by: those of a new part, or where it has none the wear limit. */
function edgesOf(trial: TrialSheet, cell: string, output: string): LimitEdge[] | undefined {
  const limits = planOf(trial, cell, output)?.limits;
  const computed = trial.computed();
  const figures = limits && limitFigures(limits, computed);
  if (!limits || !figures) return undefined;
  const edge = (at: Place, key: RowKey | undefined, isAbove: boolean): LimitEdge[] | undefined => {
    const [limit, margin] = [figures[at], key === undefined ? undefined : computed.figure(key)];
    if (!limit || !margin) return undefined;
    const own = isAbove ? limit.value - limit.low : limit.high - limit.value;
    return [{ at, value: margin.value, own, u: limit.u }];
  };
  const lower = limits.lower ? edge('lower', limits.lowerMargin, false) : [];
  const upper = limits.upper ? edge('upper', limits.upperMargin, true) : [];
  if (!lower || !upper) return undefined;
  if (lower.length + upper.length > 0) return [...lower, ...upper];
  const side = wearSide(figures);
  const wear = side && edge('wear', side === 'high' ? limits.wearAbove : limits.wearBelow, side === 'high');
  return wear?.map((one) => ({ ...one, side }));
}

interface ReadingTried {
  size: number;
  isRead: boolean;
  /** The record with the size read with a gauge. */
  with: (gauge: string | undefined) => CellRecord;
}

/** The size as it was read, or as it is planned, and how it is read with another gauge. */
function readingOf(trial: TrialSheet, record: CellRecord, output: string): ReadingTried | { why: string } {
  const called = record.name ?? record.label ?? record.id;
  const computed = trial.computed();
  const plan = planOf(trial, record.id, output);
  const standing = plan?.measured ?? plan?.planned;
  const row = standing === undefined ? undefined : computed.network.rows.get(standing);
  const size = row && computed.grid.nominal(row.slot);
  if (!plan || typeof size !== 'number') return { why: `"${called}" has no value yet.` };
  const quantity = plan.quantity ?? record.quantity;
  const unit = displayUnit(quantity, trial.sheet.units, plan.display);
  const texts = new Texts(handbook, trial.sheet.units);
  const bare = (text: string): string | undefined => withoutDoubt(texts, text, quantity, unit);
  if (record.role === 'measured') {
    const entry = bare(record.entry ?? '');
    if (entry === undefined)
      return { why: `"${called}" is a calculation and no reading: no gauge reads it.` };
    const { gauge: _, ...rest } = record;
    return { size, isRead: true, with: (gauge) => ({ ...rest, entry, ...(gauge ? { gauge } : {}) }) };
  }
  const own = record.role === 'cell' ? record.outputs?.[output]?.measured : record.measured;
  const isRead = plan.measured !== undefined && own !== undefined;
  const aim = isRead ? size : aimOf(trial, record.id, output, size);
  const entry = isRead ? bare(own.entry) : writtenIn(aim, unit);
  if (entry === undefined) return { why: `"${called}" is a calculation and no reading: no gauge reads it.` };
  const { gauge: _, ...rest } = own ?? {};
  const as = (gauge: string | undefined): Measured => ({ ...rest, entry, ...(gauge ? { gauge } : {}) });
  return {
    size: aim,
    isRead,
    with: (gauge) =>
      record.role === 'cell'
        ? {
            ...record,
            outputs: { ...record.outputs, [output]: { ...record.outputs?.[output], measured: as(gauge) } },
          }
        : { ...record, measured: as(gauge), ...(gauge ? { gauge } : {}) },
  };
}

/** Where a size that is cut is aimed at. */
const aimOf = (trial: TrialSheet, cell: string, output: string, size: number): number =>
  trial.result(cell)?.outputs[output]?.planned?.aim ?? size;

/** Readings without a doubt written behind them, which would stand before that of a gauge. */
function withoutDoubt(
  texts: Texts,
  text: string,
  quantity: string | undefined,
  unit: Unit,
): string | undefined {
  const { entry, problems } = texts.entry(text, quantity, 'measured');
  if (problems.length > 0 || entry.kind === 'formula' || entry.kind === 'blank') return undefined;
  if (entry.kind === 'readings')
    return entry.stations
      .map((station) => station.map(({ value }) => writtenIn(value, unit)).join('; '))
      .join(' | ');
  const size = sizeOf(entry);
  return size === undefined ? undefined : writtenIn(size.value, unit);
}

/** The doubt up to which a size is proven, and the limit that asks for it; none where it is not even without any. */
function neededDoubt(
  edges: readonly LimitEdge[] | undefined,
  rule: DecisionRule,
  scale: number,
): { doubt: number | undefined; at: Place } | undefined {
  const [first] = edges ?? [];
  if (!edges || !first) return undefined;
  const judged = (doubt: number): Verdict => {
    const margins = edges.map(({ at, value, own, u, side }) => {
      const margin: Margin = {
        value,
        low: value - own - doubt,
        high: value + own + doubt,
        centre: value,
        u: Math.hypot(doubt / 2, u),
      };
      return [at, side ? { ...margin, side } : margin] as const;
    });
    const found = judge({ mode: 'part', rule, scale, ...Object.fromEntries(margins) });
    return first.at === 'wear' ? (found.inService as Verdict) : found.asNew;
  };
  const proves = (doubt: number): boolean => isProven(judged(doubt).state);
  const at = (doubt: number): Place => judged(doubt).at ?? first.at;
  if (!proves(0)) return { doubt: undefined, at: at(0) };
  let high = Math.max(...edges.map(({ value }) => Math.abs(value))) * 10;
  if (!(high > 0) || proves(high)) return { doubt: Number.POSITIVE_INFINITY, at: first.at };
  let low = 0;
  for (let i = 0; i < 100 && high - low > low * 1e-12; i++) {
    const middle = low + (high - low) / 2;
    if (proves(middle)) low = middle;
    else high = middle;
  }
  return { doubt: low, at: at(high) };
}

/** What the sheet says of a size as it was tried. */
function saidOf(
  trial: TrialSheet,
  cell: string,
  output: string,
  rule: DecisionRule,
): Pick<GaugeSaid, 'proves' | 'isShort' | 'doubt' | 'words'> {
  const result = trial.result(cell);
  const found = result?.outputs[output];
  const isNew = found?.check.asNew.state !== 'no limits';
  const verdict = isNew ? found?.check.asNew : found?.check.inService;
  const figure = found?.measured ?? found?.planned;
  const doubt =
    figure &&
    (rule === 'worst-case'
      ? Math.max(figure.value - figure.low, figure.high - figure.value)
      : expandedFactor(figure.dof) * figure.u);
  return {
    proves: isProven(verdict?.state),
    isShort: result?.slips.some(({ key }) => key.startsWith('gauge:')) === true,
    ...(doubt !== undefined && Number.isFinite(doubt) ? { doubt } : {}),
    words: found?.check.words ?? 'waiting',
  };
}
