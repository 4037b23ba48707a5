/**
 * Physical dimension: exponents of length, mass, time and temperature, in that order. Exponents are rational and kept
 * as doubles that are multiples of 1/60 (halves, thirds, quarters, fifths), so SQRT and fourth roots stay exact.
 * Plane angle is dimensionless (SI); a revolution is a count, so rotational frequency is 1/T (ISO 80000-3).
 */
export type Dimension = readonly [length: number, mass: number, time: number, temperature: number];

const snap = (x: number): number => Math.round(x * 60) / 60 + 0;

export const dimension = (length = 0, mass = 0, time = 0, temperature = 0): Dimension => [
  snap(length),
  snap(mass),
  snap(time),
  snap(temperature),
];

export const NONE = dimension();

export const sameDimension = (a: Dimension, b: Dimension): boolean =>
  a[0] === b[0] && a[1] === b[1] && a[2] === b[2] && a[3] === b[3];

export const isNone = (a: Dimension): boolean => sameDimension(a, NONE);

export const timesDimension = (a: Dimension, b: Dimension): Dimension =>
  dimension(a[0] + b[0], a[1] + b[1], a[2] + b[2], a[3] + b[3]);

export const overDimension = (a: Dimension, b: Dimension): Dimension =>
  dimension(a[0] - b[0], a[1] - b[1], a[2] - b[2], a[3] - b[3]);

/** `exponent` must be a multiple of 1/60 for the result to be exact; see {@link isRationalExponent}. */
export const powerDimension = (a: Dimension, exponent: number): Dimension =>
  dimension(a[0] * exponent, a[1] * exponent, a[2] * exponent, a[3] * exponent);

/** True when raising a dimension to `exponent` stays within the exponents this module can keep exactly. */
export const isRationalExponent = (exponent: number): boolean =>
  Math.abs(exponent * 60 - Math.round(exponent * 60)) < 1e-9;
