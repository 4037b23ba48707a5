import type { CellInput, CellOutput, Validity } from '../record/cell.ts';

/**
 * The outer of two rings by its fill: the diameter where they meet over its outside, squared. 0 is an endless casting. Where
 * the outside cannot be known the fill is a band, from the thinnest casting that is likely to an endless one.
 */
export const thinnestCasting = (what: string): CellInput => ({
  name: 'thinnest_casting',
  label: `thinnest ${what} likely, outside over bore`,
  quantity: 'number',
  default: '1.5',
  sensible: ['1.1', '3'],
  hint: 'Counts only where its outside is blank.',
  source: 'common practice, no source: a boss is seldom thinner than a quarter of its bore',
});

export const castingFill = (outside: string, contact: string): CellOutput => ({
  name: 'housing_fill',
  label: 'bore over outside of the outer part, squared',
  quantity: 'number',
  formula: `=IF(ISBLANK(${outside}); 1 / (2 * thinnest_casting^2); (${contact} / ${outside})^2)`,
  spread: {
    low: `=IF(ISBLANK(${outside}); -1 / (2 * thinnest_casting^2); 0)`,
    high: `=IF(ISBLANK(${outside}); 1 / (2 * thinnest_casting^2); 0)`,
    distribution: 'rectangular',
    label: 'casting thickness not known',
  },
  basis: 'geometry',
  hint: '0 for an endless casting.',
});

/** Give of the outer ring: change of its bore per diameter, times E, per pressure. */
export const outerGiveByFill = (material: string): string =>
  `=(1 + housing_fill) / (1 - housing_fill) + ${material}.nu`;

/** Stress to compare at the bore of the outer ring under `pressure`: von Mises in plane stress; of brittle metal Coulomb-Mohr. */
export const outerStressByFill = (pressure: string, material: string): string =>
  `=IF(${material}.brittle > 0.5; ${pressure} * (1 + housing_fill) / (1 - housing_fill) + ${pressure} / 3; ${pressure} * SQRT(3 + housing_fill^2) / (1 - housing_fill))`;

export const castingHolds = (outside: string, contact: string, otherwise: string): Validity => ({
  holds: `=IF(ISBLANK(${outside}); thinnest_casting > 1; ${outside} > ${contact})`,
  otherwise,
  grade: 'error',
});

/** Least safety factor to accept of a part: a brittle one breaks where a ductile one gives. */
export const marginWanted = (material: string, name: string, part: string): CellOutput => ({
  name,
  label: `least safety factor, ${part}`,
  quantity: 'number',
  formula: `=IF(ISBLANK(least_margin); IF(${material}.brittle > 0.5; 2; 1.2); least_margin)`,
  basis: 'model',
  hint: '1.2 of a metal that yields, 2 of one that breaks; or your own figure (common practice, no source).',
});

export const leastMargin: CellInput = {
  name: 'least_margin',
  label: 'least safety factor you accept',
  quantity: 'number',
  optional: true,
  sensible: ['1', '4'],
  hint: 'Blank: 1.2 of a metal that yields, 2 of one that breaks before it yields.',
};
