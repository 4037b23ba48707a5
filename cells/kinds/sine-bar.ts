import { defineCell } from '../record/cell.ts';

export default defineCell({
  key: 'sine-bar',
  edition: 1,
  title: 'Sine bar',
  purpose: 'Height of blocks under a sine bar for an angle, and the angle the blocks really wrung give.',
  group: 'measuring',
  inputs: [
    {
      name: 'roller_distance',
      label: 'distance of the rollers',
      quantity: 'length',
      counts: 'aside',
      sensible: ['50 mm', '500 mm'],
    },
    { name: 'angle', label: 'angle wanted', quantity: 'angle', sensible: ['0 deg', '60 deg'] },
    {
      name: 'blocks',
      label: 'blocks wrung',
      quantity: 'length',
      counts: 'aside',
      sensible: ['0 mm', '500 mm'],
      default: '=roller_distance * SIN(angle)',
      hint: 'The stack you have in hand. Blank: the height worked out.',
    },
  ],
  outputs: [
    {
      name: 'height',
      label: 'height of blocks',
      quantity: 'length',
      basis: 'geometry',
      formula: '=roller_distance * SIN(angle)',
      face: true,
    },
    {
      name: 'angle_set',
      label: 'angle the blocks give',
      quantity: 'angle',
      basis: 'geometry',
      formula: '=ASIN(blocks / roller_distance)',
      face: true,
      display: { in: 'deg', mm: 'deg' },
    },
    {
      name: 'angle_error',
      label: 'off the angle wanted by',
      quantity: 'angle',
      basis: 'geometry',
      formula: '=angle_set - angle',
      display: { in: 'arcsec', mm: 'arcsec' },
    },
    {
      name: 'angle_per_height',
      label: 'angle for a micrometre of height',
      quantity: 'angle',
      basis: 'geometry',
      formula: '=1 um / (roller_distance * COS(angle))',
      display: { in: 'arcsec', mm: 'arcsec' },
    },
  ],
  validity: [
    {
      holds: '=roller_distance > 0 mm',
      otherwise: 'The distance of the rollers is above zero.',
      grade: 'error',
    },
    {
      holds: '=AND(angle >= 0 deg; angle < 90 deg)',
      otherwise: 'The angle lies from 0 to below 90 degrees.',
      grade: 'error',
    },
    {
      holds: '=ABS(blocks) <= roller_distance',
      otherwise: 'The blocks are higher than the rollers are apart.',
      grade: 'error',
    },
    {
      holds: '=angle <= 45 deg',
      otherwise:
        'Above 45 degrees a small error of height turns the bar far: set the complement against a square plate.',
      grade: 'caution',
    },
    {
      holds: '=blocks >= 0 mm',
      otherwise: 'A stack of blocks has a height from zero up.',
      grade: 'error',
    },
  ],
  assumptions: ['Both rollers of one diameter and parallel; plate flat; blocks clean and wrung.'],
  sources: ["H = L sin(angle): Machinery's Handbook, sine bar (from memory, edition not looked up)"],
  cautions: [],
  examples: [
    {
      title: '5 in bar at 12.5 degrees',
      source: 'computed: H = L sin(angle)',
      grade: 'computed',
      inputs: { roller_distance: '5 in', angle: '12.5 deg' },
      expect: {
        height: { value: '1.082198 in', within: '1e-6 in' },
        angle_set: { value: '12.5 deg', within: 1e-9 },
      },
    },
    {
      title: '10 in bar at 3 degrees 20 minutes',
      source: 'computed: H = L sin(angle)',
      grade: 'computed',
      inputs: { roller_distance: '10 in', angle: "3 deg 20'" },
      expect: { height: { value: '0.581448 in', within: '1e-6 in' } },
    },
  ],
  drawing: ({ roller_distance, angle, height }) => {
    if (
      roller_distance === undefined ||
      angle === undefined ||
      height === undefined ||
      !Number.isFinite(angle)
    )
      return undefined;
    const a = Math.min(1.2, Math.max(0.05, angle));
    const length = 200;
    const x = 60 + length * Math.cos(a);
    const y = 170 - length * Math.sin(a);
    return {
      width: 320,
      height: 210,
      shapes: [
        { kind: 'line', x1: 20, y1: 182, x2: 300, y2: 182, style: 'outline' },
        { kind: 'circle', x: 60, y: 170, r: 12, fill: 'section-a' },
        { kind: 'circle', x, y, r: 12, fill: 'section-a' },
        { kind: 'line', x1: 60, y1: 170, x2: x, y2: y, style: 'centre' },
        { kind: 'rect', x: x - 14, y: y + 12, width: 28, height: Math.max(0, 170 - y), fill: 'section-b' },
        { kind: 'dimension', x1: x + 14, y1: y + 12, x2: x + 14, y2: 182, offset: 16, of: 'height' },
        { kind: 'dimension', x1: 60, y1: 170, x2: x, y2: y, offset: 24, of: 'roller_distance' },
      ],
    };
  },
});
