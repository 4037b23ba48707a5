import { handbook } from '../../../cells/handbook.ts';
import type { SheetFile } from '../../../shared/sheet/format.ts';
import type { Row } from '../network/layout.ts';
import { Texts } from '../rows/texts.ts';
import { type CheckBelow, checksBelow, isJudged, type Stood, stoodOf } from '../trial/checks.ts';
import { freeRow } from '../trial/path.ts';
import type { InputPlace } from '../trial/place.ts';
import type { TrialSheet } from '../trial/trial-sheet.ts';
import { writtenIn } from '../workback/written.ts';
import type { CheckSaid, WindowAnswer, WindowEnd, WindowPiece } from './answer.ts';
import { type Movable, movableOf } from './input.ts';
import type { RoughPiece } from './pieces.ts';
import { placesFor, type Range, rangeFor, Steps } from './range.ts';
import { type RoughFound, roughly } from './roughly.ts';
import { settleEnd } from './settle.ts';

export interface WindowAsked extends InputPlace {
  /** Range to look through, SI, in place of the usual one. */
  range?: Range;
  /** The same as it is typed: `2.25 in .. 2.26 in`. */
  between?: string;
}

/** Pieces beside the one that holds the present value that are told. */
const MOST_OTHERS = 4;
/** Values within a window at which the sheet is worked out in full besides its ends. */
const WITHIN = 4;
/** So often checks that turn out to fail all along are left out and the search begun anew. */
const MOST_ROUNDS = 4;

/**
 * The range an input may take with every check below it holding, spread and all. Looked for by trials over corners
 * (`sweep.ts`); each end is then settled by working the sheet out in full with the input at that very figure, and told only
 * where every check holds by it. The trial sheet is left as it was.
 */
export function windowOf(trial: TrialSheet, asked: WindowAsked): WindowAnswer {
  const place: InputPlace = { cell: asked.cell, field: asked.field };
  const found = movableOf(trial, place);
  if ('why' in found) return { is: 'none', place, why: found.why, stays: true, leftOut: [] };
  const range = asked.between?.trim() ? rangeTyped(asked.between, found, trial) : asked.range;
  if (range === null)
    return {
      is: 'none',
      place,
      why: 'Write the range to look through by its two ends, as in 2.25 in .. 2.26 in.',
      leftOut: [],
    };
  try {
    return new Search(trial, found, range).run();
  } finally {
    trial.putBack();
  }
}

/** A range as it is typed; null where it is none, or of something else than the input. */
function rangeTyped(text: string, { quantity, unit }: Movable, { sheet }: TrialSheet): Range | null {
  const texts = new Texts(handbook, sheet.units);
  const { entry, problems } = texts.entry(text, quantity, 'given', unit.symbol);
  if (problems.length > 0 || entry.kind !== 'range') return null;
  const [one, other] = [entry.low.value, entry.high.value];
  return one === other ? null : { low: Math.min(one, other), high: Math.max(one, other) };
}

/** Where an input is looked for, and about what. */
export function lookFor(
  trial: TrialSheet,
  input: Movable,
  value: number | undefined,
): { range: Range; about: number } | undefined {
  const range = rangeFor({ ...input, ...(value === undefined ? {} : { value }) }, ownLimits(trial, input));
  return range && { range, about: value !== undefined && isIn(value, range) ? value : middle(range) };
}

/** What an input comes to as the sheet stands, SI: of a formula the number that is on the dial. */
export function valueNow(trial: TrialSheet, { key, value }: Movable): number | undefined {
  const { network, grid } = trial.computed();
  const row = network.rows.get(key);
  const now = row && grid.nominal(row.slot);
  return typeof now === 'number' ? now : value;
}

/** The limits of the input's own line, where they are figures. */
function ownLimits(trial: TrialSheet, { place }: Movable): Partial<Record<'lower' | 'upper', number>> {
  if (place.field !== 'entry') return {};
  const limits = trial.result(place.cell)?.outputs.value?.limits;
  return {
    ...(limits?.lower ? { lower: limits.lower.value } : {}),
    ...(limits?.upper ? { upper: limits.upper.value } : {}),
  };
}

class Search {
  private readonly order: string[];
  private readonly rule: SheetFile['rule'];
  private checks: CheckBelow[] = [];
  private readonly leftOut: CheckSaid[] = [];
  /** What was found at values the sheet was worked out for, SI. */
  private readonly worked = new Map<number, Map<CheckBelow, Stood>>();
  private readonly value: number | undefined;

