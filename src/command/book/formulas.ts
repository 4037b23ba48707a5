import type { CellKind, CellOutput, TableColumn } from '../../../cells/record/cell.ts';
import { texName, toTex } from '../../language/display/tex.ts';
import { parseFormula } from '../../language/parse.ts';
import { code, mathBlock, plain } from './markdown.ts';

/** The right side of a formula in the sheet's language, as TeX. */
const tex = (formula: string): string => {
  const { expr, problems } = parseFormula(formula);
  if (!expr) throw new SyntaxError(`${formula}: ${problems[0]?.message ?? 'does not read'}`);
  return toTex(expr);
};

const fromTable = (kind: CellKind, { choice, column }: TableColumn): string => {
  const input = kind.inputs.find((one) => one.name === choice);
  return `Read from the table ${code(input?.choice ?? choice)}, column ${code(column)}, at the row chosen as ${code(choice)}.\n`;
};

const spreadText = ({ low, high, distribution, label }: NonNullable<CellOutput['spread']>): string =>
  `Brings a spread of its own, ${plain(label)} (${distribution}), from the lower to the upper of:\n\n${mathBlock(tex(low))}\n${mathBlock(tex(high))}`;

const limitTexts = ({ lower, upper, wear }: NonNullable<CellOutput['limits']>): string[] =>
  [
    lower && `not below ${code(lower.replace(/^=\s*/, ''))}`,
    upper && `not above ${code(upper.replace(/^=\s*/, ''))}`,
    wear && `worn out at ${code(wear.replace(/^=\s*/, ''))}`,
  ].filter((text): text is string => Boolean(text));

/** How a figure follows, so that it can be said what of it is proven by measuring. */
const BASIS = { geometry: 'by geometry', model: 'by a model' } as const;

/** One output: what it is, its formula as mathematics, the limits it is held to. */
export const outputText = (kind: CellKind, output: CellOutput): string => {
  const head = `**${plain(output.label)}**, ${code(output.name)} (${output.quantity}, ${BASIS[output.basis]})${output.face ? ', on the face' : ''}\n`;
  const limits = output.limits ? limitTexts(output.limits) : [];
  const parts = [
    head,
    output.hint ? `${plain(output.hint)}\n` : '',
    output.formula ? mathBlock(`${texName({ name: output.name })} = ${tex(output.formula)}`) : '',
    output.table ? fromTable(kind, output.table) : '',
    output.spread ? spreadText(output.spread) : '',
    limits.length > 0 ? `Checked: ${limits.join(', ')}.\n` : '',
  ];
  return parts.filter((text) => text !== '').join('\n');
};

export const conditionText = (formula: string): string => mathBlock(tex(formula));
