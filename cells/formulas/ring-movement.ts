import type { CellOutput } from '../record/cell.ts';
import { boreClosesIn } from './rings.ts';

const display = { in: 'thou', mm: 'um' } as const;

/**
 * How far two rings move under `pressure`. Over `contact_diameter`, `inner_bore`, `housing_fill`, `inner_material`,
 * `outer_material`, `inner_give` and `outer_give`.
 */
export const ringMovement: readonly CellOutput[] = [
  {
    name: 'close_in',
    label: 'inner bore closes in by',
    quantity: 'length',
    basis: 'model',
    formula: boreClosesIn('contact_diameter', 'inner_bore', 'inner_material'),
    face: true,
    display,
  },
  {
    name: 'inner_shrinkage',
    label: 'outside of the inner part shrinks by',
    quantity: 'length',
    basis: 'model',
    formula: '=pressure * contact_diameter * inner_give / inner_material.E',
    display,
  },
  {
    name: 'bore_growth',
    label: 'bore of the outer part grows by',
    quantity: 'length',
    basis: 'model',
    formula: '=pressure * contact_diameter * outer_give / outer_material.E',
    display,
  },
  {
    name: 'outside_growth',
    label: 'outside of the outer part grows by',
    quantity: 'length',
    basis: 'model',
    formula:
      '=2 * pressure * contact_diameter * SQRT(housing_fill) / (outer_material.E * (1 - housing_fill))',
    display,
  },
];
