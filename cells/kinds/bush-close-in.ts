import { ringPair } from '../drawings/rings.ts';
import { castingFill, castingHolds, outerGiveByFill, thinnestCasting } from '../formulas/casting.ts';
import { innerGive } from '../formulas/rings.ts';
import { defineCell } from '../record/cell.ts';
import { pressGuard, pressStop } from '../record/hazards.ts';

const bronze = { E: '100 GPa', nu: '0.34' };
/** What a housing longer than the bush adds to the close-in, `share` of it at a bush as long as its diameter. */
const lengthShare = (share: string): string =>
  `IF(OR(ISBLANK(bush_length); ISBLANK(housing_length)); 0; ${share} * bush_outside / bush_length * (1 - EXP(-10 * overhang / bush_outside)))`;

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
    thinnestCasting('casting'),
    {
      name: 'bush_length',
      label: 'bush length',
      quantity: 'length',
      sensible: ['2 mm', '1 m'],
      optional: true,
      hint: 'With the housing length: a housing longer than the bush closes it in more.',
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
      name: 'close_in_per_interference',
      label: 'close-in per interference, of one length',
      quantity: 'number',
      basis: 'model',
      formula:
        '=2 * bush_outside * bush_bore / ((bush_outside^2 - bush_bore^2) * (bush_give + housing_give * bush_material.E / housing_material.E))',
    },
    {
      name: 'close_in',
      label: 'bore closes in by',
      quantity: 'length',
      basis: 'model',
      formula: '=interference * close_in_per_interference',
      display: { in: 'thou', mm: 'um' },
      hint: 'Of a bush and a housing of one length.',
    },
    {
      name: 'overhang',
      label: 'housing stands past the bush, each end',
      quantity: 'length',
      formula:
        '=IF(OR(ISBLANK(bush_length); ISBLANK(housing_length)); 0 m; MAX(housing_length - bush_length; 0 m) / 2)',
      basis: 'geometry',
    },
    {
      name: 'length_share',
      label: 'more close-in for the longer housing',
      quantity: 'number',
      basis: 'model',
      formula: `=${lengthShare('0.07')}`,
      spread: {
        low: `=-${lengthShare('0.035')}`,
        high: `=${lengthShare('0.035')}`,
        distribution: 'rectangular',
        label: 'housing longer than bush',
      },
      display: { in: '%', mm: '%' },
      hint: 'Its ends hold the ends of the bush: the shorter the bush for its diameter, the more.',
    },
    {
      name: 'close_in_long_housing',
      label: 'bore closes in by, with the lengths there are',
      quantity: 'length',
      basis: 'model',
      formula: '=close_in * (1 + length_share)',
      face: true,
      display: { in: 'thou', mm: 'um' },
    },
    {
      name: 'pressed_bore',
      label: 'bore after pressing, if cut to the bush bore entered before',
      quantity: 'length',
      basis: 'model',
      ofPart: true,
      formula: '=bush_bore - close_in_long_housing',
      face: true,
    },
    {
      name: 'bore_to_cut',
      label: 'bore to cut before pressing, if the bush bore entered is wanted after',
      quantity: 'length',
      basis: 'model',
      formula: '=bush_bore + close_in_long_housing',
      face: true,
    },
    {
      name: 'wall',
      label: 'bush wall',
      quantity: 'length',
      basis: 'geometry',
      formula: '=(bush_outside - bush_bore) / 2',
    },
    {
      name: 'close_in_rigid',
      label: 'close-in if the housing did not give at all',
      quantity: 'length',
      basis: 'model',
      formula: '=interference * 2 * bush_outside * bush_bore / ((bush_outside^2 - bush_bore^2) * bush_give)',
      display: { in: 'thou', mm: 'um' },
    },
    {
      name: 'ceiling',
      label: 'most it can close in, whatever wall and housing',
      quantity: 'length',
      basis: 'model',
      formula: '=interference / SQRT(1 - bush_material.nu^2)',
      display: { in: 'thou', mm: 'um' },
      hint: 'A close-in measured above this was not made by this interference in a flat elastic fit: see the note the cell then gives.',
    },
    {
      name: 'interference_per_diameter',
      label: 'interference per unit of diameter',
      quantity: 'interference per diameter',
      basis: 'geometry',
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
    castingHolds('housing_outside', 'bush_outside', 'The casting must be larger outside than the bush.'),
    {
      holds: '=interference > 0 m',
      otherwise: 'The fit is loose: the bush is no larger than the housing bore, so nothing closes in.',
      grade: 'error',
    },
    {
      holds: '=AND(close_in <= ceiling; bush_bore - pressed_bore <= ceiling * (1 + length_share))',
      otherwise:
        'The bore closed in more than this interference can do. Look for: more interference than was measured (bore small, tapered or out of round), a bush that yielded or was sprung out of round, a burr or a chip behind it, a housing much longer than the bush, or a reading of lobes.',
      grade: 'caution',
    },
    {
      holds:
        '=IF(OR(ISBLANK(bush_length); ISBLANK(housing_length)); 1 > 0; bush_length <= 1.02 * housing_length)',
      otherwise:
        'The bush stands out of its housing: the free end closes in less than this says, and less than the middle. Measure there before reaming.',
      grade: 'caution',
    },
    {
      holds:
        '=AND(IF(ISBLANK(bush_length); 1 > 0; bush_length > 0 m); IF(ISBLANK(housing_length); 1 > 0; housing_length > 0 m))',
      otherwise: 'A length is above zero.',
      grade: 'error',
    },
    {
      holds: '=AND(interference_per_diameter >= 0.0003; interference_per_diameter <= 0.002)',
      otherwise:
        'Interference per unit of diameter is outside 0.0003 to 0.002, the usual range for pressed and shrunk parts (common practice, no source).',
      grade: 'caution',
    },
  ],
  assumptions: [
    'Thick rings after Lame, elastic, plane stress, for bush and housing of one length. For a longer housing 3.5 to 10.5 % more at a bush as long as its diameter, in step with diameter over length, and less by exp(-10 overhang / diameter): a band round 42 finite-element runs.',
    'Where the outside of the casting is not known, its size is taken anywhere between the thinnest likely and endless, with equal chance of the squared ratio.',
    'The bore to cut is worked out with the ratio at the bore wanted; the error of this is below a hundredth of the close-in.',
    'Ribs, lugs and split housings give less evenly than a ring: the bore comes out lobed, so bore or ream in place where roundness matters.',
  ],
  sources: [
    "Budynas & Nisbett, Shigley's Mechanical Engineering Design, 9e (2011), sec. 3-16",
    'Ceiling: greatest value over all walls of the ratio in a rigid housing, from the same equations',
    'Own finite-element runs: both rings as solids of revolution, elastic, elements of eight nodes on a wedge of 2 degrees, at one length and with a longer housing. At one length they give the pressures of the ring equation to 1e-4, the stresses to 2e-4 and the displacements to 5e-5, the flat of the wedge',
    'Length of housing: by those runs, a bush 20 mm long in a housing 80 mm long; and 42 more, walls of 0.06 to 0.2 of the diameter, bushes 0.4 to 2 diameters long, housings 1 to 4 times as long, iron, steel and light alloy',
  ],
  cautions: [pressGuard, pressStop],
  examples: [
    {
      title: 'Bronze bush 50/40 mm in gray iron 90 mm, interference 0.040 mm',
      source:
        'Lame figure beside an own axisymmetric finite-element run, described above (0.027916 mm); a numerical solution of the ring equation gives the same pressure',
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
      source: 'Lame with an endless stiff housing, plane stress: ratio 1.0543',
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
      source: 'Own axisymmetric finite-element run, described above: mean close-in 0.032797 mm',
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
      expect: { close_in_long_housing: { value: '0.032797 mm', within: 0.02 } },
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
