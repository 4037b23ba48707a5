import { annulus } from '../drawings/annulus.ts';
import { defineCell } from '../record/cell.ts';
import { licensed } from '../record/hazards.ts';

export default defineCell({
  key: 'pin-in-shear',
  edition: 1,
  title: 'Pin in shear',
  purpose:
    'Torque or force that a dowel, taper pin or threaded pin holds: in shear across it, and before it crushes the wall it stands in.',
  group: 'threads',
  inputs: [
    {
      name: 'pin',
      label: 'pin diameter where it shears',
      quantity: 'length',
      sensible: ['0.5 mm', '60 mm'],
      hint: 'Of a threaded pin its root; of a taper pin the size at the joint.',
    },
    {
      name: 'pin_hole',
      label: 'hole along the pin',
      quantity: 'length',
      default: '0 mm',
      sensible: ['0 mm', '40 mm'],
      source: 'a solid pin',
    },
    {
      name: 'planes',
      label: 'places where it shears',
      quantity: 'number',
      default: '1',
      sensible: ['1', '2'],
      source: 'a pin into one wall; 2 for one right through shaft and hub',
    },
    {
      name: 'joint',
      label: 'diameter of the joint it stands across',
      quantity: 'length',
      sensible: ['3 mm', '2 m'],
      hint: 'Outside of the bush, or the shaft.',
    },
    {
      name: 'bears_on',
      label: 'length of pin in the thinner wall',
      quantity: 'length',
      sensible: ['0.5 mm', '200 mm'],
      hint: 'What bears: without chamfer and without the lead of a thread.',
    },
    {
      name: 'pin_yield',
      label: 'yield strength of the pin',
      quantity: 'pressure',
      sensible: ['100 MPa', '2000 MPa'],
      hint: '= pin_steel.yield',
    },
    {
      name: 'wall_yield',
      label: 'strength of the wall',
      quantity: 'pressure',
      sensible: ['10 MPa', '1500 MPa'],
      hint: 'Yield strength of the softer part; of a brittle one its tensile strength.',
    },
    {
      name: 'torque',
      label: 'torque it must hold',
      quantity: 'torque',
      optional: true,
      sensible: ['0.01 N.m', '100000 N.m'],
    },
    {
      name: 'least_margin',
      label: 'least safety factor you accept',
      quantity: 'number',
      default: '2',
      sensible: ['1', '6'],
      source: 'common practice, no source; a pin that carries shocks wants more',
    },
  ],
  outputs: [
    {
      name: 'pin_area',
      label: 'section of the pin',
      quantity: 'area',
      formula: '=PI() / 4 * (pin ^ 2 - pin_hole ^ 2)',
      basis: 'geometry',
      display: { in: 'in2', mm: 'mm2' },
    },
    {
      name: 'shear_force',
      label: 'force at which it shears off',
      quantity: 'force',
      formula: '=0.577 * pin_yield * pin_area * planes',
      basis: 'model',
      hint: 'Shear strength as 0.577 of the yield strength.',
    },
    {
      name: 'crush_force',
      label: 'force at which the wall crushes',
      quantity: 'force',
      formula: '=wall_yield * pin * bears_on * planes',
      basis: 'model',
    },
    {
      name: 'force_held',
      label: 'force it holds, the weaker of both',
      quantity: 'force',
      formula: '=MIN(shear_force; crush_force)',
      basis: 'model',
      face: true,
    },
    {
      name: 'torque_held',
      label: 'torque it holds',
      quantity: 'torque',
      formula: '=force_held * joint / 2',
      basis: 'model',
      face: true,
    },
    {
      name: 'shear_over_crush',
      label: 'force to shear the pin over force to crush the wall',
      quantity: 'number',
      formula: '=shear_force / crush_force',
      basis: 'model',
      hint: 'Above 1 the wall goes first: the pin works loose rather than break.',
    },
    {
      name: 'margin',
      label: 'safety factor',
      quantity: 'number',
      formula: '=torque_held / torque',
      basis: 'model',
      face: true,
      limits: { lower: '=least_margin' },
    },
  ],
  validity: [
    {
      holds: '=AND(pin > 0 m; pin_hole >= 0 m; pin_hole < pin; joint > 0 m; bears_on > 0 m)',
      otherwise: 'All sizes are above zero, and the hole smaller than the pin.',
      grade: 'error',
    },
    {
      holds: '=AND(planes >= 1; planes <= 2)',
      otherwise: 'A pin shears in one place or in two.',
      grade: 'error',
    },
    {
      holds: '=AND(pin_yield > 0 Pa; wall_yield > 0 Pa)',
      otherwise: 'A strength is above zero.',
      grade: 'error',
    },
    {
      holds: '=IF(ISBLANK(torque); 1 > 0; torque > 0 N.m)',
      otherwise: 'The torque is above zero.',
      grade: 'error',
    },
    {
      holds: '=pin <= joint / 3',
      otherwise:
        'A pin of more than a third of the joint weakens it more than it holds (common practice, no source).',
      grade: 'caution',
    },
  ],
  assumptions: [
    'Shear spread evenly, no bending: pin a good fit in both parts, no gap between them.',
    'Friction of a press fit is not counted: the pin takes up when that has slipped.',
  ],
  sources: [
    "Pin through shaft and hub: T = pi / 4 d^2 S D, Strength of Taper Pins, formula (29): Machinery's Handbook, 31e",
    "Direct shear and bearing: Budynas & Nisbett, Shigley's Mechanical Engineering Design, 9e (2011), sec. 8-12; shear yield 0.577 of tensile, sec. 5-5",
  ],
  cautions: [
    'A pin meant to shear guards the machine: replace it by the maker’s own, never by a harder one.',
    'Pins drilled in place leave chips: none in the oil way, and an eye shield when driving hardened pins.',
    licensed,
  ],
  examples: [
    {
      title: 'Solid pin 1/4 in, one place, on a joint of 2 in',
      source:
        'by hand: 0.577 x 60 ksi x 0.049087 in2 = 1699.4 lbf; 40 ksi x 0.25 x 0.3 in = 3000 lbf; 1699.4 x 1 in',
      grade: 'recomputed',
      inputs: {
        pin: '1/4 in',
        joint: '2 in',
        bears_on: '0.3 in',
        pin_yield: '60 ksi',
        wall_yield: '40 ksi',
        torque: '800 lbf.in',
      },
      expect: {
        shear_force: { value: '1699.4 lbf', within: 1e-4 },
        crush_force: { value: '3000 lbf', within: 1e-9 },
        torque_held: { value: '1699.4 lbf.in', within: 1e-4 },
        margin: { value: '2.124', within: 1e-3 },
      },
    },
    {
      title:
        'Drilled pin 8 mm with a hole of 3 mm, through shaft and hub, in thin light alloy: the wall crushes first',
      source: 'by hand: 2 x 0.577 x 400 MPa x 43.197 mm2 = 19 940 N; 2 x 150 MPa x 8 x 4 mm = 9600 N',
      grade: 'recomputed',
      inputs: {
        pin: '8 mm',
        pin_hole: '3 mm',
        planes: '2',
        joint: '40 mm',
        bears_on: '4 mm',
        pin_yield: '400 MPa',
        wall_yield: '150 MPa',
      },
      expect: {
        shear_force: { value: '19940 N', within: 1e-3 },
        force_held: { value: '9600 N', within: 1e-9 },
        torque_held: { value: '192 N.m', within: 1e-9 },
      },
    },
    {
      title: 'Lever on a 2 in shaft by a pin of 3/8 in, 50 lbf at 30 in',
      source:
        "Machinery's Handbook, 31e, Strength of Taper Pins, example 6(a): 6770 psi of shear on the pin; entered as yield 6770 / 0.577 psi, so that it just holds 1500 lbf in",
      grade: 'seen',
      inputs: {
        pin: '3/8 in',
        planes: '2',
        joint: '2 in',
        bears_on: '1 in',
        pin_yield: '= 6770 psi / 0.577',
        wall_yield: '40 ksi',
        torque: '1500 lbf.in',
      },
      expect: {
        torque_held: { value: '1500 lbf.in', within: 4e-3 },
        margin: { value: '1', within: 4e-3 },
      },
    },
  ],
  drawing: ({ pin, joint, bears_on }) => {
    if (pin === undefined || joint === undefined || bears_on === undefined) return undefined;
    if (!(pin > 0 && joint > 0 && bears_on > 0 && pin < joint)) return undefined;
    const scale = 120 / joint;
    const wall = Math.min(bears_on * scale, 34);
    const half = Math.max(2, (pin * scale) / 2);
    if (!Number.isFinite(scale) || !Number.isFinite(half)) return undefined;
    const [x, y, r] = [150, 120, 60];
    return {
      width: 300,
      height: 225,
      shapes: [
        annulus(x, y, r + wall, r, 'section-b'),
        { kind: 'circle', x, y, r, fill: 'section-a' },
        { kind: 'rect', x: x - half, y: y - r - wall, width: 2 * half, height: 2 * wall, fill: 'section-c' },
        { kind: 'line', x1: x, y1: 14, x2: x, y2: 215, style: 'centre' },
        { kind: 'line', x1: 45, y1: y, x2: 255, y2: y, style: 'centre' },
        { kind: 'dimension', x1: x - r, y1: y, x2: x + r, y2: y, offset: r + wall + 4, of: 'joint' },
        {
          kind: 'dimension',
          x1: x,
          y1: y - r - wall,
          x2: x,
          y2: y - r,
          offset: r + wall + 18,
          of: 'bears_on',
        },
      ],
      ...(bears_on * scale > 34 ? { exaggeration: 'wall drawn thinner than it is' } : {}),
    };
  },
});
