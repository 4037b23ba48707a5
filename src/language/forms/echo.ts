import type { Unit } from '../../../shared/units/unit.ts';
import { fromSI } from '../../../shared/units/units.ts';

/** A value as a decimal, to seven places at most: shown beside `1 1/8` so that a misreading is seen. */
export const decimalEcho = (si: number, unit: Unit): string => {
  const value = fromSI(si, unit);
  const size = Math.abs(value);
  const text =
    size >= 1e15 || (size > 0 && size < 1e-6) ? String(value) : value.toFixed(7).replace(/\.?0+$/, '');
  return unit.label === '' ? text : `${text} ${unit.label}`;
};
