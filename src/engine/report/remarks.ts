import { differenceUnit, formatQuantity } from '../../../shared/quantities/figures.ts';
import { displayUnit } from '../../../shared/quantities/quantities.ts';
import type { AssembledCell, LimitPlan, OutputPlan } from '../rows/assembled.ts';
import type { OutputResult, Remark, Slip } from '../rows/results.ts';
import { isAgainst, isTurned, limitFigures, wearSide } from './limit-figures.ts';
import type { Reading } from './reading.ts';
import { turnRemark } from './turns.ts';
import { OWN_DOUBT } from './unstated.ts';

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
  const text = formatQuantity(by, differenceUnit(unit), { spread: by });
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

/** What is said of a cell beside its figures. */
export function remarksOf(
  cell: AssembledCell,
  outputs: Readonly<Record<string, OutputResult>>,
  slips: readonly Slip[],
  from: Reading,
): Remark[] {
  const remarks: Remark[] = cell.cautions.map((message) => ({ grade: 'caution', message }));
  remarks.push(...unstatedRemarks(outputs));
  const turns = turnRemark(cell, from);
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
