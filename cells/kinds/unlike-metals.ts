import { ringPair } from '../drawings/rings.ts';
import { coldTemperature } from '../formulas/cold-temperature.ts';
import { defineCell } from '../record/cell.ts';

export default defineCell({
  key: 'unlike-metals',
  edition: 1,
  title: 'Fit of unlike metals',
  purpose: 'What a fit becomes running, at start-up and in winter when the two parts grow differently.',
  group: 'fits',
  inputs: [
    { name: 'diameter', label: 'diameter where they meet', quantity: 'length', sensible: ['3 mm', '2 m'] },
    {
      name: 'interference',
      label: 'interference, cold',
      quantity: 'length',
      sensible: ['-1 mm', '1 mm'],
      hint: 'On diameter. A clearance is entered with a minus.',
    },
    {
      name: 'inner_running',
      label: 'inner part, temperature running',
      quantity: 'temperature',
      sensible: ['-40 degC', '400 degC'],
    },
    {
      name: 'outer_running',
      label: 'outer part, temperature running',
      quantity: 'temperature',
      default: '=inner_running',
      sensible: ['-40 degC', '400 degC'],
      source: 'the same as the inner part until you know better',
    },
    {
      name: 'inner_starting',
      label: 'inner part, temperature at start-up',
      quantity: 'temperature',
      optional: true,
      sensible: ['-40 degC', '400 degC'],
    },
    {
      name: 'outer_starting',
      label: 'outer part, temperature at start-up',
      quantity: 'temperature',
      default: '=cold_temperature',
      sensible: ['-40 degC', '400 degC'],
      source: 'not warm yet',
    },
    {
      name: 'winter_temperature',
      label: 'coldest temperature standing',
      quantity: 'temperature',
      optional: true,
      sensible: ['-60 degC', '20 degC'],
    },
    coldTemperature,
    {
      name: 'least_interference',
      label: 'least interference wanted',
      quantity: 'length',
      sensible: ['-1 mm', '1 mm'],
      optional: true,
      hint: 'A clearance with a minus.',
    },
    {
      name: 'greatest_interference',
      label: 'greatest interference allowed',
      quantity: 'length',
      sensible: ['-1 mm', '1 mm'],
      optional: true,
      hint: 'A clearance with a minus.',
    },
    { name: 'inner_material', label: 'material of the inner part', record: 'material' },
    { name: 'outer_material', label: 'material of the outer part', record: 'material' },
  ],
  outputs: [
    {
      name: 'change_running',
      label: 'change of interference, running',
      quantity: 'length',
      basis: 'model',
      formula:
        '=diameter * (inner_material.alpha * (inner_running - cold_temperature) - outer_material.alpha * (outer_running - cold_temperature))',
      display: { in: 'thou', mm: 'um' },
    },
    {
      name: 'interference_running',
      label: 'interference, running',
      quantity: 'length',
      basis: 'model',
      formula: '=interference + change_running',
      face: true,
      limits: { lower: '=least_interference', upper: '=greatest_interference' },
      display: { in: 'thou', mm: 'um' },
      hint: 'Minus is clearance.',
    },
    {
      name: 'interference_starting',
      label: 'interference, start-up',
      quantity: 'length',
      basis: 'model',
      formula:
        '=interference + diameter * (inner_material.alpha * (inner_starting - cold_temperature) - outer_material.alpha * (outer_starting - cold_temperature))',
      face: true,
      limits: { lower: '=least_interference', upper: '=greatest_interference' },
      display: { in: 'thou', mm: 'um' },
    },
    {
      name: 'interference_winter',
      label: 'interference, winter',
      quantity: 'length',
      basis: 'model',
      formula:
        '=interference + diameter * (inner_material.alpha - outer_material.alpha) * (winter_temperature - cold_temperature)',
      face: true,
      limits: { lower: '=least_interference', upper: '=greatest_interference' },
      display: { in: 'thou', mm: 'um' },
    },
  ],
  validity: [
    { holds: '=diameter > 0 m', otherwise: 'The diameter must be above zero.', grade: 'error' },
    {
      holds: '=interference * interference_running >= 0 mm2',
      otherwise:
        'The fit changes from tight to loose, or from loose to tight, between cold and running: key, pin or flange it, or take another fit.',
      grade: 'caution',
    },
    {
      holds: '=inner_running <= inner_material.max_temperature',
      otherwise: 'The inner part is hotter than its material bears without losing strength or shape.',
      grade: 'caution',
    },
    {
      holds: '=outer_running <= outer_material.max_temperature',
      otherwise: 'The outer part is hotter than its material bears without losing strength or shape.',
      grade: 'caution',
    },
  ],
  assumptions: [
    'Both parts free to grow, each at one temperature; the mean expansion holds over the range.',
    'Where both stay tight the interference does not show as movement but as pressure: see the interference fit.',
  ],
  sources: ['Differential expansion, any handbook; ISO 1:2022 (20 degC)'],
  cautions: [
    'A fit that loosens hot or in winter needs another lock than friction: pin, screw or flange it.',
  ],
  examples: [
    {
      title: 'C93200 in gray iron, 50 mm, 20 to 90 degC',
      source: 'Differential expansion: 0.0231 mm tighter',
      grade: 'computed',
      inputs: {
        diameter: '50 mm',
        interference: '0.040 mm',
        inner_running: '90 degC',
        inner_material: { alpha: '18e-6 1/K', max_temperature: '160 degC' },
        outer_material: { alpha: '11.4e-6 1/K', max_temperature: '400 degC' },
      },
      expect: {
        change_running: { value: '0.0231 mm', within: '1e-6 mm' },
        interference_running: { value: '0.0631 mm', within: '1e-6 mm' },
      },
    },
    {
      title: '6061 in gray iron, 2.3000 in, 132 degF warmer',
      source: 'Differential expansion: 0.00206448 in',
      grade: 'computed',
      inputs: {
        diameter: '2.3000 in',
        interference: '0.001 in',
        inner_running: '200 degF',
        cold_temperature: '68 degF',
        winter_temperature: '-64 degF',
        inner_material: { alpha: '13.1e-6 1/degF', max_temperature: '120 degC' },
        outer_material: { alpha: '6.3e-6 1/degF', max_temperature: '400 degC' },
      },
      expect: {
        change_running: { value: '0.00206448 in', within: '1e-6 in' },
        interference_winter: { value: '-0.00106448 in', within: '1e-6 in' },
      },
    },
  ],
  drawing: (v) =>
    ringPair({
      bore: 0,
      contact: v.diameter,
      misfit: v.interference_running ?? v.interference,
      names: {
        contact: 'diameter',
        misfit: v.interference_running === undefined ? 'interference' : 'interference_running',
      },
    }),
});
