import { defineCell } from '../record/cell.ts';

export default defineCell({
  key: 'taper-by-pins',
  edition: 1,
  title: 'External taper by pins',
  purpose:
    'Angle and end diameter of a tapered plug, from sizes over two pins low down and on blocks higher up.',
  group: 'measuring',
  inputs: [
    {
      name: 'over_low',
      label: 'over the pins, low',
      quantity: 'length',
      role: 'measured',
      sensible: ['5 mm', '1 m'],
    },
    {
      name: 'over_high',
      label: 'over the pins, high',
      quantity: 'length',
      role: 'measured',
      sensible: ['5 mm', '1 m'],
    },
    {
      name: 'low_blocks',
      label: 'blocks under the low pins',
      quantity: 'length',
      counts: 'aside',
      default: '0 mm',
      sensible: ['0 mm', '500 mm'],
    },
    {
      name: 'high_blocks',
      label: 'blocks under the high pins',
      quantity: 'length',
      counts: 'aside',
      sensible: ['1 mm', '500 mm'],
    },
    { name: 'pin', label: 'pin diameter', quantity: 'length', counts: 'aside', sensible: ['1 mm', '30 mm'] },
  ],
  outputs: [
    {
      name: 'half_angle',
      label: 'angle to the centreline',
      quantity: 'angle',
      basis: 'geometry',
      formula: '=ATAN((over_high - over_low) / 2 / (high_blocks - low_blocks))',
      display: { in: 'deg', mm: 'deg' },
    },
    {
      name: 'included_angle',
      label: 'included angle',
      quantity: 'angle',
      basis: 'geometry',
      formula: '=2 * half_angle',
      face: true,
      display: { in: 'deg', mm: 'deg' },
    },
    {
      name: 'taper',
      label: 'taper on the diameter',
      quantity: 'number',
      basis: 'geometry',
      formula: '=(over_high - over_low) / (high_blocks - low_blocks)',
      face: true,
      display: { in: 'in/ft', mm: 'mm/m' },
    },
    {
      name: 'small_end',
      label: 'diameter at the plate',
      quantity: 'length',
      basis: 'geometry',
      formula: '=over_low - pin * (1 + 1 / COS(half_angle)) - (low_blocks + pin / 2) * taper',
      face: true,
    },
  ],
  validity: [
    { holds: '=pin > 0 mm', otherwise: 'A pin has a diameter above zero.', grade: 'error' },
    {
      holds: '=high_blocks > low_blocks',
      otherwise: 'The high blocks are not higher than the low ones.',
      grade: 'error',
    },
    { holds: '=low_blocks >= 0 mm', otherwise: 'Blocks have a height from zero up.', grade: 'error' },
    {
      holds: '=over_high >= over_low',
      otherwise:
        'The plug stands on its large end: stand it on the small end, so that the pins are wedged against the blocks.',
      grade: 'caution',
    },
    {
      holds: '=AND(over_low > 2 * pin; over_high > 2 * pin)',
      otherwise:
        'The size over both pins is more than the pins themselves: look at the readings and the pin diameter.',
      grade: 'error',
    },
  ],
  assumptions: [
    'The plug stands on its small end, square to the plate; both pins of one diameter; light pressure.',
    'Both sizes with one micrometer: a constant error of it drops out of the angle.',
  ],
  sources: [
    'No published worked example was found: the examples are held by a second method of our own',
    'Lecture slides, Metrology: measurement of a taper plug gauge by rollers: tan(half angle) = (M2 - M1) / (2 (h2 - h1)), diameter in the plane of the roller centres = M1 - d (1 + sec(half angle))',
  ],
  cautions: [],
  examples: [
    {
      title: 'Cone of 20 mm at the plate, taper 1 in 10, 6 mm pins on the plate and on 50 mm',
      source: 'second way: circles placed against the cone by coordinates',
      grade: 'recomputed',
      inputs: { over_low: '32.30749532 mm', over_high: '37.30749532 mm', high_blocks: '50 mm', pin: '6 mm' },
      expect: {
        small_end: { value: '20 mm', within: '1e-6 mm' },
        included_angle: { value: '5.724810452 deg', within: '1e-6 deg' },
      },
    },
  ],
  drawing: ({ over_low, over_high }) =>
    over_low === undefined || over_high === undefined
      ? undefined
      : {
          width: 320,
          height: 220,
          shapes: [
            { kind: 'path', d: 'M120 190 L90 30 L230 30 L200 190 Z', fill: 'section-a' },
            { kind: 'line', x1: 20, y1: 190, x2: 300, y2: 190, style: 'outline' },
            { kind: 'circle', x: 106, y: 179, r: 11, fill: 'none' },
            { kind: 'circle', x: 214, y: 179, r: 11, fill: 'none' },
            { kind: 'circle', x: 88, y: 79, r: 11, fill: 'none' },
            { kind: 'circle', x: 232, y: 79, r: 11, fill: 'none' },
            { kind: 'rect', x: 66, y: 90, width: 24, height: 100, fill: 'section-b' },
            { kind: 'rect', x: 230, y: 90, width: 24, height: 100, fill: 'section-b' },
            { kind: 'line', x1: 160, y1: 15, x2: 160, y2: 205, style: 'centre' },
            { kind: 'dimension', x1: 95, y1: 179, x2: 225, y2: 179, offset: -26, of: 'over_low' },
            { kind: 'dimension', x1: 77, y1: 79, x2: 243, y2: 79, offset: 64, of: 'over_high' },
          ],
        },
});
