import { defineCell } from '../record/cell.ts';
import { fitEdge } from '../record/hazards.ts';

export default defineCell({
  key: 'shaft-torque',
  edition: 1,
  title: 'Torque of a driven shaft',
  purpose: 'Torque from power and speed, and what a fit, key or taper on the shaft has to hold.',
  group: 'machine work',
  inputs: [
    { name: 'power', label: 'power it carries', quantity: 'power', sensible: ['10 W', '500 kW'] },
    {
      name: 'speed',
      label: 'speed it turns at',
      quantity: 'rotational speed',
      sensible: ['1 rpm', '20000 rpm'],
    },
    {
      name: 'shock',
      label: 'times over, for shock of the drive',
      quantity: 'number',
      default: '1.5',
      sensible: ['1', '4'],
      source: 'common practice, no source: 1 smooth, 1.5 saws and presses, 2 and more where it strikes',
    },
  ],
  outputs: [
    {
      name: 'torque',
      label: 'torque, running evenly',
      quantity: 'torque',
      basis: 'model',
      formula: '=power / (2 * PI() * speed)',
      face: true,
      hint: 'A speed is counted in turns: power over speed alone is the work of one turn, 2 pi times the torque.',
    },
    {
      name: 'torque_to_hold',
      label: 'torque to hold, with shock',
      quantity: 'torque',
      basis: 'model',
      formula: '=shock * torque',
      face: true,
    },
  ],
  validity: [
    {
      holds: '=speed > 0 rpm',
      otherwise: 'The speed must be above zero: a shaft that stands carries no power.',
      grade: 'error',
    },
    { holds: '=power >= 0 W', otherwise: 'The power must not be below zero.', grade: 'error' },
    {
      holds: '=shock >= 1',
      otherwise: 'Less than the even torque: the factor for shock is 1 or more.',
      grade: 'caution',
    },
  ],
  assumptions: [
    'All the power goes through this shaft; what a belt or a gear takes off on the way is not counted.',
    'Starting and stalling of a motor can ask several times the even torque: ask its maker.',
  ],
  sources: [
    'Rotational frequency in turns, r/min = 1/60 per second: ISO 80000-3:2019',
    "T = P / omega: Budynas & Nisbett, Shigley's Mechanical Engineering Design, 9e (2011), sec. 3-12",
  ],
  cautions: [
    'Guard turning shafts, and lock the drive out before hands go near it; local rules come first.',
    fitEdge,
  ],
  examples: [
    {
      title: 'One horsepower at 5252 turns a minute',
      source:
        'The handbook rule lbf.ft = 5252 hp / rpm, and Shigley 9e Eq (3-42), T = 63 025 H / n lbf.in (from memory)',
      grade: 'memory',
      inputs: { power: '1 hp', speed: '5252 rpm' },
      expect: { torque: { value: '1 lbf.ft', within: 1e-4 } },
    },
    {
      title: '7.5 kW at 980 turns a minute',
      source: 'Second method: work of one turn, P over n, divided by the way of a unit radius in one turn',
      grade: 'recomputed',
      inputs: { power: '7.5 kW', speed: '980 rpm', shock: '2' },
      expect: {
        torque: { value: '73.0813 N.m', within: 1e-5 },
        torque_to_hold: { value: '146.1626 N.m', within: 1e-5 },
      },
    },
  ],
});
