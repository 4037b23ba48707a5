import { defineCell } from '../record/cell.ts';

export default defineCell({
  key: 'key-size',
  edition: 1,
  title: 'Key and keyway',
  purpose:
    'The standard parallel key of a shaft, what to measure while cutting its seats, and what it bears.',
  group: 'machine work',
  inputs: [
    { name: 'shaft', label: 'shaft diameter', quantity: 'length', sensible: ['6 mm', '500 mm'] },
    { name: 'system', label: 'system of keys', choice: 'key-systems' },
    {
      name: 'key_length',
      label: 'length of the key',
      quantity: 'length',
      optional: true,
      sensible: ['5 mm', '500 mm'],
      hint: 'That bears: without rounded ends.',
    },
    {
      name: 'torque',
      label: 'torque it must carry',
      quantity: 'torque',
      sensible: ['0.1 N.m', '100000 N.m'],
      optional: true,
    },
  ],
  outputs: [
    {
      name: 'width',
      label: 'key width',
      quantity: 'length',
      formula: '=KEYWIDTH(system; shaft)',
      face: true,
    },
    {
      name: 'height',
      label: 'key height',
      quantity: 'length',
      formula: '=KEYHEIGHT(system; shaft)',
      face: true,
    },
    {
      name: 'seat_depth',
      label: 'seat in the shaft, below its crown',
      quantity: 'length',
      formula: '=KEYSEAT(system; shaft)',
    },
    {
      name: 'way_depth',
      label: 'keyway in the hub, above the crown of the bore',
      quantity: 'length',
      formula: '=KEYWAY(system; shaft)',
    },
    {
      name: 'over_seat',
      label: 'floor of the seat to the far side of the shaft',
      quantity: 'length',
      formula: '=shaft - seat_depth',
      face: true,
    },
    {
      name: 'over_way',
      label: 'floor of the keyway to the far side of the bore',
      quantity: 'length',
      formula: '=shaft + way_depth',
      face: true,
      hint: 'For a bore of the size of the shaft.',
    },
    {
      name: 'key_force',
      label: 'force at the side of the key',
      quantity: 'force',
      formula: '=2 * torque / shaft',
    },
    {
      name: 'shear',
      label: 'shear in the key',
      quantity: 'pressure',
      formula: '=key_force / (width * key_length)',
    },
    {
      name: 'side_pressure',
      label: 'pressure at its sides',
      quantity: 'pressure',
      formula: '=2 * key_force / (height * key_length)',
      hint: 'Half of the height in the shaft, half in the hub.',
    },
  ],
  validity: [
    { holds: '=shaft > 0 m', otherwise: 'The shaft is above zero.', grade: 'error' },
    {
      holds: '=IF(ISBLANK(key_length); 1 > 0; key_length <= 2 * shaft)',
      otherwise:
        'A key longer than two shaft diameters does not bear along its whole length as the shaft twists.',
      grade: 'caution',
    },
    {
      holds: '=IF(ISBLANK(key_length); 1 > 0; key_length > 0 m)',
      otherwise: 'The length of the key is above zero.',
      grade: 'error',
    },
    {
      holds: '=IF(ISBLANK(torque); 1 > 0; torque >= 0 N.m)',
      otherwise: 'A torque is counted without a sign.',
      grade: 'error',
    },
  ],
  assumptions: [
    'Parallel keys with the clearance at the top that the standard gives; tapered keys are cut to fit.',
    'The whole torque through the key, none by the grip of the fit; edges of the seat take more than these mean stresses.',
  ],
  sources: [
    'ANSI/ASME B17.1-1967 (R2013): sections, and S = (D - H + sqrt(D^2 - W^2)) / 2, T = (D + H + sqrt(D^2 - W^2)) / 2 + 0.005 in',
    'DIN 6885-1, form A (table of keys; in part from memory)',
    "Shear and side pressure: Budynas & Nisbett, Shigley's Mechanical Engineering Design, 9e (2011), sec. 7-7",
  ],
  cautions: [
    'A key that works loose flies out or shears: sharp corners in a seat start a crack in the shaft; keep the radius the drawing has.',
  ],
  examples: [
    {
      title: 'Square key of a 1 in shaft',
      source: 'printed table of depth control values: S 0.859, T 1.114 in (reference R543)',
      grade: 'seen',
      inputs: { shaft: '1 in', system: 'inch-square' },
      expect: {
        width: { value: '0.25 in', within: 1e-9 },
        over_seat: { value: '0.859 in', within: '6e-4 in' },
        over_way: { value: '1.114 in', within: '6e-4 in' },
      },
    },
    {
      title: 'Metric key of a 25 mm shaft',
      source: 'printed table of DIN 6885-1: 8 x 7, 4.0 in the shaft, 3.3 mm in the hub (reference R557)',
      grade: 'seen',
      inputs: { shaft: '25 mm', system: 'metric' },
      expect: {
        width: { value: '8 mm', within: 1e-9 },
        height: { value: '7 mm', within: 1e-9 },
        seat_depth: { value: '4.0 mm', within: 1e-9 },
        way_depth: { value: '3.3 mm', within: 1e-9 },
      },
    },
  ],
});
