import { defineCell } from '../record/cell.ts';
import { broaching } from '../record/hazards.ts';

export default defineCell({
  key: 'broach-passes',
  edition: 1,
  title: 'Force to push a broach',
  purpose:
    'Force a keyway or groove broach needs in one pass, against the press and against what stands under the part.',
  group: 'machine work',
  inputs: [
    { name: 'cut_width', label: 'width cut', quantity: 'length', sensible: ['1 mm', '60 mm'] },
    {
      name: 'cut_length',
      label: 'length of the part cut through',
      quantity: 'length',
      sensible: ['2 mm', '500 mm'],
    },
    { name: 'tooth_pitch', label: 'from tooth to tooth', quantity: 'length', sensible: ['1 mm', '40 mm'] },
    {
      name: 'rise',
      label: 'rise from tooth to tooth',
      quantity: 'length',
      sensible: ['0.005 mm', '0.2 mm'],
      hint: 'Last tooth less first, over the teeth between.',
    },
    {
      name: 'cutting_pressure',
      label: 'force per section of chip',
      quantity: 'pressure',
      sensible: ['300 MPa', '8000 MPa'],
      hint: 'Light alloy 700 to 1200 MPa, bronze 1000 to 1800, cast iron 1500 to 2500, mild steel 2500 to 4000, tough steel to 5000: thin chips the higher end (from memory of cutting handbooks).',
    },
    {
      name: 'friction_share',
      label: 'friction and blunt teeth, on top',
      quantity: 'number',
      default: '0.3 ± 0.2',
      sensible: ['0', '1.5'],
      source: 'common practice, no source: sharp and oiled little; blunt or dry the force doubles',
    },
    {
      name: 'press_force',
      label: 'force of the press at hand',
      quantity: 'force',
      optional: true,
      sensible: ['100 N', '2000 kN'],
      hint: 'An arbor press of the bench gives 1 to 3 short_tonf; = press.press_force',
    },
    {
      name: 'support',
      label: 'area the part stands on, under the cut',
      quantity: 'area',
      optional: true,
      hint: 'Of the collar or plate right round the bore.',
    },
    {
      name: 'part_bears',
      label: 'pressure the part bears there',
      quantity: 'pressure',
      optional: true,
      sensible: ['5 MPa', '1000 MPa'],
    },
  ],
  outputs: [
    {
      name: 'teeth_in',
      label: 'teeth cutting at once',
      quantity: 'number',
      formula: '=ROUNDUP(ROUND(cut_length / tooth_pitch; 6); 0)',
      basis: 'geometry',
      held: true,
      hint: 'Two at least, or it dips and tears.',
    },
    {
      name: 'chip_section',
      label: 'section of all chips at once',
      quantity: 'area',
      formula: '=teeth_in * cut_width * rise',
      basis: 'geometry',
      display: { in: 'in2', mm: 'mm2' },
    },
    {
      name: 'force',
      label: 'force to push it',
      quantity: 'force',
      formula: '=chip_section * cutting_pressure * (1 + friction_share)',
      basis: 'model',
      face: true,
      limits: { upper: '=press_force' },
    },
    {
      name: 'press_tons',
      label: 'in short tons, as presses are named',
      quantity: 'force',
      formula: '=force',
      basis: 'model',
      display: { in: 'short_tonf', mm: 'kN' },
      face: true,
    },
    {
      name: 'support_pressure',
      label: 'pressure under the part',
      quantity: 'pressure',
      formula: '=force / support',
      basis: 'model',
      face: true,
      limits: { upper: '=part_bears' },
    },
    {
      name: 'margin',
      label: 'press over force',
      quantity: 'number',
      formula: '=press_force / force',
      basis: 'model',
      limits: { lower: '=1.2' },
    },
  ],
  validity: [
    {
      holds:
        '=AND(cut_width > 0 m; cut_length > 0 m; tooth_pitch > 0 m; rise > 0 m; cutting_pressure > 0 Pa)',
      otherwise: 'All sizes and the force per section are above zero.',
      grade: 'error',
    },
    {
      holds: '=friction_share >= 0',
      otherwise: 'Friction comes on top: it is not below zero.',
      grade: 'error',
    },
    {
      holds: '=IF(ISBLANK(support); 1 > 0; support > 0 m2)',
      otherwise: 'The area under the part is above zero.',
      grade: 'error',
    },
    {
      holds: '=IF(ISBLANK(press_force); 1 > 0; press_force > 0 N)',
      otherwise: 'The force of the press is above zero.',
      grade: 'error',
    },
    {
      holds: '=teeth_in >= 2',
      otherwise:
        'Fewer than two teeth cut at once: the broach dips and tears. Stack parts, or back the bore with a spare piece.',
      grade: 'caution',
    },
    {
      holds: '=teeth_in <= 8',
      otherwise: 'So many teeth at once fill their gullets: a shorter part, or a broach of coarser pitch.',
      grade: 'caution',
    },
  ],
  assumptions: [
    'Every tooth in the part cuts its whole rise: the first pass of a broach in a slot does, later ones with a shim too.',
    'Force per section rises as the chip gets thinner; the figure is for the rise entered.',
  ],
  sources: [
    'F = n b h k: width x depth x force per section x teeth at once, as a builder of broaching machines prints it; figures of k by metal from memory',
    'Teeth at once = length over pitch (geometry)',
  ],
  cautions: [
    'A thin bush bursts or closes in: support it in a bored block all round, on a plate with a hole just larger than the broach.',
    'Press maker’s instructions and local rules come first.',
    broaching,
  ],
  examples: [
    {
      title: 'Groove of 3/16 in through 1 1/2 in of bronze: 4 teeth, 0.0015 in each',
      source:
        'by hand: 1.5 / 0.375 = 4 teeth; 4 x 0.1875 x 0.0015 in = 0.001125 in2 x 200 ksi x 1.3 = 292.5 lbf',
      grade: 'recomputed',
      inputs: {
        cut_width: '0.1875 in',
        cut_length: '1.5 in',
        tooth_pitch: '0.375 in',
        rise: '0.0015 in',
        cutting_pressure: '200 ksi',
        friction_share: '0.3',
        press_force: '1 short_tonf',
        support: '0.5 in2',
      },
      expect: {
        teeth_in: { value: '4', within: 1e-9 },
        force: { value: '292.5 lbf', within: 1e-9 },
        support_pressure: { value: '585 psi', within: 1e-9 },
        margin: { value: '6.8376', within: 1e-4 },
      },
    },
    {
      title: 'Keyway of 8 mm through 30 mm of steel',
      source: 'by hand: 30 / 8 = 3.75, so 4 teeth; 4 x 8 x 0.06 mm = 1.92 mm2 x 3500 MPa x 1.3 = 8736 N',
      grade: 'recomputed',
      inputs: {
        cut_width: '8 mm',
        cut_length: '30 mm',
        tooth_pitch: '8 mm',
        rise: '0.06 mm',
        cutting_pressure: '3500 MPa',
        friction_share: '0.3',
      },
      expect: { teeth_in: { value: '4', within: 1e-9 }, force: { value: '8736 N', within: 1e-9 } },
    },
    {
      title: 'Spline broach, six keys of 4 mm, through 25 mm of heat-resisting steel',
      source:
        'published worked example of a builder of broaching machines: 25 / 7.5 = 3.3, so 4 teeth; 4 x (6 x 0.025) x 0.4 t/mm2 x 4 teeth = 0.96, printed as 1 t; no friction on top',
      grade: 'seen',
      inputs: {
        cut_width: '24 mm',
        cut_length: '25 mm',
        tooth_pitch: '7.5 mm',
        rise: '0.025 mm',
        cutting_pressure: '= 400 * 9.80665 MPa',
        friction_share: '0',
      },
      expect: { teeth_in: { value: '4', within: 1e-9 }, force: { value: '9.41 kN', within: 1e-3 } },
    },
  ],
  drawing: ({ cut_length, tooth_pitch }) => {
    if (cut_length === undefined || tooth_pitch === undefined) return undefined;
    if (!(cut_length > 0 && tooth_pitch > 0)) return undefined;
    const scale = Math.min(150 / cut_length, 60 / tooth_pitch);
    const [long, step] = [cut_length * scale, tooth_pitch * scale];
    if (!Number.isFinite(long) || !Number.isFinite(step) || step < 3) return undefined;
    const [x, floor] = [150 - long / 2, 80];
    const from = x - 1.5 * step;
    const count = Math.ceil((long + 3 * step) / step);
    // Each tooth stands a little higher than the one before it, as it rises.
    const teeth = Array.from({ length: count }, (_, k) => {
      const [at, top] = [from + k * step, floor + 10 - (8 * (k + 1)) / count];
      return `L${at} ${floor + 16}L${at + 0.25 * step} ${top}L${at + 0.45 * step} ${top}L${at + 0.6 * step} ${floor + 16}`;
    }).join('');
    const end = from + count * step;
    return {
      width: 300,
      height: 170,
      shapes: [
        { kind: 'rect', x, y: floor - 40, width: long, height: 46, fill: 'section-a' },
        {
          kind: 'path',
          d: `M${from} ${floor + 45}${teeth}L${end} ${floor + 16}L${end} ${floor + 45}Z`,
          fill: 'section-b',
        },
        {
          kind: 'dimension',
          x1: x,
          y1: floor - 40,
          x2: x + long,
          y2: floor - 40,
          offset: 18,
          of: 'cut_length',
        },
        {
          kind: 'dimension',
          x1: from + step,
          y1: floor + 45,
          x2: from + 2 * step,
          y2: floor + 45,
          offset: -22,
          of: 'tooth_pitch',
        },
      ],
      exaggeration: 'rise of the teeth drawn large',
    };
  },
});
