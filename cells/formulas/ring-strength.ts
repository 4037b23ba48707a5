import type { CellOutput } from '../record/cell.ts';
import { marginWanted } from './casting.ts';

/**
 * Stress in two rings under `pressure`, and what they bear over it. Over `contact_diameter`, `inner_bore`, `housing_fill`,
 * `inner_material`, `outer_material` and `least_margin`.
 */
export const ringStrength: readonly CellOutput[] = [
  {
    name: 'hoop_inner_bore',
    label: 'hoop stress at the inner bore',
    quantity: 'pressure',
    basis: 'model',
    formula:
      '=IF(inner_bore > 0 m; -2 * pressure * contact_diameter^2 / (contact_diameter^2 - inner_bore^2); -pressure)',
    hint: 'Minus is compression. Of a solid shaft, everywhere the pressure itself.',
  },
  {
    name: 'hoop_inner_outside',
    label: 'hoop stress at the outside of the inner part',
    quantity: 'pressure',
    basis: 'model',
    formula: '=-pressure * (contact_diameter^2 + inner_bore^2) / (contact_diameter^2 - inner_bore^2)',
  },
  {
    name: 'hoop_outer_bore',
    label: 'hoop stress at the bore of the outer part',
    quantity: 'pressure',
    basis: 'model',
    formula: '=pressure * (1 + housing_fill) / (1 - housing_fill)',
  },
  {
    name: 'hoop_outer_outside',
    label: 'hoop stress at the outside of the outer part',
    quantity: 'pressure',
    basis: 'model',
    formula: '=2 * pressure * housing_fill / (1 - housing_fill)',
  },
  {
    name: 'inner_stress',
    label: 'stress to compare, inner part',
    quantity: 'pressure',
    basis: 'model',
    formula:
      '=IF(inner_material.brittle > 0.5; -hoop_inner_bore / 3; MAX(-hoop_inner_bore; SQRT((hoop_inner_outside + pressure / 2)^2 + 3 * pressure^2 / 4)))',
    hint: 'Yielding metal: von Mises, plane stress. Brittle: a third of the compression, against tensile strength.',
  },
  {
    name: 'outer_stress',
    label: 'stress to compare, outer part',
    quantity: 'pressure',
    basis: 'model',
    formula:
      '=IF(outer_material.brittle > 0.5; hoop_outer_bore + pressure / 3; SQRT((hoop_outer_bore + pressure / 2)^2 + 3 * pressure^2 / 4))',
    hint: 'Yielding metal: von Mises at the bore. Brittle: hoop tension and a third of the pressure, against tensile strength.',
  },
  marginWanted('inner_material', 'inner_wanted', 'inner part'),
  marginWanted('outer_material', 'outer_wanted', 'outer part'),
  {
    name: 'inner_margin',
    label: 'safety factor, inner part',
    quantity: 'number',
    basis: 'model',
    formula: '=inner_material.yield / MAX(inner_stress; inner_material.yield / 1000)',
    limits: { lower: '=inner_wanted' },
    hint: '1000 where nothing presses.',
  },
  {
    name: 'outer_margin',
    label: 'safety factor, outer part',
    quantity: 'number',
    basis: 'model',
    formula: '=outer_material.yield / MAX(outer_stress; outer_material.yield / 1000)',
    limits: { lower: '=outer_wanted' },
    hint: '1000 where nothing presses.',
  },
  {
    name: 'yield_margin',
    label: 'safety factor, the weaker of both',
    quantity: 'number',
    basis: 'model',
    formula: '=MIN(inner_margin; outer_margin)',
    face: true,
    limits: { lower: '=IF(outer_margin < inner_margin; outer_wanted; inner_wanted)' },
  },
];
