import { ringPair } from '../drawings/rings.ts';
import { defineCell } from '../record/cell.ts';

export default defineCell({
  key: 'retaining-compound',
  edition: 2,
  title: 'Joint with retaining compound',
  purpose: 'Force and torque a bonded bush or hub holds, cold and hot, alone or together with a press fit.',
  group: 'fits',
  inputs: [
    { name: 'diameter', label: 'diameter where they meet', quantity: 'length', sensible: ['3 mm', '500 mm'] },
    { name: 'length', label: 'length bonded', quantity: 'length', sensible: ['2 mm', '500 mm'] },
    {
      name: 'gap',
      label: 'gap, on diameter',
      quantity: 'length',
      sensible: ['-0.2 mm', '0.5 mm'],
      hint: 'Bore less inner part. A press fit is entered with a minus.',
    },
    { name: 'compound', label: 'compound', choice: 'retaining-compounds', optional: true },
    {
      name: 'metals',
      label: 'metals it bonds',
      choice: 'bonded-metals',
      optional: true,
      hint: 'Blank: steel or iron. On light metal, stainless or plated parts it holds less.',
    },
    {
      name: 'shear_strength',
      label: 'shear strength, from its sheet',
      quantity: 'pressure',
      optional: true,
      sensible: ['2 MPa', '50 MPa'],
      hint: 'The figure of its maker comes first. Blank: of the kind chosen above.',
    },
    {
      name: 'widest_gap',
      label: 'widest gap, from its sheet',
      quantity: 'length',
      optional: true,
      sensible: ['0.02 mm', '1 mm'],
    },
    {
      name: 'joint_share',
      label: 'share of the strength to count on',
      quantity: 'number',
      default: '0.5',
      sensible: ['0.1', '1'],
      source:
        'as in a published worked example, reference R699; metals, finish, length and cure take their part',
    },
    {
      name: 'hot_share',
      label: 'share of the strength kept at running temperature',
      quantity: 'number',
      optional: true,
      sensible: ['0.1', '1'],
      hint: 'From the curve on its sheet. Blank: by the kind chosen and the temperature below.',
    },
    {
      name: 'running_temperature',
      label: 'temperature of the joint, running',
      quantity: 'temperature',
      optional: true,
      sensible: ['-40 degC', '200 degC'],
      hint: 'For the share kept. Blank: 100 degC.',
    },
    {
      name: 'own_film_left',
      label: 'share of the area that still has compound',
      quantity: 'number',
      optional: true,
      sensible: ['0', '1'],
      hint: 'Blank: all of it with a gap; of a press fit none to a half, since pressing wipes it off. Shrunk together it is not wiped.',
    },
    {
      name: 'press_pressure',
      label: 'pressure of the press fit with it',
      quantity: 'pressure',
      sensible: ['0.1 MPa', '300 MPa'],
      optional: true,
      hint: 'From the interference fit. Blank: no press fit.',
    },
    {
      name: 'friction',
      label: 'friction of the press fit, cured',
      quantity: 'number',
      default: '0.10 ± 0.05',
      sensible: ['0.03', '0.3'],
      source: 'common practice, no source',
    },
    {
      name: 'force_needed',
      label: 'force it must hold',
      quantity: 'force',
      sensible: ['1 N', '10000 kN'],
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
    {
      name: 'usual_strength',
      label: 'shear strength of that kind',
      quantity: 'pressure',
      table: { choice: 'compound', column: 'shear' },
    },
    {
      name: 'usual_gap',
      label: 'widest gap of that kind',
      quantity: 'length',
      table: { choice: 'compound', column: 'gap' },
    },
    {
      name: 'usual_hot_share',
      label: 'share kept at 100 degC by that kind',
      quantity: 'number',
      table: { choice: 'compound', column: 'keptAt100C' },
    },
    {
      name: 'light_metal',
      label: 'light metal, stainless or plated',
      quantity: 'number',
      table: { choice: 'metals', column: 'light' },
      hint: '1 where one of the parts is.',
    },
    {
      name: 'usual_metal_share',
      label: 'share of the strength on such metals, by that kind',
      quantity: 'number',
      table: { choice: 'compound', column: 'onLightOrStainless' },
    },
    {
      name: 'strength_taken',
      label: 'shear strength taken',
      quantity: 'pressure',
      formula:
        '=IF(ISBLANK(shear_strength); usual_strength * IF(ISBLANK(metals); 1; IF(light_metal > 0.5; usual_metal_share; 1)); shear_strength)',
      hint: 'The figure off its sheet is taken as it stands: it is for the metals named there.',
    },
    {
      name: 'share_kept',
      label: 'share of the strength kept, running',
      quantity: 'number',
      formula:
        '=IF(ISBLANK(hot_share); IF(ISBLANK(running_temperature); usual_hot_share; MIN(1; MAX(0; 1 - (1 - usual_hot_share) * (running_temperature - 22 degC) / 78 K))); hot_share)',
      hint: 'By the kind: all of it at 22 degC, the share of the table at 100 degC, in step between them.',
    },
    {
      name: 'gap_taken',
      label: 'widest gap taken',
      quantity: 'length',
      formula: '=IF(ISBLANK(widest_gap); usual_gap; widest_gap)',
      display: { in: 'thou', mm: 'mm' },
    },
    {
      name: 'bonded_area',
      label: 'bonded area',
      quantity: 'area',
      formula: '=PI() * diameter * length',
    },
    {
      name: 'film_left',
      label: 'share of the area taken as bonded',
      quantity: 'number',
      formula:
        '=IF(ISBLANK(own_film_left); IF(ISBLANK(press_pressure); IF(gap >= 0 m; 1; 0.25); 0.25); own_film_left)',
      spread: {
        low: '=IF(ISBLANK(own_film_left); IF(ISBLANK(press_pressure); IF(gap >= 0 m; 0; -0.25); -0.25); 0)',
        high: '=IF(ISBLANK(own_film_left); IF(ISBLANK(press_pressure); IF(gap >= 0 m; 0; 0.25); 0.25); 0)',
        distribution: 'rectangular',
        label: 'compound wiped off by pressing',
      },
    },
    {
      name: 'bond_force',
      label: 'force the bond holds, cold',
      quantity: 'force',
      formula: '=bonded_area * film_left * strength_taken * joint_share',
    },
    {
      name: 'press_force',
      label: 'force the press fit adds',
      quantity: 'force',
      formula: '=IF(ISBLANK(press_pressure); 0 N; bonded_area * press_pressure * friction)',
    },
    {
      name: 'force_held',
      label: 'force held, cold',
      quantity: 'force',
      formula: '=bond_force + press_force',
      face: true,
      limits: { lower: '=force_needed' },
    },
    {
      name: 'hot_force',
      label: 'force held, running',
      quantity: 'force',
      formula: '=bond_force * share_kept + press_force',
      face: true,
      limits: { lower: '=force_needed' },
      hint: 'With the pressure of the press fit as entered: enter the hot one where it differs.',
    },
    {
      name: 'torque_held',
      label: 'torque held, cold',
      quantity: 'torque',
      formula: '=force_held * diameter / 2',
      limits: { lower: '=torque_needed' },
    },
    {
      name: 'hot_torque',
      label: 'torque held, running',
      quantity: 'torque',
      formula: '=hot_force * diameter / 2',
      limits: { lower: '=torque_needed' },
    },
  ],
  validity: [
    {
      holds: '=AND(diameter > 0 m; length > 0 m)',
      otherwise: 'Diameter and length must be above zero.',
      grade: 'error',
    },
    {
      holds: '=gap <= gap_taken',
      otherwise:
        'The gap is wider than the compound fills: sleeve it, build it up, or take a compound for worn parts.',
      grade: 'caution',
    },
    {
      holds: '=IF(ISBLANK(press_pressure); gap >= 0 m; 1 > 0)',
      otherwise: 'A press fit wipes most of the compound off: enter its pressure to count what it holds.',
      grade: 'caution',
    },
    {
      holds:
        '=OR(NOT(ISBLANK(hot_share)); IF(ISBLANK(running_temperature); 1 > 0; running_temperature <= 100 degC))',
      otherwise:
        'Above 100 degC the table says nothing, and the bond fades faster: enter the share from the curve on its sheet.',
      grade: 'caution',
    },
    {
      holds: '=length <= 2 * diameter',
      otherwise:
        'Beyond a length of two diameters the bond does not load evenly: less is gained than this says.',
      grade: 'caution',
    },
    {
      holds: '=IF(ISBLANK(shear_strength); 1 > 0; shear_strength > 0 Pa)',
      otherwise: 'The shear strength is above zero.',
      grade: 'error',
    },
    {
      holds: '=IF(ISBLANK(press_pressure); 1 > 0; press_pressure >= 0 Pa)',
      otherwise: 'The pressure of the press fit is not below zero: leave it blank where there is none.',
      grade: 'error',
    },
    {
      holds: '=IF(ISBLANK(own_film_left); 1 > 0; AND(own_film_left >= 0; own_film_left <= 1))',
      otherwise: 'The share of the area that has compound lies from 0 to 1.',
      grade: 'error',
    },
    {
      holds:
        '=AND(joint_share > 0; joint_share <= 1; IF(ISBLANK(hot_share); 1 > 0; AND(hot_share >= 0; hot_share <= 1)))',
      otherwise: 'A share of the strength lies from 0 to 1.',
      grade: 'error',
    },
    {
      holds: '=AND(friction > 0; friction < 1)',
      otherwise: 'Friction lies between 0 and 1.',
      grade: 'error',
    },
  ],
  assumptions: [
    'The bond is loaded evenly in shear, clean and fully cured; peel, shock and solvents take more.',
    'With a press fit, bond and friction are added: a range, not a promise. Pressing wipes compound off; what stays in the finish of the surfaces is taken as none to half of it (common practice, no source).',
    'A bonded bush keeps its bore: without a press nothing closes in.',
  ],
  sources: [
    'F = pi d L x shear strength x share, worked example, reference R699',
    "Kinds of compound: the table of retaining compounds, from memory of makers' sheets; the maker's sheet for the very grade comes first",
  ],
  cautions: [
    'Skin and eye irritant, and it sensitises: gloves, air, and the supplier\u2019s safety sheet.',
    'To come apart, heat to about 250 degC: burns and fume; ventilate, and no flame near solvent cleaners.',
    'That heat draws the temper of hardened steel and of age-hardened aluminium, melts babbitt and ruins seals, plastics and rolling bearings: look up the material first, and press, pull or cut such a part off instead.',
  ],
  examples: [
    {
      title: 'Slip fit 25 mm, 20 mm long, 15 MPa, half counted on',
      source: 'F = pi d L tau f, reference R699: 11 781 N',
      grade: 'computed',
      inputs: {
        diameter: '25 mm',
        length: '20 mm',
        gap: '0.05 mm',
        shear_strength: '15 MPa',
        widest_gap: '0.15 mm',
        joint_share: '0.5',
      },
      expect: { force_held: { value: '11781 N', within: 1e-4 } },
    },
    {
      title: 'The same joint pressed together: a quarter of the bond, none to half',
      source: 'F = pi d L tau f, reference R699, times 0.25 by hand: 2945 N',
      grade: 'recomputed',
      inputs: {
        diameter: '25 mm',
        length: '20 mm',
        gap: '-0.02 mm',
        shear_strength: '15 MPa',
        widest_gap: '0.15 mm',
        joint_share: '0.5',
      },
      expect: { force_held: { value: '2945.24 N', within: 1e-4 } },
    },
  ],
  drawing: (v) =>
    ringPair({
      bore: 0,
      contact: v.diameter,
      misfit: v.gap === undefined ? undefined : -v.gap,
      names: { contact: 'diameter', misfit: 'gap' },
    }),
});
