import { defineCell } from '../record/cell.ts';
import { fitEdge, lifting, pressGuard, pressStop } from '../record/hazards.ts';

export default defineCell({
  key: 'ram-trace',
  edition: 1,
  title: 'Ram trace',
  purpose:
    'Interference really there, from force against depth while pressing: while it can still be stopped.',
  group: 'bore and shaft',
  inputs: [
    {
      name: 'trace',
      label: 'depth and force, pair by pair',
      choice: 'trace',
      pairs: ['length', 'force'],
      hint: 'Such as 2 mm: 1.2 kN; 4 mm: 2.3 kN, or 1/2 in: 3 short_tonf. Depth of full contact: without the chamfer.',
    },
    { name: 'fit', label: 'interference fit as planned', record: 'interference-fit' },
    {
      name: 'friction_here',
      label: 'friction on this press',
      quantity: 'number',
      optional: true,
      sensible: ['0.02', '0.3'],
      hint: 'From bushes measured before and after at this press. Blank: the friction of the planned fit.',
    },
  ],
  outputs: [
    {
      name: 'slope',
      label: 'force gained for a length of travel',
      quantity: 'stiffness',
      basis: 'model',
      formula: '=RAMSLOPE(trace)',
      spread: {
        low: '=-2 * RAMSLOPEDOUBT(trace)',
        high: '=2 * RAMSLOPEDOUBT(trace)',
        distribution: 'normal',
        label: 'scatter of the trace',
      },
      display: { in: 'lbf/in', mm: 'N/mm' },
    },
    {
      name: 'friction',
      label: 'friction',
      quantity: 'number',
      basis: 'model',
      formula: '=IF(ISBLANK(friction_here); fit.friction_taken; friction_here)',
    },
    {
      name: 'contact_pressure',
      label: 'contact pressure there is',
      quantity: 'pressure',
      basis: 'model',
      formula: '=MAX(slope / (PI() * fit.contact_diameter) - fit.film_shear; 0 Pa) / friction',
    },
    {
      name: 'interference',
      label: 'interference there is',
      quantity: 'length',
      basis: 'model',
      formula:
        '=contact_pressure * fit.effective_interference / fit.pressure + fit.interference - fit.effective_interference',
      face: true,
      display: { in: 'thou', mm: 'um' },
    },
    {
      name: 'more_than_planned',
      label: 'more than planned by',
      quantity: 'length',
      basis: 'model',
      formula: '=interference - fit.interference',
      face: true,
      display: { in: 'thou', mm: 'um' },
      hint: 'Below zero: less.',
    },
    {
      name: 'force_at_end',
      label: 'force when home',
      quantity: 'force',
      basis: 'model',
      formula: '=slope * fit.length',
      face: true,
      display: { in: 'lbf', mm: 'kN' },
    },
    {
      name: 'to_planned',
      label: 'slope against planned slope',
      quantity: 'number',
      basis: 'model',
      formula: '=slope * fit.length / fit.axial_force',
      display: { in: '%', mm: '%' },
    },
  ],
  validity: [
    {
      holds: '=RAMSLOPE(trace) > 4 * RAMSLOPEDOUBT(trace)',
      otherwise:
        'The force does not rise with depth: stop. The fit is loose, or depth and force are changed over.',
      grade: 'error',
    },
    {
      holds: '=RAMSLOPEDOUBT(trace) <= RAMSLOPE(trace) / 20',
      otherwise:
        'The trace is not a straight line from zero: the bush tilts or shaves, or depth was not counted from full contact.',
      grade: 'caution',
    },
    {
      holds: '=NOT(ISBLANK(friction_here))',
      otherwise:
        'Friction is a handbook guess: the interference is no surer than it. Two bushes measured at this press say more.',
      grade: 'caution',
    },
    {
      holds: '=IF(ISBLANK(friction_here); 1 > 0; AND(friction_here > 0; friction_here < 1))',
      otherwise: 'Friction lies between 0 and 1.',
      grade: 'error',
    },
  ],
  assumptions: [
    'F = mu pi D p x: force grows in step with depth, with even pressure and friction, from zero at full contact.',
    'A film of retaining compound, where the planned fit has one, is taken off first: what it shears at is a guess, and so is what is left.',
    'Pressure in step with interference, as in the planned fit; metal that yields or shaves breaks the rule.',
    'Force at the bush: take off the friction of the ram and its seals, seen while it travels free.',
  ],
  sources: [
    'F = mu pi D p x (Lame fit, Budynas & Nisbett, Shigley 9e, 3-16)',
    'Least squares through the origin and its standard error; JCGM 100:2008, H.3 (straight line)',
  ],
  cautions: [pressGuard, pressStop, lifting, fitEdge],
  examples: [
    {
      title: 'Hollow steel shaft in an iron disc, pressed 100 mm: 102.37 kN at the end',
      source:
        'Ugural, Mechanical Design, press-fit lecture example: 21.724 MPa, friction 0.15, assembly force 102.37 kN over 100 mm',
      grade: 'seen',
      inputs: {
        trace: '25 mm: 25.5925 kN; 50 mm: 51.185 kN; 100 mm: 102.37 kN',
        fit: {
          contact_diameter: '100 mm',
          length: '100 mm',
          film_shear: '0 MPa',
          friction_taken: '0.15',
          pressure: '21.724 MPa',
          interference: '0.05 mm',
          effective_interference: '0.05 mm',
          axial_force: '102.37 kN',
        },
      },
      expect: {
        contact_pressure: { value: '21.724 MPa', within: 0.001 },
        interference: { value: '0.05 mm', within: 0.001 },
        force_at_end: { value: '102.37 kN', within: 1e-6 },
      },
    },
    {
      title: 'A scattered trace',
      source: 'by hand: slope = (2 x 1.2 + 4 x 2.3 + 6 x 3.6) / (4 + 16 + 36) = 33.2 / 56 kN/mm',
      grade: 'recomputed',
      inputs: {
        trace: '2 mm: 1.2 kN; 4 mm: 2.3 kN; 6 mm: 3.6 kN',
        fit: {
          contact_diameter: '50 mm',
          length: '40 mm',
          film_shear: '0 MPa',
          friction_taken: '0.12',
          pressure: '20 MPa',
          interference: '0.04 mm',
          effective_interference: '0.04 mm',
          axial_force: '15.07964473723101 kN',
        },
      },
      expect: { slope: { value: '592.857142857143 N/mm', within: 1e-9 } },
    },
  ],
});
