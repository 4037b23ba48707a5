/**
 * Reads what people type: entries, tolerances, limits and formulas. Nothing here throws on bad input; what is wrong is
 * in `problems`, each with its span in the text and, where there is one, a remedy. No value is given beside a problem
 * that could change it.
 */
import { type Problem, problem } from '../../shared/problem.ts';
import { NUMBER_UNIT } from '../../shared/quantities/quantities.ts';
import type { SheetUnits } from '../../shared/sheet/format.ts';
import { findUnit } from '../../shared/units/units.ts';
import { diagnoseFormula, diagnoseLiteral, diagnoseTolerance } from './diagnose.ts';
import { readForm } from './forms/forms.ts';
import { operands, readExpression } from './formula.ts';
import { cleaned, isFormula, shapeOf, treeOf } from './grammar/tree.ts';
import { refuse } from './refusals.ts';
import { levelProblem, sizeProblem } from './syntax/size.ts';
import type { Entry, Expr, ParsedEntry, Reference, Spread } from './syntax/syntax.ts';
import { type EntryContext, NO_HANDBOOK } from './values/context.ts';
import { edited, type Reading, reading, sliceOf, wanted } from './values/reading.ts';
import { contextKey, type PlainForm, plainForm, retyped } from './values/retyped.ts';
import { settle } from './values/settle.ts';
import {
  isShareOnly,
  readSpread,
  resolveClass,
  resolveSpread,
  type TypedSpread,
  unitOfSpread,
} from './values/spread.ts';
import { asksSizeUnit } from './values/tolerance-unit.ts';

export type { EntryContext, Handbook } from './values/context.ts';
export { NO_HANDBOOK } from './values/context.ts';

const BLANK: Entry = { kind: 'blank' };

const finish = (r: Reading): string =>
  (r.problems.length > 0 ? r.text : edited(r.text, r.edits)).trim().normalize('NFC');

/** Reads a formula's tree; its spread may be bare, and is then settled by `r.kind`. */
const readFormula = (r: Reading): { expr?: Expr; spread?: Spread } => {
  const { tree, sound } = treeOf('Formula', r.text, r.context.decimal);
  if (!sound) {
    diagnoseFormula(r, tree);
    return {};
  }
  const top = tree.topNode;
  const body = operands(top)[0];
  const expr = body && readExpression(r, body);
  if (!expr) return {};
  refuse(r, expr);
  const deep = levelProblem(expr);
  if (deep) r.problems.push(deep);
  const within = top.getChild('Within');
  const typed = within && readSpread(r, within, wanted(r));
  if (!typed) return { expr };
  // A share is of the formula's value, whatever unit that comes in.
  const unit = unitOfSpread(typed) ?? (isShareOnly(typed) ? NUMBER_UNIT : settle(r, typed.amounts)?.[0]);
  const spread = unit && resolveSpread(r, typed, unit);
  return spread ? { expr, spread: withUnitOf(spread, typed) } : { expr };
};

/** What a spread stands behind is not always known yet: then it is held against its unit once it is. */
const withUnitOf = (spread: Spread, typed: TypedSpread): Spread => {
  const unit = unitOfSpread(typed);
  return unit
    ? { ...spread, unit: { symbol: unit.symbol, label: unit.label, dimension: unit.dimension } }
    : spread;
};

/** Forms of plain values as last read, by all that their reading depends on but the digits. */
const plainForms = new Map<string, PlainForm>();
const KEPT = 500;

const keepForm = (key: string, form: PlainForm | undefined): void => {
  if (!form) return;
  if (plainForms.size >= KEPT) plainForms.clear();
  plainForms.set(key, form);
};

/**
 * Reads one entry. Where there is a problem `committed` is the text as it was, and the entry is blank unless what was
 * read so far can stand (a formula's tree, for its references).
 */
export const parseEntry = (text: string, context: EntryContext): ParsedEntry => {
  if (text.trim() === '') return { entry: BLANK, problems: [], committed: '' };
  const big = sizeProblem(text);
  if (big) return { entry: BLANK, problems: [big], committed: text };
  const r = reading(cleaned(text), context);
  if (isFormula(text)) {
    const { expr, spread } = readFormula(r);
    const entry: Entry = expr ? { kind: 'formula', expr, ...(spread ? { spread } : {}) } : BLANK;
    return { entry, problems: r.problems, committed: finish(r) };
  }
  const shape = shapeOf(r.text, context.decimal);
  const key = shape === undefined ? undefined : `${contextKey(context)} ${shape}`;
  const known = key === undefined ? undefined : plainForms.get(key);
  const again = known && retyped(r, known);
  if (again) return { entry: again, problems: [], committed: finish(r) };
  const { tree, sound } = treeOf('Literal', r.text, context.decimal);
  if (!sound) {
    diagnoseLiteral(r, tree);
    return { entry: BLANK, problems: r.problems, committed: text };
  }
  const form = readForm(r, tree.topNode);
  const read = form !== undefined && r.problems.length === 0;
  if (read && key !== undefined && form.echo === undefined) keepForm(key, plainForm(r, form.entry));
  return {
    entry: read ? form.entry : BLANK,
    problems: r.problems,
    ...(read && form.echo !== undefined ? { echo: form.echo } : {}),
    committed: finish(r),
  };
};

