import type { CheckVerdict, Verdict } from '../../../shared/checks/check.ts';
import { isAlike, isSameSetting, steady } from '../report/steady.ts';
import type { CellResult, Figure, LimitFigures, OutputResult, SheetResults } from '../rows/results.ts';

/**
 * Results on their way out of the worker. Of most lines that an edit moves nothing changes but numbers: those go as one
 * block, and the other side puts them into what it was last told of the cell.
 */
export interface PackedResults {
  rev: number;
  gone: string[];
  /** Cells of which more than numbers changed. */
  whole: CellResult[];
  /** The other cells that changed, and their numbers in the order in which {@link Unpacker} reads them. */
  moved: string[];
  numbers: Float64Array<ArrayBuffer>;
}

/** The sending side: remembers what was sent of each cell. */
export class Packer {
  private readonly sent = new Map<string, CellResult>();
  private numbers = new Float64Array(256);
  private count = 0;

  /** Wants results whose parts are the objects they were where they did not change: see `steady.ts`. */
  pack({ rev, cells, gone }: SheetResults): PackedResults {
    const whole: CellResult[] = [];
    const moved: string[] = [];
    this.count = 0;
    for (const id of gone) this.sent.delete(id);
    for (const cell of cells) {
      const before = this.sent.get(cell.id);
      const start = this.count;
      if (before && this.takeCell(cell, before)) moved.push(cell.id);
      else {
        this.count = start;
        whole.push(cell);
      }
      this.sent.set(cell.id, cell);
    }
    return { rev, gone, whole, moved, numbers: this.numbers.slice(0, this.count) };
  }

  /** Sends every cell whole when it next changes: it is not known what the other side has. */
  forget(): void {
    this.sent.clear();
  }

  private add(number: number): void {
    if (this.count === this.numbers.length) {
      const wider = new Float64Array(2 * this.count);
      wider.set(this.numbers);
      this.numbers = wider;
    }
    this.numbers[this.count++] = number;
  }

  /** Adds the numbers of a cell; false where more than numbers changed. */
  private takeCell(now: CellResult, before: CellResult): boolean {
    if (
      now.problems !== before.problems ||
      now.remarks !== before.remarks ||
      now.slips !== before.slips ||
      now.echoes !== before.echoes ||
      now.feeds !== before.feeds
    )
      return false;
    let count = 0;
    for (const name in now.outputs) {
      const old = before.outputs[name];
      if (!old || !this.takeOutput(now.outputs[name] as OutputResult, old)) return false;
      count++;
    }
    for (const _ in before.outputs) count--;
    return count === 0;
  }

  private takeOutput(now: OutputResult, before: OutputResult): boolean {
    if (now.problem !== before.problem || !isSameSetting(now, before) || !isAlike(now.check, before.check))
      return false;
    const known =
      this.takeFigure(now.planned, before.planned) &&
      this.takeFigure(now.measured, before.measured) &&
      this.takeFigure(now.difference, before.difference) &&
      this.takeFigure(now.replanned, before.replanned) &&
      this.takeLimits(now.limits, before.limits);
    if (now.check.k !== undefined) this.add(now.check.k);
    this.takeVerdict(now.check.asNew);
    this.takeVerdict(now.check.inService);
    return known;
  }

  private takeLimits(now: LimitFigures | undefined, before: LimitFigures | undefined): boolean {
    if (now === undefined || before === undefined) return now === before;
    return (
      now.metalOn === before.metalOn &&
      this.takeFigure(now.lower, before.lower) &&
      this.takeFigure(now.upper, before.upper) &&
      this.takeFigure(now.wear, before.wear)
    );
  }

  private takeFigure(now: Figure | undefined, before: Figure | undefined): boolean {
    if (now === undefined || before === undefined) return now === before;
    if ((now.aim === undefined) !== (before.aim === undefined)) return false;
    this.add(now.value);
    this.add(now.low);
    this.add(now.high);
    this.add(now.centre);
    this.add(now.u);
    this.add(now.dof);
    if (now.aim !== undefined) this.add(now.aim);
    return true;
  }

