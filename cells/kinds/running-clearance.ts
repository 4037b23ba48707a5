import { ringPair } from '../drawings/rings.ts';
import { coldTemperature } from '../formulas/cold-temperature.ts';
import { makersLimits, makersLimitsHold } from '../formulas/makers-limits.ts';
import { defineCell } from '../record/cell.ts';

export default defineCell({
  key: 'running-clearance',
  edition: 1,
  title: 'Running clearance',
  purpose:
    "Clearance of a journal in its bush: cold against the maker's limits, hot, at start-up and in winter.",
  group: 'clearance',
  inputs: [
    { name: 'bore', label: 'bush bore, mean', quantity: 'length', sensible: ['3 mm', '500 mm'] },
    { name: 'journal', label: 'journal, mean', quantity: 'length', sensible: ['3 mm', '500 mm'] },
    {
      name: 'bore_least',
      label: 'bush bore, least reading',
      quantity: 'length',
      sensible: ['3 mm', '500 mm'],
      default: '=bore.least',
      source: 'the readings behind the mean, where there are any',
    },
    {
      name: 'bore_greatest',
      label: 'bush bore, greatest reading',
      quantity: 'length',
      sensible: ['3 mm', '500 mm'],
      default: '=bore.greatest',
      source: 'the readings behind the mean, where there are any',
    },
    {
      name: 'journal_least',
      label: 'journal, least reading',
      quantity: 'length',
      sensible: ['3 mm', '500 mm'],
      default: '=journal.least',
      source: 'the readings behind the mean, where there are any',
    },
    {
      name: 'journal_greatest',
      label: 'journal, greatest reading',
      quantity: 'length',
      sensible: ['3 mm', '500 mm'],
      default: '=journal.greatest',
      source: 'the readings behind the mean, where there are any',
    },
    ...makersLimits('clearance'),
    {
      name: 'shaft_running',
      label: 'journal temperature, running',
      quantity: 'temperature',
      optional: true,
      sensible: ['-40 degC', '250 degC'],
    },
    {
      name: 'shaft_starting',
      label: 'journal temperature at start-up, bush still cold',
      quantity: 'temperature',
      optional: true,
      sensible: ['-40 degC', '250 degC'],
      hint: 'The worst moment of warming up: the shaft warm, the housing not yet.',
    },
    {
      name: 'winter_temperature',
      label: 'coldest temperature standing',
      quantity: 'temperature',
      optional: true,
      sensible: ['-60 degC', '20 degC'],
      hint: 'The same as in the cell of the pressed bush.',
    },
    {
      name: 'hot_floor',
      label: 'least clearance wanted, running',
      quantity: 'length',
      sensible: ['0 mm', '5 mm'],
      optional: true,
    },
    {
      name: 'start_floor',
      label: 'least clearance wanted, start-up',
      quantity: 'length',
      sensible: ['0 mm', '5 mm'],
      optional: true,
    },
    {
      name: 'winter_floor',
      label: 'least clearance wanted, winter',
      quantity: 'length',
      sensible: ['0 mm', '5 mm'],
      optional: true,
    },
    coldTemperature,
    {
      name: 'pressed_bush',
      label: 'pressed bush, hot and in winter',
      record: 'pressed-bush-hot',
      optional: true,
      hint: 'Blank where there is no pressed bush: then give the change of bore yourself.',
    },
    {
      name: 'bore_change_running',
      label: 'change of bore, running',
      quantity: 'length',
      default: '=pressed_bush.bore_change',
      sensible: ['-1 mm', '1 mm'],
      source: 'the cell of the pressed bush',
    },
    {
      name: 'bore_change_winter',
      label: 'change of bore, winter',
      quantity: 'length',
      default: '=pressed_bush.winter_bore_change',
      sensible: ['-1 mm', '1 mm'],
      source: 'the cell of the pressed bush',
    },
    { name: 'shaft_material', label: 'shaft material', record: 'material', optional: true },
  ],
  outputs: [
    {
      name: 'clearance',
      label: 'clearance, cold, mean',
      quantity: 'length',
      formula: '=bore - journal',
      face: true,
      limits: { lower: '=new_least', upper: '=new_greatest', wear: '=wear_limit', metalOn: 'low' },
      display: { in: 'thou', mm: 'um' },
      hint: 'On diameter. Below zero the journal does not enter.',
    },
    {
      name: 'least_clearance',
      label: 'clearance, cold, least: bore least, journal greatest',
      quantity: 'length',
      formula: '=bore_least - journal_greatest',
      face: true,
      limits: { lower: '=new_least', metalOn: 'low' },
      display: { in: 'thou', mm: 'um' },
    },
    {
      name: 'greatest_clearance',
      label: 'clearance, cold, greatest: bore greatest, journal least',
      quantity: 'length',
      formula: '=bore_greatest - journal_least',
      limits: { upper: '=new_greatest', wear: '=wear_limit', metalOn: 'low' },
      display: { in: 'thou', mm: 'um' },
    },
    {
      name: 'hot_clearance',
      label: 'clearance, running, least',
      quantity: 'length',
      formula:
        '=least_clearance + bore_change_running - journal_greatest * shaft_material.alpha * (shaft_running - cold_temperature)',
      face: true,
      limits: { lower: '=hot_floor', metalOn: 'low' },
      display: { in: 'thou', mm: 'um' },
    },
    {
      name: 'hot_mean',
      label: 'clearance, running, mean',
      quantity: 'length',
      formula:
        '=clearance + bore_change_running - journal * shaft_material.alpha * (shaft_running - cold_temperature)',
      display: { in: 'thou', mm: 'um' },
    },
    {
      name: 'start_mean',
      label: 'clearance at start-up, mean: only the shaft warm',
      quantity: 'length',
      formula: '=clearance - journal * shaft_material.alpha * (shaft_starting - cold_temperature)',
      display: { in: 'thou', mm: 'um' },
    },
    {
      name: 'winter_mean',
      label: 'clearance in winter, mean',
      quantity: 'length',
      formula:
        '=clearance + bore_change_winter - journal * shaft_material.alpha * (winter_temperature - cold_temperature)',
      display: { in: 'thou', mm: 'um' },
    },
    {
      name: 'start_clearance',
      label: 'clearance at start-up, least: only the shaft warm',
      quantity: 'length',
      formula:
        '=least_clearance - journal_greatest * shaft_material.alpha * (shaft_starting - cold_temperature)',
      limits: { lower: '=start_floor', metalOn: 'low' },
      display: { in: 'thou', mm: 'um' },
    },
    {
      name: 'winter_clearance',
      label: 'clearance in winter, least',
      quantity: 'length',
      formula:
        '=least_clearance + bore_change_winter - journal_greatest * shaft_material.alpha * (winter_temperature - cold_temperature)',
      limits: { lower: '=winter_floor', metalOn: 'low' },
      display: { in: 'thou', mm: 'um' },
    },
    {
      name: 'hot_interference',
      label: 'interference of the bush left, running',
      quantity: 'length',
      formula: '=pressed_bush.hot_interference',
      limits: { lower: '=0 m' },
      display: { in: 'thou', mm: 'um' },
    },
    {
      name: 'winter_interference',
      label: 'interference of the bush left, winter',
      quantity: 'length',
      formula: '=pressed_bush.winter_interference',
      limits: { lower: '=0 m' },
      display: { in: 'thou', mm: 'um' },
    },
    {
      name: 'clearance_per_diameter',
      label: 'clearance per unit of diameter',
      quantity: 'interference per diameter',
      formula: '=clearance / journal',
    },
  ],
  validity: [
    {
      holds: '=AND(bore > 0 m; journal > 0 m)',
      otherwise: 'Bore and journal must be above zero.',
      grade: 'error',
    },
    {
      holds: '=AND(bore_least <= bore; bore <= bore_greatest)',
      otherwise: 'The mean bore does not lie between its least and its greatest reading: look at the three.',
      grade: 'caution',
    },
    {
      holds: '=AND(journal_least <= journal; journal <= journal_greatest)',
      otherwise:
        'The mean journal does not lie between its least and its greatest reading: look at the three.',
      grade: 'caution',
    },
    {
      holds: '=least_clearance > 0 m',
      otherwise:
        'There is no clearance left where the bore is least and the journal greatest: it will bind. Open the bore, or ease the journal.',
      grade: 'caution',
    },
    ...makersLimitsHold('clearance'),
  ],
  assumptions: [
    "The maker's limits are for cold parts, on diameter.",
    'At start-up only the shaft is warm; bush and housing are still at the temperature of the cold sizes.',
    'Shaft and bush are straight and in line: what misalignment takes off is in its own cell.',
  ],
  sources: [
    'Least and greatest clearance: ISO 286-1:2010, definitions',
    'Thermal change: that of the pressed bush cell and linear expansion of the shaft',
  ],
  cautions: [
    'A clearance too small seizes: turn the shaft by hand through a full turn, cold, before power, with guards in place.',
  ],
  examples: [
    {
      title: 'A 2 in journal after the rule of 1 thou and 1 thou an inch',
      source: 'trade article listing shop rules, reference R569: 0.003 in',
      grade: 'seen',
      inputs: { bore: '2.003 in', journal: '2.000 in', new_least: '0.002 in', new_greatest: '0.004 in' },
      expect: { clearance: { value: '0.003 in', within: '1e-9 in' } },
    },
    {
      title: 'Hole 50 H7 and shaft 50 f7: least and greatest clearance',
      source: 'ISO 286-1 definitions with ISO 286-2 limits, reference R340: 25 and 75 um',
      grade: 'computed',
      inputs: {
        bore: '50.0125 mm',
        bore_least: '50.000 mm',
        bore_greatest: '50.025 mm',
        journal: '49.9625 mm',
        journal_least: '49.950 mm',
        journal_greatest: '49.975 mm',
      },
      expect: {
        least_clearance: { value: '25 um', within: '1e-6 um' },
        greatest_clearance: { value: '75 um', within: '1e-6 um' },
      },
    },
    {
      title: 'Warm steel journal in a cold bush, and running',
      source: 'Second method: each size at its temperature by d (1 + alpha dT), then subtracted',
      grade: 'recomputed',
      inputs: {
        bore: '40.050 mm',
        journal: '40.000 mm',
        shaft_running: '80 degC',
        shaft_starting: '60 degC',
        shaft_material: { alpha: '11.5e-6 1/K' },
        bore_change_running: '0.030 mm',
      },
      expect: {
        start_clearance: { value: '0.0316 mm', within: '1e-6 mm' },
        hot_clearance: { value: '0.0524 mm', within: '1e-6 mm' },
        hot_mean: { value: '0.0524 mm', within: '1e-6 mm' },
      },
    },
  ],
  drawing: (v) =>
    v.clearance === undefined
      ? undefined
      : ringPair({
          bore: 0,
          contact: v.journal,
          misfit: -v.clearance,
          names: { contact: 'journal', misfit: 'clearance' },
        }),
});
