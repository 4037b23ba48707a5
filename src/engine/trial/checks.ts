import { gradeOf, type Place, type Verdict } from '../../../shared/checks/states.ts';
import { eachInWords, inServiceWords } from '../../../shared/checks/words.ts';
import type { DecisionRule } from '../../../shared/sheet/format.ts';
import type { Computed } from '../computed.ts';
import type { Row } from '../network/layout.ts';
import { limitFigures, wearSide } from '../report/limit-figures.ts';
import type { RowKey } from '../rows/key.ts';
import type { CellResult } from '../rows/results.ts';

/** A check of the sheet: an output against the limits of a new part, or in service; or what must hold for a library cell. */
export interface CheckName {
  cell: string;
  output: string;
  as: 'new' | 'service' | 'valid';
}

/** A check below an input, with the rows that decide it. */
export interface CheckBelow extends CheckName {
  rule: DecisionRule;
  margins: Partial<Record<Place, Row>>;
  /** Where wear leads. */
  wearSide?: 'low' | 'high';
  /** Size compared, to tell arithmetic from a miss. */
  row?: Row;
  /** What must hold, and what is said where it does not. */
  valid?: Row;
  otherwise?: string;
}

/** Every check that follows from one of some rows, by what their formulas name, in the order of the cells. */
export function checksBelow(
  computed: Computed,
  keys: readonly RowKey[],
  order: readonly string[],
  rule: DecisionRule,
): CheckBelow[] {
  const reached = new Set<Row>();
  for (const key of keys) {
    const row = computed.network.rows.get(key);
    if (row) reached.add(row);
  }
  for (const row of reached) for (const user of row.usedBy) reached.add(user);
  const rowOf = (key: RowKey | undefined): Row | undefined =>
    key === undefined ? undefined : computed.network.rows.get(key);
  const found: CheckBelow[] = [];
  for (const id of order) {
    const cell = computed.cells.get(id);
    for (const plan of cell?.outputs ?? []) {
      const { limits } = plan;
      if (!limits) continue;
      const row = rowOf(plan.measured ?? plan.planned);
      const base = { cell: id, output: plan.name, rule: limits.rule ?? rule, ...(row ? { row } : {}) };
      const [lower, upper] = [rowOf(limits.lowerMargin), rowOf(limits.upperMargin)];
      const isReached = (...rows: (Row | undefined)[]): boolean =>
        rows.some((one) => one !== undefined && reached.has(one));
      if ((lower || upper) && isReached(row, lower, upper))
        found.push({ ...base, as: 'new', margins: { ...(lower && { lower }), ...(upper && { upper }) } });
      const wear = limits.wear === undefined || plan.justMade ? undefined : rowOf(computed.wearMargin(plan));
      if (!wear) continue;
      const side = wearSide(limitFigures(limits, computed));
      const other = side === 'high' ? lower : upper;
      if (isReached(row, wear, other))
        found.push({
          ...base,
          as: 'service',
          margins: { wear, ...(other && { [side === 'high' ? 'lower' : 'upper']: other }) },
          ...(side ? { wearSide: side } : {}),
        });
    }
    for (const { key, grade, otherwise } of cell?.validity ?? []) {
      const valid = rowOf(key);
      if (grade === 'error' && valid && reached.has(valid))
        found.push({ cell: id, output: '', as: 'valid', rule, margins: {}, valid, otherwise });
    }
  }
  return found;
}

/** How a check stands by the results of the sheet: whether it holds, and in words. */
export interface Stood {
  holds: boolean;
  /** It waits for a value, or for draws, and has no verdict. */
  waits: boolean;
  words: string;
}

export function stoodOf(check: CheckBelow, result: CellResult | undefined): Stood {
  if (check.as === 'valid') {
    const words = check.otherwise ?? '';
    const holds = !result?.remarks.some(({ grade, message }) => grade === 'error' && message === words);
    return { holds: result !== undefined && holds, waits: result === undefined, words };
  }
  const found = result?.outputs[check.output]?.check;
  const verdict: Verdict | undefined = check.as === 'new' ? found?.asNew : found?.inService;
  // An optional input was left blank, or it is a way that is not taken: nothing is judged here.
  const isUnjudged = found?.asNew.state === 'no limits' && !found.inService;
  if (result?.outputs[check.output]?.idle || isUnjudged || verdict?.state === 'no limits')
    return { holds: true, waits: false, words: '' };
  if (!found || !verdict) return { holds: false, waits: true, words: 'waiting' };
  const grade = gradeOf(verdict.state);
  const words =
    check.as === 'service'
      ? inServiceWords(verdict, found.where)
      : (found.inService ? eachInWords(found) : eachInWords({ asNew: verdict, where: found.where }))[0];
  return { holds: grade === 'in' || grade === 'near', waits: grade === undefined, words };
}

/** Something is judged there as the sheet stands. */
export const isJudged = (check: CheckBelow, result: CellResult | undefined): boolean => {
  const { holds, words } = stoodOf(check, result);
  return check.as === 'valid' || !holds || words !== '';
};
