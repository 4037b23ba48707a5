import { type Dimension, isNone } from '../../../shared/dimension.ts';
import { baseUnit, kindsOf } from '../../../shared/quantities/quantities.ts';
import { describeSort } from './sort.ts';
import type { ValueType } from './syntax.ts';

export const article = (noun: string): string => `${/^[aeiou]/i.test(noun) ? 'an' : 'a'} ${noun}`;

/** `a length`, `a temperature difference`, or by its base units where the trade has no name for it. */
export const describeDimension = (dim: Dimension, point = false): string => {
  if (isNone(dim)) return 'a plain number';
  const [kind] = kindsOf(dim, point);
  return kind ? article(kind.label) : `a quantity in ${baseUnit(dim).label}`;
};

export const describeType = (type: ValueType): string => {
  if (type.kind === 'logical') return 'true or false';
  if (type.kind === 'text') return 'a text';
  if (type.sort) return describeSort[type.sort];
  return type.dimension ? describeDimension(type.dimension, type.point) : 'not known yet';
};

/** A text short enough to stand in a sentence. */
export const short = (text: string, most = 40): string =>
  text.length > most ? `${text.slice(0, most - 3)}...` : text;
