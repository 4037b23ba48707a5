import { defineCell } from '../record/cell.ts';
import { oldParts, pressureTest } from '../record/hazards.ts';

export default defineCell({
  key: 'wall-left',
  edition: 1,
  title: 'Wall left',
  purpose: 'Thinnest wall of a boss after boring, or of a sleeve or bush, with its bore off centre.',
  group: 'bore and shaft',
  inputs: [
    {
      name: 'outside',
      label: 'outside diameter of the boss or sleeve',
      quantity: 'length',
      role: 'measured',
      sensible: ['5 mm', '3 m'],
      hint: 'Of a boss that is not round: twice its least distance from the axis of the boss.',
    },
    { name: 'bore', label: 'bore', quantity: 'length', sensible: ['2 mm', '3 m'] },
    {
      name: 'offset',
      label: 'bore off the axis of the outside by',
      quantity: 'length',
      role: 'measured',
      sensible: ['0 mm', '50 mm'],
    },
    {
      name: 'least_wanted',
      label: 'least wall you accept',
      quantity: 'length',
      optional: true,
      sensible: ['0.5 mm', '100 mm'],
    },
  ],
  outputs: [
    {
      name: 'thinnest',
      label: 'thinnest wall',
      quantity: 'length',
      basis: 'geometry',
      ofPart: true,
      formula: '=(outside - bore) / 2 - offset',
      face: true,
      limits: { lower: '=least_wanted' },
    },
    {
      name: 'thickest',
      label: 'thickest wall',
      quantity: 'length',
      basis: 'geometry',
      formula: '=(outside - bore) / 2 + offset',
    },
    {
      name: 'to_bore',
      label: 'thinnest wall to bore',
      quantity: 'number',
      basis: 'geometry',
      formula: '=thinnest / bore',
      face: true,
      display: { in: '%', mm: '%' },
    },
    {
      name: 'largest_bore',
      label: 'largest bore for the least wall',
      quantity: 'length',
      basis: 'geometry',
      formula: '=outside - 2 * offset - 2 * IF(ISBLANK(least_wanted); 0 mm; least_wanted)',
    },
  ],
  validity: [
    { holds: '=AND(outside > 0 mm; bore > 0 mm)', otherwise: 'A diameter is above zero.', grade: 'error' },
    {
      holds: '=outside > bore',
      otherwise: 'The bore is not smaller than the outside: look which is which.',
      grade: 'error',
    },
    { holds: '=offset >= 0 mm', otherwise: 'The offset is a distance, not below zero.', grade: 'caution' },
    {
      holds: '=thinnest > 0 mm',
      otherwise: 'The bore breaks through the outside: a smaller bore, or a new part.',
      grade: 'caution',
    },
    {
      holds: '=to_bore >= 0.04',
      otherwise:
        'The wall is below a twenty-fifth of the bore: it springs when it is clamped, pressed and bored.',
      grade: 'caution',
    },
  ],
  assumptions: [
    'Bore and outside are round and parallel. Cored castings hide blowholes and shifted cores: drill or sound a doubtful wall.',
    'How thin is too thin depends on load and pressure; this cell does not say.',
  ],
  sources: ['Geometry', 'Wall below a twenty-fifth of the bore springs: common practice, no source'],
  cautions: [
    'A wall that holds pressure (cylinder, pump, hydraulic body) is for someone licensed to judge it.',
    pressureTest,
    oldParts,
  ],
  examples: [
    {
      title: 'Tube with walls of 0.110 and 0.120 in: 5 thou off centre',
      source:
        'a tube maker’s published definitions: eccentricity = (0.120 in - 0.110 in) / 2 = .005 in; outside and bore that leave a mean wall of 0.115 in are ours',
      grade: 'seen',
      inputs: { outside: '1 in', bore: '0.77 in', offset: '0.005 in' },
      expect: {
        thinnest: { value: '0.110 in', within: 1e-9 },
        thickest: { value: '0.120 in', within: 1e-9 },
      },
    },
    {
      title: 'Boss of 90 mm bored 50 mm, 1.5 mm off centre',
      source: 'second way: least distance between points of the two circles, stepped round by coordinates',
      grade: 'recomputed',
      inputs: { outside: '90 mm', bore: '50 mm', offset: '1.5 mm' },
      expect: { thinnest: { value: '18.5 mm', within: 1e-9 }, thickest: { value: '21.5 mm', within: 1e-9 } },
    },
  ],
  drawing: ({ outside, bore, offset }) => {
    if (outside === undefined || bore === undefined || offset === undefined || !(outside > bore))
      return undefined;
    const r = Math.max(30, (100 * bore) / outside);
    const e = Math.min(((100 * offset) / outside) * 2, 100 - Math.min(98, r));
    return {
      width: 320,
      height: 240,
      shapes: [
        { kind: 'circle', x: 150, y: 120, r: 100, fill: 'section-a' },
        { kind: 'circle', x: 150 + e, y: 120, r: Math.min(98, r), fill: 'paper' },
        { kind: 'line', x1: 40, y1: 120, x2: 270, y2: 120, style: 'centre' },
        { kind: 'dimension', x1: 50, y1: 120, x2: 250, y2: 120, offset: -112, of: 'outside' },
        {
          kind: 'dimension',
          x1: 150 + e - Math.min(98, r),
          y1: 120,
          x2: 150 + e + Math.min(98, r),
          y2: 120,
          offset: 20,
          of: 'bore',
        },
        {
          kind: 'dimension',
          x1: 150 + e + Math.min(98, r),
          y1: 120,
          x2: 250,
          y2: 120,
          offset: -50,
          of: 'thinnest',
        },
      ],
    };
  },
});
