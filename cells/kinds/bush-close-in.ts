import { ringPair } from '../drawings/rings.ts';
import { innerGive } from '../formulas/rings.ts';
import { defineCell } from '../record/cell.ts';

const bronze = { E: '100 GPa', nu: '0.34' };
const iron = { E: '100 GPa', nu: '0.26' };

export default defineCell({
  key: 'bush-close-in',
  edition: 1,
  title: 'Close-in of a pressed bush',
  purpose:
    'How much the bore of a bush closes in when it is pressed home, also when the casting round it cannot be measured.',
  group: 'fits',
  inputs: [
    {
      name: 'bush_outside',
      label: 'bush outside diameter',
      quantity: 'length',
      sensible: ['5 mm', '500 mm'],
    },
    { name: 'bush_bore', label: 'bush bore', quantity: 'length', sensible: ['3 mm', '500 mm'] },
    {
      name: 'interference',
      label: 'interference, on diameter',
      quantity: 'length',
      sensible: ['1 um', '0.5 mm'],
      hint: 'What really presses: bush outside less housing bore.',
    },
    {
      name: 'housing_outside',
      label: 'outside of the casting round the bush',
      quantity: 'length',
      sensible: ['5 mm', '3 m'],
      optional: true,
      hint: 'Blank where it cannot be known: the result is then a band from a thin casting to an endless one.',
    },
    {
      name: 'thinnest_casting',
      label: 'thinnest casting likely, outside over bush outside',
      quantity: 'number',
      default: '1.5',
      sensible: ['1.1', '3'],
      hint: 'Counts only where the outside of the casting is blank.',
      source: 'common practice, no source: a boss is seldom thinner than a quarter of its bore',
    },
    {
      name: 'bush_length',
      label: 'bush length',
      quantity: 'length',
      sensible: ['2 mm', '1 m'],
      optional: true,
      hint: 'With the housing length, shows where the flat model falls short.',
    },
    {
      name: 'housing_length',
      label: 'length of the housing bore',
      quantity: 'length',
      sensible: ['2 mm', '1 m'],
      optional: true,
    },
    { name: 'bush_material', label: 'bush material', record: 'material' },
    { name: 'housing_material', label: 'housing material', record: 'material' },
  ],
  outputs: [
    {
      name: 'housing_fill',
      label: 'bush outside over casting outside, squared',
      quantity: 'number',
      formula:
        '=IF(ISBLANK(housing_outside); 1 / (2 * thinnest_casting^2); (bush_outside / housing_outside)^2)',
      spread: {
        low: '=IF(ISBLANK(housing_outside); -1 / (2 * thinnest_casting^2); 0)',
        high: '=IF(ISBLANK(housing_outside); 1 / (2 * thinnest_casting^2); 0)',
        distribution: 'rectangular',
        label: 'casting thickness not known',
      },
      hint: '0 for an endless casting.',
    },
    {
      name: 'bush_give',
      label: 'give of the bush: change of diameter per diameter, times E, per pressure',
      quantity: 'number',
      formula: innerGive('bush_outside', 'bush_bore', 'bush_material'),
    },
    {
      name: 'housing_give',
      label: 'give of the housing: change of diameter per diameter, times E, per pressure',
      quantity: 'number',
      formula: '=(1 + housing_fill) / (1 - housing_fill) + housing_material.nu',
    },
    {
      name: 'close_in_per_interference',
      label: 'close-in per interference',
      quantity: 'number',
      formula:
        '=2 * bush_outside * bush_bore / ((bush_outside^2 - bush_bore^2) * (bush_give + housing_give * bush_material.E / housing_material.E))',
      face: true,
    },
    {
      name: 'close_in',
      label: 'bore closes in by',
      quantity: 'length',
      formula: '=interference * close_in_per_interference',
      face: true,
      display: { in: 'thou', mm: 'um' },
    },
    {
      name: 'pressed_bore',
      label: 'bore after pressing, if cut to the bush bore entered before',
      quantity: 'length',
      formula: '=bush_bore - close_in',
      face: true,
    },
    {
      name: 'bore_to_cut',
      label: 'bore to cut before pressing, if the bush bore entered is wanted after',
      quantity: 'length',
      formula: '=bush_bore + close_in',
    },
    {
      name: 'wall',
      label: 'bush wall',
      quantity: 'length',
      formula: '=(bush_outside - bush_bore) / 2',
    },
    {
      name: 'close_in_rigid',
      label: 'close-in if the housing did not give at all',
      quantity: 'length',
      formula: '=interference * 2 * bush_outside * bush_bore / ((bush_outside^2 - bush_bore^2) * bush_give)',
      display: { in: 'thou', mm: 'um' },
    },
    {
      name: 'ceiling',
      label: 'most it can close in, whatever wall and housing',
      quantity: 'length',
      formula: '=interference / SQRT(1 - bush_material.nu^2)',
      display: { in: 'thou', mm: 'um' },
      hint: 'A close-in measured above this was not made by this interference in a flat elastic fit: see the note the cell then gives.',
    },
    {
      name: 'close_in_long_housing',
      label: 'close-in if the housing is much longer than the bush',
      quantity: 'length',
      formula: '=close_in * 1.125',
      spread: {
        low: '=-0.045 * close_in',
        high: '=0.045 * close_in',
        distribution: 'rectangular',
        label: 'housing longer than bush, 8 to 17 % more',
      },
      display: { in: 'thou', mm: 'um' },
    },
    {
      name: 'interference_per_diameter',
      label: 'interference per unit of diameter',
      quantity: 'interference per diameter',
      formula: '=interference / bush_outside',
    },
  ],
  validity: [
    {
      holds: '=AND(bush_bore > 0 m; bush_bore < bush_outside)',
      otherwise:
        'The bush bore must be above zero and smaller than its outside: check that neither is a radius.',
      grade: 'error',
    },
    {
      holds: '=IF(ISBLANK(housing_outside); thinnest_casting > 1; housing_outside > bush_outside)',
      otherwise: 'The casting must be larger outside than the bush.',
      grade: 'error',
    },
    {
      holds: '=interference > 0 m',
      otherwise: 'The fit is loose: the bush is no larger than the housing bore, so nothing closes in.',
      grade: 'error',
    },
    {
      holds: '=close_in <= ceiling',
      otherwise:
        'The bore closed in more than this interference can do. Look for: more interference than was measured (bore small, tapered or out of round), a bush that yielded or was sprung out of round, a burr or a chip behind it, a housing much longer than the bush, or a reading of lobes.',
      grade: 'caution',
    },
    {
      holds:
        '=IF(OR(ISBLANK(bush_length); ISBLANK(housing_length)); 1 > 0; ABS(housing_length - bush_length) <= 0.1 * bush_length)',
      otherwise:
        'Bush and housing differ in length: outside the flat model. Finite-element runs of a bush in a longer housing show 8 to 17 % more close-in; an overhanging bush end closes in less.',
      grade: 'caution',
    },
    {
      holds: '=AND(interference_per_diameter >= 0.0003; interference_per_diameter <= 0.002)',
      otherwise:
        'Interference per unit of diameter is outside 0.0003 to 0.002, the usual range for pressed and shrunk parts (common practice, no source).',
      grade: 'caution',
    },
  ],
  assumptions: [
    'Thick rings after Lame, elastic, plane stress, bush and housing of equal length.',
    'Where the outside of the casting is not known, its size is taken anywhere between the thinnest likely and endless, with equal chance of the squared ratio.',
    'The bore to cut is worked out with the ratio at the bore wanted; the error of this is below a hundredth of the close-in.',
    'Ribs, lugs and split housings give less evenly than a ring: the bore comes out lobed, so bore or ream in place where roundness matters.',
  ],
  sources: [
    "Budynas & Nisbett, Shigley's Mechanical Engineering Design, 9e (2011), sec. 3-16",
    'Ceiling: greatest value over all walls of the ratio in a rigid housing, from the same equations',
    'Length of housing: axisymmetric finite elements, bush 20 mm long in a housing 80 mm long (reference R157 to R161)',
  ],
  cautions: [
    'Pressing: guard the press, keep hands clear, press square with a stepped arbor, and stop when the force climbs past the plan.',
    'Leaded bronze chips and dust: keep off hands and food.',
  ],
  examples: [
    {
      title: 'Bronze bush 50/40 mm in gray iron 90 mm, interference 0.040 mm',
      source:
        'Lame figure beside an axisymmetric finite-element run, reference R159 (0.027916 mm); the numerical solution of R122 gives the same pressure',
      grade: 'computed',
      inputs: {
        bush_outside: '50 mm',
        bush_bore: '40 mm',
        interference: '0.040 mm',
        housing_outside: '90 mm',
        bush_material: bronze,
        housing_material: iron,
      },
      expect: { close_in: { value: '0.027916 mm', within: 2e-5 } },
    },
    {
      title: 'The same bush in a rigid housing',
      source: 'Lame with an endless stiff housing, plane stress, reference R161: ratio 1.0543',
      grade: 'computed',
      inputs: {
        bush_outside: '50 mm',
        bush_bore: '40 mm',
        interference: '1 mm',
        housing_outside: '90 mm',
        bush_material: bronze,
        housing_material: iron,
      },
      expect: { close_in_rigid: { value: '1.0543 mm', within: 1e-4 } },
    },
    {
      title: 'The same bush in a housing four times as long',
      source: 'Axisymmetric finite elements, reference R159: mean close-in 0.032797 mm',
      grade: 'computed',
      inputs: {
        bush_outside: '50 mm',
        bush_bore: '40 mm',
        interference: '0.040 mm',
        housing_outside: '90 mm',
        bush_length: '20 mm',
        housing_length: '80 mm',
        bush_material: bronze,
        housing_material: iron,
      },
      expect: { close_in_long_housing: { value: '0.032797 mm', within: 0.05 } },
    },
  ],
  drawing: (v) =>
    ringPair({
      bore: v.bush_bore,
      contact: v.bush_outside,
      outside: v.housing_outside,
      misfit: v.interference,
      names: {
        bore: 'bush_bore',
        contact: 'bush_outside',
        outside: 'housing_outside',
        misfit: 'interference',
      },
    }),
});
