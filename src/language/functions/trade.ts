import type { TradeFunction } from '../../../cells/record/cell.ts';
import { isNone, sameDimension } from '../../../shared/dimension.ts';
import { type Problem, problem } from '../../../shared/problem.ts';
import { quantityKind } from '../../../shared/quantities/quantities.ts';
import type { ValueType } from '../syntax/syntax.ts';
import { describeDimension, describeType } from '../syntax/wording.ts';
import type { ArgType, SheetFunction } from './function.ts';
import { dimensionOf, isPoint, named, needQuantity, quantity, UNKNOWN } from './types.ts';

const typeOfKind = (name: string): ValueType => {
  const kind = quantityKind(name);
  return kind ? quantity(kind.dimension, kind.point) : UNKNOWN;
};

const misfit = (
  fn: TradeFunction,
  takes: TradeFunction['takes'][number],
  arg: ArgType,
): Problem | undefined => {
  const where = `${fn.name}, argument ${takes.name},`;
  if ('text' in takes) {
    return arg.type.kind === 'text'
      ? undefined
      : problem(
          'dimension',
          `${where} needs a text in quotes or a choice; ${named(arg)} is ${describeType(arg.type)}.`,
          { from: arg.from, to: arg.to },
        );
  }
  const wrong = needQuantity(arg, where);
  if (wrong) return wrong;
  const kind = quantityKind(takes.quantity);
  const dim = dimensionOf(arg.type);
  if (!kind || !dim) return undefined;
  const fits =
    sameDimension(kind.dimension, dim) && (isNone(dim) || isPoint(arg.type) === (kind.point ?? false));
  return fits
    ? undefined
    : problem(
        'dimension',
        `${where} needs ${describeDimension(kind.dimension, kind.point)}; ${named(arg)} is ${describeType(arg.type)}.`,
        { from: arg.from, to: arg.to },
      );
};

/** A function of the cell library in the form the check takes. */
export const fromTrade = (fn: TradeFunction): SheetFunction => ({
  name: fn.name,
  purpose: fn.purpose,
  takes: fn.takes.map((argument) => argument.name),
  args: { min: fn.takes.length, max: fn.takes.length },
  type: (args) =>
    args.map((arg, i) => misfit(fn, fn.takes[i]!, arg)).find((wrong) => wrong) ?? typeOfKind(fn.gives),
  compute: fn.compute as SheetFunction['compute'],
  movement: fn.movement,
});
