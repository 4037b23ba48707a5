import { isNone } from '../../../shared/dimension.ts';
import type { Role } from '../../../shared/sheet/format.ts';
import { generalFunctions } from '../../language/functions/functions.ts';
import type { Expr, Literal, Reference, ValueType } from '../../language/syntax/syntax.ts';
import type { RowProof } from './row.ts';

/** What of a formula is written in it, by what it does to proof. */
type Place = 'factor' | 'exponent' | 'limit';

/** Lengths, areas and volumes, and what has no dimension: angles, ratios, counts. */
const isGeometric = ([, mass, time, temperature]: readonly number[]): boolean =>
  mass === 0 && time === 0 && temperature === 0;

/** A whole number, or a ratio of two as written: `2`, `3/4`. */
const isWhole = ({ value, text }: Literal): boolean =>
  Number.isInteger(value) || /^\s*(\d+\s+)?\d+\s*\/\s*\d+\s*$/.test(text);

/** What a number that is typed is to proof: a size is one still to be made, however it came to be known. */
export function proofOfLiteral(
  literal: Literal | undefined,
  { role, quantity }: { role: Role; quantity?: string | undefined },
): RowProof {
  if (role === 'chosen') return { is: 'planned' };
  if (!literal) return { is: 'settled' };
  const isSize =
    quantity === 'angle' ||
    (isGeometric(literal.dimension) && !isNone(literal.dimension)) ||
    isAngle(literal);
  if (isSize) return { is: 'planned' };
  return { is: isNone(literal.dimension) && !isWhole(literal) ? 'factor' : 'settled' };
}

const isAngle = ({ dimension, bare, unit }: Literal): boolean =>
  !bare && isNone(dimension) && /^(deg|arcmin|arcsec|rad|mrad|°)/.test(unit ?? '');

/** General functions that are no geometry: they belong to growth and decay. */
const NO_GEOMETRY = new Set(['EXP', 'LN', 'LOG', 'LOG10']);
const GENERAL = new Set(generalFunctions.map((fn) => fn.name));

const bare = (expr: Expr): Expr => (expr.kind === 'group' ? bare(expr.of) : expr);

/**
 * How a formula of the sheet follows from what it names: by geometry where all of it are lengths, angles, areas, volumes
 * and counts, and its plain factors whole numbers or ratios of them. A size written in it is one still to be made.
 */
export function proofOfFormula(
  expr: Expr,
  typeOf: (ref: Reference) => ValueType | { message: string },
): RowProof | undefined {
  if (bare(expr).kind === 'ref') return undefined;
  let isModel = false;
  let isPlanned = false;
  const walk = (at: Expr, place: Place): void => {
    switch (at.kind) {
      case 'literal':
        if (!isGeometric(at.dimension) || at.point) isModel = true;
        else if (place === 'limit' || place === 'exponent' || at.value === 0) return;
        else if (!isNone(at.dimension) || isAngle(at)) isPlanned = true;
        else if (!isWhole(at)) isModel = true;
        return;
      case 'ref': {
        const type = typeOf(at);
        if ('message' in type || (type.kind === 'quantity' && type.dimension && !isGeometric(type.dimension)))
          isModel = true;
        return;
      }
      case 'text':
        return;
      case 'group':
      case 'negate':
        walk(at.of, place);
        return;
      case 'compare':
        walk(at.left, 'limit');
        walk(at.right, 'limit');
        return;
      case 'binary':
        walk(at.left, place);
        walk(at.right, at.op === '^' ? 'exponent' : place);
        return;
      case 'call':
        if (!GENERAL.has(at.fn) || NO_GEOMETRY.has(at.fn)) isModel = true;
        at.args.forEach((arg, i) => {
          const isExponent = i === 1 && (at.fn === 'POWER' || /^(ROUND|CEILING|FLOOR|TRUNC)/.test(at.fn));
          walk(arg, isExponent ? 'exponent' : place);
        });
    }
  };
  walk(expr, 'factor');
  if (!isModel && !isPlanned) return undefined;
  return { ...(isModel ? { basis: 'model' } : {}), ...(isPlanned ? { planned: true } : {}) };
}
