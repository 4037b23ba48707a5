import { quantityKind } from '../../../shared/quantities/quantities.ts';
import { quantity } from '../../language/functions/types.ts';
import { sortOfQuantity } from '../../language/syntax/sort.ts';
import type { ValueType } from '../../language/syntax/syntax.ts';

const typesByQuantity = new Map<string, ValueType>();

/** The same object for the same kind of quantity. */
export function typeOfQuantity(name: string): ValueType {
  let type = typesByQuantity.get(name);
  if (!type) {
    const kind = quantityKind(name);
    if (!kind) return { kind: 'quantity' };
    type = quantity(kind.dimension, kind.point, sortOfQuantity(name));
    typesByQuantity.set(name, type);
  }
  return type;
}
