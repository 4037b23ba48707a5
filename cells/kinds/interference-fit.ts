import { ringPair } from '../drawings/rings.ts';
import {
  castingFill,
  castingHolds,
  leastMargin,
  outerGiveByFill,
  thinnestCasting,
} from '../formulas/casting.ts';
import { filmCaution, filmHolds, filmInputs, filmOutputs, wetByPair } from '../formulas/compound-film.ts';
import { frictionHolds, frictionInputs, joinedFriction, joinedInput } from '../formulas/friction.ts';
import { ringMovement } from '../formulas/ring-movement.ts';
import { ringStrength } from '../formulas/ring-strength.ts';
import { innerGive } from '../formulas/rings.ts';
import { interferenceLost, roughnessHolds, roughnessInputs } from '../formulas/roughness.ts';
import { defineCell } from '../record/cell.ts';
import { fitEdge, lifting, pressGuard, pressStop } from '../record/hazards.ts';

const caseOne = {
  contact_diameter: '52 mm',
  interference: '0.036 mm',
  inner_bore: '42 mm',
  outer_diameter: '96 mm',
  length: '44 mm',
  friction: '0.15',
  inner_material: { E: '100 GPa', nu: '0.34', yield: '138 MPa', brittle: '0' },
  outer_material: { E: '100 GPa', nu: '0.26', yield: '214 MPa', brittle: '1' },
};

