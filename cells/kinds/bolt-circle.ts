import { defineCell } from '../record/cell.ts';
import { cutting } from '../record/hazards.ts';

export default defineCell({
  key: 'bolt-circle',
  edition: 1,
  title: 'Bolt circle',
  purpose:
    'Coordinates of the holes of a bolt circle from its centre, one by itself and all in a table, and the distance from hole to hole.',
  group: 'machine work',
  inputs: [
    { name: 'circle', label: 'bolt circle diameter', quantity: 'length', sensible: ['5 mm', '5 m'] },
    { name: 'holes', label: 'holes', quantity: 'number', sensible: ['2', '100'] },
    { name: 'hole', label: 'this hole, counted from 1', quantity: 'number', sensible: ['1', '100'] },
    {
      name: 'first_angle',
      label: 'angle of the first hole',
      quantity: 'angle',
      default: '0 deg',
      sensible: ['-360 deg', '360 deg'],
      hint: 'From the x axis, anticlockwise.',
    },
  ],
  outputs: [
    {
      name: 'hole_angle',
      label: 'angle of this hole',
      quantity: 'angle',
      basis: 'model',
      formula: '=first_angle + 2 * PI() * (hole - 1) / holes',
      display: { in: 'deg', mm: 'deg' },
    },
    {
      name: 'x',
      label: 'x',
      quantity: 'length',
      basis: 'model',
      formula: '=circle / 2 * COS(hole_angle)',
      face: true,
    },
    {
      name: 'y',
      label: 'y',
      quantity: 'length',
      basis: 'model',
      formula: '=circle / 2 * SIN(hole_angle)',
      face: true,
    },
    {
      name: 'chord',
      label: 'from hole to next hole',
      quantity: 'length',
      basis: 'model',
      formula: '=circle * SIN(PI() / holes)',
      face: true,
    },
  ],
  validity: [
    { holds: '=circle > 0 mm', otherwise: 'The bolt circle has a diameter above zero.', grade: 'error' },
    {
      holds: '=AND(holes >= 2; INT(holes) = holes)',
      otherwise: 'Holes are a whole number from 2 up.',
      grade: 'error',
    },
    {
      holds: '=AND(hole >= 1; hole <= holes; INT(hole) = hole)',
      otherwise: 'This hole is a whole number from 1 to the number of holes.',
      grade: 'error',
    },
  ],
  assumptions: [
    'The table under the drawing gives every hole at the sizes as planned or measured; the one counted above carries the spread.',
    'Holes evenly spaced on one circle; x to the right, y upward from its centre.',
  ],
  sources: ['Geometry: x = R cos, y = R sin; chord = D sin(180 / n)'],
  cautions: [cutting],
  examples: [
    {
      title: 'Five holes on 100 mm, the first at 90 degrees: the second hole',
      source: 'computed: x = R cos, y = R sin; chord = D sin(180 / n)',
      grade: 'computed',
      inputs: { circle: '100 mm', holes: '5', hole: '2', first_angle: '90 deg' },
      expect: {
        x: { value: '-47.5528 mm', within: '5e-5 mm' },
        y: { value: '15.4508 mm', within: '5e-5 mm' },
        chord: { value: '58.77853 mm', within: '1e-5 mm' },
      },
    },
  ],
  drawing: ({ holes, hole, hole_angle, circle }) => {
    // Every hole by its coordinates, in both systems: the drawing is the table to drill by.
    if (holes === undefined || hole === undefined || hole_angle === undefined || circle === undefined)
      return undefined;
    if (!(holes >= 2 && holes <= 60)) return undefined;
    const first = hole_angle - (2 * Math.PI * (hole - 1)) / holes;
    const count = Math.round(holes);
    const rows = Array.from({ length: count }, (_, i) => {
      const angle = first + (2 * Math.PI * i) / count;
      const both = [(circle / 2) * Math.cos(angle), (circle / 2) * Math.sin(angle)].map((metres) => {
        // No minus before a zero.
        const mm = Math.round(metres * 1e6) / 1e3 + 0;
        const inch = Math.round((metres / 0.0254) * 1e4) / 1e4 + 0;
        return [mm.toFixed(3), inch.toFixed(4)] as const;
      }) as [readonly [string, string], readonly [string, string]];
      return [`${i + 1}`, both[0][0], both[1][0], both[0][1], both[1][1]];
    });
    const at = (i: number) => {
      const a = first + (2 * Math.PI * i) / holes;
      return { x: 150 + 85 * Math.cos(a), y: 115 - 85 * Math.sin(a) };
    };
    return {
      width: 320,
      height: 250 + 14 * (count + 1),
      shapes: [
        { kind: 'circle', x: 150, y: 115, r: 85, fill: 'none' },
        { kind: 'line', x1: 45, y1: 115, x2: 255, y2: 115, style: 'centre' },
        { kind: 'line', x1: 150, y1: 10, x2: 150, y2: 220, style: 'centre' },
        ...Array.from({ length: Math.round(holes) }, (_, i) => ({
          kind: 'circle' as const,
          ...at(i),
          r: 7,
          fill: i === Math.round(hole) - 1 ? ('section-a' as const) : ('paper' as const),
        })),
        ...[['hole', 'x mm', 'y mm', 'x in', 'y in'], ...rows].flatMap((row, line) =>
          row.map((text, column) => ({
            kind: 'text' as const,
            x: [26, 96, 164, 232, 300][column] as number,
            y: 250 + 14 * line,
            text,
            anchor: 'end' as const,
          })),
        ),
        { kind: 'dimension', x1: 65, y1: 115, x2: 235, y2: 115, offset: -112, of: 'circle' },
      ],
    };
  },
});
