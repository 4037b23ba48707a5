import { taperInHub } from '../drawings/taper.ts';
import {
  castingFill,
  castingHolds,
  leastMargin,
  marginWanted,
  outerGiveByFill,
  outerStressByFill,
  thinnestCasting,
} from '../formulas/casting.ts';
import { filmHolds, filmInputs, filmOutputs, wetByPair } from '../formulas/compound-film.ts';
import { frictionHolds, frictionInputs, frictionOutputs } from '../formulas/friction.ts';
import { innerGive } from '../formulas/rings.ts';
import { interferenceLost, roughnessHolds, roughnessInputs } from '../formulas/roughness.ts';
import { defineCell } from '../record/cell.ts';

export default defineCell({
  key: 'taper-draw-up',
  edition: 1,
  title: 'Draw-up of a taper fit',
  purpose:
    'How far to push a tapered part on past hand-tight for the interference wanted, and what that holds.',
  group: 'fits',
  inputs: [
    {
      name: 'taper',
      label: 'taper, on diameter per length',
      quantity: 'number',
      sensible: ['0.01', '0.6'],
      hint: 'As a number or as 0.6 in/ft, 1 in 12 as =1/12.',
    },
    { name: 'mean_diameter', label: 'diameter at mid-length', quantity: 'length', sensible: ['5 mm', '1 m'] },
    { name: 'length', label: 'length in contact', quantity: 'length', sensible: ['5 mm', '1 m'] },
    {
      name: 'interference_wanted',
      label: 'interference wanted, on diameter',
      quantity: 'length',
      sensible: ['1 um', '1 mm'],
    },
    {
      name: 'inner_bore',
      label: 'bore of the shaft',
      quantity: 'length',
      sensible: ['0 mm', '1 m'],
      hint: 'Enter 0 for a solid shaft.',
    },
    {
      name: 'outer_diameter',
      label: 'outside of the hub',
      quantity: 'length',
      sensible: ['5 mm', '3 m'],
      optional: true,
      hint: 'Blank where it cannot be known: the results are then a band from a thin hub to an endless one.',
    },
    thinnestCasting('hub'),
    { name: 'inner_material', label: 'shaft material', record: 'material' },
    { name: 'outer_material', label: 'hub material', record: 'material' },
    ...frictionInputs,
    ...filmInputs,
    ...roughnessInputs('shaft'),
    leastMargin,
    {
      name: 'torque_needed',
      label: 'torque it must hold',
      quantity: 'torque',
      sensible: ['0.1 N.m', '100000 N.m'],
      optional: true,
    },
  ],
  outputs: [
    ...interferenceLost('0.4'),
    {
      name: 'draw_up',
      label: 'push on past hand-tight by',
      quantity: 'length',
      formula: '=(interference_wanted + interference_lost) / taper',
      face: true,
    },
    {
      name: 'included_angle',
      label: 'included angle',
      quantity: 'angle',
      formula: '=2 * ATAN(taper / 2)',
    },
    castingFill('outer_diameter', 'mean_diameter'),
    {
      name: 'inner_give',
      label: 'give of the shaft: change of diameter per diameter, times E, per pressure',
      quantity: 'number',
      formula: innerGive('mean_diameter', 'inner_bore', 'inner_material'),
    },
    {
      name: 'outer_give',
      label: 'give of the hub: change of diameter per diameter, times E, per pressure',
      quantity: 'number',
      formula: outerGiveByFill('outer_material'),
    },
    {
      name: 'pressure',
      label: 'pressure between them, at mid-length',
      quantity: 'pressure',
      formula:
        '=interference_wanted / (mean_diameter * (inner_give / inner_material.E + outer_give / outer_material.E))',
    },
    {
      name: 'hub_stress',
      label: 'stress to compare, hub bore',
      quantity: 'pressure',
      formula: outerStressByFill('pressure', 'outer_material'),
      hint: 'Yielding metal: von Mises at the bore. Brittle: hoop tension and a third of the pressure.',
    },
    marginWanted('outer_material', 'hub_wanted', 'hub'),
    marginWanted('inner_material', 'shaft_wanted', 'shaft'),
    {
      name: 'hub_margin',
      label: 'strength over stress, hub',
      quantity: 'number',
      formula: '=outer_material.yield / MAX(hub_stress; outer_material.yield / 1000)',
      limits: { lower: '=hub_wanted' },
    },
    {
      name: 'shaft_stress',
      label: 'stress to compare, shaft',
      quantity: 'pressure',
      formula:
        '=IF(inner_bore > 0 m; 2 * pressure * mean_diameter^2 / (mean_diameter^2 - inner_bore^2); pressure) / IF(inner_material.brittle > 0.5; 3; 1)',
      hint: 'Compression: of a hollow shaft at its bore, of a solid one everywhere. Brittle metal bears three times its tensile strength.',
    },
    {
      name: 'shaft_margin',
      label: 'strength over stress, shaft',
      quantity: 'number',
      formula: '=inner_material.yield / MAX(shaft_stress; inner_material.yield / 1000)',
      limits: { lower: '=shaft_wanted' },
    },
    ...frictionOutputs('pair_friction'),
    ...filmOutputs(wetByPair),
    {
      name: 'push_force',
      label: 'force to push it on',
      quantity: 'force',
      formula: '=PI() * mean_diameter * length * (pressure * (friction_taken + taper / 2) + film_shear)',
      face: true,
    },
    {
      name: 'release_force',
      label: 'force to push it off',
      quantity: 'force',
      formula: '=PI() * mean_diameter * length * pressure * (friction_taken - taper / 2)',
      hint: 'Below zero it throws itself off and must be held by its nut.',
    },
    {
      name: 'torque_held',
      label: 'torque held by friction',
      quantity: 'torque',
      formula: '=PI() * mean_diameter^2 * length * pressure * friction_taken * SQRT(1 + taper^2 / 4) / 2',
      face: true,
      limits: { lower: '=torque_needed' },
    },
  ],
  validity: [
    {
      holds: '=AND(taper > 0; taper < 1)',
      otherwise: 'The taper must lie between 0 and 1: it is the change of diameter over the length.',
      grade: 'error',
    },
    {
      holds: '=AND(inner_bore >= 0 m; mean_diameter > inner_bore)',
      otherwise: 'Bore, diameter at mid-length and outside of the hub must rise in this order.',
      grade: 'error',
    },
    castingHolds(
      'outer_diameter',
      'mean_diameter',
      'Bore, diameter at mid-length and outside of the hub must rise in this order.',
    ),
    {
      holds: '=interference_wanted > 0 m',
      otherwise: 'Without interference the taper only touches: nothing is held.',
      grade: 'error',
    },
    {
      holds: '=friction_taken > taper / 2',
      otherwise: 'The taper does not hold itself: it needs its nut or drawbar all the time.',
      grade: 'caution',
    },
    {
      holds: '=taper * length <= 0.3 * mean_diameter',
      otherwise: 'The ends differ much in diameter: figures at mid-length are rough here.',
      grade: 'caution',
    },
    {
      holds: '=length > 0 m',
      otherwise: 'The length in contact must be above zero.',
      grade: 'error',
    },
    ...roughnessHolds,
    frictionHolds,
    ...filmHolds,
  ],
  assumptions: [
    'Both tapers alike and blued to full contact; a difference in angle shows as contact at one end.',
    'Rings after Lame at the diameter of mid-length, plane stress, elastic.',
    'Hand-tight is where the parts, clean and dry, just stop by hand.',
  ],
  sources: [
    'Draw-up = interference / taper (geometry)',
    "Rings: Budynas & Nisbett, Shigley's Mechanical Engineering Design, 9e (2011), sec. 3-16",
    'Roughness: 0.4 (Rz shaft + Rz bore), DIN 7190-1:2017 at second hand; DIN 7190:2001 took 0.8',
    'Force on a cone: balance of pressure and friction along the axis',
  ],
  cautions: [
    'Pulling a taper off stores force: the hub can jump. Leave the nut on by a thread or two, stand aside, and never hammer on a puller under load.',
    'Pushing on by oil pressure: keep to the maker\u2019s procedure and pressure.',
  ],
  examples: [
    {
      title: 'Taper from 1.25 to 1.00 in over 6 in: its angle',
      source: 'included = 2 atan((D - d) / 2 L), reference R688: 2.38698 deg',
      grade: 'computed',
      inputs: {
        taper: '=0.25/6',
        mean_diameter: '1.125 in',
        length: '6 in',
        interference_wanted: '0.001 in',
        inner_bore: '0 in',
        outer_diameter: '2.5 in',
        inner_material: { E: '30 Mpsi', nu: '0.292', yield: '54 ksi', brittle: '0' },
        outer_material: { E: '30 Mpsi', nu: '0.292', yield: '54 ksi', brittle: '0' },
      },
      expect: {
        included_angle: { value: '2.38698 deg', within: 1e-5 },
        draw_up: { value: '0.024 in', within: 1e-9 },
      },
    },
    {
      title: 'Taper of 1 in 12 on a solid shaft: pressure as of straight rings',
      source: "Shigley's Mechanical Engineering Design, 8e, solutions manual, problem 3-68: 22 500 psi",
      grade: 'seen',
      inputs: {
        taper: '=1/12',
        mean_diameter: '1.0 in',
        length: '1.5 in',
        interference_wanted: '0.002 in',
        inner_bore: '0 in',
        outer_diameter: '2.0 in',
        friction: '0.15',
        inner_material: { E: '30 Mpsi', nu: '0.292', yield: '54 ksi', brittle: '0' },
        outer_material: { E: '30 Mpsi', nu: '0.292', yield: '54 ksi', brittle: '0' },
      },
      expect: {
        pressure: { value: '22500 psi', within: 3e-3 },
        draw_up: { value: '0.024 in', within: 1e-9 },
      },
    },
  ],
  drawing: (v) =>
    taperInHub({
      mean: v.mean_diameter,
      length: v.length,
      outside: v.outer_diameter,
      taper: v.taper,
      names: { mean: 'mean_diameter', length: 'length', outside: 'outer_diameter', drawUp: 'draw_up' },
    }),
});
