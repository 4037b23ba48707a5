import { ringPair } from '../drawings/rings.ts';
import { coldTemperature } from '../formulas/cold-temperature.ts';
import { defineCell } from '../record/cell.ts';
import { powerOff } from '../record/hazards.ts';

export default defineCell({
  key: 'pressed-bush-hot',
  edition: 1,
  title: 'Pressed bush, hot and in winter',
  purpose: 'Interference and bore of a pressed bush when bush and housing are at other temperatures.',
  group: 'heat',
  inputs: [
    {
      name: 'bush_outside',
      label: 'bush outside diameter',
      quantity: 'length',
      sensible: ['5 mm', '500 mm'],
    },
    {
      name: 'pressed_bore',
      label: 'bush bore, pressed in and cold',
      quantity: 'length',
      sensible: ['3 mm', '500 mm'],
    },
    { name: 'interference', label: 'interference, cold', quantity: 'length', sensible: ['0 um', '0.5 mm'] },
    {
      name: 'close_in_per_interference',
      label: 'close-in per interference',
      quantity: 'number',
      sensible: ['0.2', '1.3'],
      hint: 'From the close-in cell of this bush.',
    },
    {
      name: 'bush_temperature',
      label: 'bush temperature, running',
      quantity: 'temperature',
      sensible: ['-40 degC', '250 degC'],
    },
    {
      name: 'housing_temperature',
      label: 'housing temperature, running',
      quantity: 'temperature',
      default: '=bush_temperature',
      sensible: ['-40 degC', '250 degC'],
      source: 'the same as the bush until you know better',
    },
    {
      name: 'winter_temperature',
      label: 'coldest temperature standing',
      quantity: 'temperature',
      optional: true,
      sensible: ['-60 degC', '20 degC'],
    },
    coldTemperature,
    { name: 'bush_material', label: 'bush material', record: 'material' },
    { name: 'housing_material', label: 'housing material', record: 'material' },
  ],
  outputs: [
    {
      name: 'interference_change',
      label: 'change of interference, running',
      quantity: 'length',
      basis: 'model',
      formula:
        '=bush_outside * (bush_material.alpha * (bush_temperature - cold_temperature) - housing_material.alpha * (housing_temperature - cold_temperature))',
      display: { in: 'thou', mm: 'um' },
      hint: 'Above zero the fit tightens.',
    },
    {
      name: 'hot_interference',
      label: 'interference left, running',
      quantity: 'length',
      basis: 'model',
      formula: '=interference + interference_change',
      face: true,
      limits: { lower: '=0 m' },
      display: { in: 'thou', mm: 'um' },
      hint: 'Below zero the bush is loose.',
    },
    {
      name: 'bore_change',
      label: 'change of bore, running',
      quantity: 'length',
      basis: 'model',
      formula:
        '=pressed_bore * bush_material.alpha * (bush_temperature - cold_temperature) - close_in_per_interference * MAX(interference_change; -interference)',
      display: { in: 'thou', mm: 'um' },
    },
    {
      name: 'hot_bore',
      label: 'bush bore, running',
      quantity: 'length',
      basis: 'model',
      formula: '=pressed_bore + bore_change',
      face: true,
    },
    {
      name: 'winter_interference_change',
      label: 'change of interference, winter',
      quantity: 'length',
      basis: 'model',
      formula:
        '=bush_outside * (bush_material.alpha - housing_material.alpha) * (winter_temperature - cold_temperature)',
      display: { in: 'thou', mm: 'um' },
    },
    {
      name: 'winter_interference',
      label: 'interference left, winter',
      quantity: 'length',
      basis: 'model',
      formula: '=interference + winter_interference_change',
      face: true,
      limits: { lower: '=0 m' },
      display: { in: 'thou', mm: 'um' },
    },
    {
      name: 'winter_bore_change',
      label: 'change of bore, winter',
      quantity: 'length',
      basis: 'model',
      formula:
        '=pressed_bore * bush_material.alpha * (winter_temperature - cold_temperature) - close_in_per_interference * MAX(winter_interference_change; -interference)',
      display: { in: 'thou', mm: 'um' },
    },
    {
      name: 'winter_bore',
      label: 'bush bore, winter',
      quantity: 'length',
      basis: 'model',
      formula: '=pressed_bore + winter_bore_change',
    },
  ],
  validity: [
    {
      holds: '=AND(pressed_bore > 0 m; pressed_bore < bush_outside)',
      otherwise: 'The bush bore must be above zero and smaller than its outside.',
      grade: 'error',
    },
    {
      holds: '=interference > 0 m',
      otherwise: 'The fit is loose before it is warmed: nothing here applies.',
      grade: 'error',
    },
    {
      holds: '=hot_interference > 0 m',
      otherwise:
        'The bush comes loose at running temperature: more interference, a metal nearer to the housing, or a pin. The bore shown is that of the free bush.',
      grade: 'caution',
    },
    {
      holds: '=IF(ISBLANK(winter_temperature); 1 > 0; winter_interference > 0 m)',
      otherwise:
        'The bush comes loose in winter: more interference, a metal nearer to the housing, or a pin. The bore shown is that of the free bush.',
      grade: 'caution',
    },
    {
      holds: '=bush_temperature <= bush_material.max_temperature',
      otherwise: 'The bush is hotter than its material bears without losing strength or shape.',
      grade: 'caution',
    },
    {
      holds: '=housing_temperature <= housing_material.max_temperature',
      otherwise: 'The housing is hotter than its material bears without losing strength or shape.',
      grade: 'caution',
    },
    {
      holds: '=IF(ISBLANK(winter_temperature); 1 > 0; winter_temperature <= cold_temperature)',
      otherwise:
        'The winter temperature is above the temperature of the cold sizes: look whether they are changed over.',
      grade: 'caution',
    },
    {
      holds: '=AND(close_in_per_interference > 0; close_in_per_interference < 1.5)',
      otherwise:
        'The close-in per interference lies between 0 and 1.5: take it from the close-in cell of this bush.',
      grade: 'error',
    },
  ],
  assumptions: [
    'The bore does not follow the free bush, nor the housing: the bush grows with its own metal, less the close-in that the change of interference adds.',
    'Bush and housing each at one temperature; in winter both at the same.',
    'Elastic throughout: whether the bush yields when hot is for the cell on yield hot, loose cold.',
    'Young\u2019s moduli as at room temperature.',
  ],
  sources: [
    'Lame rings with a thermal change of interference: D (alpha_bush dT_bush - alpha_housing dT_housing), as Timoshenko, Strength of Materials II (compound cylinders); Shigley 9e sec. 3-16',
    'ISO 1:2022 (20 degC)',
  ],
  cautions: [
    'A bush that loosens hot can turn and shut its oil hole: pin or lock it where the margin is thin.',
    powerOff,
  ],
  examples: [
    {
      title: '6061 bush in gray iron, 2.3000 in, 132 degF warmer',
      source: 'Differential expansion: 0.00206448 in tighter',
      grade: 'computed',
      inputs: {
        bush_outside: '2.3000 in',
        pressed_bore: '1.9 in',
        interference: '0.002 in',
        close_in_per_interference: '0.7',
        bush_temperature: '200 degF',
        cold_temperature: '68 degF',
        bush_material: { alpha: '13.1e-6 1/degF', max_temperature: '120 degC' },
        housing_material: { alpha: '6.3e-6 1/degF', max_temperature: '400 degC' },
      },
      expect: { interference_change: { value: '0.00206448 in', within: '1e-6 in' } },
    },
    {
      title: 'C93200 bush 50 mm in gray iron, 20 to 90 degC',
      source: 'Differential expansion: 0.0231 mm tighter',
      grade: 'computed',
      inputs: {
        bush_outside: '50 mm',
        pressed_bore: '40 mm',
        interference: '0.040 mm',
        close_in_per_interference: '0.6979',
        bush_temperature: '90 degC',
        bush_material: { alpha: '18e-6 1/K', max_temperature: '160 degC' },
        housing_material: { alpha: '11.4e-6 1/K', max_temperature: '400 degC' },
      },
      expect: { interference_change: { value: '0.0231 mm', within: '1e-6 mm' } },
    },
    {
      title: 'The same bush: bore by solving both rings hot and cold afresh',
      source:
        'Second method: free sizes of both rings at 90 degC, plane-stress rings solved there from the displacement at the contact, bore compared with the same at 20 degC',
      grade: 'recomputed',
      inputs: {
        bush_outside: '50 mm',
        pressed_bore: '39.97208 mm',
        interference: '0.040 mm',
        close_in_per_interference: '0.6978889',
        bush_temperature: '90 degC',
        bush_material: { alpha: '18e-6 1/K', max_temperature: '160 degC' },
        housing_material: { alpha: '11.4e-6 1/K', max_temperature: '400 degC' },
      },
      expect: { hot_bore: { value: '40.006321 mm', within: '5e-5 mm' } },
    },
  ],
  drawing: (v) =>
    ringPair({
      bore: v.hot_bore ?? v.pressed_bore,
      contact: v.bush_outside,
      misfit: v.hot_interference ?? v.interference,
      names: {
        bore: v.hot_bore === undefined ? 'pressed_bore' : 'hot_bore',
        contact: 'bush_outside',
        misfit: v.hot_interference === undefined ? 'interference' : 'hot_interference',
      },
    }),
});
