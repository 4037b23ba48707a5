import { judge } from '../../../shared/checks/check.ts';
import type { Problem } from '../../../shared/problem.ts';
import { NOMINAL } from '../network/grid.ts';
import type { AssembledCell, OutputPlan } from '../rows/assembled.ts';
import type { CellResult, Figure, OutputResult } from '../rows/results.ts';
import { judgeOutput } from './judge-output.ts';
import { limitFigures } from './limit-figures.ts';
import { caseProblem, problemOf, unboundedProblem } from './problems.ts';
import type { Reading } from './reading.ts';
import { remarksOf } from './remarks.ts';

/** Puts together what a cell shows, from its plan and the rows as they stand. */
export function reportCell(cell: AssembledCell, from: Reading): CellResult {
  const outputs: Record<string, OutputResult> = {};
  const { id, problems, echoes } = cell;
  const aside = from.aside(id);
  for (const plan of cell.outputs) {
    const output = reportOutput(cell, plan, from);
    outputs[plan.name] = aside === undefined ? output : unjudged(output, id);
  }
  const slips = from.slips(id);
  const remarks = remarksOf(cell, outputs, slips, from);
  const feeds = [...cell.feeds];
  if (aside === undefined) return { id, outputs, problems, remarks, slips, echoes, feeds };
  return { id, aside, outputs, problems, remarks: [], slips: [], echoes, feeds };
}

/** Of a way that is not taken: its figures stand, and nothing is said of them. It waits for nothing. */
function unjudged({ drawn: _drawn, problem, ...output }: OutputResult, id: string): OutputResult {
  const waits = problem?.kind === 'blank' || problem?.originId !== id;
  return {
    ...output,
    ...(problem && !waits ? { problem } : {}),
    check: judge({ mode: 'plan', rule: output.check.rule }),
  };
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
    ...judgeOutput(cell.id, plan, row, value, limits, from, idle, broken?.unknown === true, problem),
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
  // What cannot be read in a limit is told at its field.
  else if (cell.problems.some(({ message }) => message === result.problem?.message)) delete result.problem;
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