export default defineCell({
  key: 'interference-fit',
  edition: 1,
  title: 'Interference fit of two rings',
  purpose:
    'What an interference does: pressure, stress against strength, growth and close-in, force to press, torque held.',
  group: 'fits',
  inputs: [
    {
      name: 'contact_diameter',
      label: 'diameter where they meet',
      quantity: 'length',
      sensible: ['3 mm', '1 m'],
    },
    {
      name: 'interference',
      label: 'interference, on diameter',
      quantity: 'length',
      sensible: ['1 um', '1 mm'],
      hint: 'Outside of the inner part less bore of the outer part, both before joining.',
    },
    {
      name: 'inner_bore',
      label: 'bore of the inner part',
      quantity: 'length',
      sensible: ['0 mm', '1 m'],
      hint: 'Enter 0 for a solid shaft.',
    },
    {
      name: 'outer_diameter',
      label: 'outside of the outer part',
      quantity: 'length',
      sensible: ['5 mm', '3 m'],
      optional: true,
      hint: 'Blank where it cannot be known, as in a casting: every result is then a band from a thin one to an endless one.',
    },
    thinnestCasting('outer part'),
    { name: 'length', label: 'length in contact', quantity: 'length', sensible: ['1 mm', '1 m'] },
    { name: 'inner_material', label: 'material of the inner part', record: 'material' },
    { name: 'outer_material', label: 'material of the outer part', record: 'material' },
    ...frictionInputs,
    joinedInput,
    ...filmInputs,
    ...roughnessInputs('inner part'),
    {
      name: 'roughness_share',
      label: 'share of both roughnesses that is lost',
      quantity: 'number',
      default: '0.4',
      sensible: ['0.4', '0.8'],
      source:
        'DIN 7190-1:2017: interference lost = 0.4 (Rz inner + Rz outer); DIN 7190:2001 took 0.8. Both at second hand, from a published calculation manual',
    },
    leastMargin,
    {
      name: 'press_capacity',
      label: 'force your press can give',
      quantity: 'force',
      sensible: ['100 N', '10000 kN'],
      optional: true,
    },
    {
      name: 'torque_needed',
      label: 'torque it must hold',
      quantity: 'torque',
      sensible: ['0.1 N.m', '100000 N.m'],
      optional: true,
    },
  ],
  outputs: [
    ...interferenceLost('roughness_share'),
    {
      name: 'effective_interference',
      label: 'interference that presses',
      quantity: 'length',
      basis: 'model',
      formula: '=interference - interference_lost',
      display: { in: 'thou', mm: 'um' },
    },
    {
      name: 'interference_per_diameter',
      label: 'interference per unit of diameter',
      quantity: 'interference per diameter',
      basis: 'geometry',
      formula: '=interference / contact_diameter',
    },
    ...joinedFriction,
    ...filmOutputs(wetByPair),
    castingFill('outer_diameter', 'contact_diameter'),
    {
      name: 'inner_give',
      label: 'stretch factor of the inner part',
      quantity: 'number',
      basis: 'model',
      formula: innerGive('contact_diameter', 'inner_bore', 'inner_material'),
    },
    {
      name: 'outer_give',
      label: 'stretch factor of the outer part',
      quantity: 'number',
      basis: 'model',
      formula: outerGiveByFill('outer_material'),
    },
    {
      name: 'pressure',
      label: 'pressure between them',
      quantity: 'pressure',
      basis: 'model',
      formula:
        '=MAX(effective_interference; 0 m) / (contact_diameter * (inner_give / inner_material.E + outer_give / outer_material.E))',
    },
    ...ringStrength,
    ...ringMovement,
    {
      name: 'friction_force',
      label: 'force by friction alone',
      quantity: 'force',
      basis: 'model',
      formula: '=PI() * contact_diameter * length * pressure * friction_taken',
      hint: 'To push out again dry, too: plan the hold on its low end.',
    },
    {
      name: 'axial_force',
      label: 'force to press home',
      quantity: 'force',
      basis: 'model',
      formula: '=friction_force + PI() * contact_diameter * length * film_shear',
      face: true,
      limits: { upper: '=press_capacity' },
      hint: 'At the end of the stroke. Friction is a range: plan the press on the high end, the hold on the low end.',
    },
    {
      name: 'torque_held',
      label: 'torque held by friction',
      quantity: 'torque',
      basis: 'model',
      formula: '=friction_force * contact_diameter / 2',
      limits: { lower: '=torque_needed' },
      hint: 'What a cured compound adds is in its own cell.',
    },
  ],
  validity: [
    {
      holds: '=AND(inner_bore >= 0 m; contact_diameter > inner_bore)',
      otherwise:
        'The bore of the inner part must be smaller than the diameter where they meet, and not below zero: check that neither is a radius.',
      grade: 'error',
    },
    castingHolds(
      'outer_diameter',
      'contact_diameter',
      'The outside of the outer part must be larger than the diameter where they meet.',
    ),
    {
      holds: '=interference > 0 m',
      otherwise:
        'The fit is loose: the inner part is no larger than the bore, so nothing presses. Of a fit that may come out either way, enter the greatest interference.',
      grade: 'error',
    },
    {
      holds: '=effective_interference > 0 m',
      otherwise: 'Roughness takes up all of it, as good as loose: more interference, or smoother.',
      grade: 'caution',
    },
    {
      holds: '=AND(interference_per_diameter >= 0.0003; interference_per_diameter <= 0.002)',
      otherwise:
        'Interference per unit of diameter is outside 0.0003 to 0.002, the usual range for pressed and shrunk parts (common practice, no source).',
      grade: 'caution',
    },
    {
      holds: '=yield_margin >= 1',
      otherwise:
        'The stress passes the strength: the parts yield or crack, and the true pressure, close-in and force are less than these elastic figures. Less interference, or a stronger metal.',
      grade: 'caution',
    },
    {
      holds: '=length > 0 m',
      otherwise: 'The length in contact must be above zero.',
      grade: 'error',
    },
    ...roughnessHolds,
    {
      holds: '=AND(roughness_share >= 0; roughness_share <= 1)',
      otherwise: 'The share of the roughness that is lost lies from 0 to 1.',
      grade: 'error',
    },
    frictionHolds,
    ...filmHolds,
  ],
  assumptions: [
    'Thick rings after Lame, elastic, plane stress, equal length, same temperature; both taken at the nominal diameter where they meet.',
    'Long or overhanging housings, flanges, keyways, oil holes and thin sections are outside it; edges of a hub carry more stress.',
    'Brittle metal is taken to bear three times its tensile strength in compression (Coulomb-Mohr).',
    'Where the outside of the outer part is not known, it is taken anywhere between the thinnest likely and endless, with equal chance of the squared ratio.',
    'Stress from turning, load or heat is not included.',
  ],
  sources: [
    "Budynas & Nisbett, Shigley's Mechanical Engineering Design, 9e (2011), sec. 3-14, 3-16, Eqs (3-56), (3-57); 5-9 (brittle Coulomb-Mohr)",
    'Held against worked examples in print: the same, 8e, solutions manual, problem 5-35; Mott, Machine Elements in Mechanical Design, Example 13-2; and own axisymmetric finite-element runs, described with the close-in of a bush',
    'Friction force and torque: Shigley, sec. 7-8. Friction: the table of friction of interference fits; without a pair 0.04 to 0.20, the span of DIN 7190-1 (from memory) and of lecture notes after Ugural and Shigley',
    'Roughness: DIN 7190-1:2017 and DIN 7190:2001, at second hand',
    'Film of retaining compound: its shear strength over the area, as in the worked example of a bonded joint; the share it reaches on the way is common practice, no source',
  ],
  cautions: [
    pressGuard,
    pressStop,
    fitEdge,
    'A cracked hub gives no warning: do not press into cast iron near its limit, and keep to the press maker\u2019s data and local rules.',
    filmCaution,
    lifting,
  ],
  examples: [
    {
      title: 'Countershaft bush: bronze 52/42 mm in its gray iron pedestal 96 mm, interference 0.036 mm',
      source:
        'Radial equilibrium equation of both rings solved numerically (shooting, fourth order, 4000 steps each), joined where they meet',
      grade: 'computed',
      inputs: caseOne,
      expect: {
        pressure: { value: '10.644896 MPa', within: 1e-6 },
        inner_shrinkage: { value: '0.02442854 mm', within: 1e-6 },
        bore_growth: { value: '0.01157146 mm', within: 1e-6 },
        hoop_inner_bore: { value: '-61.242128 MPa', within: 1e-6 },
        hoop_outer_bore: { value: '19.485130 MPa', within: 1e-6 },
        hoop_outer_outside: { value: '8.840233 MPa', within: 1e-6 },
        torque_held: { value: '298.4090 N.m', within: 1e-6 },
      },
    },
    {
      title: 'Feed gear of steel, 64 mm, on a hollow steel shaft 32/12 mm, interference 0.028 mm',
      source: 'The same numerical solution',
      grade: 'computed',
      inputs: {
        contact_diameter: '32 mm',
        interference: '0.028 mm',
        inner_bore: '12 mm',
        outer_diameter: '64 mm',
        length: '30 mm',
        inner_material: { E: '207 GPa', nu: '0.3', yield: '370 MPa', brittle: '0' },
        outer_material: { E: '207 GPa', nu: '0.3', yield: '370 MPa', brittle: '0' },
      },
      expect: {
        pressure: { value: '60.497217 MPa', within: 1e-6 },
        close_in: { value: '0.008161943 mm', within: 1e-6 },
        hoop_inner_outside: { value: '-80.296306 MPa', within: 1e-6 },
        hoop_outer_outside: { value: '40.331478 MPa', within: 1e-6 },
      },
    },
    {
      title: 'Saw arbor bush: bronze 2 3/8 in in a steel sleeve 3 1/4 in, interference 0.0030 in',
      source: 'The same numerical solution',
      grade: 'computed',
      inputs: {
        contact_diameter: '2 3/8 in',
        interference: '0.0030 in',
        inner_bore: '1 7/8 in',
        outer_diameter: '3 1/4 in',
        length: '2 in',
        inner_material: { E: '17 Mpsi', nu: '0.27', yield: '20 ksi', brittle: '0' },
        outer_material: { E: '30 Mpsi', nu: '0.27', yield: '51 ksi', brittle: '0' },
      },
      expect: {
        pressure: { value: '3545.0764 psi', within: 1e-6 },
        hoop_outer_bore: { value: '11670.617 psi', within: 1e-6 },
        bore_growth: { value: '0.00099969983 in', within: 1e-6 },
        inner_shrinkage: { value: '0.0020003002 in', within: 1e-6 },
      },
    },
  ],
  drawing: (v) =>
    ringPair({
      bore: v.inner_bore,
      contact: v.contact_diameter,
      outside: v.outer_diameter,
      misfit: v.interference,
      names: {
        bore: 'inner_bore',
        contact: 'contact_diameter',
        outside: 'outer_diameter',
        misfit: 'interference',
      },
    }),
});
