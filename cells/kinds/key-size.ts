import { annulus } from '../drawings/annulus.ts';
import { defineCell } from '../record/cell.ts';
import { broaching, cutting, milling, powerOff, reaming } from '../record/hazards.ts';

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
    {
      name: 'key_material',
      label: 'material of the key',
      record: 'material',
      optional: true,
      hint: 'Softer than shaft and hub, so that the key gives first.',
    },
    {
      name: 'least_margin',
      label: 'least safety factor you accept',
      quantity: 'number',
      default: '2',
      sensible: ['1', '5'],
      source: 'common practice, no source; with shock or reversing load more',
    },
  ],
  outputs: [
    {
      name: 'width',
      label: 'key width',
      quantity: 'length',
      basis: 'geometry',
      formula: '=KEYWIDTH(system; shaft)',
      face: true,
    },
    {
      name: 'height',
      label: 'key height',
      quantity: 'length',
      basis: 'geometry',
      formula: '=KEYHEIGHT(system; shaft)',
    },
    {
      name: 'seat_depth',
      label: 'seat in the shaft, below its crown',
      quantity: 'length',
      basis: 'geometry',
      formula: '=KEYSEAT(system; shaft)',
    },
    {
      name: 'way_depth',
      label: 'keyway in the hub, above the crown of the bore',
      quantity: 'length',
      basis: 'geometry',
      formula: '=KEYWAY(system; shaft)',
    },
    {
      name: 'over_seat',
      label: 'floor of the seat to the far side of the shaft',
      quantity: 'length',
      basis: 'geometry',
      ofPart: true,
      formula: '=shaft - seat_depth',
      face: true,
    },
    {
      name: 'over_way',
      label: 'floor of the keyway to the far side of the bore',
      quantity: 'length',
      basis: 'geometry',
      ofPart: true,
      formula: '=shaft + way_depth',
      face: true,
      hint: 'For a bore of the size of the shaft.',
    },
    {
      name: 'over_way_taper',
      label: 'the same for a taper key, at its thick end',
      quantity: 'length',
      basis: 'geometry',
      formula: '=shaft + KEYWAYTAPER(system; shaft)',
      hint: 'Taper 1 in 100 along the keyway (inch: 1/8 in a foot); cut, then fit the key to it.',
    },
    {
      name: 'key_force',
      label: 'force at the side of the key',
      quantity: 'force',
      basis: 'model',
      formula: '=2 * torque / shaft',
    },
    {
      name: 'shear',
      label: 'shear in the key',
      quantity: 'pressure',
      basis: 'model',
      formula: '=key_force / (width * key_length)',
    },
    {
      name: 'side_pressure',
      label: 'pressure at its sides',
      quantity: 'pressure',
      basis: 'model',
      formula: '=2 * key_force / (height * key_length)',
      hint: 'Half of the height in the shaft, half in the hub.',
    },
    {
      name: 'shear_margin',
      label: 'safety factor, key in shear',
      quantity: 'number',
      basis: 'model',
      formula: '=0.577 * key_material.yield / MAX(shear; key_material.yield / 1000)',
      hint: 'Shear strength as 0.577 of the yield strength.',
    },
    {
      name: 'side_margin',
      label: 'safety factor, sides of the key',
      quantity: 'number',
      basis: 'model',
      formula: '=key_material.yield / MAX(side_pressure; key_material.yield / 1000)',
    },
    {
      name: 'margin',
      label: 'safety factor, the weaker of both',
      quantity: 'number',
      basis: 'model',
      formula: '=MIN(shear_margin; side_margin)',
      face: true,
      limits: { lower: '=least_margin' },
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
    'Taper keys: T for a taper key of B17.1 is 0.025 in less than that of a parallel one; DIN 6886 (from memory)',
    "Shear and side pressure: Budynas & Nisbett, Shigley's Mechanical Engineering Design, 9e (2011), sec. 7-7",
  ],
  cautions: [
    'A key that works loose flies out or shears: sharp corners in a seat start a crack in the shaft; keep the radius the drawing has.',
    reaming,
    milling,
    cutting,
    powerOff,
    broaching,
  ],
  examples: [
    {
      title: 'Square key of a 1 in shaft',
      source: 'printed table of depth control values: S 0.859, T 1.114 in',
      grade: 'seen',
      inputs: { shaft: '1 in', system: 'inch-square' },
      expect: {
        width: { value: '0.25 in', within: 1e-9 },
        over_seat: { value: '0.859 in', within: '6e-4 in' },
        over_way: { value: '1.114 in', within: '6e-4 in' },
      },
    },
    {
      title: 'Taper key of a 1 in shaft',
      source: 'ANSI/ASME B17.1-1967 (R2013) Table 2: T 1.089 in for a taper key',
      grade: 'seen',
      inputs: { shaft: '1 in', system: 'inch-square' },
      expect: { over_way_taper: { value: '1.089 in', within: '6e-4 in' } },
    },
    {
      title: 'Square key of a 1 7/16 in shaft, 5850 lbf at its side, 1.34 in long',
      source:
        "Budynas & Nisbett, Shigley's Mechanical Engineering Design, 9e, Example 7-6: 3/8 in square key, yield 65 ksi, 2.80 against crushing",
      grade: 'memory',
      inputs: {
        shaft: '1.4375 in',
        system: 'inch-square',
        key_length: '1.34 in',
        torque: '4200 lbf.in',
        key_material: { yield: '65 ksi', brittle: '0' },
      },
      expect: {
        width: { value: '0.375 in', within: 1e-9 },
        key_force: { value: '5850 lbf', within: 2e-3 },
        side_margin: { value: '2.80', within: 5e-3 },
      },
    },
    {
      title: 'Metric key of a 25 mm shaft',
      source: 'printed table of DIN 6885-1: 8 x 7, 4.0 in the shaft, 3.3 mm in the hub',
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
  drawing: ({ shaft, width, height, over_seat: seat, over_way: way }) => {
    if (
      shaft === undefined ||
      width === undefined ||
      height === undefined ||
      seat === undefined ||
      way === undefined
    )
      return undefined;
    if (!(shaft > width && width > 0 && height > 0 && seat > 0 && way > shaft)) return undefined;
    const scale = 120 / shaft;
    if (!Number.isFinite(scale)) return undefined;
    const [x, y, r] = [150, 132, 60];
    const foot = y + r;
    const [half, floor, roof] = [(width * scale) / 2, foot - seat * scale, foot - way * scale];
    return {
      width: 300,
      height: 238,
      shapes: [
        annulus(x, y, Math.max(98, y - roof + 10), r, 'section-b'),
        { kind: 'circle', x, y, r, fill: 'section-a' },
        { kind: 'rect', x: x - half, y: roof, width: 2 * half, height: floor - roof, fill: 'paper' },
        {
          kind: 'rect',
          x: x - half,
          y: floor - height * scale,
          width: 2 * half,
          height: height * scale,
          fill: 'section-c',
        },
        { kind: 'line', x1: x, y1: 18, x2: x, y2: 236, style: 'centre' },
        { kind: 'line', x1: 40, y1: y, x2: 260, y2: y, style: 'centre' },
        { kind: 'dimension', x1: x, y1: floor, x2: x, y2: foot, offset: -124, of: 'over_seat' },
        { kind: 'dimension', x1: x, y1: roof, x2: x, y2: foot, offset: 128, of: 'over_way' },
      ],
    };
  },
});
