import { defineCell } from '../record/cell.ts';

export default defineCell({
  key: 'bush-press',
  edition: 1,
  title: 'Pressing home',
  purpose:
    'Force to press a bush, sleeve, gear or pin home, what the gauge of the press at hand will show, and how long a fit it can push.',
  group: 'bore and shaft',
  inputs: [
    { name: 'diameter', label: 'diameter of the fit', quantity: 'length', sensible: ['3 mm', '1 m'] },
    { name: 'fit_length', label: 'length of the fit', quantity: 'length', sensible: ['2 mm', '1 m'] },
    {
      name: 'contact_pressure',
      label: 'contact pressure of the fit',
      quantity: 'pressure',
      sensible: ['0.5 MPa', '200 MPa'],
      hint: 'Of the cell of the interference fit: = press_fit.pressure',
    },
    { name: 'ram_bore', label: 'bore of the ram', quantity: 'length', sensible: ['10 mm', '500 mm'] },
    {
      name: 'rated_pressure',
      label: 'highest pressure of the press',
      quantity: 'pressure',
      sensible: ['1 MPa', '100 MPa'],
      hint: 'From its plate.',
    },
    {
      name: 'friction',
      label: 'friction while pressing',
      quantity: 'number',
      default: '0.12 ± 0.08',
      sensible: ['0.02', '0.3'],
      source:
        'DIN 7190-1 (from memory): copper alloys 0.04 to 0.07, oiled steel 0.07 to 0.08, cast iron 0.06 to 0.11; lecture notes after Ugural and Shigley: 0.15 to 0.20',
    },
  ],
  outputs: [
    {
      name: 'force',
      label: 'force to press home',
      quantity: 'force',
      formula: '=friction * PI() * diameter * fit_length * contact_pressure',
      face: true,
    },
    {
      name: 'gauge_pressure',
      label: 'gauge of the press shows',
      quantity: 'pressure',
      formula: '=force / ram_area',
      face: true,
      display: { in: 'psi', mm: 'bar' },
      limits: { upper: '=rated_pressure' },
    },
    {
      name: 'longest',
      label: 'longest fit this press pushes',
      quantity: 'length',
      formula: '=press_force / (friction * PI() * diameter * contact_pressure)',
      face: true,
    },
    {
      name: 'press_force',
      label: 'force of the press',
      quantity: 'force',
      formula: '=rated_pressure * ram_area',
    },
    {
      name: 'ram_area',
      label: 'area of the ram',
      quantity: 'area',
      formula: '=PI() / 4 * ram_bore ^ 2',
      display: { in: 'in2', mm: 'mm2' },
    },
    {
      name: 'force_per_length',
      label: 'force gained for a length of travel',
      quantity: 'stiffness',
      formula: '=force / fit_length',
      display: { in: 'lbf/in', mm: 'N/mm' },
      hint: 'Slope of a ram trace.',
    },
  ],
  validity: [
    {
      holds: '=AND(diameter > 0 mm; fit_length > 0 mm; ram_bore > 0 mm)',
      otherwise: 'Diameter, length and ram are above zero.',
      grade: 'error',
    },
    {
      holds: '=contact_pressure >= 0 Pa',
      otherwise: 'A contact pressure below zero is a loose fit: it needs no press.',
      grade: 'error',
    },
    {
      holds: '=AND(friction > 0; friction < 1)',
      otherwise: 'Friction lies between 0 and 1.',
      grade: 'error',
    },
    {
      holds: '=force <= press_force',
      otherwise: 'The press at hand is too weak for this fit: heat and cold, a shorter fit or another press.',
      grade: 'caution',
    },
    {
      holds: '=fit_length <= 2 * diameter',
      otherwise:
        'A fit longer than twice its diameter tilts and tears on the way: guide the part on an arbor.',
      grade: 'caution',
    },
    {
      holds: '=rated_pressure > 0 Pa',
      otherwise: 'The highest pressure of the press is above zero: read it off its plate.',
      grade: 'error',
    },
  ],
  assumptions: [
    'Contact pressure even over the length; force grows in step with travel and is greatest at the end.',
    'Friction is a guess between wide limits: it depends on oil, finish and speed, and steps up when a part stops on the way.',
    'No friction in the press itself and no weight on the ram.',
  ],
  sources: [
    'F = mu pi D L p; F = p A (Lame fit, Budynas & Nisbett, Shigley 9e, 3-16)',
    'DIN 7190-1 (friction; from memory)',
  ],
  cautions: [
    'A press stores enough to throw steel: guard or screen, eye protection, nobody in line with the ram, never above the plate’s pressure.',
    'Stop when the force leaps or falls: the part tilts, shaves or cracks.',
    'Brittle castings burst without warning: support the boss right round the bore, close under the fit.',
    'Local rules for presses, and the press maker’s own instructions, come first.',
  ],
  examples: [
    {
      title: 'Hollow steel shaft in an iron disc: 100 mm, 100 mm long, 21.724 MPa, friction 0.15',
      source: 'Ugural, Mechanical Design, press-fit lecture example: assembly force 102.37 kN',
      grade: 'seen',
      inputs: {
        diameter: '100 mm',
        fit_length: '100 mm',
        contact_pressure: '21.724 MPa',
        friction: '0.15',
        ram_bore: '50 mm',
        rated_pressure: '70 MPa',
      },
      expect: { force: { value: '102.37 kN', within: 0.001 } },
    },
    {
      title: 'Ram of 50 mm bore at 70 MPa; gauge for 11.84 kN',
      source: 'computed: F = p A',
      grade: 'computed',
      inputs: {
        diameter: '50 mm',
        fit_length: '50 mm',
        contact_pressure: '= 11.84 kN / (0.12 * PI() * 50 mm * 50 mm)',
        friction: '0.12',
        ram_bore: '50 mm',
        rated_pressure: '70 MPa',
      },
      expect: {
        press_force: { value: '137.445 kN', within: 1e-4 },
        gauge_pressure: { value: '60.298 bar', within: 1e-4 },
      },
    },
  ],
});
