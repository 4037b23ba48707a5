import { type Dimension, dimension, isNone, NONE, sameDimension } from '../dimension.ts';
import type { SheetUnits } from '../sheet/format.ts';
import { writeRatio } from '../units/exact.ts';
import { findUnit, isUnit, parseUnit, type Unit } from '../units/units.ts';

/** What a cell's value is a value of. Kept with the cell, so that emptying it does not forget what belongs there. */
export interface QuantityKind {
  name: string;
  /** For people. */
  label: string;
  dimension: Dimension;
  /** A point on a temperature scale. */
  point?: boolean;
  /** Goes by its own name alone: a value of this dimension is not taken for one. */
  byName?: true;
  /** Units offered with an inch or a millimetre sheet; the first is preferred. */
  units: { in: readonly string[]; mm: readonly string[] };
  /**
   * Unit of a bare number: with the sheet's length unit, always the same, or (`''`) none. Absent: the sheet asks,
   * because the trade has no one unit for it.
   */
  bare?: { in: string; mm: string };
}

const both = (...units: string[]): QuantityKind['units'] => ({ in: units, mm: units });
const always = (unit: string) => ({ in: unit, mm: unit });

const kind = (
  name: string,
  dim: Dimension,
  units: QuantityKind['units'],
  more: Partial<Omit<QuantityKind, 'name' | 'dimension' | 'units'>> = {},
): QuantityKind => ({ name, label: name, dimension: dim, units, ...more });

/** In the order in which they are offered: of several with one dimension, the likeliest first. */
export const quantityKinds: readonly QuantityKind[] = [
  kind(
    'length',
    dimension(1),
    { in: ['in', 'thou', 'tenth_in', 'uin', 'ft'], mm: ['mm', 'um', 'cm', 'm'] },
    { bare: { in: 'in', mm: 'mm' } },
  ),
  kind('number', NONE, both('', '%', 'ppm'), { bare: always('') }),
  kind('angle', NONE, both('deg', 'arcmin', 'arcsec', 'rad', 'mrad'), { bare: always('deg') }),
  kind('interference per diameter', NONE, {
    in: ['thou/in', '%', ''],
    mm: ['um/mm', '%', ''],
  }),
  kind(
    'temperature',
    dimension(0, 0, 0, 1),
    { in: ['degF', 'degC', 'K'], mm: ['degC', 'degF', 'K'] },
    { point: true, bare: { in: 'degF', mm: 'degC' } },
  ),
  kind(
    'temperature difference',
    dimension(0, 0, 0, 1),
    { in: ['degF_diff', 'degC_diff', 'K'], mm: ['degC_diff', 'K', 'degF_diff'] },
    { bare: { in: 'degF_diff', mm: 'degC_diff' } },
  ),
  kind('expansion coefficient', dimension(0, 0, 0, -1), {
    in: ['uin/(in.degF)', 'um/(m.K)', '1/degF', '1/K'],
    mm: ['um/(m.K)', 'uin/(in.degF)', '1/K', '1/degF'],
  }),
  kind('force', dimension(1, 1, -2), {
    in: ['lbf', 'kip', 'short_tonf', 'long_tonf'],
    mm: ['N', 'kN', 'kgf', 'tonnef'],
  }),
  kind('pressure', dimension(-1, 1, -2), { in: ['psi', 'ksi', 'Mpsi'], mm: ['MPa', 'kPa', 'GPa', 'bar'] }),
  kind('torque', dimension(2, 1, -2), { in: ['lbf.ft', 'lbf.in', 'ozf.in'], mm: ['N.m', 'kgf.m', 'N.mm'] }),
  kind('energy', dimension(2, 1, -2), { in: ['ft.lbf', 'Btu'], mm: ['J', 'kJ', 'kWh'] }),
  kind('power', dimension(2, 1, -3), { in: ['hp', 'W', 'kW'], mm: ['W', 'kW', 'hp_metric'] }),
  kind('area', dimension(2), { in: ['in2', 'ft2'], mm: ['mm2', 'cm2', 'm2'] }),
  kind('volume', dimension(3), {
    in: ['in3', 'gal_us', 'gal_imp', 'qt_us', 'ft3'],
    mm: ['cm3', 'L', 'mL', 'mm3', 'm3'],
  }),
  kind('mass', dimension(0, 1), { in: ['lb', 'oz', 'short_ton', 'long_ton'], mm: ['kg', 'g', 'tonne'] }),
  kind('density', dimension(-3, 1), { in: ['lb/in3', 'lb/ft3'], mm: ['kg/m3', 'g/cm3'] }),
  kind('speed', dimension(1, 0, -1), {
    in: ['ft/min', 'ft/s', 'in/s', 'in/min', 'mph'],
    mm: ['m/s', 'm/min', 'mm/s', 'mm/min', 'km/h'],
  }),
  kind('rotational speed', dimension(0, 0, -1), both('rpm', 'rev/s', '1/s', 'Hz'), { bare: always('rpm') }),
  kind('flow', dimension(3, 0, -1), { in: ['gpm_us', 'gpm_imp', 'cfm'], mm: ['L/min', 'L/s', 'm3/h'] }),
  kind('viscosity', dimension(-1, 1, -1), { in: ['cP', 'reyn'], mm: ['mPa.s', 'cP', 'Pa.s'] }),
  kind('kinematic viscosity', dimension(2, 0, -1), both('cSt', 'mm2/s', 'St', 'm2/s')),
  kind('time', dimension(0, 0, 1), both('s', 'min', 'h', 'ms', 'day')),
  kind('stiffness', dimension(0, 1, -2), { in: ['lbf/in', 'lbf/thou'], mm: ['N/mm', 'N/um', 'N/m'] }),
  kind('conductivity', dimension(1, 1, -3, -1), { in: ['Btu/(h.ft.degF)', 'W/(m.K)'], mm: ['W/(m.K)'] }),
  // ISO 54 lays modules down in millimetres; an inch gear is told by its diametral pitch.
  kind('gear module', dimension(1), both('mm', 'in'), { bare: always('mm'), byName: true }),
  kind('pressure times speed', dimension(0, 1, -3), {
    in: ['psi.ft/min', 'MPa.m/s'],
    mm: ['MPa.m/s', 'psi.ft/min'],
  }),
];

