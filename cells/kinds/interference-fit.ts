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
import { fitEdge, pressGuard, pressStop } from '../record/hazards.ts';

const caseOne = {
  contact_diameter: '50 mm',
  interference: '0.040 mm',
  inner_bore: '40 mm',
  outer_diameter: '90 mm',
  length: '40 mm',
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
    'Friction force and torque: the same, sec. 7-8. Friction: the table of friction of interference fits; without a pair 0.04 to 0.20, the span of DIN 7190-1 (from memory) and of lecture notes after Ugural and Shigley',
    'Roughness: DIN 7190-1:2017 and DIN 7190:2001, at second hand',
    'Film of retaining compound: its shear strength over the area, as in the worked example of a bonded joint; the share it reaches on the way is common practice, no source',
  ],
  cautions: [
    pressGuard,
    pressStop,
    fitEdge,
    'A cracked hub gives no warning: do not press into cast iron near its limit, and keep to the press maker\u2019s data and local rules.',
    filmCaution,
  ],
  examples: [
    {
      title: 'Bronze bush 50/40 mm in gray iron 90 mm, interference 0.040 mm',
      source:
        'Radial equilibrium equation solved numerically (boundary value problem and finite differences), and own axisymmetric finite-element runs',
      grade: 'computed',
      inputs: caseOne,
      expect: {
        pressure: { value: '12.562 MPa', within: 4e-5 },
        inner_shrinkage: { value: '0.0264779 mm', within: 1e-5 },
        bore_growth: { value: '0.0135221 mm', within: 1e-5 },
        hoop_inner_bore: { value: '-69.7889 MPa', within: 1e-5 },
        hoop_outer_bore: { value: '23.7781 MPa', within: 1e-5 },
        hoop_outer_outside: { value: '11.2161 MPa', within: 1e-5 },
        torque_held: { value: '295.985 N.m', within: 1e-5 },
      },
    },
    {
      title: 'Hollow steel shaft 30/10 mm in a steel hub 60 mm, interference 0.030 mm',
      source: 'The same numerical solution',
      grade: 'computed',
      inputs: {
        contact_diameter: '30 mm',
        interference: '0.030 mm',
        inner_bore: '10 mm',
        outer_diameter: '60 mm',
        length: '30 mm',
        inner_material: { E: '207 GPa', nu: '0.3', yield: '370 MPa', brittle: '0' },
        outer_material: { E: '207 GPa', nu: '0.3', yield: '370 MPa', brittle: '0' },
      },
      expect: {
        pressure: { value: '70.9714 MPa', within: 1e-5 },
        close_in: { value: '0.00771429 mm', within: 1e-5 },
        hoop_inner_outside: { value: '-88.7143 MPa', within: 1e-5 },
        hoop_outer_outside: { value: '47.3143 MPa', within: 1e-5 },
      },
    },
    {
      title: 'Two steel tubes 25/50/75 mm, interference 0.02 mm',
      source: "Shigley's Mechanical Engineering Design, 8e, solutions manual, problem 5-35",
      grade: 'seen',
      inputs: {
        contact_diameter: '50 mm',
        interference: '0.02 mm',
        inner_bore: '25 mm',
        outer_diameter: '75 mm',
        length: '50 mm',
        inner_material: { E: '207 GPa', nu: '0.292', yield: '370 MPa', brittle: '0' },
        outer_material: { E: '207 GPa', nu: '0.292', yield: '370 MPa', brittle: '0' },
      },
      expect: {
        pressure: { value: '19.41 MPa', within: 1e-3 },
        hoop_inner_outside: { value: '-32.35 MPa', within: 1e-3 },
        outer_stress: { value: '62.48 MPa', within: '0.02 MPa' },
      },
    },
    {
      title: 'Bronze bush in a steel sleeve, class FN3 at its greatest interference',
      source: 'Mott, Machine Elements in Mechanical Design, Example 13-2',
      grade: 'seen',
      inputs: {
        contact_diameter: '2.5 in',
        interference: '0.0032 in',
        inner_bore: '2.0 in',
        outer_diameter: '3.5 in',
        length: '2 in',
        inner_material: { E: '17 Mpsi', nu: '0.27', yield: '20 ksi', brittle: '0' },
        outer_material: { E: '30 Mpsi', nu: '0.27', yield: '51 ksi', brittle: '0' },
      },
      expect: {
        pressure: { value: '3517.7 psi', within: 1e-3 },
        hoop_outer_bore: { value: '10846 psi', within: 1e-3 },
        bore_growth: { value: '0.00098301 in', within: 1e-3 },
        inner_shrinkage: { value: '0.002217 in', within: 1e-3 },
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
