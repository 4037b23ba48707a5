import { defineCell } from '../record/cell.ts';

export default defineCell({
  key: 'part-temperature',
  edition: 1,
  title: 'Reading brought to 20 °C',
  purpose: 'Size at 20 °C of a part read warm or cold, with the expansion of part and gauge.',
  group: 'measuring',
  inputs: [
    { name: 'reading', label: 'reading', quantity: 'length', role: 'measured', sensible: ['1 mm', '5 m'] },
    {
      name: 'part_temperature',
      label: 'temperature of the part',
      quantity: 'temperature',
      role: 'measured',
      sensible: ['-20 degC', '120 degC'],
    },
    {
      name: 'gauge_temperature',
      label: 'temperature of the gauge',
      quantity: 'temperature',
      role: 'measured',
      sensible: ['0 degC', '60 degC'],
      hint: 'Of the gauge itself, after it has been in a warm hand: not of the room.',
    },
    {
      name: 'part_expansion',
      label: 'expansion of the part',
      quantity: 'expansion coefficient',
      sensible: ['5e-6 1/K', '150e-6 1/K'],
      hint: 'Of its material cell: = bush_material.alpha',
    },
    {
      name: 'gauge_expansion',
      label: 'expansion of the gauge',
      quantity: 'expansion coefficient',
      default: '11.5e-6 1/K ± 1e-6 1/K',
      sensible: ['0 1/K', '24e-6 1/K'],
      source:
        'Steel gauges: ISO 3650:1998, 4.2 asks (11.5 ± 1.0) 1e-6 1/K of steel gauge blocks (from memory)',
    },
  ],
  outputs: [
    {
      name: 'at_20',
      label: 'size at 20 °C',
      quantity: 'length',
      basis: 'geometry',
      formula:
        '=reading * (1 + gauge_expansion * (gauge_temperature - 20 degC)) / (1 + part_expansion * (part_temperature - 20 degC))',
      face: true,
    },
    {
      name: 'correction',
      label: 'comes onto the reading',
      quantity: 'length',
      basis: 'geometry',
      formula: '=at_20 - reading',
      face: true,
      display: { in: 'thou', mm: 'um' },
    },
    {
      name: 'part_growth',
      label: 'growth of the part over 20 °C',
      quantity: 'length',
      basis: 'model',
      formula: '=at_20 * part_expansion * (part_temperature - 20 degC)',
      display: { in: 'thou', mm: 'um' },
    },
    {
      name: 'gauge_growth',
      label: 'growth of the gauge over 20 °C',
      quantity: 'length',
      basis: 'model',
      formula: '=reading * gauge_expansion * (gauge_temperature - 20 degC)',
      display: { in: 'thou', mm: 'um' },
    },
    {
      name: 'per_kelvin',
      label: 'change for one kelvin of the part',
      quantity: 'length',
      basis: 'model',
      formula: '=reading * part_expansion * 1 K',
      display: { in: 'thou', mm: 'um' },
    },
  ],
  validity: [
    { holds: '=reading > 0 mm', otherwise: 'A size is above zero.', grade: 'error' },
    {
      holds: '=ABS(part_temperature - 20 degC) <= 100 K',
      otherwise:
        'More than 100 K from 20 °C: one mean coefficient is not true that far. Let the part come to room temperature.',
      grade: 'caution',
    },
    {
      holds: '=ABS(part_temperature - gauge_temperature) <= 5 K',
      otherwise:
        'Part and gauge are more than 5 K apart, and the gauge warms while it reads: let both lie together first.',
      grade: 'caution',
    },
  ],
  assumptions: [
    'Part and gauge each have one temperature right through, and expand freely and evenly.',
    'Mean expansion coefficients from 20 °C to the temperature read.',
  ],
  sources: ['ISO 1:2022 (reference temperature 20 °C)', 'JCGM 100:2008, H.1 (model with both coefficients)'],
  cautions: ['A part warm enough to need this may burn: test by its temperature reading, not by hand.'],
  examples: [
    {
      title: 'Aluminium part reads 100.000 mm at 30 °C on a scale that is right at 20 °C',
      source: 'ISO 1 reference temperature; L20 = Lt / (1 + alpha dT)',
      grade: 'computed',
      inputs: {
        reading: '100 mm',
        part_temperature: '30 degC',
        gauge_temperature: '20 degC',
        part_expansion: '23.6e-6 1/K',
      },
      expect: { at_20: { value: '99.9764056 mm', within: '1e-5 mm' } },
    },
  ],
});
