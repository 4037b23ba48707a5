import { annulus } from '../drawings/annulus.ts';
import { boreClosesIn, innerGive, outerGive } from '../formulas/rings.ts';
import { defineCell } from '../record/cell.ts';
import { oldParts, powerOff } from '../record/hazards.ts';

export default defineCell({
  key: 'split-shell-crush',
  edition: 1,
  title: 'Crush of split shells',
  purpose:
    'What the excess of two half shells does when the cap closes: interference, pressure on the housing, load on the bolts.',
  group: 'fits',
  inputs: [
    {
      name: 'housing_bore',
      label: 'housing bore, cap closed',
      quantity: 'length',
      sensible: ['15 mm', '500 mm'],
    },
    { name: 'shell_wall', label: 'shell wall', quantity: 'length', sensible: ['1 mm', '20 mm'] },
    { name: 'shell_length', label: 'shell length', quantity: 'length', sensible: ['5 mm', '500 mm'] },
    {
      name: 'crush',
      label: 'crush',
      quantity: 'length',
      sensible: ['5 um', '0.5 mm'],
      hint: 'As counted below: shops and makers count it in four ways.',
    },
    { name: 'crush_counted', label: 'crush is counted', choice: 'crush-conventions' },
    {
      name: 'housing_outside',
      label: 'outside of the housing round the shells',
      quantity: 'length',
      sensible: ['20 mm', '2 m'],
      hint: 'Of an uneven cap, the smallest ring that fits in it.',
    },
    {
      name: 'bolts',
      label: 'bolts at each joint',
      quantity: 'number',
      default: '1',
      sensible: ['1', '4'],
      source: 'one each side, as most caps have',
    },
    {
      name: 'bolt_clamp',
      label: 'clamp force of each bolt',
      quantity: 'force',
      sensible: ['100 N', '1000 kN'],
      optional: true,
      hint: 'Of the cell on bolt torque, its low end: = bolts.clamp_force. The crush must leave most of it.',
    },
    {
      name: 'least_clamp_left',
      label: 'least share of the clamp to be left to the joint',
      quantity: 'number',
      optional: true,
      sensible: ['0.2', '0.95'],
      hint: 'The running load lives on what is left: its maker’s figure, or 60 % and more (common practice, no source).',
    },
    {
      name: 'shell_material',
      label: 'shell material',
      record: 'material',
      hint: 'Of a lined shell, its back.',
    },
    { name: 'housing_material', label: 'housing material', record: 'material' },
    {
      name: 'least_pressure',
      label: 'least pressure wanted',
      quantity: 'pressure',
      sensible: ['0.1 MPa', '100 MPa'],
      optional: true,
    },
  ],
  outputs: [
    {
      name: 'times',
      label: 'times the figure stands in the whole excess',
      quantity: 'number',
      basis: 'geometry',
      table: { choice: 'crush_counted', column: 'times' },
    },
    {
      name: 'excess',
      label: 'excess of both shells along the circle',
      quantity: 'length',
      basis: 'geometry',
      formula: '=times * crush',
      display: { in: 'thou', mm: 'um' },
    },
    {
      name: 'interference',
      label: 'interference it makes, on diameter',
      quantity: 'length',
      basis: 'geometry',
      formula: '=excess / PI()',
      face: true,
      display: { in: 'thou', mm: 'um' },
    },
    {
      name: 'shell_bore',
      label: 'shell bore, by sizes',
      quantity: 'length',
      basis: 'geometry',
      formula: '=housing_bore - 2 * shell_wall',
    },
    {
      name: 'shell_give',
      label: 'stretch factor of the shell',
      quantity: 'number',
      basis: 'model',
      formula: innerGive('housing_bore', 'shell_bore', 'shell_material'),
    },
    {
      name: 'housing_give',
      label: 'stretch factor of the housing',
      quantity: 'number',
      basis: 'model',
      formula: outerGive('housing_outside', 'housing_bore', 'housing_material'),
    },
    {
      name: 'pressure',
      label: 'pressure on the housing',
      quantity: 'pressure',
      basis: 'model',
      formula:
        '=interference / (housing_bore * (shell_give / shell_material.E + housing_give / housing_material.E))',
      face: true,
      limits: { lower: '=least_pressure' },
    },
    {
      name: 'shell_stress',
      label: 'hoop stress in the shell, mean',
      quantity: 'pressure',
      basis: 'model',
      formula: '=pressure * housing_bore / (2 * shell_wall)',
      hint: 'Compression.',
    },
    {
      name: 'shell_margin',
      label: 'yield over stress, shell',
      quantity: 'number',
      basis: 'model',
      formula: '=shell_material.yield / MAX(shell_stress; shell_material.yield / 1000)',
      limits: { lower: '=1' },
    },
    {
      name: 'close_in',
      label: 'shells close in by, from the bore they would have free',
      quantity: 'length',
      basis: 'model',
      formula: boreClosesIn('housing_bore', 'shell_bore', 'shell_material'),
      display: { in: 'thou', mm: 'um' },
      hint: 'Not to be taken off the bore by sizes: free, the shells are larger by the interference.',
    },
    {
      name: 'fitted_bore',
      label: 'shell bore, cap closed',
      quantity: 'length',
      basis: 'model',
      ofPart: true,
      formula: '=shell_bore + interference - close_in',
      face: true,
      hint: 'The bore by sizes, and what the housing gives under the crush. Measure it with the cap at its torque.',
    },
    {
      name: 'bolt_load',
      label: 'load on each bolt to close the joint',
      quantity: 'force',
      basis: 'model',
      formula: '=pressure * housing_bore * shell_length / (2 * bolts)',
      face: true,
      limits: { upper: '=bolt_clamp' },
      hint: 'What the crush alone takes. The running load comes on top, and the joint must still be clamped: see the cell on bolt torque.',
    },
    {
      name: 'clamp_left',
      label: 'share of the clamp left to the joint',
      quantity: 'number',
      basis: 'model',
      formula: '=1 - bolt_load / bolt_clamp',
      limits: { lower: '=least_clamp_left' },
      display: { in: '%', mm: '%' },
      hint: 'What the crush does not take. Below zero the joint stays open.',
    },
  ],
  validity: [
    {
      holds: '=IF(ISBLANK(bolt_clamp); 1 > 0; clamp_left >= 0.5)',
      otherwise:
        'The crush takes more than half of the clamp: little is left to hold the joint against the running load. Look at the crush, and at how it is counted.',
      grade: 'caution',
    },
    {
      holds: '=AND(housing_bore > 2 * shell_wall; housing_outside > housing_bore)',
      otherwise: 'The wall must leave a bore, and the housing must be larger outside than its bore.',
      grade: 'error',
    },
    {
      holds: '=crush > 0 m',
      otherwise:
        'No crush: the shells are loose in the housing and will turn or fret. Never shim or file to make it up.',
      grade: 'error',
    },
    {
      holds: '=shell_margin >= 1',
      otherwise:
        'The shell yields: it springs inwards at the joints and the true pressure is less than this. Look at the crush and how it is counted.',
      grade: 'caution',
    },
    { holds: '=bolts >= 1', otherwise: 'There is at least one bolt at each joint.', grade: 'error' },
    {
      holds: '=AND(shell_wall > 0 m; shell_length > 0 m)',
      otherwise: 'Wall and length of the shells are above zero.',
      grade: 'error',
    },
  ],
  assumptions: [
    'The shells slide in the housing until the crush is even all round; with friction the joints take more than the crown.',
    'Shells and housing as full rings after Lame, plane stress; a lined shell counted as all of its back metal.',
    'Crush is measured with the shells seated under load as the maker says.',
  ],
  sources: [
    'No published worked example was found: the examples are held by a second method of our own',
    'Change of diameter = excess along the circle / pi (geometry)',
    "Rings: Budynas & Nisbett, Shigley's Mechanical Engineering Design, 9e (2011), sec. 3-16",
    'Four ways of counting crush: common practice, no source',
  ],
  cautions: [
    'Shell linings may hold lead: keep dust off hands and food.',
    'Cap bolts stretched past yield break in service: keep to the maker\u2019s torque and replace bolts it says to replace.',
    oldParts,
    powerOff,
  ],
  examples: [
    {
      title: 'Steel shells in a steel housing, crush 0.06 mm at each joint',
      source:
        'Second method: radial equilibrium of both rings in plane stress by finite differences, 1600 steps each, joined at the housing bore',
      grade: 'recomputed',
      inputs: {
        housing_bore: '80 mm',
        shell_wall: '2.5 mm',
        shell_length: '30 mm',
        crush: '0.06 mm',
        crush_counted: 'each-joint',
        housing_outside: '120 mm',
        bolt_clamp: '20 kN',
        shell_material: { E: '207 GPa', nu: '0.29', yield: '210 MPa' },
        housing_material: { E: '207 GPa', nu: '0.29' },
      },
      expect: {
        interference: { value: '0.0381972 mm', within: 1e-5 },
        pressure: { value: '5.45565 MPa', within: 1e-5 },
        shell_stress: { value: '87.2904 MPa', within: 1e-5 },
        close_in: { value: '0.0326472 mm', within: 1e-5 },
        fitted_bore: { value: '75.0055500 mm', within: '1e-6 mm' },
        bolt_load: { value: '6546.78 N', within: 1e-5 },
        clamp_left: { value: '0.672661', within: 1e-5 },
      },
    },
  ],
  drawing: (v) => {
    const { housing_bore: bore, shell_wall: wall, housing_outside: outside } = v;
    if (bore === undefined || wall === undefined || outside === undefined) return undefined;
    if (!(wall > 0 && bore > 2 * wall && outside > bore)) return undefined;
    const scale = 180 / outside;
    const [x, y] = [150, 110];
    const r = (d: number): number => (d * scale) / 2;
    const proud = 6;
    return {
      width: 300,
      height: 230,
      shapes: [
        annulus(x, y, r(outside), r(bore), 'section-b'),
        annulus(x, y, r(bore), r(bore - 2 * wall), 'section-a'),
        { kind: 'line', x1: x - r(outside) - 10, y1: y, x2: x + r(outside) + 10, y2: y, style: 'centre' },
        {
          kind: 'rect',
          x: x + r(bore - 2 * wall),
          y: y - proud,
          width: r(2 * wall),
          height: proud,
          fill: 'section-c',
        },
        {
          kind: 'dimension',
          x1: x + r(bore),
          y1: y - proud,
          x2: x + r(bore),
          y2: y,
          offset: 50,
          of: 'crush',
        },
        {
          kind: 'dimension',
          x1: x - r(bore),
          y1: y,
          x2: x + r(bore),
          y2: y,
          offset: -106,
          of: 'housing_bore',
        },
      ],
      exaggeration: 'crush drawn much larger than it is',
    };
  },
});