  constructor(
    private readonly trial: TrialSheet,
    private readonly input: Movable,
    private readonly wanted: Range | undefined,
  ) {
    this.order = trial.sheet.cells.map(({ id }) => id);
    this.rule = trial.sheet.rule;
    this.value = valueNow(trial, input);
  }

  run(): WindowAnswer {
    const { input, trial } = this;
    const none = (why: string): WindowAnswer => ({
      is: 'none',
      place: input.place,
      why,
      leftOut: this.leftOut,
    });
    const value = this.value;
    const at: Movable = { ...input, ...(value === undefined ? {} : { value }) };
    const range = this.wanted ?? lookFor(trial, input, value)?.range;
    if (!range)
      return none(
        `"${input.name}" has no value yet, and nothing tells where to look: give it one, or a range.`,
      );
    if (!(range.high > range.low)) return none('The range to look through ends before it begins.');
    const about = value !== undefined && isIn(value, range) ? value : middle(range);
    const start = input.put(about);
    if (!start) return none(`"${input.name}" cannot be written as another value in ${input.unit.label}.`);
    trial.put(start);
    const free = freeRow(trial.computed(), input.key);
    this.checks = checksBelow(trial.computed(), [input.key], this.order, this.rule).filter((check) =>
      isJudged(check, trial.result(check.cell)),
    );
    if (!free || this.checks.length === 0)
      return none(`No check depends on "${input.name}": it may be anything as far as this sheet goes.`);
    for (let round = 0; round < MOST_ROUNDS; round++) {
      const { pieces, never } = this.rough(free, range, about, this.checks);
      this.leaveOut(never);
      if (this.checks.length === 0) return none(allFail(this.leftOut));
      const answer = this.settled(pieces, range, at);
      if (answer) return answer;
      // What trials let pass and the sheet never does is left out, and the rest looked at again.
      const failing = this.checks.filter((check) => this.isNever(check, free, range, about));
      if (failing.length === 0) break;
      this.leaveOut(failing);
      if (this.checks.length === 0) return none(allFail(this.leftOut));
    }
    const [from, to] = [range.low, range.high].map((si) => writtenIn(si, input.unit));
    return none(`From ${from} to ${to} no value of "${input.name}" has all its checks hold at once.`);
  }

  private rough(free: Row, range: Range, about: number, checks: readonly CheckBelow[]): RoughFound {
    const start = this.input.put(about);
    if (start) this.trial.put(start);
    return roughly(this.trial.computed(), free, range, about, checks);
  }

  /** True of a check that holds nowhere by the sheet itself, for all that trials say. */
  private isNever(check: CheckBelow, free: Row, range: Range, about: number): boolean {
    const holdsAt = (si: number): boolean => this.work(si)?.get(check)?.holds === true;
    if ([...this.worked.values()].some((stood) => stood.get(check)?.holds)) return false;
    const { pieces } = this.rough(free, range, about, [check]);
    return !pieces
      .slice(0, MOST_OTHERS)
      .some(({ low, high }) => [0.5, 0.25, 0.75, 0, 1].some((share) => holdsAt(low + (high - low) * share)));
  }

  /** Names checks that fail, or wait, whatever the input does, as they stand now; not one that holds all the same. */
  private leaveOut(checks: readonly CheckBelow[]): void {
    if (checks.length === 0) return;
    const stood = this.work(this.value ?? [...this.worked.keys()][0] ?? 0);
    const out = checks.filter((check) => !stood?.get(check)?.holds);
    for (const check of out)
      this.leftOut.push({ ...named(check), words: stood?.get(check)?.words ?? 'waiting' });
    this.checks = this.checks.filter((check) => !out.includes(check));
  }

  /** Works the sheet out with the input at a value; undefined where that cannot be written. */
  private work(si: number): Map<CheckBelow, Stood> | undefined {
    const known = this.worked.get(si);
    if (known) return known;
    const record = this.input.put(si);
    if (!record) return undefined;
    const { trial } = this;
    trial.put(record);
    if (trial.isSettling) trial.settle();
    const stood = new Map(this.checks.map((check) => [check, stoodOf(check, trial.result(check.cell))]));
    this.worked.set(si, stood);
    return stood;
  }

  private holds(si: number): boolean {
    const stood = this.work(si);
    return stood !== undefined && this.checks.every((check) => stood.get(check)?.holds === true);
  }

