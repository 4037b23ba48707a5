import { ringPair } from '../drawings/rings.ts';
import {
  castingFill,
  castingHolds,
  leastMargin,
  marginWanted,
  outerGiveByFill,
  outerStressByFill,
  thinnestCasting,
} from '../formulas/casting.ts';
import { coldTemperature } from '../formulas/cold-temperature.ts';
import { innerGive } from '../formulas/rings.ts';
import { yieldingWall } from '../formulas/yielding-wall.ts';
import { defineCell } from '../record/cell.ts';

const aluminium = {
  bush_outside: '50 mm',
  bush_bore: '40 mm',
  housing_outside: '90 mm',
  interference: '0.040 mm',
  hot_yield: '100 MPa',
  bush_material: {
    E: '69 GPa',
    nu: '0.33',
    alpha: '23.6e-6 1/K',
    yield: '276 MPa',
    brittle: '0',
    max_temperature: '120 degC',
  },
  housing_material: {
    E: '100 GPa',
    nu: '0.26',
    alpha: '11.4e-6 1/K',
    yield: '214 MPa',
    brittle: '1',
    max_temperature: '400 degC',
  },
};

export default defineCell({
  key: 'yield-hot-loose-cold',
  edition: 1,
  title: 'Yields hot, loose cold',
  purpose:
    'Whether a bush that grows more than its housing is squeezed past yield when hot, and what grip is left when it has cooled.',
  group: 'heat',
  inputs: [
    {
      name: 'bush_outside',
      label: 'bush outside diameter',
      quantity: 'length',
      sensible: ['5 mm', '500 mm'],
    },
    { name: 'bush_bore', label: 'bush bore', quantity: 'length', sensible: ['3 mm', '500 mm'] },
    {
      name: 'housing_outside',
      label: 'outside of the casting round the bush',
      quantity: 'length',
      sensible: ['5 mm', '3 m'],
      optional: true,
      hint: 'Blank where it cannot be known: the results are then a band from a thin casting to an endless one.',
    },
    thinnestCasting('casting'),
    { name: 'interference', label: 'interference, cold', quantity: 'length', sensible: ['0 um', '0.5 mm'] },
    {
      name: 'bush_temperature',
      label: 'bush temperature, hottest',
      quantity: 'temperature',
      sensible: ['20 degC', '300 degC'],
    },
    {
      name: 'housing_temperature',
      label: 'housing temperature at that moment',
      quantity: 'temperature',
      default: '=bush_temperature',
      sensible: ['-20 degC', '300 degC'],
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
    leastMargin,
    {
      name: 'hot_yield',
      label: 'yield strength of the bush when hot',
      quantity: 'pressure',
      optional: true,
      sensible: ['5 MPa', '1500 MPa'],
      hint: 'Blank: as at room temperature. Aluminium and babbitt lose much of theirs above 100 degC.',
    },
  ],
  outputs: [
    {
      name: 'hot_interference',
      label: 'interference when hot',
      quantity: 'length',
      basis: 'model',
      formula:
        '=interference + bush_outside * (bush_material.alpha * (bush_temperature - cold_temperature) - housing_material.alpha * (housing_temperature - cold_temperature))',
      display: { in: 'thou', mm: 'um' },
    },
    {
      name: 'yield_taken',
      label: 'yield strength taken',
      quantity: 'pressure',
      basis: 'model',
      formula: '=IF(ISBLANK(hot_yield); bush_material.yield; hot_yield)',
      display: { in: 'ksi', mm: 'MPa' },
    },
    castingFill('housing_outside', 'bush_outside'),
    {
      name: 'bush_give',
      label: 'stretch factor of the bush',
      quantity: 'number',
      basis: 'model',
      formula: innerGive('bush_outside', 'bush_bore', 'bush_material'),
    },
    {
      name: 'housing_give',
      label: 'stretch factor of the housing',
      quantity: 'number',
      basis: 'model',
      formula: outerGiveByFill('housing_material'),
    },
    {
      name: 'elastic_pressure',
      label: 'pressure when hot, if nothing yielded',
      quantity: 'pressure',
      basis: 'model',
      formula:
        '=MAX(hot_interference; 0 m) / (bush_outside * (bush_give / bush_material.E + housing_give / housing_material.E))',
    },
    {
      name: 'hot_stress',
      label: 'hoop stress at the bush bore when hot, if nothing yielded',
      quantity: 'pressure',
      basis: 'model',
      formula: '=2 * elastic_pressure * bush_outside^2 / (bush_outside^2 - bush_bore^2)',
      hint: 'Compression.',
    },
    {
      name: 'hot_margin',
      label: 'yield over stress when hot',
      quantity: 'number',
      basis: 'model',
      formula: '=yield_taken / MAX(hot_stress; yield_taken / 1000)',
      face: true,
      limits: { lower: '=1' },
      hint: '1000 where nothing presses.',
    },
    ...yieldingWall,
    {
      name: 'most_pressure',
      label: 'most it can press the housing when hot',
      quantity: 'pressure',
      basis: 'model',
      formula: '=MIN(elastic_pressure; full_yield)',
    },
    {
      name: 'housing_stress',
      label: 'stress to compare, housing bore when hot',
      quantity: 'pressure',
      basis: 'model',
      formula: outerStressByFill('most_pressure', 'housing_material'),
      hint: 'Yielding metal: von Mises. Brittle: hoop tension and a third of the pressure, against tensile strength.',
    },
    marginWanted('housing_material', 'housing_wanted', 'housing'),
    {
      name: 'housing_margin',
      label: 'safety factor, housing when hot',
      quantity: 'number',
      basis: 'model',
      formula: '=housing_material.yield / MAX(housing_stress; housing_material.yield / 1000)',
      face: true,
      limits: { lower: '=housing_wanted' },
    },
    {
      name: 'interference_left',
      label: 'interference left when cold again',
      quantity: 'length',
      basis: 'model',
      formula: '=interference - permanent_set',
      face: true,
      limits: { lower: '=0 m' },
      display: { in: 'thou', mm: 'um' },
      hint: 'Below zero the bush is loose.',
    },
    {
      name: 'winter_left',
      label: 'interference left in winter',
      quantity: 'length',
      basis: 'model',
      formula:
        '=interference_left + bush_outside * (bush_material.alpha - housing_material.alpha) * (winter_temperature - cold_temperature)',
      face: true,
      limits: { lower: '=0 m' },
      display: { in: 'thou', mm: 'um' },
    },
  ],
  validity: [
    {
      holds: '=AND(bush_bore > 0 m; bush_bore < bush_outside)',
      otherwise: 'Bush bore, bush outside and casting outside must rise in this order, from above zero.',
      grade: 'error',
    },
    castingHolds(
      'housing_outside',
      'bush_outside',
      'Bush bore, bush outside and casting outside must rise in this order, from above zero.',
    ),
    {
      holds: '=interference > 0 m',
      otherwise: 'The fit is loose before it is warmed.',
      grade: 'error',
    },
    {
      holds: '=hot_margin >= 1',
      otherwise:
        'The bush yields when hot: every heat may take a little more, and it comes loose as it cools. Less interference, a thicker bush, or a stronger metal.',
      grade: 'caution',
    },
    {
      holds: '=housing_margin >= 1',
      otherwise:
        'Hot, the bush presses the housing past its strength: a cast boss cracks, without warning. Less interference, a thinner bush, or a metal nearer to the housing.',
      grade: 'caution',
    },
    {
      holds: '=bush_material.brittle < 0.5',
      otherwise: 'A brittle bush does not yield, it cracks: look at the strength in the interference fit.',
      grade: 'caution',
    },
    {
      holds: '=bush_temperature <= bush_material.max_temperature',
      otherwise: 'The bush is hotter than its material bears: it creeps, and the grip goes even below yield.',
      grade: 'caution',
    },
    {
      holds: '=IF(ISBLANK(hot_yield); 1 > 0; hot_yield > 0 Pa)',
      otherwise: 'The yield strength when hot is above zero.',
      grade: 'error',
    },
  ],
  assumptions: [
    'Thick rings after Lame, plane stress; the bush elastic and then perfectly plastic, the housing elastic.',
    'From first yield at the bore until the whole wall yields (Tresca), half of the further pressure is taken as kept; the most it could keep is the upper end of the spread. Held against the exact solution for walls of a tenth to six tenths of the radius, which lies between.',
    'One heating. Creep, many heatings and ageing take more.',
  ],
  sources: [
    "Budynas & Nisbett, Shigley's Mechanical Engineering Design, 9e (2011), sec. 3-14, 3-16",
    'First and full yield of a ring under outside pressure: Tresca in plane stress, as Timoshenko, Strength of Materials II, thick cylinders beyond the elastic limit (from memory)',
  ],
  cautions: [
    'A brittle housing that a hot bush bursts gives no warning: guard the first run to temperature, and keep clear of the boss.',
    'A bush that loosens can turn, shut its oil hole and seize: pin or lock it, or take a metal nearer to the housing.',
  ],
  examples: [
    {
      title: 'Aluminium bush in gray iron, 20 to 180 degC: the whole wall yields',
      source:
        'Second method: the ring with a plastic zone growing from the bore (Tresca, plane stress) solved together with the elastic housing, then unloaded',
      grade: 'recomputed',
      inputs: { ...aluminium, bush_temperature: '180 degC' },
      expect: {
        hot_interference: { value: '0.1376 mm', within: '1e-6 mm' },
        interference_left: { value: '-0.0148315 mm', within: '1e-6 mm' },
      },
    },
    {
      title: 'Aluminium bush in gray iron, 20 to 100 degC: part of the wall yields',
      source:
        'Second method: the ring with a plastic zone growing from the bore (Tresca, plane stress) solved together with the elastic housing, then unloaded',
      grade: 'recomputed',
      inputs: { ...aluminium, bush_temperature: '100 degC' },
      expect: {
        interference_left: { value: '0.0339603 mm', within: '0.0012 mm' },
      },
    },
    {
      title: 'Bronze bush, cold: the stress of the plain interference fit',
      source: 'Numerical solution of the ring equation: 69.7889 MPa',
      grade: 'computed',
      inputs: {
        bush_outside: '50 mm',
        bush_bore: '40 mm',
        housing_outside: '90 mm',
        interference: '0.040 mm',
        bush_temperature: '20 degC',
        bush_material: {
          E: '100 GPa',
          nu: '0.34',
          alpha: '18e-6 1/K',
          yield: '138 MPa',
          brittle: '0',
          max_temperature: '160 degC',
        },
        housing_material: {
          E: '100 GPa',
          nu: '0.26',
          alpha: '11.4e-6 1/K',
          yield: '214 MPa',
          brittle: '1',
          max_temperature: '400 degC',
        },
      },
      expect: {
        hot_stress: { value: '69.7889 MPa', within: 1e-5 },
        interference_left: { value: '0.040 mm', within: '1e-9 mm' },
      },
    },
  ],
  drawing: (v) =>
    ringPair({
      bore: v.bush_bore,
      contact: v.bush_outside,
      outside: v.housing_outside,
      misfit: v.hot_interference ?? v.interference,
      names: {
        bore: 'bush_bore',
        contact: 'bush_outside',
        outside: 'housing_outside',
        misfit: v.hot_interference === undefined ? 'interference' : 'hot_interference',
      },
    }),
});