export interface ParsedTolerance {
  spread?: Spread;
  /** ISO 286 class as written; without a nominal it is known before its deviations are. */
  designation?: string;
  /** The line, and what of it, that a class is taken from. */
  from?: Reference;
  problems: Problem[];
  committed: string;
}

/**
 * Reads the field `tolerance`: `+0.0005 -0 in`, `± .02 mm`, `H7`. `nominal` in SI is needed for a class alone. A class that
 * is taken from another line, `= fit.shaft_class`, stays as it is: whoever knows the lines looks it up.
 */
export const parseTolerance = (
  text: string,
  context: EntryContext & { nominal?: number },
): ParsedTolerance => {
  if (text.trim() === '') return { problems: [], committed: '' };
  const big = sizeProblem(text);
  if (big) return { problems: [big], committed: text };
  if (isFormula(text)) return takenTolerance(text, context);
  const r = reading(cleaned(text), context);
  const { tree, sound } = treeOf('Cut', r.text, context.decimal);
  if (!sound) {
    diagnoseTolerance(r);
    return { problems: r.problems, committed: text };
  }
  const fit = tree.topNode.getChild('Fit');
  if (fit) {
    const designation = sliceOf(r, fit);
    const { nominal } = context;
    const spread =
      nominal === undefined ? undefined : resolveClass(r, context.handbook, nominal, designation, fit);
    return { ...(spread ? { spread } : {}), designation, problems: r.problems, committed: text };
  }
  const node = tree.topNode.getChild('Spread');
  const typed = node && readSpread(r, node, { dimension: wanted(r).dimension });
  const spread = typed && settledSpread(r, typed);
  const known = spread && typed && !r.kind ? withUnitOf(spread, typed) : spread;
  return { ...(known ? { spread: known } : {}), problems: r.problems, committed: finish(r) };
};

/** `= fit.shaft_class`, and nothing besides: a tolerance that is worked out has no sides. */
const takenTolerance = (text: string, context: EntryContext): ParsedTolerance => {
  const { expr, problems } = parseFormula(text, context);
  if (expr?.kind === 'ref' && problems.length === 0) return { from: expr, problems, committed: text };
  const words =
    'Behind `=` a tolerance is the class of another line and nothing besides, `= fit.shaft_class`.';
  return { problems: problems.length > 0 ? problems : [problem('syntax', words)], committed: text };
};

/** A tolerance stands alone: its unit is its own, or the sheet's for what the cell holds. */
const settledSpread = (r: Reading, typed: NonNullable<ReturnType<typeof readSpread>>): Spread | undefined => {
  const own = typed.amounts.map(({ unit }) => unit).find((unit) => unit !== undefined);
  const zero = typed.amounts.every(({ ratio }) => ratio.n === 0n);
  if (!own && zero && !r.kind) return { low: 0, high: 0, percent: false, form: typed.form };
  const value = r.kind && findUnit(r.kind.units[r.context.units.length][0] ?? '');
  if (own) return resolveSpread(r, typed, value ?? (isShareOnly(typed) ? NUMBER_UNIT : own));
  if (!isShareOnly(typed) && asksSizeUnit(r, typed)) return undefined;
  const unit = settle(r, typed.amounts)?.at(-1);
  return unit && resolveSpread(r, typed, unit);
};

export interface ParsedFormula {
  expr?: Expr;
  spread?: Spread;
  problems: Problem[];
  /** With a point, `;`, and any unit that had to be settled. */
  committed: string;
}

/** Reads a formula, with `=` in front or (in a library cell) without. */
export const parseFormula = (
  text: string,
  context: { units?: SheetUnits; decimal?: '.' | ','; quantity?: string } = {},
): ParsedFormula => {
  const { units = { length: 'mm' }, ...more } = context;
  const written = isFormula(text) ? text : `=${text}`;
  const big = sizeProblem(written);
  if (big) return { problems: [big], committed: text };
  const r = reading(cleaned(written), { ...more, units, handbook: NO_HANDBOOK });
  const read = readFormula(r);
  const shift = written.length - text.length;
  const problems = r.problems.map((p) =>
    shift === 0 || p.from === undefined
      ? p
      : { ...p, from: Math.max(0, p.from - shift), to: (p.to ?? p.from) - shift },
  );
  const committed = finish(r);
  return { ...read, problems, committed: shift === 0 ? committed : committed.slice(shift).trim() };
};