const byName = new Map(quantityKinds.map((k) => [k.name, k] as const));

export const quantityKind = (name: string): QuantityKind | undefined => byName.get(name);

/** Kinds a value of this dimension may be, the likeliest first. */
export const kindsOf = (dim: Dimension, point = false): QuantityKind[] =>
  quantityKinds.filter((k) => !k.byName && sameDimension(k.dimension, dim) && (k.point ?? false) === point);

/** Which of the two systems of units a kind follows: temperatures have a setting of their own. */
const system = (k: QuantityKind, units: SheetUnits): 'in' | 'mm' => {
  if (k.name !== 'temperature' && k.name !== 'temperature difference') return units.length;
  if (!units.temperature) return units.length;
  return units.temperature === 'degF' ? 'in' : 'mm';
};

/**
 * Unit a bare number gets at commit: `''` where none belongs (a number), undefined where it must be asked or the kind
 * is not known.
 */
export const bareUnit = (name: QuantityKind | string | undefined, units: SheetUnits): string | undefined => {
  const k = typeof name === 'string' ? byName.get(name) : name;
  return k?.bare?.[system(k, units)];
};

/** The unit of plain numbers. */
export const NUMBER_UNIT: Unit = {
  symbol: '',
  dimension: NONE,
  factor: 1,
  ratio: '1/1',
  point: false,
  label: '',
};

const BASE_SYMBOLS = ['m', 'kg', 's', 'K'] as const;
const SUPERSCRIPT: Readonly<Record<string, string>> = { '-': '⁻', '.': '·' };

/** SI base unit of any dimension: `m²·s⁻¹`; its symbol reads back where the powers are whole. */
export const baseUnit = (dim: Dimension): Unit => {
  if (isNone(dim)) return NUMBER_UNIT;
  const parts = BASE_SYMBOLS.map((symbol, i) => ({ symbol, power: dim[i] as number })).filter(
    ({ power }) => power !== 0,
  );
  const raised = (power: number): string => (power === 1 ? '' : String(power));
  const up = (text: string): string =>
    [...text].map((c) => SUPERSCRIPT[c] ?? '⁰¹²³⁴⁵⁶⁷⁸⁹'[Number(c)] ?? c).join('');
  return {
    symbol: parts.map(({ symbol, power }) => symbol + raised(power)).join('.'),
    dimension: dim,
    factor: 1,
    ratio: writeRatio({ n: 1n, d: 1n }),
    point: false,
    label: parts.map(({ symbol, power }) => symbol + up(raised(power))).join('·'),
  };
};

/** A point scale where only a difference makes sense is read as the scale's difference. */
const fitted = (unit: Unit, k: QuantityKind): Unit | undefined => {
  if (!sameDimension(unit.dimension, k.dimension)) return undefined;
  if (unit.point && !k.point)
    return findUnit(`${unit.symbol}_diff`) ?? { ...unit, offset: undefined, point: false };
  return unit.point === (k.point ?? false) ? unit : undefined;
};

const unitFor = (symbol: string, k: QuantityKind): Unit | undefined => {
  if (symbol === '') return isNone(k.dimension) ? NUMBER_UNIT : undefined;
  const unit = parseUnit(symbol, { dimension: k.dimension, point: k.point ?? false });
  return isUnit(unit) ? fitted(unit, k) : undefined;
};

/**
 * Unit to show a value in: the one asked for where it fits the kind, else the preferred one of the sheet's system.
 * Without a kind: the one asked for, else a plain number.
 */
export const displayUnit = (name: string | undefined, units: SheetUnits, display?: string): Unit => {
  const k = name === undefined ? undefined : byName.get(name);
  if (!k) {
    const unit = display ? parseUnit(display) : NUMBER_UNIT;
    return isUnit(unit) ? unit : NUMBER_UNIT;
  }
  const wanted = display === undefined ? undefined : unitFor(display, k);
  return wanted ?? unitFor(k.units[system(k, units)][0] ?? '', k) ?? baseUnit(k.dimension);
};
