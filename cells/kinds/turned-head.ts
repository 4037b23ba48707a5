import { annulus } from '../drawings/annulus.ts';
import { defineCell } from '../record/cell.ts';
import { cutting } from '../record/hazards.ts';

export default defineCell({
  key: 'turned-head',
  edition: 1,
  title: 'Screw head turned to fit',
  purpose:
    'A head turned down for a counterbore: room round it, wall left at the corners of its socket, and the bearing left under it.',
  group: 'threads',
  inputs: [
    { name: 'head', label: 'head turned to', quantity: 'length', sensible: ['3 mm', '100 mm'] },
    { name: 'counterbore', label: 'counterbore', quantity: 'length', sensible: ['3 mm', '120 mm'] },
    {
      name: 'clearance_hole',
      label: 'hole under the head',
      quantity: 'length',
      sensible: ['2 mm', '80 mm'],
      hint: 'With its chamfer: what the head cannot bear on.',
    },
    {
      name: 'head_before',
      label: 'head as it was',
      quantity: 'length',
      optional: true,
      sensible: ['3 mm', '100 mm'],
    },
    {
      name: 'flats',
      label: 'hexagon socket, across flats',
      quantity: 'length',
      optional: true,
      sensible: ['1 mm', '50 mm'],
      hint: 'Blank for a head without a socket.',
    },
    {
      name: 'load',
      label: 'clamp force under the head',
      quantity: 'force',
      optional: true,
      sensible: ['1 N', '1000 kN'],
    },
    {
      name: 'bears',
      label: 'pressure the part under it bears',
      quantity: 'pressure',
      optional: true,
      sensible: ['20 MPa', '1500 MPa'],
      hint: 'About the yield strength of soft metal: the head sinks in beyond it.',
    },
    {
      name: 'least_room',
      label: 'least room round the head',
      quantity: 'length',
      optional: true,
      sensible: ['0 mm', '5 mm'],
    },
    {
      name: 'least_wall',
      label: 'least wall at the corners',
      quantity: 'length',
      optional: true,
      sensible: ['0.2 mm', '10 mm'],
    },
  ],
  outputs: [
    {
      name: 'room',
      label: 'room round the head, each side',
      quantity: 'length',
      formula: '=(counterbore - head) / 2',
      basis: 'geometry',
      face: true,
      limits: { lower: '=least_room', metalOn: 'low' },
      display: { in: 'thou', mm: 'mm' },
    },
    {
      name: 'corners',
      label: 'socket, across corners',
      quantity: 'length',
      formula: '=2 * flats / SQRT(3)',
      basis: 'geometry',
    },
    {
      name: 'corner_wall',
      label: 'wall left at the corners of the socket',
      quantity: 'length',
      formula: '=(head - corners) / 2',
      basis: 'geometry',
      face: true,
      limits: { lower: '=least_wall' },
      display: { in: 'thou', mm: 'mm' },
    },
    {
      name: 'bearing_area',
      label: 'bearing under the head',
      quantity: 'area',
      formula: '=PI() / 4 * (head ^ 2 - clearance_hole ^ 2)',
      basis: 'geometry',
      display: { in: 'in2', mm: 'mm2' },
    },
    {
      name: 'bearing_share',
      label: 'bearing left of what it was',
      quantity: 'number',
      formula: '=bearing_area / (PI() / 4 * (head_before ^ 2 - clearance_hole ^ 2))',
      basis: 'geometry',
      face: true,
      display: { in: '%', mm: '%' },
    },
    {
      name: 'bearing_pressure',
      label: 'pressure under the head',
      quantity: 'pressure',
      formula: '=load / bearing_area',
      basis: 'model',
      face: true,
      limits: { upper: '=bears' },
      display: { in: 'ksi', mm: 'MPa' },
    },
  ],
  validity: [
    {
      holds: '=AND(clearance_hole > 0 m; head > clearance_hole; counterbore > 0 m)',
      otherwise: 'The head is larger than the hole under it, and all are above zero.',
      grade: 'error',
    },
    {
      holds: '=IF(ISBLANK(head_before); 1 > 0; head_before >= head)',
      otherwise: 'The head as it was is not smaller than turned.',
      grade: 'error',
    },
    {
      holds: '=IF(ISBLANK(flats); 1 > 0; AND(flats > 0 m; 2 * flats < SQRT(3) * head))',
      otherwise: 'The corners of the socket reach out of the head.',
      grade: 'error',
    },
    {
      holds: '=AND(IF(ISBLANK(load); 1 > 0; load > 0 N); IF(ISBLANK(bears); 1 > 0; bears > 0 Pa))',
      otherwise: 'A clamp force and a pressure are above zero: enter them without a sign.',
      grade: 'error',
    },
    { holds: '=room > 0 m', otherwise: 'The head does not enter its counterbore.', grade: 'caution' },
    {
      holds: '=IF(ISBLANK(flats); 1 > 0; corner_wall >= 0.1 * flats)',
      otherwise:
        'Thin at the corners of the socket: the key bursts the head open. Turn less, or open the counterbore.',
      grade: 'caution',
    },
  ],
  assumptions: [
    'Head and hole stand true to each other: a hole off its place takes of the room, and of the bearing on one side.',
    'The part under the head is solid as far round as the head reaches.',
  ],
  sources: [
    'Across corners = 2 / sqrt 3 x across flats (geometry of a hexagon)',
    'ISO 4762:2004 (heads and sockets of cap screws, as printed in two tables)',
  ],
  cautions: [
    'A turned screw has lost its mark and, ground hot, its temper: keep it from lifting, steering, brakes and pressure unless someone licensed says so.',
    'Hardened heads throw hot chips: goggles, sleeves tight, and the screw held by its thread in a nut or collet.',
    cutting,
  ],
  examples: [
    {
      title: 'M8 cap screw: socket 6 mm across flats is 6.93 across corners',
      source:
        'ISO 4762:2004: head 13 mm, hexagon 6 mm, corners at least 6.863 mm; 2 x 6 / sqrt 3 = 6.928 mm and the rest by hand',
      grade: 'recomputed',
      inputs: {
        head: '11.5 mm',
        counterbore: '12 mm',
        clearance_hole: '9 mm',
        head_before: '13 mm',
        flats: '6 mm',
        load: '15 kN',
      },
      expect: {
        corners: { value: '6.928 mm', within: 1e-4 },
        room: { value: '0.25 mm', within: 1e-9 },
        corner_wall: { value: '2.286 mm', within: 1e-3 },
        bearing_share: { value: '0.5824', within: 1e-3 },
        bearing_pressure: { value: '372.6 MPa', within: 1e-3 },
      },
    },
    {
      title: 'Half-inch head turned to 7/16 in over a 1/4 in hole',
      source: 'by hand: pi/4 (0.4375^2 - 0.25^2) = 0.10125 in2 of pi/4 (0.5^2 - 0.25^2) = 0.14726 in2',
      grade: 'recomputed',
      inputs: { head: '7/16 in', counterbore: '0.469 in', clearance_hole: '1/4 in', head_before: '1/2 in' },
      expect: {
        bearing_area: { value: '0.10124 in2', within: 1e-3 },
        bearing_share: { value: '0.6875', within: 1e-6 },
        room: { value: '0.01575 in', within: '1e-6 in' },
      },
    },
    {
      title: 'The ring under a head of 12 cm over a hole of 8 cm',
      source: "Machinery's Handbook, 31e, Dimensions of Plane Figures, circular ring: 62.83 cm2",
      grade: 'seen',
      inputs: { head: '120 mm', counterbore: '121 mm', clearance_hole: '80 mm' },
      expect: { bearing_area: { value: '62.83 cm2', within: '0.005 cm2' } },
    },
  ],
  drawing: ({ head, counterbore, corners, clearance_hole: hole }) => {
    if (head === undefined || counterbore === undefined || hole === undefined) return undefined;
    const whole = Math.max(head, counterbore);
    if (!(hole > 0 && head > hole && counterbore > 0) || !Number.isFinite(whole)) return undefined;
    const scale = 150 / whole;
    const [x, y] = [150, 108];
    const reach = corners !== undefined && corners > 0 && corners < head ? (corners * scale) / 2 : undefined;
    const hexagon = Array.from({ length: 6 }, (_, i) => {
      const a = (i * Math.PI) / 3;
      return `${x + (reach ?? 0) * Math.cos(a)} ${y + (reach ?? 0) * Math.sin(a)}`;
    });
    return {
      width: 300,
      height: 220,
      shapes: [
        annulus(x, y, 92, (counterbore * scale) / 2, 'section-b'),
        { kind: 'circle', x, y, r: (head * scale) / 2, fill: 'section-a' },
        ...(reach === undefined
          ? []
          : [{ kind: 'path' as const, d: `M${hexagon.join('L')}Z`, fill: 'paper' as const }]),
        { kind: 'line', x1: 45, y1: y, x2: 255, y2: y, style: 'centre' },
        { kind: 'line', x1: x, y1: 8, x2: x, y2: 208, style: 'centre' },
        {
          kind: 'dimension',
          x1: x - (head * scale) / 2,
          y1: y,
          x2: x + (head * scale) / 2,
          y2: y,
          offset: 100,
          of: 'head',
        },
      ],
    };
  },
});
