import { library } from '../../../cells/catalogue.ts';
import type { CheckState } from '../../../shared/checks/states.ts';
import type { CellRecord, DecisionRule, Limits, SheetFile } from '../../../shared/sheet/format.ts';
import { computeSheet } from '../../../src/engine/compute.ts';
import { type Dice, drawsOf, pointsOf, type Sample } from './oracle.ts';

const RULES: readonly DecisionRule[] = ['worst-case', 'iso14253-2013', 'iso14253-2017'];

/** What a rule lets lie beyond the limits: each, by the edition of 2013 that of a normal figure beyond twice its standard uncertainty; of 2017 together. */
const ALLOWED: Partial<Record<DecisionRule, number>> = {
  'iso14253-2013': 0.0227501319,
  'iso14253-2017': 0.05,
};

/** Limits of a formula, metres. */
interface Ends {
  lower?: number;
  upper?: number;
  /** Beyond the upper limit: how far a part in service may wear. */
  wear?: number;
}

const round = (x: number): number => Number((x * 1e6).toFixed(4));
const limitsOf = ({ lower, upper, wear }: Ends): Limits => ({
  ...(lower === undefined ? {} : { lower: `${round(lower)} um` }),
  ...(upper === undefined ? {} : { upper: `${round(upper)} um` }),
  ...(wear === undefined ? {} : { wear: `${round(wear)} um` }),
});
/** As they are typed. */
const typed = ({ lower, upper, wear }: Ends): Ends => ({
  ...(lower === undefined ? {} : { lower: round(lower) / 1e6 }),
  ...(upper === undefined ? {} : { upper: round(upper) / 1e6 }),
  ...(wear === undefined ? {} : { wear: round(wear) / 1e6 }),
});

/** Limits near where a verdict turns: at the share that a rule allows, at an end, or at the figure itself. */
function endsOf(sorted: Float64Array, rule: DecisionRule, dice: Dice): Ends | undefined {
  const n = sorted.length;
  const p = ALLOWED[rule] ?? 0;
  const share = (): number => {
    const kind = dice.to(6);
    if (kind === 0) return dice.next();
    if (kind === 1) return 0;
    const away = [0.5, 0.92, 1.08, 1.25, 4][dice.to(5)] as number;
    return p * away || dice.of([0, 1e-4, 0.01]);
  };
  const at = (q: number): number => sorted[Math.min(n - 1, Math.max(0, Math.floor(q * n)))] as number;
  const kind = dice.to(5);
  const lower = at(share());
  const upper = at(1 - share());
  if (!Number.isFinite(lower + upper)) return undefined;
  // Beyond which nearly all of it lies.
  if (kind === 0) return { lower: at(1 - share()) };
  if (kind === 1) return { upper: at(share()) };
  if (kind === 2) return { lower };
  if (kind === 3) return { upper };
  if (!(lower < upper)) return undefined;
  return dice.to(3) === 0 ? { lower, upper, wear: Math.max(upper, at(1 - share())) } : { lower, upper };
}

/** A verdict that says more than is true. */
interface Unsafe {
  line: string;
  rule: DecisionRule;
  state: string;
  why: string;
  file: SheetFile;
}

export interface Tally {
  lines: number;
  judged: Record<string, number>;
  unsafe: Unsafe[];
}

const fileOf = (
  sample: Sample,
  limits: readonly (Ends | undefined)[],
  rule: DecisionRule,
  length: 'mm' | 'in',
): SheetFile => ({
  format: 'fitwright-sheet',
  version: 2,
  title: { title: 'random' },
  units: { length },
  rule,
  cells: [
    ...sample.leaves.map(
      ({ role, entry, quantity = 'length' }, i): CellRecord => ({
        id: `x${i}`,
        name: `x${i}`,
        role,
        quantity,
        entry,
      }),
    ),
    ...sample.formulas.map(
      ({ text }, i): CellRecord => ({
        id: `y${i}`,
        name: `y${i}`,
        role: 'worked',
        quantity: 'length',
        entry: `= ${text}`,
        ...(limits[i] ? { limits: limitsOf(limits[i]) } : {}),
      }),
    ),
  ],
});

const shares = (column: Float64Array, { lower, upper }: Ends, hair: number) => {
  let [below, above] = [0, 0];
  for (const value of column) {
    if (Number.isNaN(value)) {
      below++;
      above++;
      continue;
    }
    if (lower !== undefined && value < lower - hair) below++;
    if (upper !== undefined && value > upper + hair) above++;
  }
  return { below: below / column.length, above: above / column.length };
};

