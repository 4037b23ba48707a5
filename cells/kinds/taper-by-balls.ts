import { defineCell } from '../record/cell.ts';

export default defineCell({
  key: 'taper-by-balls',
  edition: 1,
  title: 'Internal taper by two balls',
  purpose: 'Angle and mouth diameter of a tapered bore, from how deep a small and a large ball rest in it.',
  group: 'measuring',
  inputs: [
    {
      name: 'large_ball',
      label: 'large ball',
      quantity: 'length',
      counts: 'aside',
      sensible: ['1 mm', '100 mm'],
    },
    {
      name: 'small_ball',
      label: 'small ball',
      quantity: 'length',
      counts: 'aside',
      sensible: ['1 mm', '100 mm'],
    },
    {
      name: 'large_depth',
      label: 'face down to the top of the large ball',
      quantity: 'length',
      role: 'measured',
      sensible: ['-100 mm', '500 mm'],
      hint: 'Below zero where the ball stands out of the bore.',
    },
    {
      name: 'small_depth',
      label: 'face down to the top of the small ball',
      quantity: 'length',
      role: 'measured',
      sensible: ['0 mm', '1 m'],
    },
  ],
  outputs: [
    {
      name: 'centre_distance',
      label: 'distance of the ball centres',
      quantity: 'length',
      basis: 'geometry',
      formula: '=small_depth - large_depth - (large_ball - small_ball) / 2',
    },
    {
      name: 'half_angle',
      label: 'angle to the centreline',
      quantity: 'angle',
      basis: 'geometry',
      formula: '=ASIN((large_ball - small_ball) / 2 / centre_distance)',
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
      formula: '=2 * TAN(half_angle)',
      face: true,
      display: { in: 'in/ft', mm: 'mm/m' },
    },
    {
      name: 'mouth',
      label: 'diameter at the face',
      quantity: 'length',
      basis: 'geometry',
      formula: '=large_ball / COS(half_angle) + 2 * (large_depth + large_ball / 2) * TAN(half_angle)',
      face: true,
    },
  ],
  validity: [
    { holds: '=small_ball > 0 mm', otherwise: 'A ball has a diameter above zero.', grade: 'error' },
    {
      holds: '=large_ball > small_ball',
      otherwise: 'The large ball is not larger than the small one.',
      grade: 'error',
    },
    {
      holds: '=small_depth - large_depth > large_ball - small_ball',
      otherwise:
        'With these depths the balls do not both rest on one cone: look at which depth belongs to which ball.',
      grade: 'error',
    },
    {
      holds: '=centre_distance > large_ball / 2',
      otherwise: 'The balls rest close together: the angle is uncertain. Take balls further apart in size.',
      grade: 'caution',
    },
    {
      holds: '=large_depth + large_ball / 2 > 0 mm',
      otherwise:
        'The centre of the large ball lies outside the bore: see that it rests on the cone and not on the edge.',
      grade: 'caution',
    },
  ],
  assumptions: [
    'A straight cone square to its face; the balls touch it all round and are pressed in by their weight only.',
    'Both depths with one gauge: a constant error of it drops out of the angle, not out of the mouth.',
  ],
  sources: [
    'Geometry: sin(half angle) = difference of radii / distance of centres; also the first worked example in the cell book',
  ],
  cautions: [],
  examples: [
    {
      title: 'Balls of 12 mm and 8 mm, tops 15 mm and 25 mm down',
      source:
        'metrology question with worked answer, published 7 August 2015: sin = 2 / (10 - 2), included angle 28.95 degrees',
      grade: 'seen',
      inputs: { large_ball: '12 mm', small_ball: '8 mm', large_depth: '15 mm', small_depth: '25 mm' },
      expect: {
        included_angle: { value: '28.95 deg', within: '0.01 deg' },
        half_angle: { value: '14.47 deg', within: '0.01 deg' },
      },
    },
    {
      title: 'Mouth of the same bore',
      source: 'second way: line tangent to both circles by coordinates, cut with the face',
      grade: 'recomputed',
      inputs: { large_ball: '12 mm', small_ball: '8 mm', large_depth: '15 mm', small_depth: '25 mm' },
      expect: { mouth: { value: '23.237900077244502 mm', within: 1e-9 } },
    },
  ],
  drawing: ({ included_angle, large_ball, small_ball }) => {
    if (included_angle === undefined || large_ball === undefined || small_ball === undefined)
      return undefined;
    const slope = 0.45;
    const mouth = 110;
    const at = (y: number) => mouth - slope * (y - 30);
    /** Radius of the ball that rests in the bore with its centre at that height. */
    const ball = (y: number) => at(y) * Math.cos(Math.atan(slope));
    const [large, small] = [115, 225];
    return {
      width: 320,
      height: 260,
      shapes: [
        { kind: 'path', d: `M20 30 L${160 - mouth} 30 L${160 - at(250)} 250 L20 250 Z`, fill: 'section-a' },
        { kind: 'path', d: `M300 30 L${160 + mouth} 30 L${160 + at(250)} 250 L300 250 Z`, fill: 'section-a' },
        { kind: 'circle', x: 160, y: large, r: ball(large), fill: 'none' },
        { kind: 'circle', x: 160, y: small, r: ball(small), fill: 'none' },
        { kind: 'line', x1: 160, y1: 10, x2: 160, y2: 256, style: 'centre' },
        { kind: 'dimension', x1: 160 - mouth, y1: 30, x2: 160 + mouth, y2: 30, offset: 14, of: 'mouth' },
        {
          kind: 'dimension',
          x1: 160,
          y1: 30,
          x2: 160,
          y2: large - ball(large),
          offset: 100,
          of: 'large_depth',
        },
        {
          kind: 'dimension',
          x1: 160,
          y1: 30,
          x2: 160,
          y2: small - ball(small),
          offset: -100,
          of: 'small_depth',
        },
      ],
    };
  },
});
