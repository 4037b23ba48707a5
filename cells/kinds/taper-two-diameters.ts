import { defineCell } from '../record/cell.ts';
import { centres, cutting } from '../record/hazards.ts';

export default defineCell({
  key: 'taper-two-diameters',
  edition: 1,
  title: 'Taper from two diameters',
  purpose: 'Taper and angle from a large and a small diameter a known distance apart; tailstock setover.',
  group: 'measuring',
  inputs: [
    {
      name: 'large',
      label: 'large diameter',
      quantity: 'length',
      role: 'measured',
      sensible: ['1 mm', '2 m'],
    },
    {
      name: 'small',
      label: 'small diameter',
      quantity: 'length',
      role: 'measured',
      sensible: ['0 mm', '2 m'],
    },
    {
      name: 'apart',
      label: 'distance along the axis',
      quantity: 'length',
      role: 'measured',
      sensible: ['1 mm', '3 m'],
    },
    {
      name: 'between_centres',
      label: 'length of work between centres',
      quantity: 'length',
      default: '=apart',
      sensible: ['1 mm', '5 m'],
      hint: 'For the setover: the whole work, not only the tapered part.',
    },
  ],
  outputs: [
    {
      name: 'taper',
      label: 'taper on the diameter',
      quantity: 'number',
      basis: 'geometry',
      formula: '=(large - small) / apart',
      face: true,
      display: { in: 'in/ft', mm: 'mm/m' },
    },
    {
      name: 'included_angle',
      label: 'included angle',
      quantity: 'angle',
      basis: 'geometry',
      formula: '=2 * ATAN(taper / 2)',
      face: true,
      display: { in: 'deg', mm: 'deg' },
    },
    {
      name: 'centreline_angle',
      label: 'angle to the centreline',
      quantity: 'angle',
      basis: 'geometry',
      formula: '=ATAN(taper / 2)',
      display: { in: 'deg', mm: 'deg' },
      hint: 'What a compound slide is set to.',
    },
    {
      name: 'one_in',
      label: 'one in',
      quantity: 'number',
      basis: 'geometry',
      formula: '=1 / taper',
      hint: 'Length in which the diameter changes by one.',
    },
    {
      name: 'setover',
      label: 'tailstock setover',
      quantity: 'length',
      basis: 'geometry',
      formula: '=between_centres * taper / 2',
    },
  ],
  validity: [
    { holds: '=apart > 0 mm', otherwise: 'The two diameters are taken some distance apart.', grade: 'error' },
    { holds: '=small >= 0 mm', otherwise: 'A diameter is not below zero.', grade: 'caution' },
    {
      holds: '=large >= small',
      otherwise: 'The large diameter is below the small one: change them over.',
      grade: 'caution',
    },
    {
      holds: '=between_centres >= apart',
      otherwise: 'The work between centres is shorter than its tapered part.',
      grade: 'caution',
    },
    {
      holds: '=centreline_angle < 4 deg',
      otherwise:
        'A setover for more than about 8 degrees included makes the centres bear badly: use the compound slide.',
      grade: 'caution',
    },
    {
      holds: '=between_centres > 0 mm',
      otherwise: 'The work between centres has a length above zero.',
      grade: 'error',
    },
  ],
  assumptions: [
    'Straight sides; the diameters are square to the axis.',
    'The setover rule neglects that the centres tilt in their holes.',
  ],
  sources: [
    'Geometry: taper = (D - d) / L, included angle = 2 atan(taper / 2)',
    "Setover = L (D - d) / (2 l): Machinery's Handbook, tapers (from memory, edition not looked up)",
  ],
  cautions: [centres, cutting],
  examples: [
    {
      title: '1.25 in to 1.00 in over 6 in; 10 in between centres',
      source: 'computed: tpf = 12 (D - d) / L; included = 2 atan(tpf / 24); setover = L (D - d) / (2 l)',
      grade: 'computed',
      inputs: { large: '1.25 in', small: '1.00 in', apart: '6 in', between_centres: '10 in' },
      expect: {
        taper: { value: '0.5 in/ft', within: 1e-5 },
        included_angle: { value: '2.38698 deg', within: 1e-5 },
        centreline_angle: { value: '1.19349 deg', within: 1e-5 },
        setover: { value: '0.208333 in', within: 1e-5 },
      },
    },
    {
      title: 'Morse taper no. 3 plug: 0.938 in to 0.778 in over 3 3/16 in',
      source: 'ANSI/ASME B5.10: 0.60235 in per foot; diameters of the plug to three places',
      grade: 'memory',
      inputs: { large: '0.938 in', small: '0.778 in', apart: '3 3/16 in' },
      expect: { taper: { value: '0.60235 in/ft', within: 1e-4 } },
    },
  ],
  drawing: ({ large, small, apart }) => {
    if (large === undefined || small === undefined || apart === undefined || !(large > 0 && small >= 0))
      return undefined;
    const l = 55;
    const s = l * Math.min(0.9, Math.max(0.2, small / large));
    return {
      width: 340,
      height: 190,
      shapes: [
        { kind: 'path', d: `M60 ${95 - l} L260 ${95 - s} L260 ${95 + s} L60 ${95 + l} Z`, fill: 'section-a' },
        { kind: 'line', x1: 40, y1: 95, x2: 280, y2: 95, style: 'centre' },
        { kind: 'dimension', x1: 60, y1: 95 - l, x2: 60, y2: 95 + l, offset: -24, of: 'large' },
        { kind: 'dimension', x1: 260, y1: 95 - s, x2: 260, y2: 95 + s, offset: 24, of: 'small' },
        { kind: 'dimension', x1: 60, y1: 95 + l, x2: 260, y2: 95 + l, offset: -20, of: 'apart' },
      ],
    };
  },
});
