import { defineCell } from '../record/cell.ts';
import { lifting, oldParts, powerOff } from '../record/hazards.ts';

export default defineCell({
  key: 'backlash',
  edition: 1,
  title: 'Backlash from centre distance',
  purpose: 'Play between two spur gears at the centre distance they have, and what moving it does.',
  group: 'clearance',
  inputs: [
    {
      name: 'pitch_diameter_1',
      label: 'pitch diameter of the first gear',
      quantity: 'length',
      sensible: ['3 mm', '3 m'],
      hint: 'Teeth times module, or teeth over diametral pitch: =24 / 8 * 1 in',
    },
    {
      name: 'pitch_diameter_2',
      label: 'pitch diameter of the second gear',
      quantity: 'length',
      sensible: ['3 mm', '3 m'],
    },
    {
      name: 'pressure_angle',
      label: 'pressure angle',
      quantity: 'angle',
      counts: 'aside',
      sensible: ['14 deg', '30 deg'],
      hint: '14 1/2 or 20 degrees: ask, old gears have both.',
    },
    {
      name: 'centre_distance',
      label: 'centre distance as it is',
      quantity: 'length',
      sensible: ['3 mm', '3 m'],
    },
    {
      name: 'tooth_thinning',
      label: 'teeth thinner than standard, both gears together',
      quantity: 'length',
      optional: true,
      sensible: ['0 mm', '2 mm'],
      hint: 'Cut so on purpose, and worn off: at the pitch circle.',
    },
    {
      name: 'new_least',
      label: 'least backlash wanted',
      quantity: 'length',
      sensible: ['0 mm', '5 mm'],
      optional: true,
    },
    {
      name: 'new_greatest',
      label: 'greatest backlash, new',
      quantity: 'length',
      sensible: ['0 mm', '5 mm'],
      optional: true,
    },
    {
      name: 'wear_limit',
      label: 'wear limit',
      quantity: 'length',
      sensible: ['0 mm', '5 mm'],
      optional: true,
    },
  ],
  outputs: [
    {
      name: 'standard_distance',
      label: 'standard centre distance',
      quantity: 'length',
      basis: 'geometry',
      formula: '=(pitch_diameter_1 + pitch_diameter_2) / 2',
    },
    {
      name: 'opened',
      label: 'centres stand further apart than standard by',
      quantity: 'length',
      basis: 'geometry',
      formula: '=centre_distance - standard_distance',
      display: { in: 'thou', mm: 'mm' },
    },
    {
      name: 'running_angle',
      label: 'pressure angle as it runs',
      quantity: 'angle',
      basis: 'geometry',
      formula: '=ACOS(standard_distance * COS(pressure_angle) / centre_distance)',
    },
    {
      name: 'backlash',
      label: 'backlash at the running pitch circle',
      quantity: 'length',
      basis: 'geometry',
      formula:
        '=2 * centre_distance * (TAN(running_angle) - running_angle - TAN(pressure_angle) + pressure_angle) + IF(ISBLANK(tooth_thinning); 0 m; tooth_thinning * centre_distance / standard_distance)',
      face: true,
      limits: { lower: '=new_least', upper: '=new_greatest', wear: '=wear_limit', metalOn: 'low' },
      display: { in: 'thou', mm: 'mm' },
    },
    {
      name: 'normal_backlash',
      label: 'backlash as a feeler between the flanks finds it',
      quantity: 'length',
      basis: 'geometry',
      formula: '=backlash * COS(running_angle)',
      face: true,
      display: { in: 'thou', mm: 'mm' },
    },
    {
      name: 'play_1',
      label: 'the first gear turns by, the second held',
      quantity: 'angle',
      basis: 'geometry',
      formula: '=2 * backlash / (pitch_diameter_1 * centre_distance / standard_distance)',
    },
    {
      name: 'play_2',
      label: 'the second gear turns by, the first held',
      quantity: 'angle',
      basis: 'geometry',
      formula: '=2 * backlash / (pitch_diameter_2 * centre_distance / standard_distance)',
    },
    {
      name: 'per_opening',
      label: 'backlash gained per opening of the centres',
      quantity: 'number',
      basis: 'geometry',
      formula: '=2 * TAN(running_angle)',
      hint: 'The shop rule: twice the tangent of the pressure angle.',
    },
  ],
  validity: [
    {
      holds:
        '=AND(pitch_diameter_1 > 0 m; pitch_diameter_2 > 0 m; pressure_angle > 0 deg; pressure_angle < 45 deg)',
      otherwise: 'Pitch diameters must be above zero and the pressure angle between 0 and 45 degrees.',
      grade: 'error',
    },
    {
      holds: '=centre_distance > (pitch_diameter_1 + pitch_diameter_2) / 2 * COS(pressure_angle)',
      otherwise: 'So close the base circles overlap: check pitch diameters and centre distance.',
      grade: 'error',
    },
    {
      holds: '=backlash > 0 m',
      otherwise:
        'No backlash is left: the gears bind. Set the centres further apart, or look at the sizes again.',
      grade: 'caution',
    },
    {
      holds: '=opened <= 0.05 * standard_distance',
      otherwise: 'The centres stand far apart: look whether the teeth still overlap enough to hand over.',
      grade: 'caution',
    },
  ],
  assumptions: [
    'Involute spur gears of standard teeth without profile shift, cut without backlash at the standard distance apart from the thinning entered.',
    'Runout of the gears makes it vary over a turn: measure at four places.',
  ],
  sources: [
    'Involute geometry: running angle from the base circles, backlash = 2 C (inv a\u2032 - inv a); any gear handbook, such as Dudley (from memory)',
    'Shop rule 2 tan(pressure angle): common practice, no source',
  ],
  cautions: [
    'Gears draw in fingers and cloth: check backlash with the power locked off.',
    powerOff,
    oldParts,
    lifting,
  ],
  examples: [
    {
      title: '24 and 48 teeth, module 3 mm, 20 degrees, centres 0.05 mm apart: by the rule',
      source:
        'a published gear calculation page: backlash from a change of centre distance is about 2 x change x tan(pressure angle) = 0.0364 mm',
      grade: 'seen',
      inputs: {
        pitch_diameter_1: '72 mm',
        pitch_diameter_2: '144 mm',
        pressure_angle: '20 deg',
        centre_distance: '108.05 mm',
      },
      expect: {
        backlash: { value: '0.036397 mm', within: 0.01 },
        per_opening: { value: '0.72794', within: 0.01 },
      },
    },
    {
      title: '24 and 48 teeth, module 3 mm, 20 degrees, centres 0.2 mm apart',
      source:
        'Second method: tooth thickness of both gears at the running pitch circle, s\u2032 = d\u2032 (pi / 2z + inv a - inv a\u2032), taken from the pitch there',
      grade: 'recomputed',
      inputs: {
        pitch_diameter_1: '72 mm',
        pitch_diameter_2: '144 mm',
        pressure_angle: '20 deg',
        centre_distance: '108.2 mm',
      },
      expect: { backlash: { value: '0.146871 mm', within: 1e-4 } },
    },
  ],
});
