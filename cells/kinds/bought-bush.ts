import { defineCell } from '../record/cell.ts';
import { reaming } from '../record/hazards.ts';

const um = { in: 'tenth_in', mm: 'um' } as const;

/** Limits the seller prints for his own bush, least and greatest. */
const soldBy = (part: string, label: string, when: string) =>
  (['least', 'greatest'] as const).map((end) => ({
    name: `sold_${part}_${end}`,
    label: `${label} ${when}, ${end}, by the seller`,
    quantity: 'length',
    optional: true,
    sensible: ['3 mm', '250 mm'] as const,
  }));

export default defineCell({
  key: 'bought-bush',
  edition: 1,
  title: 'Bush bought to a standard',
  purpose:
    'Limits of a wrapped or turned bush as it is sold, the housing to bore for it, and the clearance it leaves when pressed in.',
  group: 'fits',
  inputs: [
    {
      name: 'make',
      label: 'make of bush',
      choice: 'bought-bushes',
      optional: true,
      hint: 'Blank for one that is sold by its own limits, as inch bushes are: enter them below.',
    },
    { name: 'bore', label: 'bore, nominal', quantity: 'length', sensible: ['3 mm', '200 mm'] },
    { name: 'outside', label: 'outside diameter, nominal', quantity: 'length', sensible: ['5 mm', '230 mm'] },
    {
      name: 'shaft_class',
      label: 'class of the shaft',
      choice: 'shaft-classes',
      optional: true,
      hint: 'Usual: f7 or e7 in a wrapped bush, g7 or e7 in a turned one. Blank where the shaft is what it is.',
    },
    {
      name: 'journal',
      label: 'shaft as it is',
      quantity: 'length',
      role: 'measured',
      optional: true,
      sensible: ['3 mm', '200 mm'],
      hint: 'Comes before the class.',
    },
    ...soldBy('outside', 'outside of the bush', 'as sold'),
    ...soldBy('fitted', 'bore', 'when fitted, or as sold less what the press closes it in'),
    ...soldBy('housing', 'housing bore', 'for it'),
    {
      name: 'least_wanted',
      label: 'least clearance wanted',
      quantity: 'length',
      optional: true,
      sensible: ['0 mm', '2 mm'],
    },
    {
      name: 'greatest_wanted',
      label: 'greatest clearance wanted',
      quantity: 'length',
      optional: true,
      sensible: ['0 mm', '2 mm'],
    },
  ],
  outputs: [
    {
      name: 'outside_least',
      label: 'outside of the bush, least',
      quantity: 'length',
      basis: 'geometry',
      formula:
        '=IF(ISBLANK(sold_outside_least); outside + BUSHOUTSIDELOWER(make; outside); sold_outside_least)',
    },
    {
      name: 'outside_greatest',
      label: 'outside of the bush, greatest',
      quantity: 'length',
      basis: 'geometry',
      formula:
        '=IF(ISBLANK(sold_outside_greatest); outside + BUSHOUTSIDEUPPER(make; outside); sold_outside_greatest)',
    },
    {
      name: 'housing_least',
      label: 'housing bore, least: H7, or the seller’s',
      quantity: 'length',
      basis: 'geometry',
      formula:
        '=IF(ISBLANK(sold_housing_least); outside + LOWERDEVIATION(outside; "H7"); sold_housing_least)',
      face: true,
    },
    {
      name: 'housing_greatest',
      label: 'housing bore, greatest: H7, or the seller’s',
      quantity: 'length',
      basis: 'geometry',
      formula:
        '=IF(ISBLANK(sold_housing_greatest); outside + UPPERDEVIATION(outside; "H7"); sold_housing_greatest)',
      face: true,
    },
    {
      name: 'least_interference',
      label: 'least interference',
      quantity: 'length',
      basis: 'geometry',
      formula: '=outside_least - housing_greatest',
      display: um,
    },
    {
      name: 'greatest_interference',
      label: 'greatest interference',
      quantity: 'length',
      basis: 'geometry',
      formula: '=outside_greatest - housing_least',
      display: um,
    },
    {
      name: 'fitted_least',
      label: 'bore when fitted, least',
      quantity: 'length',
      basis: 'model',
      formula: '=IF(ISBLANK(sold_fitted_least); bore + BUSHBORELOWER(make; bore); sold_fitted_least)',
    },
    {
      name: 'fitted_greatest',
      label: 'bore when fitted, greatest',
      quantity: 'length',
      basis: 'model',
      formula: '=IF(ISBLANK(sold_fitted_greatest); bore + BUSHBOREUPPER(make; bore); sold_fitted_greatest)',
      hint: 'In a stiff housing bored to H7, and about so: measure it.',
    },
    {
      name: 'shaft_least',
      label: 'shaft, least',
      quantity: 'length',
      basis: 'geometry',
      formula: '=IF(ISBLANK(journal); bore + LOWERDEVIATION(bore; shaft_class); journal)',
    },
    {
      name: 'shaft_greatest',
      label: 'shaft, greatest',
      quantity: 'length',
      basis: 'geometry',
      formula: '=IF(ISBLANK(journal); bore + UPPERDEVIATION(bore; shaft_class); journal)',
    },
    {
      name: 'least_clearance',
      label: 'least running clearance',
      quantity: 'length',
      basis: 'model',
      formula: '=fitted_least - shaft_greatest',
      face: true,
      limits: { lower: '=least_wanted', metalOn: 'low' },
      display: { in: 'thou', mm: 'um' },
    },
    {
      name: 'greatest_clearance',
      label: 'greatest running clearance',
      quantity: 'length',
      basis: 'model',
      formula: '=fitted_greatest - shaft_least',
      face: true,
      limits: { upper: '=greatest_wanted', metalOn: 'low' },
      display: { in: 'thou', mm: 'um' },
    },
  ],
  validity: [
    {
      holds:
        '=AND(ISBLANK(sold_outside_least) = ISBLANK(sold_outside_greatest); ISBLANK(sold_fitted_least) = ISBLANK(sold_fitted_greatest); ISBLANK(sold_housing_least) = ISBLANK(sold_housing_greatest))',
      otherwise: 'Of the limits of the seller one is entered without the other: enter both.',
      grade: 'caution',
    },
    {
      holds:
        '=AND(IF(OR(ISBLANK(sold_outside_least); ISBLANK(sold_outside_greatest)); 1 > 0; sold_outside_least <= sold_outside_greatest); IF(OR(ISBLANK(sold_fitted_least); ISBLANK(sold_fitted_greatest)); 1 > 0; sold_fitted_least <= sold_fitted_greatest); IF(OR(ISBLANK(sold_housing_least); ISBLANK(sold_housing_greatest)); 1 > 0; sold_housing_least <= sold_housing_greatest))',
      otherwise: 'A least limit is above its greatest: change them over.',
      grade: 'error',
    },
    {
      holds: '=IF(ISBLANK(make); 1 > 0; bore >= 3 mm)',
      otherwise: 'The standards of bought bushes begin at 3 mm.',
      grade: 'caution',
    },
    {
      holds: '=AND(bore > 0 mm; outside > bore)',
      otherwise: 'Bore and outside must rise in this order, from above zero.',
      grade: 'error',
    },
    {
      holds: '=NOT(AND(ISBLANK(shaft_class); ISBLANK(journal)))',
      otherwise: 'Neither a class nor a size of the shaft is entered: there is no clearance to work out.',
      grade: 'caution',
    },
    {
      holds: '=outside - bore <= 0.4 * bore + 4 mm',
      otherwise: 'Thick for a bush of these standards: look at bore and outside again.',
      grade: 'caution',
    },
    {
      holds: '=IF(ISBLANK(journal); 1 > 0; journal > 0 mm)',
      otherwise: 'The shaft is above zero.',
      grade: 'error',
    },
  ],
  assumptions: [
    'A rigid housing of steel or iron bored to H7; in a thin or light one the bore comes out larger.',
    'The bore when fitted is what the standards aim at, not a promise: a turned bush is often reamed in place, a wrapped one with a lining must not be.',
  ],
  sources: [
    'Wrapped bushes: ISO 3547 (DIN 1494), outside over the nominal, housing H7, bore about H9 when fitted, shaft f7 or e7; 10 to 18 and 30 to 80 mm seen, the rest from memory',
    'Turned copper-alloy bushes: ISO 4379:1993 and 2018 (from memory): outside s6, r6 over 120 mm, bore about H8 when fitted, shaft e7 or g7',
    'ISO 286-1:2010, ISO 286-2:2010',
  ],
  cautions: [
    'Pressing: guard the press and stand out of line with the ram; a thin bush folds unless it is pressed on an arbor.',
    'Lined bushes: no flame, and no machining of the lining; PTFE gives poisonous fumes above about 260 degC, and some linings hold lead.',
    reaming,
  ],
  examples: [
    {
      title: 'Inch bush 1 x 1 1/4 in by the limits of its seller, on a shaft as it is',
      source:
        'by hand: 1.2520 - 1.2505 = 0.0015 in, 1.2530 - 1.2495 = 0.0035 in; 1.0005 - 0.9985 and 1.0015 - 0.9985 in',
      grade: 'recomputed',
      inputs: {
        bore: '1 in',
        outside: '1 1/4 in',
        journal: '0.9985 in',
        sold_outside_least: '1.2520 in',
        sold_outside_greatest: '1.2530 in',
        sold_fitted_least: '1.0005 in',
        sold_fitted_greatest: '1.0015 in',
        sold_housing_least: '1.2495 in',
        sold_housing_greatest: '1.2505 in',
      },
      expect: {
        least_interference: { value: '0.0015 in', within: '1e-9 in' },
        greatest_interference: { value: '0.0035 in', within: '1e-9 in' },
        least_clearance: { value: '0.0020 in', within: '1e-9 in' },
        greatest_clearance: { value: '0.0030 in', within: '1e-9 in' },
      },
    },
    {
      title: 'Wrapped bush 35 x 39 mm: 45 to 85 um over its nominal outside',
      source: 'ISO 3547 (DIN 1494), limits over 30 to 50 mm; bore H9 and shaft f7 by ISO 286-2',
      grade: 'seen',
      inputs: { make: 'wrapped', bore: '35 mm', outside: '39 mm', shaft_class: 'f7' },
      expect: {
        outside_least: { value: '39.045 mm', within: '1e-9 mm' },
        outside_greatest: { value: '39.085 mm', within: '1e-9 mm' },
        least_interference: { value: '20 um', within: '1e-6 um' },
        greatest_interference: { value: '85 um', within: '1e-6 um' },
        least_clearance: { value: '25 um', within: '1e-6 um' },
        greatest_clearance: { value: '112 um', within: '1e-6 um' },
      },
    },
    {
      title: 'Turned bush 40 x 50 mm on a shaft e7',
      source:
        'ISO 4379 classes (from memory) with the limits of ISO 286-2: 50 s6 +59 +43, 40 H8 +39, 40 e7 -50 -75',
      grade: 'memory',
      inputs: { make: 'turned', bore: '40 mm', outside: '50 mm', shaft_class: 'e7' },
      expect: {
        least_interference: { value: '18 um', within: '1e-6 um' },
        greatest_interference: { value: '59 um', within: '1e-6 um' },
        least_clearance: { value: '50 um', within: '1e-6 um' },
        greatest_clearance: { value: '114 um', within: '1e-6 um' },
      },
    },
  ],
});
