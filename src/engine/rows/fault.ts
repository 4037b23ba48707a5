import { judge } from '../../../shared/checks/check.ts';
import { type Problem, problem } from '../../../shared/problem.ts';
import type { DecisionRule } from '../../../shared/sheet/format.ts';
import type { CellResult, OutputResult } from './results.ts';

/** Something in the program failed over a line, or over the sheet: a fault of ours, never of who typed it. */
export const faultProblem = (why: string): Problem =>
  problem(
    'fault',
    `The program failed here, and nothing is worked out: ${why.replace(/[.\s]*$/, '')}. What was typed is kept. Write it another way, and tell who looks after the program.`,
  );

const output = (why: string, rule: DecisionRule): OutputResult => ({
  stands: 'planned',
  check: judge({ mode: 'plan', rule, waiting: 'in error' }),
  problem: faultProblem(why),
});

/** A cell of which nothing is known any more: no figure, no verdict, no question of before is left. */
export const withoutFigures = ({ id, outputs, feeds }: CellResult, why: string): CellResult => ({
  id,
  outputs: Object.fromEntries(
    Object.entries(outputs).map(([name, { check, quantity, label }]) => [
      name,
      { ...output(why, check.rule), ...(quantity ? { quantity } : {}), ...(label ? { label } : {}) },
    ]),
  ),
  problems: [faultProblem(why)],
  remarks: [],
  slips: [],
  echoes: {},
  feeds,
});

/** The same of a cell that was never worked out. */
export const faultResult = (
  id: string,
  names: readonly string[],
  rule: DecisionRule,
  why: string,
): CellResult => ({
  id,
  outputs: Object.fromEntries(names.map((name) => [name, output(why, rule)])),
  problems: [faultProblem(why)],
  remarks: [],
  slips: [],
  echoes: {},
  feeds: [],
});
