import type { CellOutput } from '../record/cell.ts';

/**
 * What the wall of a bush keeps up of a pressure that makes it yield: elastic, then perfectly plastic (Tresca, plane stress),
 * in an elastic housing. Over `elastic_pressure`, `yield_taken`, `bush_outside`, `bush_bore`, `bush_give`, `housing_give`,
 * `bush_material` and `housing_material`.
 */
export const yieldingWall: readonly CellOutput[] = [
  {
    name: 'first_yield',
    label: 'pressure at which the bore begins to yield',
    quantity: 'pressure',
    basis: 'model',
    formula: '=yield_taken * (bush_outside^2 - bush_bore^2) / (2 * bush_outside^2)',
  },
  {
    name: 'full_yield',
    label: 'pressure at which the whole wall yields',
    quantity: 'pressure',
    basis: 'model',
    formula: '=yield_taken * (bush_outside - bush_bore) / bush_outside',
  },
  {
    name: 'kept_pressure',
    label: 'pressure the bush keeps up when hot',
    quantity: 'pressure',
    basis: 'model',
    formula: '=MIN(elastic_pressure; (first_yield + elastic_pressure) / 2; full_yield)',
    spread: {
      low: '=0 Pa',
      high: '=MIN(elastic_pressure; full_yield) - MIN(elastic_pressure; (first_yield + elastic_pressure) / 2; full_yield)',
      distribution: 'rectangular',
      label: 'wall part yielded',
    },
  },
  {
    name: 'permanent_set',
    label: 'outside of the bush is left smaller by',
    quantity: 'length',
    basis: 'model',
    formula:
      '=(elastic_pressure - kept_pressure) * bush_outside * (bush_give / bush_material.E + housing_give / housing_material.E)',
    display: { in: 'thou', mm: 'um' },
  },
];
