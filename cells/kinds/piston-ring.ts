import { coldTemperature } from '../formulas/cold-temperature.ts';
import { defineCell } from '../record/cell.ts';
import { honing, powerOff } from '../record/hazards.ts';

export default defineCell({
  key: 'piston-ring',
  edition: 1,
  title: 'Piston and ring gap',
  purpose:
    'Clearance of a piston in its bore and the gap of a ring, cold and hot, and what bore wear does to the gap.',
  group: 'clearance',
  inputs: [
    { name: 'bore', label: 'cylinder bore', quantity: 'length', sensible: ['10 mm', '1 m'] },
    {
      name: 'piston',
      label: 'piston, across the skirt',
      quantity: 'length',
      sensible: ['10 mm', '1 m'],
      hint: 'At the place its maker says.',
    },
    {
      name: 'ring_gap',
      label: 'ring gap',
      quantity: 'length',
      sensible: ['0.05 mm', '10 mm'],
      hint: 'Ring pushed square into the bore.',
    },
    {
      name: 'gap_bore',
      label: 'bore the gap was measured in',
      quantity: 'length',
      sensible: ['10 mm', '1 m'],
      default: '=bore',
      source: 'the cylinder bore itself',
    },
    {
      name: 'new_least',
      label: "maker's least piston clearance",
      quantity: 'length',
      sensible: ['0 mm', '5 mm'],
      optional: true,
    },
    {
      name: 'new_greatest',
      label: "maker's greatest piston clearance, new",
      quantity: 'length',
      sensible: ['0 mm', '5 mm'],
      optional: true,
    },
    {
      name: 'wear_limit',
      label: "maker's wear limit of the clearance",
      quantity: 'length',
      sensible: ['0 mm', '5 mm'],
      optional: true,
    },
    {
      name: 'gap_least',
      label: "maker's least ring gap",
      quantity: 'length',
      sensible: ['0.05 mm', '10 mm'],
      optional: true,
    },
    {
      name: 'gap_greatest',
      label: "maker's greatest ring gap, new",
      quantity: 'length',
      sensible: ['0.05 mm', '10 mm'],
      optional: true,
    },
    {
      name: 'gap_wear',
      label: "maker's wear limit of the gap",
      quantity: 'length',
      sensible: ['0.05 mm', '20 mm'],
      optional: true,
    },
    {
      name: 'bore_running',
      label: 'cylinder wall, running',
      quantity: 'temperature',
      optional: true,
      sensible: ['-40 degC', '300 degC'],
    },
    {
      name: 'piston_running',
      label: 'piston skirt, running',
      quantity: 'temperature',
      optional: true,
      sensible: ['-40 degC', '350 degC'],
    },
    {
      name: 'ring_running',
      label: 'ring, running',
      quantity: 'temperature',
      optional: true,
      sensible: ['-40 degC', '350 degC'],
    },
    coldTemperature,
    { name: 'cylinder_material', label: 'cylinder material', record: 'material', optional: true },
    { name: 'piston_material', label: 'piston material', record: 'material', optional: true },
    { name: 'ring_material', label: 'ring material', record: 'material', optional: true },
  ],
  outputs: [
    {
      name: 'piston_clearance',
      label: 'piston clearance, cold',
      quantity: 'length',
      basis: 'geometry',
      formula: '=bore - piston',
      face: true,
      limits: { lower: '=new_least', upper: '=new_greatest', wear: '=wear_limit', metalOn: 'low' },
      display: { in: 'thou', mm: 'mm' },
    },
    {
      name: 'gap_in_bore',
      label: 'ring gap in this bore, cold',
      quantity: 'length',
      basis: 'geometry',
      formula: '=ring_gap + PI() * (bore - gap_bore)',
      face: true,
      limits: { lower: '=gap_least', upper: '=gap_greatest', wear: '=gap_wear', metalOn: 'low' },
      display: { in: 'thou', mm: 'mm' },
      hint: 'Every thou of bore opens the gap by pi thou.',
    },
    {
      name: 'hot_clearance',
      label: 'piston clearance, running',
      quantity: 'length',
      basis: 'model',
      formula:
        '=piston_clearance + bore * cylinder_material.alpha * (bore_running - cold_temperature) - piston * piston_material.alpha * (piston_running - cold_temperature)',
      limits: { lower: '=0 m', metalOn: 'low' },
      display: { in: 'thou', mm: 'mm' },
    },
    {
      name: 'hot_gap',
      label: 'ring gap, running',
      quantity: 'length',
      basis: 'model',
      formula:
        '=gap_in_bore + PI() * bore * (cylinder_material.alpha * (bore_running - cold_temperature) - ring_material.alpha * (ring_running - cold_temperature))',
      face: true,
      limits: { lower: '=0 m', metalOn: 'low' },
      display: { in: 'thou', mm: 'mm' },
      hint: 'At zero the ends butt and the ring breaks or scores the bore.',
    },
    {
      name: 'usual_gap',
      label: 'gap by rule: 3 to 5 thou an inch of bore',
      quantity: 'length',
      basis: 'model',
      formula: '=0.004 * bore',
      spread: {
        low: '=-0.001 * bore',
        high: '=0.001 * bore',
        distribution: 'rectangular',
        label: 'rules differ',
      },
      display: { in: 'thou', mm: 'mm' },
    },
  ],
  validity: [
    {
      holds: '=AND(bore > 0 m; piston > 0 m; ring_gap > 0 m)',
      otherwise: 'Bore, piston and ring gap must be above zero.',
      grade: 'error',
    },
    {
      holds: '=piston_clearance > 0 m',
      otherwise:
        'The piston is no smaller than the bore: it does not go in. Look at both readings, hone the bore, or turn the piston.',
      grade: 'caution',
    },
    {
      holds: '=gap_in_bore >= 0.003 * bore',
      otherwise:
        'The gap is below 3 thou an inch of bore, the usual least (common practice, no source): the ends may butt when hot. File the gap.',
      grade: 'caution',
    },
    {
      holds: '=gap_bore > 0 m',
      otherwise: 'The bore the gap was measured in is above zero.',
      grade: 'error',
    },
  ],
  assumptions: [
    'Cylinder, piston and ring each at one temperature; an uneven piston is far from it, so the maker\u2019s clearance comes first.',
    'The ring follows the bore all round: a tapered bore is judged at its smallest place for butting and at its largest for blow-by.',
  ],
  sources: [
    'Gap and bore: length of the circle, pi times the diameter (geometry); expansion as any handbook',
    'Gap of 3 to 5 thou an inch of bore: common practice, no source. In print: at least 3 1/2 thou an inch, and above 8 an oversize ring is wanted (a ring maker’s service note); 2 to 3 thou (a workshop forum). The maker’s figure comes first',
  ],
  cautions: [
    'Ring ends are sharp, and a ring let slip flies: goggles. Turn a rebuilt engine by hand first.',
    honing,
    powerOff,
  ],
  examples: [
    {
      title: 'Ring gap by rule in a 4 in bore',
      source:
        'published workshop pages: .004 in for each inch, x 4.00 in bore = 0.016 in; piston and gap are ours',
      grade: 'seen',
      inputs: { bore: '4.00 in', piston: '3.996 in', ring_gap: '0.018 in' },
      expect: { usual_gap: { value: '0.016 in', within: 1e-9 } },
    },
    {
      title: 'Bore worn by 0.10 mm; aluminium piston and iron ring hot',
      source:
        'Second method: each circle taken at its temperature by d (1 + alpha dT), ring length less circle of the bore',
      grade: 'recomputed',
      inputs: {
        bore: '80.10 mm',
        piston: '79.95 mm',
        ring_gap: '0.30 mm',
        gap_bore: '80.00 mm',
        bore_running: '120 degC',
        piston_running: '180 degC',
        ring_running: '200 degC',
        cylinder_material: { alpha: '11.4e-6 1/K' },
        piston_material: { alpha: '21e-6 1/K' },
        ring_material: { alpha: '11.4e-6 1/K' },
      },
      expect: {
        gap_in_bore: { value: '0.61416 mm', within: 1e-4 },
        hot_gap: { value: '0.3847 mm', within: '0.002 mm' },
        hot_clearance: { value: '-0.02732 mm', within: '0.0001 mm' },
      },
    },
  ],
});
