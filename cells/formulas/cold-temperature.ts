import type { CellInput } from '../record/cell.ts';

/** Temperature at which the sizes entered were read, or are planned. */
export const coldTemperature: CellInput = {
  name: 'cold_temperature',
  label: 'temperature of the cold sizes',
  quantity: 'temperature',
  default: '20 degC',
  sensible: ['0 degC', '40 degC'],
  source: 'ISO 1:2022',
};
