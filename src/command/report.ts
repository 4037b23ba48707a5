import type { CheckState } from '../../shared/checks/check.ts';
import { RULE_WORDS } from '../../shared/checks/decision-rules.ts';
import type { DecisionRule } from '../../shared/sheet/format.ts';
import type { CellResult } from '../engine/rows/results.ts';
import { isSettled } from './exit.ts';
import type { Finding } from './findings.ts';
import type { Line } from './lines.ts';
import { alignColumns } from './table.ts';

/** A heading of the sheet, or the lines of a cell. */
export type Block = { heading: string } | { lines: readonly Line[] };

/** The columns of a line; a library cell's own line has no figure, and its label stands behind its name. */
const columns = ({ number, name, by, value, limits, check, label }: Line): string[] =>
  name !== '' && value === ''
    ? [number, `${name}  ${label}`]
    : [number, name, by, value, limits, check, label];

/** The sheet's lines under their headings, all in the same columns. */
export const tableText = (blocks: readonly Block[]): string => {
  const rows = blocks.flatMap((block) => ('lines' in block ? block.lines.map(columns) : []));
  const aligned = alignColumns(rows, [0]);
  let at = 0;
  const text = blocks.flatMap((block) => {
    if ('heading' in block) return ['', `  ${block.heading}`];
    const from = at;
    at += block.lines.length;
    return aligned.slice(from, at).map((line) => `  ${line}`);
  });
  return `${text.join('\n')}\n`;
};

const GRADES: readonly [Finding['grade'], string][] = [
  ['open', 'Waiting or out of range'],
  ['question', 'Questions'],
  ['caution', 'Worth a look'],
];

/** Findings by grade; errors are told apart from these. */
export const findingsText = (findings: readonly Finding[]): string =>
  GRADES.map(([grade, title]) => {
    const found = findings.filter((one) => one.grade === grade);
    if (found.length === 0) return '';
    return `\n  ${title}\n${found.map(({ where, message }) => `    ${where}: ${message}`).join('\n')}\n`;
  }).join('');

/** How many checks there are in each state, those that ask for something first, and by which rule. */
export const countText = (results: readonly CellResult[], rule: DecisionRule): string => {
  const states = results.flatMap(({ outputs }) =>
    Object.values(outputs).flatMap(({ check, idle }) => (idle ? [] : [check.asNew.state])),
  );
  const counts = new Map<CheckState, number>();
  for (const state of states) if (state !== 'no limits') counts.set(state, (counts.get(state) ?? 0) + 1);
  const total = [...counts.values()].reduce((sum, n) => sum + n, 0);
  if (total === 0) return '\n  No cell has limits to check.\n';
  const words = [...counts]
    .sort(([a], [b]) => Number(isSettled(a)) - Number(isSettled(b)))
    .map(([state, n]) => `${n} ${state}`);
  const checks = total === 1 ? 'check' : 'checks';
  return `\n  ${total} ${checks}: ${words.join('; ')}\n  Decided by: ${RULE_WORDS[rule]}\n`;
};
