import { isNone, sameDimension } from '../../../shared/dimension.ts';
import type { Problem } from '../../../shared/problem.ts';
import { problem } from '../../../shared/problem.ts';
import { quantityKind } from '../../../shared/quantities/quantities.ts';
import { checkExpr, describeType } from '../../language/compile/check.ts';
import { askAngle } from '../../language/functions/types.ts';
import { angleIn } from '../../language/syntax/angular.ts';
import { constantOf } from '../../language/syntax/constant.ts';
import { printExpr } from '../../language/syntax/print.ts';
import { describeSort, remedyFor, sortOfQuantity, sortOfUnit } from '../../language/syntax/sort.ts';
import type { Expr, Reference, Spread, ValueType } from '../../language/syntax/syntax.ts';
import { short } from '../../language/syntax/wording.ts';
import type { CellBuilder } from './builder.ts';
import { mapRefs, quoted, rowRef } from './expr.ts';
import { proofOfFormula } from './proof.ts';
import type { RowProof } from './row.ts';
import type { SheetScope } from './scope.ts';
import { typeOfQuantity } from './type-of-quantity.ts';

/**
 * Takes a formula of the sheet: checks its dimensions, notes whom it mentions, and gives it over row keys; or the
 * problem with it. `wanted` is the kind of quantity the place needs; `isGeometry`: its author says that it is geometry.
 */
export function sheetFormula(
  build: CellBuilder,
  scope: SheetScope,
  expr: Expr,
  wanted: string | undefined,
  isGeometry?: boolean,
): { expr: Expr; type: ValueType; proof?: RowProof } | Problem {
  let wrong: Problem | undefined;
  mapRefs(expr, (ref) => {
    build.cell.mentions.add(ref.name);
    const id = scope.idOf(ref.name);
    if (id !== undefined) build.cell.feeds.add(id);
    return ref;
  });
  const types = { typeOf: (ref: Reference) => scope.typeOf(ref) };
  const { type, problems } = checkExpr(expr, types, scope.library.functions);
  if (problems[0]) return problems[0];
  if (type.kind === 'text') return noFigure(scope, expr);
  wrong = wanted === undefined ? undefined : misfit(type, wanted, expr);
  if (wrong) return wrong;
  const resolved = mapRefs(expr, (ref) => {
    const target = scope.resolve(ref);
    if ('message' in target) {
      wrong = target;
      return ref;
    }
    return target.choice === undefined ? rowRef(target.key, ref) : quoted(target.choice);
  });
  const proof = proofOfFormula(expr, types.typeOf, scope.library.functions, isGeometry);
  return wrong ?? { expr: resolved, type, ...(proof ? { proof } : {}) };
}

/** A choice, or a text in quotes, where a figure is wanted. */
function noFigure(scope: SheetScope, expr: Expr): Problem {
  const text = short(printExpr(expr));
  const target = expr.kind === 'ref' ? scope.resolve(expr) : undefined;
  const chosen = target && 'key' in target ? target.choice : undefined;
  return problem(
    'dimension',
    target
      ? `\`${text}\` is a choice${chosen === undefined ? '' : ` (${chosen})`} and no figure: name it where such a choice is made, or in a function that takes one.`
      : `${text} is a text, and a figure is wanted here.`,
    { from: expr.from, to: expr.to },
  );
}

/** Quantities whose sort a formula must meet; a plain number may hold anything without dimension. */
const SORTED = new Set(['angle', 'torque', 'energy', 'rotational speed']);

/** The problem of a spread that does not go with what the formula it stands behind gives. */
export function spreadMisfit(type: ValueType | undefined, spread: Spread): Problem | undefined {
  if (type?.kind !== 'quantity' || !type.dimension) return undefined;
  if (spread.percent && type.point)
    return problem(
      'dimension',
      'A share of a temperature on a scale says nothing, for its zero is where somebody put it: write the spread in degrees, such as ± 2 K.',
    );
  const { unit } = spread;
  if (!unit) return undefined;
  const sort = sortOfUnit(unit.symbol, unit.dimension);
  const fits = sameDimension(unit.dimension, type.dimension) && (!sort || !type.sort || sort === type.sort);
  if (fits) return undefined;
  const wanted = describeType({ ...type, point: false });
  return problem(
    'dimension',
    `The formula gives ${describeType(type)}, and its spread is ${describeType({ kind: 'quantity', dimension: unit.dimension, ...(sort ? { sort } : {}) })} (${unit.label}): write it as ${wanted}, or as a share in %.`,
  );
}

/** Functions that give one of their values, or what is near it. */
const TAKES_ONE = /^(MIN|MAX|MEDIAN|AVERAGE|SUM|ABS|ROUND|ROUNDUP|ROUNDDOWN|MROUND|CEILING|FLOOR|INT)$/;

/** A number without unit that a formula may come to: itself, or one of those it chooses from. */
const bareIn = (expr: Expr): Expr | undefined => {
  const value = constantOf(expr);
  if (value !== undefined) return value === 0 ? undefined : expr;
  if (expr.kind === 'group' || expr.kind === 'negate') return bareIn(expr.of);
  if (expr.kind !== 'call') return undefined;
  const of = expr.fn === 'IF' ? expr.args.slice(1) : TAKES_ONE.test(expr.fn) ? expr.args : [];
  return of.map(bareIn).find((one) => one !== undefined);
};

/** The problem of a formula whose value is not what its place wants. An unknown dimension fits everything. */
function misfit(type: ValueType, wanted: string, expr: Expr): Problem | undefined {
  const kind = quantityKind(wanted);
  if (!kind || type.kind !== 'quantity' || !type.dimension) return undefined;
  const place = typeOfQuantity(wanted);
  const samePoint = isNone(kind.dimension) || !type.point === !kind.point;
  const angle = wanted === 'rotational speed' ? angleIn(expr) : undefined;
  if (angle)
    return problem(
      'dimension',
      `a rotational speed is counted in turns here, ${angle.text} is an angle in a time: divide it by 2 * PI().`,
      { from: angle.from, to: angle.to },
    );
  const sort = SORTED.has(wanted) ? sortOfQuantity(wanted) : undefined;
  if (sort === 'angle') {
    const bare = type.sort === undefined ? bareIn(expr) : undefined;
    if (bare) {
      const text = printExpr(bare);
      return askAngle({ text, from: bare.from, to: bare.to }, `\`${short(text)}\``);
    }
  }
  if (sort && type.sort && type.sort !== sort && sameDimension(type.dimension, kind.dimension))
    return problem(
      'dimension',
      `This cell is ${describeSort[sort]}, but the formula gives ${describeSort[type.sort]}: ${remedyFor(sort)}.`,
      { from: expr.from, to: expr.to },
    );
  if (sameDimension(type.dimension, kind.dimension) && samePoint) return undefined;
  return problem(
    'dimension',
    `This cell is ${describeType(place)} (${kind.label}), but the formula gives ${describeType(type)}. Change the formula, or what the cell is.`,
    { from: expr.from, to: expr.to },
  );
}