/** Why a grade says too much; undefined where it does not. */
function wrong(
  column: Float64Array,
  ends: Ends,
  grade: 'in' | 'out',
  rule: DecisionRule,
): string | undefined {
  const size = column.reduce((most, x) => (Number.isNaN(x) ? most : Math.max(most, Math.abs(x))), 1e-3);
  if (rule === 'worst-case') {
    const hair = 1e-9 * size;
    if (grade === 'in') {
      const bad = column.find(
        (x) => Number.isNaN(x) || x < (ends.lower ?? -1e9) - hair || x > (ends.upper ?? 1e9) + hair,
      );
      return bad === undefined ? undefined : `comes to ${bad}`;
    }
    const good = column.find((x) => x >= (ends.lower ?? -1e9) + hair && x <= (ends.upper ?? 1e9) - hair);
    return good === undefined ? undefined : `comes to ${good}`;
  }
  const p = ALLOWED[rule] ?? 0;
  const n = column.length;
  const slack = 5 * Math.sqrt((p * (1 - p)) / n);
  // On a limit by rounding alone is on either side of it, whichever suits.
  const hair = 1e-10 * size;
  const { below, above } = shares(column, ends, grade === 'in' ? hair : -hair);
  const none = column.reduce((sum, x) => sum + (Number.isNaN(x) ? 1 : 0), 0) / n;
  const either = Math.min(
    1,
    below + above - (ends.lower !== undefined && ends.upper !== undefined ? none : 0),
  );
  const told = `${(100 * below).toFixed(3)} % below, ${(100 * above).toFixed(3)} % above`;
  if (grade === 'in') {
    const missed =
      rule === 'iso14253-2017'
        ? either
        : Math.max(ends.lower === undefined ? 0 : below, ends.upper === undefined ? 0 : above);
    return missed > p + slack ? told : undefined;
  }
  const missed = rule === 'iso14253-2017' ? either : Math.max(below, above);
  return missed < 1 - p - slack ? told : undefined;
}

/** Every verdict of one random sheet under each rule against plain draws or points. */
export function hunt(sample: Sample, draws: number, dice: Dice, tally: Tally): void {
  const random = drawsOf(sample, draws, dice);
  const points = pointsOf(sample, 3000, dice);
  for (const rule of RULES) {
    const columns = rule === 'worst-case' ? points : random;
    const limits = columns.map((column) => {
      const sorted = column.filter((x) => !Number.isNaN(x)).sort();
      const ends = sorted.length > 0 ? endsOf(sorted, rule, dice) : undefined;
      return ends && typed(ends);
    });
    const file = fileOf(sample, limits, rule, dice.of(['mm', 'in']));
    const results = computeSheet(file, library);
    sample.formulas.forEach((_, i) => {
      const ends = limits[i];
      const output = results.byName(`y${i}`)?.outputs.value;
      const column = columns[i] as Float64Array;
      if (!output) return;
      const tell = (state: string, why: string): void => {
        tally.unsafe.push({ line: `y${i}`, rule, state, why, file });
      };
      const figure = output.measured ?? output.planned;
      if (rule === 'worst-case' && figure)
        for (const x of column) {
          const hair = 1e-9 * Math.max(1e-3, Math.abs(x));
          if (x >= figure.low - hair && x <= figure.high + hair) continue;
          if (Number.isNaN(x)) continue;
          tell('worst case', `${x} outside ${figure.low} .. ${figure.high}`);
          break;
        }
      if (!ends) return;
      const look = (state: CheckState, of: Ends): void => {
        tally.lines++;
        const name = `${rule} ${output.check.method ?? 'linear'} ${state}`;
        tally.judged[name] = (tally.judged[name] ?? 0) + 1;
        const grade = /^(holds|proven)/.test(state)
          ? 'in'
          : /^(misses|out of)/.test(state)
            ? 'out'
            : undefined;
        if (!grade || !wrong(column, of, grade, rule)) return;
        // Once more, with other draws and more of them.
        const again = rule === 'worst-case' ? column : (drawsOf(sample, 5 * draws, dice)[i] as Float64Array);
        const still = wrong(again, of, grade, rule);
        if (still) tell(state, still);
      };
      const { asNew, inService } = output.check;
      look(asNew.state, ends);
      const { lower, wear } = ends;
      if (inService && lower !== undefined && wear !== undefined)
        look(inService.state, { lower, upper: wear });
    });
  }
}
