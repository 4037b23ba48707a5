import { defineCell } from '../record/cell.ts';
import { broaching, cutting, milling, powerOff } from '../record/hazards.ts';

/** Section of a disc of `disc` from its lowest point up to a chord at `height`. */
const segment = (height: string): string =>
  `(disc / 2) ^ 2 * ACOS(1 - 2 * ${height} / disc) - (disc / 2 - ${height}) * SQRT(${height} * (disc - ${height}))`;

export default defineCell({
  key: 'woodruff-key',
  edition: 1,
  title: 'Woodruff key',
  purpose:
    'The half-moon key of a shaft by its number: how deep the cutter goes, what to measure on shaft and hub, and what it carries.',
  group: 'machine work',
  inputs: [
    { name: 'shaft', label: 'shaft diameter at the key', quantity: 'length', sensible: ['6 mm', '75 mm'] },
    {
      name: 'key',
      label: 'key',
      choice: 'woodruff-keys',
      hint: 'By its number: the last two figures are eighths of an inch of disc, those before them 32nds of width.',
    },
    {
      name: 'torque',
      label: 'torque it must carry',
      quantity: 'torque',
      optional: true,
      sensible: ['0.1 N.m', '5000 N.m'],
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
      formula: '=WOODRUFFWIDTH(key)',
      basis: 'geometry',
    },
    {
      name: 'disc',
      label: 'diameter of the cutter',
      quantity: 'length',
      formula: '=WOODRUFFDISC(key)',
      basis: 'geometry',
      face: true,
    },
    {
      name: 'height',
      label: 'key height',
      quantity: 'length',
      formula: '=WOODRUFFHEIGHT(key)',
      basis: 'geometry',
      hint: 'At the most; by its standard 0.005 in less at the least.',
    },
    {
      name: 'seat_depth',
      label: 'seat in the shaft, at its side',
      quantity: 'length',
      formula: '=WOODRUFFSEAT(key)',
      basis: 'geometry',
      hint: 'At the least; by its standard 0.005 in deeper at the most.',
    },
    {
      name: 'sink',
      label: 'sink the cutter below the crown of the shaft',
      quantity: 'length',
      formula: '=seat_depth + (shaft - SQRT(MAX(0 m2; shaft ^ 2 - width ^ 2))) / 2',
      basis: 'geometry',
      face: true,
      hint: 'From where it just touches the crown.',
    },
    {
      name: 'over_seat',
      label: 'floor of the seat to the far side of the shaft',
      quantity: 'length',
      formula: '=shaft - sink',
      basis: 'geometry',
      ofPart: true,
    },
    {
      name: 'over_key',
      label: 'top of the key to the far side of the shaft',
      quantity: 'length',
      formula: '=over_seat + height',
      basis: 'geometry',
      hint: 'With the key home and level: what a micrometer reads.',
    },
    {
      name: 'over_way',
      label: 'floor of the keyway to the far side of the bore',
      quantity: 'length',
      formula: '=(shaft + SQRT(MAX(0 m2; shaft ^ 2 - width ^ 2))) / 2 + WOODRUFFWAY(key)',
      basis: 'geometry',
      ofPart: true,
      face: true,
      hint: 'For a bore of the size of the shaft.',
    },
    {
      name: 'top_room',
      label: 'room above the key',
      quantity: 'length',
      formula: '=over_way - over_key',
      basis: 'geometry',
    },
    {
      name: 'shaft_left',
      label: 'shaft left below the seat, as a share of its diameter',
      quantity: 'number',
      formula: '=over_seat / shaft',
      basis: 'geometry',
    },
    {
      name: 'sheared',
      label: 'section of the key at the crown of the shaft',
      quantity: 'area',
      formula: '=width * 2 * SQRT(seat_depth * (disc - seat_depth))',
      basis: 'geometry',
      display: { in: 'in2', mm: 'mm2' },
    },
    {
      name: 'proud',
      label: 'side of the key in the hub',
      quantity: 'area',
      formula: `=${segment('height')} - (${segment('seat_depth')})`,
      basis: 'geometry',
      display: { in: 'in2', mm: 'mm2' },
    },
    {
      name: 'force_held',
      label: 'force at the crown it holds',
      quantity: 'force',
      formula: '=key_material.yield * MIN(0.577 * sheared; proud)',
      basis: 'model',
      hint: 'The weaker of shear, at 0.577 of the yield strength, and pressure at its side in the hub.',
    },
    {
      name: 'torque_held',
      label: 'torque it holds',
      quantity: 'torque',
      formula: '=force_held * shaft / 2',
      basis: 'model',
      face: true,
    },
    {
      name: 'margin',
      label: 'safety factor',
      quantity: 'number',
      formula: '=torque_held / torque',
      basis: 'model',
      limits: { lower: '=least_margin' },
    },
  ],
  validity: [
    { holds: '=shaft > 0 m', otherwise: 'The shaft is above zero.', grade: 'error' },
    {
      holds: '=shaft > WOODRUFFWIDTH(key)',
      otherwise: 'The key is wider than the shaft: check both.',
      grade: 'error',
    },
    {
      holds: '=IF(ISBLANK(torque); 1 > 0; torque > 0 N.m)',
      otherwise: 'The torque is above zero.',
      grade: 'error',
    },
    {
      holds: '=over_seat >= 0.6 * shaft',
      otherwise:
        'The seat takes more than two fifths of the shaft: a key of less height, or a parallel key, leaves it stronger.',
      grade: 'caution',
    },
    {
      holds: '=width <= 0.3 * shaft',
      otherwise: 'Wide for its shaft: usual keys are about a quarter of the shaft.',
      grade: 'caution',
    },
  ],
  assumptions: [
    'Full-radius keys; a flat-bottomed one is as high less what was cut off.',
    'The cutter is as wide and as large as the key’s disc, fed straight in with its middle over the axis of the shaft; a worn cutter leaves a shallower seat than its number says.',
    'The whole torque through the key, none by the grip of the fit.',
  ],
  sources: [
    "ANSI/ASME B17.2-1967 (R2013), Woodruff keys and keyseats: numbers and heights as in Machinery's Handbook, 31e, Keys and Keyseats, Table 8; depths at the side, seat C - 0.005 in - W/2, hub W/2 + 0.006 in",
    "The same depths in Budynas & Nisbett, Shigley's Mechanical Engineering Design, 9e (2011), Table 7-7",
    'Geometry of a chord: crown of the shaft above the corners of the seat (D - sqrt(D^2 - W^2)) / 2, as in ANSI/ASME B17.1-1967 (R2013)',
    "Shear and side pressure: Budynas & Nisbett, Shigley's Mechanical Engineering Design, 9e (2011), sec. 7-7",
  ],
  cautions: [
    'A key that works loose flies out or shears, and its deep seat is where a bent shaft cracks: look for cracks before it goes back.',
    milling,
    broaching,
    cutting,
    powerOff,
  ],
  examples: [
    {
      title: 'No. 606 in a 1 in shaft',
      source:
        'Shigley 9e (2011), Table 7-7, 3/16 x 3/4: height 0.313, seat 0.2143 and keyway 0.0997 in at the side; crown 0.00887 in by the chord',
      grade: 'seen',
      inputs: { shaft: '1 in', key: '606' },
      expect: {
        width: { value: '0.1875 in', within: 1e-9 },
        disc: { value: '0.75 in', within: 1e-9 },
        height: { value: '0.313 in', within: 1e-9 },
        seat_depth: { value: '0.2143 in', within: '1e-4 in' },
        sink: { value: '0.2232 in', within: '1e-4 in' },
        over_way: { value: '1.0909 in', within: '2e-4 in' },
      },
    },
    {
      title: 'No. 1210 in a 1 3/4 in shaft',
      source:
        'Shigley 9e (2011), Table 7-7, 3/8 x 1 1/4: height 0.547, seat 0.3545 and keyway 0.1935 in at the side; crown 0.02032 in by the chord',
      grade: 'seen',
      inputs: { shaft: '1.75 in', key: '1210' },
      expect: {
        height: { value: '0.547 in', within: 1e-9 },
        seat_depth: { value: '0.3545 in', within: '1e-4 in' },
        sink: { value: '0.3748 in', within: '2e-4 in' },
        over_way: { value: '1.9232 in', within: '2e-4 in' },
      },
    },
    {
      title: 'No. 404 in a 5/8 in shaft, key of 50 ksi, 20 lbf ft',
      source:
        'recomputed by coordinates: disc of 0.25 in radius, chord at 0.1355 in 0.44448 in long; strips of the disc from 0.1355 to 0.203 in make 0.03182 in2',
      grade: 'recomputed',
      inputs: { shaft: '0.625 in', key: '404', torque: '20 lbf.ft', key_material: { yield: '50 ksi' } },
      expect: {
        sheared: { value: '0.05556 in2', within: 1e-3 },
        proud: { value: '0.03182 in2', within: 1e-3 },
        force_held: { value: '1591.0 lbf', within: 1e-3 },
        margin: { value: '2.0716', within: 1e-3 },
      },
    },
  ],
  drawing: ({ shaft, width, sink, height }) => {
    if (shaft === undefined || width === undefined || sink === undefined || height === undefined)
      return undefined;
    if (!(shaft > width && width > 0 && sink > 0 && sink < shaft && height > 0)) return undefined;
    const scale = 150 / shaft;
    if (!Number.isFinite(scale)) return undefined;
    const [x, y] = [150, 125];
    const top = y - 75;
    const [half, floor] = [(width * scale) / 2, top + sink * scale];
    return {
      width: 300,
      height: 225,
      shapes: [
        { kind: 'circle', x, y, r: 75, fill: 'section-a' },
        { kind: 'rect', x: x - half, y: top - 2, width: 2 * half, height: floor - top + 2, fill: 'paper' },
        {
          kind: 'rect',
          x: x - half,
          y: floor - height * scale,
          width: 2 * half,
          height: height * scale,
          fill: 'section-b',
        },
        { kind: 'line', x1: x, y1: 25, x2: x, y2: 210, style: 'centre' },
        { kind: 'line', x1: 60, y1: y, x2: 240, y2: y, style: 'centre' },
        { kind: 'dimension', x1: x, y1: floor, x2: x, y2: y + 75, offset: 100, of: 'over_seat' },
        { kind: 'dimension', x1: x - 75, y1: y, x2: x + 75, y2: y, offset: 92, of: 'shaft' },
      ],
    };
  },
});