  /** The pieces with their ends settled by the sheet itself; undefined where none stands. */
  private settled(rough: readonly RoughPiece[], range: Range, at: Movable): WindowAnswer | undefined {
    const { value } = at;
    const holdsNow = value !== undefined && isIn(value, range) && this.holds(value);
    const isAt = ({ low, high }: RoughPiece): boolean => value !== undefined && low <= value && value <= high;
    const all = [...rough];
    if (holdsNow && !all.some(isAt)) all.push({ low: value, high: value });
    const own = all.find(isAt);
    const by = (one: RoughPiece): number => (one === own ? -1 : distance(one, value ?? one.low));
    const nearest = all.sort((a, b) => by(a) - by(b)).slice(0, 1 + MOST_OTHERS);
    const widest = Math.max(...nearest.map(({ low, high }) => high - low));
    const places = placesFor(own ? own.high - own.low : widest, at.unit);
    const steps = new Steps(at.unit, places);
    let piece: WindowPiece | undefined;
    const pieces: WindowPiece[] = [];
    for (const one of nearest) {
      const held = (si: number): boolean => pieces.some(({ low, high }) => low.at <= si && si <= high.at);
      if (one !== own && held(middle(one))) continue;
      const found = this.settle(one, steps, range, one === own ? value : undefined);
      if (!found) continue;
      pieces.push(found);
      if (holdsNow && one === own) piece = found;
    }
    if (pieces.length === 0) return undefined;
    return {
      is: 'found',
      place: at.place,
      name: at.name,
      unit: at.unit.symbol,
      places,
      ...(value === undefined ? {} : { value }),
      ...(piece ? { piece } : {}),
      others: pieces.filter((one) => one !== piece).sort((a, b) => a.low.at - b.low.at),
      searched: range,
      checks: this.checks.map(named),
      leftOut: this.leftOut,
      ...(at.metalOn ? { metalOn: at.metalOn } : {}),
    };
  }

  private settle(
    rough: RoughPiece,
    steps: Steps,
    range: Range,
    value: number | undefined,
  ): WindowPiece | undefined {
    const [from, to] = [steps.above(rough.low), steps.below(rough.high)];
    const probe = (step: number): boolean => this.holds(steps.value(step));
    const inside = this.insideOf(from, to, probe, value, steps);
    if (inside === undefined) return undefined;
    const [least, most] = [steps.above(range.low), steps.below(range.high)];
    let low = settleEnd(probe, inside, from, least);
    let high = settleEnd(probe, inside, to, most);
    // A gap that no trial fell into cuts the piece.
    for (const step of between(low.last, high.last, WITHIN)) {
      if (step === inside || probe(step)) continue;
      if (step < inside) low = settleEnd(probe, inside, step + 1, step);
      else high = settleEnd(probe, inside, step - 1, step);
    }
    return { low: this.end(low, steps), high: this.end(high, steps) };
  }

  /** A step within a piece at which all holds, the present value's own first. */
  private insideOf(
    from: number,
    to: number,
    probe: (step: number) => boolean,
    value: number | undefined,
    steps: Steps,
  ): number | undefined {
    const [least, most] = [Math.min(from, to), Math.max(from, to)];
    const near = value === undefined ? [] : [steps.below(value), steps.above(value)];
    const tries = [...near, Math.round((from + to) / 2), ...between(from, to, 3), from, to];
    return tries.find((step) => step >= least && step <= most && probe(step));
  }

  private end({ last, next }: { last: number; next?: number }, steps: Steps): WindowEnd {
    const stood = next === undefined ? undefined : this.work(steps.value(next));
    const closedBy = this.checks.flatMap((check) => {
      const one = stood?.get(check);
      return one && !one.holds ? [{ ...named(check), words: one.words }] : [];
    });
    return { at: steps.value(last), closedBy };
  }
}

const named = ({ cell, output, as }: CheckBelow): Omit<CheckSaid, 'words'> => ({ cell, output, as });

const isIn = (value: number, { low, high }: Range): boolean => low <= value && value <= high;

const middle = ({ low, high }: { low: number; high: number }): number => (low + high) / 2;

const distance = ({ low, high }: RoughPiece, value: number): number =>
  value < low ? low - value : Math.max(0, value - high);

/** Steps evenly between two others. */
const between = (low: number, high: number, count: number): number[] => {
  const found = new Set<number>();
  for (let i = 1; i <= count; i++) found.add(Math.round(low + ((high - low) * i) / (count + 1)));
  return [...found].filter((step) => step > low && step < high);
};

const allFail = (leftOut: readonly CheckSaid[]): string =>
  leftOut.length === 1
    ? 'The one check that depends on it fails, or waits, whatever this input is: that is to be settled first.'
    : `All ${leftOut.length} checks that depend on it fail, or wait, whatever this input is: they are to be settled first.`;
