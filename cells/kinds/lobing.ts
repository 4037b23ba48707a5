import { defineCell } from '../record/cell.ts';

export default defineCell({
  key: 'lobing',
  edition: 1,
  title: 'Lobing that two points miss',
  purpose:
    'True out-of-roundness of a lobed shaft from an indicator over a V-block, and what a micrometer does not see.',
  group: 'measuring',
  inputs: [
    {
      name: 'reading',
      label: 'indicator over one turn in the V',
      quantity: 'length',
      role: 'measured',
      sensible: ['0 mm', '2 mm'],
      hint: 'Greatest less least, the indicator standing in the middle of the V.',
    },
    {
      name: 'lobes',
      label: 'lobes',
      quantity: 'number',
      sensible: ['2', '15'],
      hint: 'Times the indicator rises in one turn. Three-jaw chucks leave 3; centreless grinding 3, 5 or 7.',
    },
    {
      name: 'v_angle',
      label: 'angle of the V',
      quantity: 'angle',
      counts: 'aside',
      sensible: ['30 deg', '150 deg'],
    },
  ],
  outputs: [
    {
      name: 'factor',
      label: 'factor of the V',
      quantity: 'number',
      basis: 'geometry',
      formula: '=ABS(1 + COS(lobes * (PI() / 2 + v_angle / 2)) / SIN(v_angle / 2))',
      face: true,
      hint: 'Indicator reading for one of out-of-roundness. Two points: 2 with an even number of lobes, 0 with an odd one.',
    },
    {
      name: 'out_of_roundness',
      label: 'out-of-roundness, on the radius',
      quantity: 'length',
      basis: 'model',
      formula: '=reading / factor',
      face: true,
      display: { in: 'thou', mm: 'um' },
    },
    {
      name: 'two_point',
      label: 'difference of diameters two points show',
      quantity: 'length',
      basis: 'model',
      formula: '=IF(MOD(lobes; 2) = 1; 0 mm; 2 * out_of_roundness)',
      display: { in: 'thou', mm: 'um' },
    },
    {
      name: 'hidden',
      label: 'fits larger than it measures by',
      quantity: 'length',
      basis: 'model',
      formula: '=IF(MOD(lobes; 2) = 1; out_of_roundness; 0 mm)',
      face: true,
      display: { in: 'thou', mm: 'um' },
      hint: 'Smallest ring that goes over it, less the greatest size between two points. A bore fits smaller by as much.',
    },
    {
      name: 'three_anvil',
      label: 'difference a three-anvil bore gauge would show',
      quantity: 'length',
      basis: 'model',
      formula: '=IF(MOD(lobes; 3) = 0; 2 * out_of_roundness; 0 mm)',
      display: { in: 'thou', mm: 'um' },
      hint: 'Three anvils at 120 degrees see 3, 6, 9 lobes and miss an oval.',
    },
  ],
  validity: [
    {
      holds: '=AND(lobes >= 2; INT(lobes) = lobes)',
      otherwise: 'Lobes are a whole number from 2 up.',
      grade: 'error',
    },
    {
      holds: '=AND(v_angle > 0 deg; v_angle < 180 deg)',
      otherwise: 'The angle of a V lies between 0 and 180 degrees.',
      grade: 'error',
    },
    {
      holds: '=reading >= 0 mm',
      otherwise: 'An indicator reading over a turn is not below zero.',
      grade: 'caution',
    },
    {
      holds: '=ABS(1 + COS(lobes * (PI() / 2 + v_angle / 2)) / SIN(v_angle / 2)) > 0.1',
      otherwise: 'This V does not see that number of lobes: take a V of another angle.',
      grade: 'error',
    },
    {
      holds: '=factor > 0.6',
      otherwise: 'This V hardly sees that number of lobes: a V of another angle reads it better.',
      grade: 'caution',
    },
  ],
  assumptions: [
    'Lobes all alike and evenly spaced, small beside the diameter; mixed lobing wants a roundness tester.',
    'The number of lobes is right: a wrong number gives a wrong factor, so count with two different Vs.',
  ],
  sources: [
    'Journal of the Japan Society of Precision Engineering 43 (514), 1977, p. 1167: f = 1 + cos n(90 + t/2) / sin(t/2) for a V of angle t and n lobes',
    'ISO 4292:1985, two-point and three-point methods (from memory)',
  ],
  cautions: [],
  examples: [
    {
      title: 'Five lobes in a 108 degree V: 2.2 times',
      source: 'ISO 4292:1985, table of correction values for three-point measurement',
      grade: 'memory',
      inputs: { reading: '0.022 mm', lobes: '5', v_angle: '108 deg' },
      expect: {
        factor: { value: '2.2', within: 0.03 },
        out_of_roundness: { value: '0.01 mm', within: 0.03 },
      },
    },
    {
      title: 'Three lobes in a 60 degree V: the reading is three times the out-of-roundness',
      source: 'second way: a lobed outline turned in the V by coordinates, 3600 steps',
      grade: 'recomputed',
      inputs: { reading: '0.03 mm', lobes: '3', v_angle: '60 deg' },
      expect: {
        factor: { value: '3', within: 1e-9 },
        out_of_roundness: { value: '0.01 mm', within: 1e-9 },
        hidden: { value: '0.01 mm', within: 1e-9 },
        two_point: { value: '0 mm', within: '1e-12 m' },
      },
    },
    {
      title: 'Five lobes in a 90 degree V: twice',
      source: 'second way: a lobed outline turned in the V by coordinates, 3600 steps',
      grade: 'recomputed',
      inputs: { reading: '0.02 mm', lobes: '5', v_angle: '90 deg' },
      expect: { factor: { value: '2', within: 1e-9 }, out_of_roundness: { value: '0.01 mm', within: 1e-9 } },
    },
  ],
  drawing: ({ lobes, v_angle }) => {
    if (lobes === undefined || v_angle === undefined || !(lobes >= 2 && lobes <= 40)) return undefined;
    const r = 55;
    const half = Math.min(1.4, Math.max(0.3, v_angle / 2));
    const outline = Array.from({ length: 145 }, (_, i) => {
      const a = (i * Math.PI) / 72;
      const at = r + 5 * Math.cos(lobes * a);
      return `${(160 + at * Math.sin(a)).toFixed(2)} ${(110 - at * Math.cos(a)).toFixed(2)}`;
    });
    const apex = 110 + (r + 5 * Math.cos(lobes * (Math.PI / 2 + half))) / Math.sin(half);
    const reach = 130 / Math.max(Math.sin(half), Math.cos(half));
    const dx = reach * Math.sin(half);
    const dy = reach * Math.cos(half);
    return {
      width: 320,
      height: 260,
      shapes: [
        { kind: 'path', d: `M${outline.join(' L')} Z`, fill: 'section-a' },
        { kind: 'line', x1: 160, y1: apex, x2: 160 - dx, y2: apex - dy, style: 'outline' },
        { kind: 'line', x1: 160, y1: apex, x2: 160 + dx, y2: apex - dy, style: 'outline' },
        { kind: 'line', x1: 160, y1: 110 - r - 5, x2: 160, y2: 12, style: 'outline' },
        { kind: 'line', x1: 160, y1: 20, x2: 160, y2: 240, style: 'centre' },
      ],
      exaggeration: 'lobes drawn larger than they are',
    };
  },
});
