import { CELL_FIELDS } from '../../../shared/sheet/cell-fields.ts';
import { fieldAtPath } from '../../../shared/sheet/field.ts';
import type { SheetFile } from '../../../shared/sheet/format.ts';
import { unitSymbols } from '../../../shared/units/units.ts';
import { parseFormula } from '../../language/parse.ts';
import type { Expr } from '../../language/syntax/syntax.ts';
import { flatten } from '../model/fields.ts';

/** A figure that goes into a template and that nobody who begins a job from it is asked for. */
export interface HeldFigure {
  /** Of the line. */
  id: string;
  /** `entry`, `limits.lower`, `tolerance` ... */
  field: string;
  /** `6 thou`, as it is written. */
  figure: string;
  /** `formula`: a number with a unit inside one. `tolerance`: how well the size is cut. `words`: of a label or a note. */
  in: 'formula' | 'tolerance' | 'words';
}

/** Numbers with a unit in a formula, but for nothing itself: a bare factor or a count belongs to no one machine. */
function figuresIn(expr: Expr): string[] {
  switch (expr.kind) {
    case 'literal':
      return expr.bare || expr.value === 0 ? [] : [expr.text];
    case 'call':
      return expr.args.flatMap(figuresIn);
    case 'negate':
    case 'group':
      return figuresIn(expr.of);
    case 'binary':
    case 'compare':
      return [...figuresIn(expr.left), ...figuresIn(expr.right)];
    default:
      return [];
  }
}

const SHARE = /^(%|percent)$/;

/** Figures of this machine that a template holds inside its formulas and as its tolerances, in the order of its lines. */
export const heldFigures = ({ cells }: Pick<SheetFile, 'cells'>): HeldFigure[] =>
  cells.flatMap((cell) =>
    [...flatten(cell, CELL_FIELDS)].flatMap(([field, value]): HeldFigure[] => {
      if (typeof value !== 'string' || !fieldAtPath(CELL_FIELDS, field)?.reads) return [];
      const { id } = cell;
      if (value.trimStart().startsWith('=')) {
        const { expr } = parseFormula(value);
        const figures = expr
          ? figuresIn(expr).filter((text) => !SHARE.test(text.replace(/^[\d./\s]+/, '')))
          : [];
        return [...new Set(figures)].map((figure) => ({ id, field, figure, in: 'formula' }));
      }
      // A class or a share goes with the size.
      const isTolerance = field === 'tolerance' && /[1-9].*\p{L}|[1-9].*["″′]/u.test(value);
      return isTolerance ? [{ id, field, figure: value, in: 'tolerance' }] : [];
    }),
  );

const SIZE = /((?:\d+[ -])?\d+\/\d+|\d*\.?\d+)\s*(["″]|[\p{L}°µμ][\p{L}\d°µμ/^.·]*)/gu;
const CLASS = /^\p{L}{1,2}\d{1,2}$/u;
/** Two in the housing, 1 in 48: no inches. */
const NO_INCHES = /^\s+(\d|(a|an|all|each|every|one|that|the|these|this)\b)/;

/** Sizes that a text names: a number with a unit, or with a class of ISO 286. */
function sizesIn(text: string): string[] {
  return [...text.matchAll(SIZE)].flatMap(({ 0: size, 2: unit = '', index }) => {
    const name = unit.replace(/\.$/, '');
    const rest = text.slice(index + size.length);
    if (CLASS.test(name)) return [size];
    if (!unitSymbols.has(name) || (name === 'in' && NO_INCHES.test(rest))) return [];
    return [size.replace(/\.$/, '')];
  });
}

/** Sizes that labels and notes name, and stay as they are written; those of the note of the sheet under no id. */
export const figuresInWords = ({ cells, title }: Pick<SheetFile, 'cells' | 'title'>): HeldFigure[] => {
  const of = (id: string, field: string, text = ''): HeldFigure[] =>
    sizesIn(text).map((figure) => ({ id, field, figure, in: 'words' }));
  return [
    ...of('', 'note', title.note),
    ...cells.flatMap(({ id, label, note }) => [...of(id, 'label', label), ...of(id, 'note', note)]),
  ];
};
