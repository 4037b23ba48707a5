import { annulus } from '../drawings/annulus.ts';
import { defineCell } from '../record/cell.ts';
import { powerOff } from '../record/hazards.ts';

/** Share of a circle of `d` that another of its size leaves open, their centres `x` apart. */
const overlap = (d: string, x: string): string =>
  `2 / PI() * (ACOS(MIN(1; ${x} / ${d})) - MIN(1; ${x} / ${d}) * SQRT(1 - MIN(1; ${x} / ${d}) ^ 2))`;

export default defineCell({
  key: 'arc-clocking',
  edition: 1,
  title: 'Clocking by an arc',
  purpose:
    'How far round a bush or ring must turn, laid off along its outside: angle, arc and chord, the shift at another diameter, and how much of an oil hole stays open.',
  group: 'measuring',
  inputs: [
    {
      name: 'outside',
      label: 'diameter it is laid off on',
      quantity: 'length',
      sensible: ['5 mm', '2 m'],
    },
    {
      name: 'arc',
      label: 'out of place by, along the arc',
      quantity: 'length',
      role: 'measured',
      sensible: ['0 mm', '500 mm'],
      hint: 'Along the surface, as by tape or a strip of paper: from mark to mark.',
    },
    {
      name: 'at_diameter',
      label: 'diameter where it matters',
      quantity: 'length',
      optional: true,
      sensible: ['3 mm', '2 m'],
      hint: 'The bore, or where the holes meet.',
    },
    {
      name: 'hole',
      label: 'diameter of both oil holes',
      quantity: 'length',
      optional: true,
      sensible: ['0.5 mm', '60 mm'],
      hint: 'Where they meet, at the diameter laid off on.',
    },
    {
      name: 'least_open',
      label: 'least share of the hole wanted open',
      quantity: 'number',
      default: '0.9',
      sensible: ['0.3', '1'],
      source: 'common practice, no source',
    },
  ],
  outputs: [
    {
      name: 'angle',
      label: 'turn it by',
      quantity: 'angle',
      formula: '=2 * arc / outside',
      basis: 'geometry',
      face: true,
      display: { in: 'deg', mm: 'deg' },
    },
    {
      name: 'chord',
      label: 'the same, straight across by dividers',
      quantity: 'length',
      formula: '=outside * SIN(arc / outside)',
      basis: 'geometry',
      face: true,
    },
    {
      name: 'per_degree',
      label: 'arc of one degree',
      quantity: 'length',
      formula: '=PI() * outside / 360',
      basis: 'geometry',
    },
    {
      name: 'shift',
      label: 'out of place where it matters',
      quantity: 'length',
      formula: '=arc * at_diameter / outside',
      basis: 'geometry',
      face: true,
    },
    {
      name: 'open_width',
      label: 'width of the hole that stays open',
      quantity: 'length',
      formula: '=MAX(0 m; hole - chord)',
      basis: 'geometry',
    },
    {
      name: 'open_share',
      label: 'share of the hole that stays open',
      quantity: 'number',
      formula: `=${overlap('hole', 'chord')}`,
      basis: 'geometry',
      display: { in: '%', mm: '%' },
      limits: { lower: '=least_open' },
    },
  ],
  validity: [
    { holds: '=outside > 0 m', otherwise: 'The diameter is above zero.', grade: 'error' },
    {
      holds: '=AND(arc >= 0 m; arc <= PI() * outside / 2)',
      otherwise: 'The arc is counted without a sign, the shorter way round: half a turn at most.',
      grade: 'error',
    },
    {
      holds: '=IF(ISBLANK(hole); 1 > 0; AND(hole > 0 m; hole < outside))',
      otherwise: 'The hole is above zero and smaller than the part.',
      grade: 'error',
    },
    {
      holds: '=IF(ISBLANK(hole); 1 > 0; chord < hole)',
      otherwise: 'The holes do not meet at all: no oil comes through.',
      grade: 'caution',
    },
  ],
  assumptions: [
    'Both holes round, as large and at the same place along; they are looked at straight down, not along the curve.',
  ],
  sources: [
    "Arc = angle x radius, chord = diameter x sin(angle / 2): Circle Formulas, Machinery's Handbook, 31e",
    'Area common to two circles: 2 r^2 (acos(x / 2r) - x / 2r sqrt(1 - (x / 2r)^2)) of pi r^2',
  ],
  cautions: [powerOff],
  examples: [
    {
      title: 'Half an inch round a 3 in bush, 1/4 in holes a sixteenth out',
      source: 'by hand: 0.5 / 1.5 = 1/3 rad = 19.0986 degrees; chord 3 sin(1/6) = 0.497688 in',
      grade: 'recomputed',
      inputs: { outside: '3 in', arc: '0.5 in', at_diameter: '2.25 in' },
      expect: {
        angle: { value: '19.0986 deg', within: '1e-4 deg' },
        chord: { value: '0.497688 in', within: '1e-6 in' },
        shift: { value: '0.375 in', within: 1e-9 },
      },
    },
    {
      title: 'Holes of 6 mm, their centres 3 mm apart',
      source:
        'recomputed: two circles of radius r a radius apart share 2 pi / 3 - sqrt(3) / 2 of r^2, that is 0.39100 of a circle',
      grade: 'recomputed',
      inputs: { outside: '60 mm', arc: '= 60 mm * ASIN(1 / 20)', hole: '6 mm' },
      expect: {
        open_share: { value: '0.39100', within: 1e-4 },
        open_width: { value: '3 mm', within: 1e-6 },
      },
    },
    {
      title: 'An arc of 14.06 cm on a circle of 12 cm radius',
      source:
        "Machinery's Handbook, 31e, Circle Formulas, examples 3 and 4: angle 67.13 degrees, chord 13.27 cm",
      grade: 'seen',
      inputs: { outside: '24 cm', arc: '14.06 cm' },
      expect: {
        angle: { value: '67.13 deg', within: '0.01 deg' },
        chord: { value: '13.27 cm', within: '0.005 cm' },
      },
    },
  ],
  drawing: ({ outside, arc, at_diameter }) => {
    if (outside === undefined || arc === undefined || !(outside > 0 && arc >= 0)) return undefined;
    const turn = Math.min((2 * arc) / outside, Math.PI);
    const inside =
      at_diameter !== undefined && at_diameter > 0 && at_diameter < outside ? at_diameter : 0.7 * outside;
    const [x, y, r] = [150, 110, 78];
    const end = { x: x + r * Math.sin(turn), y: y - r * Math.cos(turn) };
    return {
      width: 300,
      height: 215,
      shapes: [
        annulus(x, y, r, (r * inside) / outside, 'section-a'),
        { kind: 'line', x1: x, y1: y, x2: x, y2: y - r - 8, style: 'thin' },
        {
          kind: 'line',
          x1: x,
          y1: y,
          x2: x + (end.x - x) * 1.15,
          y2: y + (end.y - y) * 1.15,
          style: 'thin',
        },
        { kind: 'dimension', x1: x, y1: y - r, x2: end.x, y2: end.y, offset: 26, of: 'chord' },
        { kind: 'dimension', x1: x - r, y1: y, x2: x + r, y2: y, offset: -96, of: 'outside' },
      ],
    };
  },
});
