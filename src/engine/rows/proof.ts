import type { TradeFunction } from '../../../cells/record/cell.ts';
import { isNone } from '../../../shared/dimension.ts';
import { quantityKind } from '../../../shared/quantities/quantities.ts';
import type { Role } from '../../../shared/sheet/format.ts';
import { generalFunctions } from '../../language/functions/functions.ts';
import { constantOf } from '../../language/syntax/constant.ts';
import { partsOf, unwrapped } from '../../language/syntax/parts.ts';
import type { Expr, Literal, Reference, ValueType } from '../../language/syntax/syntax.ts';
import type { ProofSpot, RowProof } from './row.ts';

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

/** Masses and times: no author makes geometry of a force or a speed, whereas a correction for temperature may be one. */
const isOfForce = ([, mass, time]: readonly number[]): boolean => mass !== 0 || time !== 0;

/** What a function of the trade does to proof in a formula of the sheet. */
function tradeSpot({ gives, compares }: TradeFunction, isGeometry: boolean): ProofSpot['is'] | undefined {
  const dimension = quantityKind(gives)?.dimension;
  const isSize = dimension && isGeometric(dimension) && !isNone(dimension);
  if (isSize && !compares) return 'planned';
  if (!isGeometry) return 'model';
  return dimension && isOfForce(dimension) ? 'model' : undefined;
}

/**
 * Sizes that a formula of the library is told by a table (the thread that is named, the key that goes with a shaft): of
 * parts that are not there.
 */
export function namedSizes(expr: Expr, trade: readonly TradeFunction[]): ProofSpot[] {
  const spots: ProofSpot[] = [];
  const walk = (at: Expr): void => {
    const fn = at.kind === 'call' ? trade.find(({ name }) => name === at.fn) : undefined;
    if (fn && !fn.compares) spots.push({ from: at.from, to: at.to, is: 'planned' });
    partsOf(at).forEach(walk);
  };
  walk(expr);
  return spots;
}

const ANGULAR = /^(SIN|COS|TAN|RADIANS)$/;

/** An angle that is written in as a figure, `RADIANS(31)`, `SIN(PI() / 6)`; one with its unit counts as a size by itself. */
const isAngleWritten = (args: readonly Expr[]): boolean => {
  const isTold = (at: Expr): boolean =>
    at.kind === 'ref' || (at.kind === 'literal' && isAngle(at)) || partsOf(at).some(isTold);
  return !args.some(isTold) && args.some((arg) => constantOf(arg) !== 0);
};

/** A root of a number is geometry, as the diagonal of a square is; to another power it may be any factor. */
const isRoot = (exponent: Expr): boolean => {
  const value = constantOf(exponent);
  return value !== undefined && [1, 2, 3].some((by) => Number.isInteger(value * by));
};

/**
 * What of a formula of the sheet is no geometry of what was measured: what it names or writes that is no length, angle, area,
 * volume or count, a plain factor other than a whole number or a ratio of them, a function of growth or of the trade; and a size
 * written in it, which is one still to be made. Where the author says that it is geometry, its factors and corrections are.
 */
export function proofOfFormula(
  expr: Expr,
  typeOf: (ref: Reference) => ValueType | { message: string },
  trade: readonly TradeFunction[],
  isGeometry = false,
): RowProof | undefined {
  const own = isGeometry ? ({ basis: 'geometry' } as const) : undefined;
  if (unwrapped(expr).kind === 'ref') return own;
  const spots: ProofSpot[] = [];
  const stop = ({ from, to }: Expr, is: ProofSpot['is']): void => {
    spots.push({ from, to, is });
  };
  const isForeign = (dimension: readonly number[]): boolean =>
    isGeometry ? isOfForce(dimension) : !isGeometric(dimension);
  const walk = (at: Expr, place: Place): void => {
    switch (at.kind) {
      case 'literal':
        if (isForeign(at.dimension) || (at.point && !isGeometry)) stop(at, 'model');
        else if (place === 'limit' || place === 'exponent' || at.value === 0) return;
        else if ((isGeometric(at.dimension) && !isNone(at.dimension)) || isAngle(at)) stop(at, 'planned');
        else if (!isGeometry && !isWhole(at)) stop(at, 'model');
        return;
      case 'ref': {
        const type = typeOf(at);
        if ('message' in type || (type.kind === 'quantity' && type.dimension && isForeign(type.dimension)))
          stop(at, 'model');
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
        walk(at.right, at.op === '^' ? exponentOf(at.left, at.right) : place);
        return;
      case 'call': {
        const fn = trade.find(({ name }) => name === at.fn);
        const is = fn
          ? tradeSpot(fn, isGeometry)
          : isGeometry || (GENERAL.has(at.fn) && !NO_GEOMETRY.has(at.fn))
            ? undefined
            : 'model';
        if (is) stop(at, is);
        else if (ANGULAR.test(at.fn) && isAngleWritten(at.args)) stop(at, 'planned');
        at.args.forEach((arg, i) => {
          if (i === 1 && at.fn === 'POWER') walk(arg, exponentOf(at.args[0] as Expr, arg));
          else walk(arg, i === 1 && /^(ROUND|CEILING|FLOOR|TRUNC)/.test(at.fn) ? 'exponent' : place);
        });
      }
    }
  };
  const exponentOf = (base: Expr, exponent: Expr): Place =>
    constantOf(base) === undefined || isRoot(exponent) ? 'exponent' : 'factor';
  walk(expr, 'factor');
  return spots.length === 0 ? own : { ...own, spots };
}
