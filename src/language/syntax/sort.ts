import type { Dimension } from '../../../shared/dimension.ts';
import { isNone } from '../../../shared/dimension.ts';
import { findUnit } from '../../../shared/units/units.ts';

/** What tells quantities of one dimension apart, where confusing them is a mistake; absent of what may be either. */
export type Sort = 'angle' | 'plain' | 'torque' | 'energy' | 'turns' | 'angular speed';

const UNITS: Readonly<Record<string, Sort>> = {
  'N.m': 'torque',
  'N.mm': 'torque',
  'kN.m': 'torque',
  'kgf.m': 'torque',
  J: 'energy',
  kJ: 'energy',
  MJ: 'energy',
  kWh: 'energy',
  Btu: 'energy',
  rpm: 'turns',
  'rev/s': 'turns',
  '%': 'plain',
  permille: 'plain',
  ppm: 'plain',
};

const ANGULAR = /(?:^|[^A-Za-z])(?:m?rad|deg|arcmin|arcsec)(?![A-Za-z])/;

/** An angle, or an angle in a time: without dimension, yet no plain number and no count of turns. */
export const isAngular = (unit: string | undefined): boolean => ANGULAR.test(unit ?? '');

export const sortOfUnit = (unit: string | undefined, dimension: Dimension): Sort | undefined => {
  if (unit === undefined) return undefined;
  if (isAngular(unit)) {
    if (isNone(dimension)) return 'angle';
    return dimension[2] === -1 && dimension.every((power, i) => i === 2 || power === 0)
      ? 'angular speed'
      : undefined;
  }
  return UNITS[findUnit(unit)?.symbol ?? unit];
};

const QUANTITIES: Readonly<Record<string, Sort>> = {
  angle: 'angle',
  number: 'plain',
  torque: 'torque',
  energy: 'energy',
  'rotational speed': 'turns',
};

export const sortOfQuantity = (name: string | undefined): Sort | undefined =>
  name === undefined ? undefined : QUANTITIES[name];

export const describeSort: Readonly<Record<Sort, string>> = {
  angle: 'an angle',
  plain: 'a plain number',
  torque: 'a torque',
  energy: 'an energy',
  turns: 'a count of turns in a time',
  'angular speed': 'an angle in a time',
};

const OTHERWISE: Readonly<Partial<Record<Sort, string>>> = {
  angle: 'a plain number times 1 rad is an angle',
  plain: 'a plain number times 1 rad is an angle',
  torque: 'write a torque in N.m and an energy in J',
  energy: 'write a torque in N.m and an energy in J',
  turns: 'an angle in a time, divided by 2 * PI(), counts turns',
  'angular speed': 'an angle in a time, divided by 2 * PI(), counts turns',
};

/** What to do about two sorts that do not go together. */
export const remedyFor = (one: Sort): string => OTHERWISE[one] ?? '';
