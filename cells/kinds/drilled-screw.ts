import { annulus } from '../drawings/annulus.ts';
import { defineCell } from '../record/cell.ts';
import { cutting, licensed } from '../record/hazards.ts';

export default defineCell({
  key: 'drilled-screw',
  edition: 1,
  title: 'Screw or pin drilled through',
  purpose:
    'What a hole along a screw or a threaded pin leaves of it: in tension, in torsion, and under the socket of its head.',
  group: 'threads',
  inputs: [
    {
      name: 'thread',
      label: 'thread',
      choice: 'thread',
      hint: 'Without its class: 3/8-16 UNC, M10.',
    },
    {
      name: 'bored',
      label: 'hole drilled through',
      quantity: 'length',
      sensible: ['0.5 mm', '60 mm'],
      hint: 'The drill you have: 1/8 in, #30, 3 mm.',
    },
    {
      name: 'off_centre',
      label: 'hole off the axis of the screw by',
      quantity: 'length',
      default: '0 mm',
      sensible: ['0 mm', '1 mm'],
      source: 'as aimed at; a long drill wanders: measure both ends',
    },
    {
      name: 'head_height',
      label: 'height of the head',
      quantity: 'length',
      optional: true,
      sensible: ['1 mm', '60 mm'],
    },
    {
      name: 'socket_depth',
      label: 'depth of the socket',
      quantity: 'length',
      optional: true,
      sensible: ['0.5 mm', '40 mm'],
      hint: 'To the end of its flat part.',
    },
    {
      name: 'proof',
      label: 'proof strength of the screw',
      quantity: 'pressure',
      optional: true,
      sensible: ['100 MPa', '1200 MPa'],
      hint: 'Of its grade: = bolt.proof_strength',
    },
    {
      name: 'load',
      label: 'pull on it',
      quantity: 'force',
      optional: true,
      sensible: ['1 N', '1000 kN'],
      hint: 'Clamp force and load together.',
    },
  ],
  outputs: [
    {
      name: 'stress_area',
      label: 'stress area, whole',
      quantity: 'area',
      formula: '=STRESSAREA(thread)',
      basis: 'geometry',
      display: { in: 'in2', mm: 'mm2' },
    },
    {
      name: 'root',
      label: 'root of the thread',
      quantity: 'length',
      formula: '=THREADROOT(thread)',
      basis: 'geometry',
    },
    {
      name: 'area_left',
      label: 'stress area left',
      quantity: 'area',
      formula: '=stress_area - PI() / 4 * bored ^ 2',
      basis: 'geometry',
      display: { in: 'in2', mm: 'mm2' },
    },
    {
      name: 'tension_share',
      label: 'left in tension',
      quantity: 'number',
      formula: '=area_left / stress_area',
      basis: 'geometry',
      face: true,
      display: { in: '%', mm: '%' },
    },
    {
      name: 'torsion_share',
      label: 'left in torsion',
      quantity: 'number',
      formula: '=1 - (bored / root) ^ 4',
      basis: 'geometry',
      face: true,
      display: { in: '%', mm: '%' },
      hint: 'Of the root: metal near the axis carries little of a twist.',
    },
    {
      name: 'wall',
      label: 'thinnest wall under the thread',
      quantity: 'length',
      formula: '=(root - bored) / 2 - off_centre',
      basis: 'geometry',
      face: true,
      limits: { lower: '=0 m' },
      display: { in: 'thou', mm: 'mm' },
    },
    {
      name: 'socket_floor',
      label: 'floor of the socket, ring round the hole, thickness',
      quantity: 'length',
      formula: '=head_height - socket_depth',
      basis: 'geometry',
      limits: { lower: '=(root ^ 2 - bored ^ 2) / (4 * 0.577 * root)' },
      hint: 'Thinner, and the head shears off through its floor before the shank tears: a ring of the root’s diameter, at 0.577 of the strength.',
    },
    {
      name: 'proof_load',
      label: 'proof load left',
      quantity: 'force',
      formula: '=proof * area_left',
      basis: 'model',
    },
    {
      name: 'stress',
      label: 'stress in what is left',
      quantity: 'pressure',
      formula: '=load / area_left',
      basis: 'model',
      face: true,
      limits: { upper: '=proof' },
      display: { in: 'ksi', mm: 'MPa' },
    },
  ],
  validity: [
    {
      holds: '=AND(bored > 0 m; bored < THREADROOT(thread))',
      otherwise: 'The hole is above zero and smaller than the root of the thread: nothing is left otherwise.',
      grade: 'error',
    },
    {
      holds: '=AND(IF(ISBLANK(load); 1 > 0; load > 0 N); IF(ISBLANK(proof); 1 > 0; proof > 0 Pa))',
      otherwise: 'A pull and a strength are above zero: enter them without a sign.',
      grade: 'error',
    },
    { holds: '=off_centre >= 0 m', otherwise: 'Off the axis is counted without a sign.', grade: 'error' },
    {
      holds: '=IF(OR(ISBLANK(head_height); ISBLANK(socket_depth)); 1 > 0; socket_depth < head_height)',
      otherwise: 'The socket is not as deep as the head is high.',
      grade: 'error',
    },
    {
      holds: '=bored <= 0.5 * root',
      otherwise:
        'More than half the root is drilled away: it kinks, and the thread closes in as it is tightened.',
      grade: 'caution',
    },
  ],
  assumptions: [
    'Steady pull; a cross hole, a nick or a square bottom starts a crack where the load comes and goes.',
    'Heat-treated screws are hard to drill: one that was softened to drill it has not its grade any more.',
  ],
  sources: [
    'Area of a ring; polar moment of a ring, pi / 32 (d^4 - b^4)',
    "Stress area and root: Budynas & Nisbett, Shigley's Mechanical Engineering Design, Tables 8-1 and 8-2 (from memory)",
  ],
  cautions: [
    'A screw weakened so belongs to oil and location, not to lifting, steering, brakes or pressure: those are for someone licensed to judge.',
    'Small drills break in hard screws: goggles, and clear the flutes often.',
    licensed,
    cutting,
  ],
  examples: [
    {
      title: '3/8-16 with a hole of 0.1507 in: 77 % of the area, 93 % in torsion',
      source:
        'by hand: pi/4 x 0.1507^2 = 0.01784 in2 of 0.0775 in2 (stress area of B1.1, seen in Shigley Table 8-2); root 0.375 - 1.299038/16 = 0.29381 in, 1 - (0.1507 / 0.29381)^4 = 0.931',
      grade: 'recomputed',
      inputs: { thread: '3/8-16 UNC', bored: '0.1507 in' },
      expect: {
        tension_share: { value: '0.770', within: 2e-3 },
        torsion_share: { value: '0.9308', within: 1e-3 },
        wall: { value: '0.07155 in', within: '5e-5 in' },
      },
    },
    {
      title: 'M10 drilled 4 mm, 10 kN: what ISO 898-1 leaves',
      source:
        'stress area 58.0 mm2 of ISO 898-1, less pi x 2^2 by hand: 45.4 mm2, 220 MPa; root 10 - 1.226869 x 1.5 = 8.160 mm (52.3 mm2, Shigley Table 8-1)',
      grade: 'computed',
      inputs: { thread: 'M10', bored: '4 mm', load: '10 kN', proof: '580 MPa' },
      expect: {
        area_left: { value: '45.42 mm2', within: 1e-3 },
        stress: { value: '220.1 MPa', within: 1e-3 },
        root: { value: '8.160 mm', within: 1e-4 },
      },
    },
    {
      title: 'A hole of half the root: 15/16 left in torsion',
      source:
        'Singer & Pytel, Strength of Materials, problem 310: a bore of half its diameter leaves a shaft 15/16 of its strength in torsion; root of 3/8-16 0.293810 in',
      grade: 'seen',
      inputs: { thread: '3/8-16 UNC', bored: '0.146905 in' },
      expect: { torsion_share: { value: '0.9375', within: 1e-5 } },
    },
  ],
  drawing: ({ bored, root, off_centre }) => {
    if (bored === undefined || root === undefined || !(bored > 0 && root > bored)) return undefined;
    const scale = 150 / root;
    if (!Number.isFinite(scale)) return undefined;
    const off = Number.isFinite(off_centre)
      ? Math.min(Math.max(off_centre ?? 0, 0), (root - bored) / 2) * scale
      : 0;
    const [x, y] = [150, 105];
    return {
      width: 300,
      height: 215,
      shapes: [
        annulus(x, y, (root * scale) / 2, (bored * scale) / 2, 'section-a', { x: x + off, y }),
        { kind: 'line', x1: 55, y1: y, x2: 245, y2: y, style: 'centre' },
        { kind: 'line', x1: x, y1: 15, x2: x, y2: 195, style: 'centre' },
        {
          kind: 'dimension',
          x1: x + off - (bored * scale) / 2,
          y1: y,
          x2: x + off + (bored * scale) / 2,
          y2: y,
          offset: 96,
          of: 'bored',
        },
        { kind: 'dimension', x1: x - 75, y1: y, x2: x + 75, y2: y, offset: -92, of: 'root' },
      ],
    };
  },
});
