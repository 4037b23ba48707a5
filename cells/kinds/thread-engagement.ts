import { defineCell } from '../record/cell.ts';
import { licensed } from '../record/hazards.ts';

export default defineCell({
  key: 'thread-engagement',
  edition: 1,
  title: 'Length of thread engagement',
  purpose:
    'How deep a bolt must reach into a nut or a tapped hole so that the bolt breaks before a thread strips.',
  group: 'threads',
  inputs: [
    {
      name: 'thread',
      label: 'thread',
      choice: 'thread',
      hint: 'As on the drawing, without its class: 3/8-16 UNC, M10.',
    },
    { name: 'bolt_class', label: 'class of the bolt', choice: 'thread-class', hint: '2A, 6g' },
    { name: 'hole_class', label: 'class of the tapped hole', choice: 'thread-class', hint: '2B, 6H' },
    {
      name: 'engaged',
      label: 'length really engaged',
      quantity: 'length',
      optional: true,
      sensible: ['1 mm', '200 mm'],
      hint: 'Full threads only: without chamfer, countersink and the tap’s lead.',
    },
    {
      name: 'bolt_strength',
      label: 'tensile strength of the bolt',
      quantity: 'pressure',
      optional: true,
      sensible: ['100 MPa', '1500 MPa'],
    },
    {
      name: 'hole_strength',
      label: 'tensile strength of the metal tapped',
      quantity: 'pressure',
      optional: true,
      sensible: ['50 MPa', '1500 MPa'],
      hint: 'Both strengths blank: bolt and hole of equal strength.',
    },
  ],
  outputs: [
    { name: 'pitch', label: 'pitch', quantity: 'length', basis: 'geometry', formula: '=THREADPITCH(thread)' },
    {
      name: 'stress_area',
      label: 'stress area of the bolt',
      quantity: 'area',
      basis: 'geometry',
      formula: '=STRESSAREA(thread)',
    },
    {
      name: 'hole_minor',
      label: 'minor diameter of the hole, greatest',
      quantity: 'length',
      basis: 'geometry',
      formula: '=CRESTGREATEST(thread; hole_class)',
    },
    {
      name: 'bolt_pitch',
      label: 'pitch diameter of the bolt, least',
      quantity: 'length',
      basis: 'geometry',
      formula: '=PITCHLEAST(thread; bolt_class)',
    },
    {
      name: 'bolt_major',
      label: 'major diameter of the bolt, least',
      quantity: 'length',
      basis: 'geometry',
      formula: '=CRESTLEAST(thread; bolt_class)',
    },
    {
      name: 'hole_pitch',
      label: 'pitch diameter of the hole, greatest',
      quantity: 'length',
      basis: 'geometry',
      formula: '=PITCHGREATEST(thread; hole_class)',
    },
    {
      name: 'bolt_shear',
      label: 'area the bolt thread shears over, per length',
      quantity: 'length',
      basis: 'model',
      formula: '=PI() * hole_minor * (1 / 2 + TAN(30 deg) * (bolt_pitch - hole_minor) / pitch)',
    },
    {
      name: 'hole_shear',
      label: 'area the hole thread shears over, per length',
      quantity: 'length',
      basis: 'model',
      formula: '=PI() * bolt_major * (1 / 2 + TAN(30 deg) * (bolt_major - hole_pitch) / pitch)',
    },
    {
      name: 'least_equal',
      label: 'least engagement, bolt and hole of equal strength',
      quantity: 'length',
      basis: 'model',
      formula: '=2 * stress_area / bolt_shear',
    },
    {
      name: 'weakness',
      label: 'how much weaker the hole thread is',
      quantity: 'number',
      basis: 'model',
      formula:
        '=IF(OR(ISBLANK(bolt_strength); ISBLANK(hole_strength)); 1; bolt_shear * bolt_strength / (hole_shear * hole_strength))',
      hint: 'Above 1 the hole strips first at the length for equal strength.',
    },
    {
      name: 'least_engagement',
      label: 'least engagement',
      quantity: 'length',
      basis: 'model',
      formula: '=least_equal * MAX(1; weakness)',
      face: true,
    },
    {
      name: 'in_diameters',
      label: 'in bolt diameters',
      quantity: 'number',
      basis: 'model',
      formula: '=least_engagement / THREADMAJOR(thread)',
      face: true,
    },
    {
      name: 'engagement',
      label: 'length really engaged',
      quantity: 'length',
      basis: 'model',
      formula: '=engaged',
      face: true,
      limits: { lower: '=least_engagement' },
    },
    {
      name: 'bolt_shear_area',
      label: 'shear area of the bolt thread at the least for equal strength',
      quantity: 'area',
      basis: 'model',
      formula: '=bolt_shear * least_equal',
    },
    {
      name: 'hole_shear_area',
      label: 'shear area of the hole thread at the least for equal strength',
      quantity: 'area',
      basis: 'model',
      formula: '=hole_shear * least_equal',
    },
  ],
  validity: [
    {
      holds: '=CRESTGREATEST(thread; hole_class) < CRESTLEAST(thread; bolt_class)',
      otherwise: 'One class is for a bolt (2A, 6g), the other for a hole (2B, 6H): look which is which.',
      grade: 'error',
    },
    {
      holds: '=ISBLANK(bolt_strength) = ISBLANK(hole_strength)',
      otherwise: 'Only one strength is entered: both are taken as equal.',
      grade: 'caution',
    },
    {
      holds: '=IF(ISBLANK(engaged); 1 > 0; engaged >= least_engagement)',
      otherwise:
        'The thread may strip before the bolt breaks, without a sign: deeper, an insert, or the next size.',
      grade: 'caution',
    },
    {
      holds: '=IF(ISBLANK(engaged); 1 > 0; engaged > 0 m)',
      otherwise: 'The length engaged is above zero.',
      grade: 'error',
    },
    {
      holds: '=IF(ISBLANK(bolt_strength); 1 > 0; bolt_strength > 0 Pa)',
      otherwise: 'A strength is above zero.',
      grade: 'error',
    },
    {
      holds: '=IF(ISBLANK(hole_strength); 1 > 0; hole_strength > 0 Pa)',
      otherwise: 'A strength is above zero.',
      grade: 'error',
    },
  ],
  assumptions: [
    'The worst the classes allow: smallest bolt in the largest hole. Worn or torn threads hold less.',
    'Shear strength in one proportion to tensile strength for both metals; the load is shared by all threads engaged.',
    'Brittle metal (cast iron) wants more: common practice, no source, one and a half diameters, in aluminium two.',
  ],
  sources: [
    'FED-STD-H28: Le = 2 At / (pi Kn,max (1/2 + 0.57735 n (Es,min - Kn,max))), and J for a weaker hole (from memory)',
    'The tables of threads',
  ],
  cautions: [
    'Lifting eyes, pressure covers and steering parts in repaired threads are for someone licensed to judge them.',
    licensed,
  ],
  examples: [
    {
      title: '1/2-13 UNC 2A in 2B, equal strengths',
      source: 'FED-STD-H28 formula with printed limits: 0.3643 in',
      grade: 'computed',
      inputs: { thread: '1/2-13 UNC', bolt_class: '2A', hole_class: '2B' },
      expect: {
        least_engagement: { value: '0.3643 in', within: 2e-3 },
        hole_shear_area: { value: '0.4093 in2', within: 3e-3 },
      },
    },
    {
      title: '3/8-16 UNC 2A in 2B, equal strengths',
      source: 'FED-STD-H28 formula with printed limits: 0.2691 in',
      grade: 'computed',
      inputs: { thread: '3/8-16 UNC', bolt_class: '2A', hole_class: '2B' },
      expect: { least_engagement: { value: '0.2691 in', within: 2e-3 } },
    },
    {
      title: 'The same of 120 ksi in light alloy of 45 ksi: the hole strips first',
      source:
        'FED-STD-H28, J by hand with printed limits: bolt 0.5760, hole 0.8281 in2 per in; J = 0.5760 x 120 / (0.8281 x 45) = 1.855, 0.2691 x 1.855 = 0.499 in',
      grade: 'computed',
      inputs: {
        thread: '3/8-16 UNC',
        bolt_class: '2A',
        hole_class: '2B',
        engaged: '0.6 in',
        bolt_strength: '120 ksi',
        hole_strength: '45 ksi',
      },
      expect: {
        weakness: { value: '1.855', within: 3e-3 },
        least_engagement: { value: '0.499 in', within: 4e-3 },
      },
    },
  ],
});
