import { annulus } from '../drawings/annulus.ts';
import { defineCell } from '../record/cell.ts';
import { licensed } from '../record/hazards.ts';

export default defineCell({
  key: 'bush-held',
  edition: 1,
  title: 'Bush kept from turning',
  purpose:
    'The torque of a journal that seizes, against what holds its bush: press fit, compound and pin, by themselves and together.',
  group: 'threads',
  inputs: [
    { name: 'journal', label: 'journal', quantity: 'length', sensible: ['3 mm', '1 m'] },
    { name: 'load', label: 'load on the bearing', quantity: 'force', sensible: ['1 N', '1000 kN'] },
    {
      name: 'seizing',
      label: 'friction when it seizes',
      quantity: 'number',
      default: '0.5 ± 0.3',
      sensible: ['0.15', '1.5'],
      source:
        'common practice, no source: dry bronze on steel 0.2 to 0.4, picked up and welding 0.8 and more',
    },
    {
      name: 'stall_torque',
      label: 'greatest torque the shaft can bring',
      quantity: 'torque',
      optional: true,
      sensible: ['0.1 N.m', '100000 N.m'],
      hint: 'Of the drive as it stalls, belt or clutch as they slip: a seizure turns the bush with no more than that.',
    },
    {
      name: 'press_torque',
      label: 'torque the press fit holds, running hot',
      quantity: 'torque',
      optional: true,
      sensible: ['0 N.m', '100000 N.m'],
      hint: 'Of the interference that is left hot and in winter, at the low end of friction.',
    },
    {
      name: 'bond_torque',
      label: 'torque the compound holds, running',
      quantity: 'torque',
      optional: true,
      sensible: ['0 N.m', '100000 N.m'],
      hint: '= bond.hot_torque of a slip fit; of a pressed one it has the press fit in it: leave that blank then.',
    },
    {
      name: 'pin_torque',
      label: 'torque the pin holds',
      quantity: 'torque',
      optional: true,
      sensible: ['0 N.m', '100000 N.m'],
      hint: '= pin.torque_held',
    },
    {
      name: 'least_margin',
      label: 'least torque held over torque of a seizure',
      quantity: 'number',
      default: '1.5',
      sensible: ['1', '5'],
      source: 'common practice, no source',
    },
  ],
  outputs: [
    {
      name: 'seizure_torque',
      label: 'torque of a seizure',
      quantity: 'torque',
      formula:
        '=IF(ISBLANK(stall_torque); seizing * load * journal / 2; MIN(stall_torque; seizing * load * journal / 2))',
      basis: 'model',
      face: true,
    },
    {
      name: 'grip',
      label: 'held by press fit and compound',
      quantity: 'torque',
      formula:
        '=IF(ISBLANK(press_torque); 0 N.m; press_torque) + IF(ISBLANK(bond_torque); 0 N.m; bond_torque)',
      basis: 'model',
      face: true,
    },
    {
      name: 'held',
      label: 'held, the better of grip and pin',
      quantity: 'torque',
      formula: '=MAX(grip; IF(ISBLANK(pin_torque); 0 N.m; pin_torque))',
      basis: 'model',
      face: true,
      hint: 'They are not added: a pin takes up only when the grip has slipped, and by then the bond is broken.',
    },
    {
      name: 'margin',
      label: 'held over seizure',
      quantity: 'number',
      formula: '=held / MAX(seizure_torque; 1e-6 N.m)',
      basis: 'model',
      face: true,
      limits: { lower: '=least_margin' },
    },
    {
      name: 'grip_margin',
      label: 'grip alone over seizure',
      quantity: 'number',
      formula: '=grip / MAX(seizure_torque; 1e-6 N.m)',
      basis: 'model',
    },
  ],
  validity: [
    {
      holds: '=AND(journal > 0 m; load > 0 N)',
      otherwise: 'Journal and load are above zero: without a load nothing seizes on one side.',
      grade: 'error',
    },
    {
      holds: '=AND(seizing > 0; seizing < 3)',
      otherwise: 'Friction when it seizes lies above 0, mostly 0.2 to 1.',
      grade: 'error',
    },
    {
      holds:
        '=AND(IF(ISBLANK(press_torque); 1 > 0; press_torque >= 0 N.m); IF(ISBLANK(bond_torque); 1 > 0; bond_torque >= 0 N.m); IF(ISBLANK(pin_torque); 1 > 0; pin_torque >= 0 N.m); IF(ISBLANK(stall_torque); 1 > 0; stall_torque > 0 N.m))',
      otherwise: 'A torque is counted without a sign.',
      grade: 'error',
    },
    {
      holds: '=NOT(AND(ISBLANK(press_torque); ISBLANK(bond_torque); ISBLANK(pin_torque)))',
      otherwise: 'Nothing is entered that holds the bush.',
      grade: 'caution',
    },
    {
      holds: '=held >= seizure_torque',
      otherwise:
        'A seizure turns the bush: it shuts its oil hole and wears its housing. Pin it, or give it more grip.',
      grade: 'caution',
    },
  ],
  assumptions: [
    'The load presses the journal on one side; a bearing seized all round by heat takes more.',
    'How it comes apart again: a press fit by the press, a bonded one by heat if metal and lining bear it, a pin drilled or drawn out first.',
  ],
  sources: [
    'T = mu W d / 2, friction torque of a journal: Mott, Machine Elements in Mechanical Design, ch. 16',
    'What holds it: the cells of the interference fit, of retaining compound and of the pin',
  ],
  cautions: [
    'A bush that turns cuts off its own oil and can lock the shaft: where that would hurt someone, pin it whatever the grip.',
    'Compound and shrink fits come apart with heat: look up what the metal and its lining bear first.',
    licensed,
  ],
  examples: [
    {
      title: 'Journal 2 in, 300 lbf, friction 0.5; pin holds 400, press 120 lbf in',
      source: 'by hand: 0.5 x 300 x 1 = 150 lbf in; the better of 120 and 400; 400 / 150',
      grade: 'recomputed',
      inputs: {
        journal: '2 in',
        load: '300 lbf',
        seizing: '0.5',
        press_torque: '120 lbf.in',
        pin_torque: '400 lbf.in',
      },
      expect: {
        seizure_torque: { value: '150 lbf.in', within: 1e-9 },
        held: { value: '400 lbf.in', within: 1e-9 },
        margin: { value: '2.6667', within: 1e-4 },
        grip_margin: { value: '0.8', within: 1e-9 },
      },
    },
    {
      title: 'The drive stalls at 10 N m before the bush could turn',
      source: 'by hand: 0.5 x 2 kN x 25 mm = 25 N m, held down to 10 N m by the drive; 18 + 12 N m of grip',
      grade: 'recomputed',
      inputs: {
        journal: '50 mm',
        load: '2 kN',
        seizing: '0.5',
        stall_torque: '10 N.m',
        press_torque: '18 N.m',
        bond_torque: '12 N.m',
      },
      expect: {
        seizure_torque: { value: '10 N.m', within: 1e-9 },
        held: { value: '30 N.m', within: 1e-9 },
        margin: { value: '3', within: 1e-9 },
      },
    },
    {
      title: 'Friction torque of a journal of 2.5 in under 1500 lbf',
      source:
        'Mott, Machine Elements in Mechanical Design, ch. 16, full-film design example: friction 0.0042, torque 7.88 lbf in (an oiled bearing: the same law)',
      grade: 'seen',
      inputs: { journal: '2.5 in', load: '1500 lbf', seizing: '0.0042', press_torque: '15.76 lbf.in' },
      expect: {
        seizure_torque: { value: '7.88 lbf.in', within: '0.006 lbf.in' },
        margin: { value: '2', within: 1e-3 },
      },
    },
  ],
  drawing: ({ journal }) => {
    if (journal === undefined || !(journal > 0) || !Number.isFinite(journal)) return undefined;
    const [x, y, r] = [150, 112, 48];
    return {
      width: 300,
      height: 225,
      shapes: [
        annulus(x, y, r + 42, r + 20, 'section-b'),
        annulus(x, y, r + 20, r, 'section-a'),
        { kind: 'circle', x, y, r, fill: 'section-c' },
        { kind: 'rect', x: x - 5, y: y - r - 34, width: 10, height: 26, fill: 'paper' },
        { kind: 'line', x1: x, y1: 10, x2: x, y2: 214, style: 'centre' },
        { kind: 'line', x1: 45, y1: y, x2: 255, y2: y, style: 'centre' },
        { kind: 'dimension', x1: x - r, y1: y, x2: x + r, y2: y, offset: 100, of: 'journal' },
      ],
      exaggeration: 'bush, housing and pin drawn at any size',
    };
  },
});
