import { RULE_WORDS } from '../../shared/checks/decision-rules.ts';
import type { CellRecord, SheetFile } from '../../shared/sheet/format.ts';
import { forksOf } from '../../shared/sheet/ways.ts';
import { standingOf } from '../engine/report/standing.ts';
import type { CellResult } from '../engine/rows/results.ts';
import type { Finding } from './findings.ts';
import type { Line } from './lines.ts';
import { alignColumns } from './table.ts';

/** A heading of the sheet, or the lines of a cell. */
export type Block = { heading: string } | { lines: readonly Line[] };

/** The columns of a line; a library cell's own line has no figure, and its label stands behind its name. */
const columns = ({ number, name, by, value, limits, check, label }: Line): string[] =>
  name !== '' && value === ''
    ? [number, `${name}  ${label}${check === '' ? '' : ` (${check})`}`]
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

/** How the sheet stands, by which ways, and by which rule. */
export const standingText = (
  lines: readonly { cell: CellRecord; result: CellResult }[],
  { rule, units, ways }: SheetFile,
): string => {
  const { total, words } = standingOf(
    lines.map(({ cell, result }) => ({ record: cell, result })),
    units,
  );
  const forks = forksOf(
    lines.map(({ cell }) => cell),
    ways,
  ).map(({ to, by, taken }) =>
    taken === undefined
      ? `  ${to}: ${by.join(', or ')}; none is taken, and each counts\n`
      : `  ${to}: ${taken}; the rest is set aside\n`,
  );
  return `\n  ${words}\n${forks.join('')}${total === 0 ? '' : `  Decided by: ${RULE_WORDS[rule]}\n`}`;
};