  private takeVerdict(now: Verdict | undefined): void {
    if (now?.by !== undefined) this.add(now.by);
  }
}

/** The receiving side: gives whole results, in which every part that did not change is the object it was. */
export class Unpacker {
  private readonly held = new Map<string, CellResult>();
  private numbers = new Float64Array(0);
  private at = 0;

  unpack({ rev, gone, whole, moved, numbers }: PackedResults): SheetResults {
    for (const id of gone) this.held.delete(id);
    this.numbers = numbers;
    this.at = 0;
    const cells = whole;
    for (const cell of whole) {
      const before = this.held.get(cell.id);
      this.held.set(cell.id, before ? steady(cell, before) : cell);
    }
    for (const id of moved) {
      const cell = this.cell(this.held.get(id) as CellResult);
      this.held.set(id, cell);
      cells.push(cell);
    }
    return { rev, cells, gone };
  }

  private cell(before: CellResult): CellResult {
    const outputs: Record<string, OutputResult> = {};
    let same = true;
    for (const name in before.outputs) {
      const old = before.outputs[name] as OutputResult;
      const now = this.output(old);
      outputs[name] = now;
      if (now !== old) same = false;
    }
    const { id, problems, remarks, slips, echoes, feeds } = before;
    return { id, outputs: same ? before.outputs : outputs, problems, remarks, slips, echoes, feeds };
  }

  private output(before: OutputResult): OutputResult {
    const planned = before.planned && this.figure(before.planned);
    const measured = before.measured && this.figure(before.measured);
    const difference = before.difference && this.figure(before.difference);
    const replanned = before.replanned && this.figure(before.replanned);
    const limits = before.limits && this.limits(before.limits);
    const check = this.check(before.check);
    const same =
      planned === before.planned &&
      measured === before.measured &&
      difference === before.difference &&
      replanned === before.replanned &&
      limits === before.limits &&
      check === before.check;
    if (same) return before;
    const now = { ...before };
    now.check = check;
    if (planned) now.planned = planned;
    if (measured) now.measured = measured;
    if (difference) now.difference = difference;
    if (replanned) now.replanned = replanned;
    if (limits) now.limits = limits;
    return now;
  }

  private limits(before: LimitFigures): LimitFigures {
    const lower = before.lower && this.figure(before.lower);
    const upper = before.upper && this.figure(before.upper);
    const wear = before.wear && this.figure(before.wear);
    if (lower === before.lower && upper === before.upper && wear === before.wear) return before;
    const now = { ...before };
    if (lower) now.lower = lower;
    if (upper) now.upper = upper;
    if (wear) now.wear = wear;
    return now;
  }

  private check(before: CheckVerdict): CheckVerdict {
    const k = before.k === undefined ? undefined : this.next();
    const asNew = this.verdict(before.asNew);
    const inService = before.inService && this.verdict(before.inService);
    if (Object.is(k, before.k) && asNew === before.asNew && inService === before.inService) return before;
    return { ...before, ...(k === undefined ? {} : { k }), asNew, ...(inService ? { inService } : {}) };
  }

  private verdict(before: Verdict): Verdict {
    if (before.by === undefined) return before;
    const by = this.next();
    return Object.is(by, before.by) ? before : { ...before, by };
  }

  private figure(before: Figure): Figure {
    const value = this.next();
    const low = this.next();
    const high = this.next();
    const centre = this.next();
    const u = this.next();
    const dof = this.next();
    const aim = before.aim === undefined ? undefined : this.next();
    const same =
      Object.is(value, before.value) &&
      Object.is(low, before.low) &&
      Object.is(high, before.high) &&
      Object.is(centre, before.centre) &&
      Object.is(u, before.u) &&
      Object.is(dof, before.dof) &&
      Object.is(aim, before.aim);
    if (same) return before;
    return aim === undefined
      ? { value, low, high, centre, u, dof }
      : { value, low, high, centre, u, dof, aim };
  }

  private next(): number {
    return this.numbers[this.at++] as number;
  }
}
