import { defineCell } from '../record/cell.ts';

export default defineCell({
  key: 'linear-expansion',
  edition: 1,
  title: 'Expansion with temperature',
  purpose: 'A size at another temperature, or a size read warm brought back to 20 degC.',
  group: 'heat',
  inputs: [
    {
      name: 'size',
      label: 'size',
      quantity: 'length',
      sensible: ['0.01 mm', '20 m'],
      hint: 'A diameter, a length or a gap; of a bore, as of the metal that would fill it.',
    },
    {
      name: 'temperature',
      label: 'its temperature',
      quantity: 'temperature',
      sensible: ['-200 degC', '500 degC'],
    },
    {
      name: 'reference_temperature',
      label: 'reference temperature',
      quantity: 'temperature',
      default: '20 degC',
      sensible: ['0 degC', '40 degC'],
      source: 'ISO 1:2022',
    },
    { name: 'material', label: 'material', record: 'material' },
  ],
  outputs: [
    {
      name: 'rise',
      label: 'temperature above reference',
      quantity: 'temperature difference',
      basis: 'geometry',
      formula: '=temperature - reference_temperature',
    },
    {
      name: 'change',
      label: 'growth of a size known at reference',
      quantity: 'length',
      basis: 'model',
      formula: '=size * material.alpha * rise',
      face: true,
      display: { in: 'thou', mm: 'um' },
    },
    {
      name: 'size_at_temperature',
      label: 'size at that temperature, if known at reference',
      quantity: 'length',
      basis: 'model',
      formula: '=size + change',
      face: true,
    },
    {
      name: 'size_at_reference',
      label: 'size at reference, if read at that temperature',
      quantity: 'length',
      basis: 'geometry',
      formula: '=size / (1 + material.alpha * rise)',
      face: true,
      hint: 'With a gauge that is right at the reference temperature.',
    },
  ],
  validity: [
    { holds: '=size > 0 m', otherwise: 'The size must be above zero.', grade: 'error' },
    {
      holds: '=temperature <= material.max_temperature',
      otherwise: 'Hotter than this material bears without losing strength or shape.',
      grade: 'caution',
    },
    {
      holds: '=AND(rise <= 200 K; rise >= -100 K)',
      otherwise:
        'Far from room temperature the mean expansion is another one: give the material your own figure for this range. In liquid nitrogen metals shrink a sixth to a third less than the room figure says.',
      grade: 'caution',
    },
  ],
  assumptions: [
    'The part is at one temperature throughout and free to grow.',
    'The expansion figure is the mean between the two temperatures.',
  ],
  sources: [
    'ISO 1:2022, reference temperature 20 degC',
    'ISO/TR 16015:2003 (from memory), length at another temperature',
  ],
  cautions: [
    'Hot and cold metal burns: gloves and goggles, and know where you will put it down.',
    'Liquid nitrogen and dry ice: frostbite, and the gas drives out the air. Ventilate, never in a pit or closed room, and never close a vessel on them; follow the supplier\u2019s sheet and local rules.',
  ],
  examples: [
    {
      title: 'Aluminium part read 100.000 mm at 30 degC with a scale right at 20 degC',
      source: 'ISO 1 reference temperature, L20 = Lt / (1 + alpha dT)',
      grade: 'computed',
      inputs: {
        size: '100.000 mm',
        temperature: '30 degC',
        material: { alpha: '23.6e-6 1/K', max_temperature: '120 degC' },
      },
      expect: { size_at_reference: { value: '99.9764056 mm', within: '1e-5 mm' } },
    },
    {
      title: 'Bush of 6061 in liquid nitrogen, with the mean expansion of that range',
      source: 'NIST cryogenic materials data, 6061: 0.39 % from 293 K to 77 K (from memory)',
      grade: 'memory',
      inputs: {
        size: '2.3000 in',
        temperature: '-196 degC',
        material: { alpha: '18e-6 1/K', max_temperature: '120 degC' },
      },
      expect: { change: { value: '-0.008934 in', within: 0.01 } },
    },
  ],
});
