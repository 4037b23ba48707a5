import { journalInBush } from '../drawings/journal.ts';
import { defineCell } from '../record/cell.ts';

const textbook = {
  load: '500 lbf',
  journal: '1.5 in',
  bearing_length: '1.5 in',
  clearance: '0.003 in',
  turning_speed: '30 rev/s',
  viscosity: '4e-6 reyn',
};

export default defineCell({
  key: 'film-thickness',
  edition: 1,
  title: 'Oil film of a journal bearing',
  purpose:
    'Least oil film, friction and oil flow of a full bearing with plenty of oil, after Raimondi and Boyd.',
  group: 'clearance',
  inputs: [
    { name: 'journal', label: 'journal diameter', quantity: 'length', sensible: ['5 mm', '1 m'] },
    { name: 'bearing_length', label: 'length of the bearing', quantity: 'length', sensible: ['5 mm', '1 m'] },
    {
      name: 'clearance',
      label: 'running clearance, on diameter',
      quantity: 'length',
      sensible: ['5 um', '1 mm'],
    },
    { name: 'load', label: 'load', quantity: 'force', sensible: ['1 N', '1000 kN'] },
    {
      name: 'turning_speed',
      label: 'turning speed',
      quantity: 'rotational speed',
      sensible: ['1 rpm', '30000 rpm'],
    },
    {
      name: 'oil',
      label: 'oil',
      choice: 'oils',
      optional: true,
      hint: 'With the film temperature it gives the viscosity.',
    },
    {
      name: 'film_temperature',
      label: 'mean temperature of the film',
      quantity: 'temperature',
      optional: true,
      sensible: ['0 degC', '120 degC'],
      hint: 'Supply temperature and half the rise below.',
    },
    {
      name: 'viscosity',
      label: 'viscosity of the oil in the film, your own figure',
      quantity: 'viscosity',
      optional: true,
      sensible: ['0.5 mPa.s', '2 Pa.s'],
      hint: 'Comes before the oil and its temperature.',
    },
    {
      name: 'least_wanted',
      label: 'least film wanted',
      quantity: 'length',
      sensible: ['0.5 um', '0.2 mm'],
      optional: true,
      hint: 'Common practice: several times the roughness of journal and bore together.',
    },
    {
      name: 'heat_of_oil',
      label: 'heat of the oil, MJ per cubic metre and kelvin',
      quantity: 'number',
      default: '1.51',
      sensible: ['1.3', '2'],
      source: 'Shigley 9e: 861 kg/m3 and 1760 J/(kg K)',
    },
  ],
  outputs: [
    {
      name: 'unit_load',
      label: 'load on the projected area',
      quantity: 'pressure',
      formula: '=load / (bearing_length * journal)',
    },
    {
      name: 'oil_at_40',
      label: 'the oil at 40 degC',
      quantity: 'kinematic viscosity',
      table: { choice: 'oil', column: 'at40' },
    },
    {
      name: 'oil_at_100',
      label: 'the oil at 100 degC',
      quantity: 'kinematic viscosity',
      table: { choice: 'oil', column: 'at100' },
    },
    {
      name: 'oil_density',
      label: 'density of the oil',
      quantity: 'density',
      table: { choice: 'oil', column: 'density' },
    },
    {
      name: 'viscosity_taken',
      label: 'viscosity taken',
      quantity: 'viscosity',
      formula:
        '=IF(ISBLANK(viscosity); OILVISCOSITY(oil_at_40; oil_at_100; oil_density; film_temperature); viscosity)',
    },
    {
      name: 'sommerfeld',
      label: 'Sommerfeld number',
      quantity: 'number',
      formula: '=(journal / clearance)^2 * viscosity_taken * turning_speed / unit_load',
    },
    {
      name: 'length_ratio',
      label: 'length over diameter',
      quantity: 'number',
      formula: '=bearing_length / journal',
    },
    {
      name: 'film_ratio',
      label: 'least film over radial clearance',
      quantity: 'number',
      formula: '=FILMLEAST(sommerfeld; length_ratio)',
    },
    {
      name: 'least_film',
      label: 'least film',
      quantity: 'length',
      formula: '=film_ratio * clearance / 2',
      face: true,
      limits: { lower: '=least_wanted' },
      display: { in: 'tenth_in', mm: 'um' },
    },
    {
      name: 'eccentricity',
      label: 'journal stands off centre by',
      quantity: 'length',
      formula: '=(1 - film_ratio) * clearance / 2',
      display: { in: 'tenth_in', mm: 'um' },
    },
    {
      name: 'friction',
      label: 'coefficient of friction',
      quantity: 'number',
      formula: '=FILMFRICTION(sommerfeld; length_ratio) * clearance / journal',
    },
    {
      name: 'centred_friction',
      label: 'coefficient of friction if the journal ran centred (Petroff)',
      quantity: 'number',
      formula: '=2 * PI()^2 * viscosity_taken * turning_speed / unit_load * journal / clearance',
    },
    {
      name: 'friction_torque',
      label: 'friction torque',
      quantity: 'torque',
      formula: '=friction * load * journal / 2',
      display: { in: 'lbf.in', mm: 'N.m' },
    },
    {
      name: 'friction_power',
      label: 'power lost',
      quantity: 'power',
      formula: '=2 * PI() * turning_speed * friction_torque',
      face: true,
    },
    {
      name: 'flow_variable',
      label: 'flow variable Q / (r c N l)',
      quantity: 'number',
      formula: '=FILMFLOW(sommerfeld; length_ratio)',
    },
    {
      name: 'oil_flow',
      label: 'oil drawn into the film',
      quantity: 'flow',
      formula: '=flow_variable * journal * clearance * turning_speed * bearing_length / 4',
    },
    {
      name: 'side_share',
      label: 'part of it that leaves at the sides',
      quantity: 'number',
      formula: '=FILMSIDEFLOW(sommerfeld; length_ratio)',
    },
    {
      name: 'side_flow',
      label: 'oil that leaves at the sides: the least to be supplied',
      quantity: 'flow',
      formula: '=oil_flow * side_share',
    },
    {
      name: 'pressure_share',
      label: 'mean pressure over greatest film pressure',
      quantity: 'number',
      formula: '=FILMPRESSURE(sommerfeld; length_ratio)',
    },
    {
      name: 'greatest_pressure',
      label: 'greatest film pressure',
      quantity: 'pressure',
      formula: '=unit_load / pressure_share',
    },
    {
      name: 'temperature_rise',
      label: 'oil warms by, on its way through',
      quantity: 'temperature difference',
      formula: '=friction_power / (oil_flow * (1 - side_share / 2) * heat_of_oil * (1 MPa / 1 K))',
      face: true,
      hint: 'All heat taken by the oil; the film is at supply temperature and half of this.',
    },
  ],
  validity: [
    {
      holds:
        '=AND(journal > 0 m; bearing_length > 0 m; clearance > 0 m; load > 0 N; turning_speed > 0 rpm; IF(ISBLANK(viscosity); 1 > 0; viscosity > 0 Pa.s))',
      otherwise: 'Sizes, clearance, load, speed and viscosity must be above zero.',
      grade: 'error',
    },
    {
      holds: '=AND(bearing_length >= 0.25 * journal; bearing_length <= 4 * journal)',
      otherwise: 'The tables reach from a length of a quarter of the diameter to four diameters.',
      grade: 'error',
    },
    {
      holds: '=film_ratio >= 0.1',
      otherwise:
        'The film is below a tenth of the radial clearance: roughness, tilt and grit break it. Count it as rubbing.',
      grade: 'caution',
    },
    {
      holds: '=film_ratio <= 0.9',
      otherwise:
        'Hardly loaded: such a bearing may whirl at speed. A shorter bearing or a thinner oil steadies it.',
      grade: 'caution',
    },
    {
      holds: '=temperature_rise <= 60 K',
      otherwise:
        'The oil warms much on its way: its viscosity is not one figure. Take it again at the mean temperature.',
      grade: 'caution',
    },
    {
      holds: '=heat_of_oil > 0',
      otherwise: 'The heat of the oil is above zero: about 1.5.',
      grade: 'error',
    },
  ],
  assumptions: [
    'Full bearing of 360 degrees, steady load, journal in line with the bore, laminar film, always full of oil, one viscosity.',
    'Oil grooves, ring or wick oiling, shock and starting are outside it: a worn mill bearing is mostly starved.',
    'Between the tables: the published rule over length, and straight lines over the logarithm of the Sommerfeld number.',
  ],
  sources: [
    'Raimondi & Boyd, A Solution for the Finite Journal Bearing, ASLE Transactions 1 (1958) 159-209 (from memory, held against a numerical solution of Reynolds\u2019 equation)',
    "Budynas & Nisbett, Shigley's Mechanical Engineering Design, 9e (2011), sec. 12-6 to 12-8",
  ],
  cautions: [
    'Hot oil burns and oil mist ignites: mind leaks near hot parts, and keep guards on while it turns.',
  ],
  examples: [
    {
      title: 'Journal 1.5 in, 500 lbf, 30 turns a second',
      source: "Shigley's Mechanical Engineering Design, 8e/9e, Examples 12-1 to 12-4, reference R585 to R597",
      grade: 'memory',
      inputs: textbook,
      expect: {
        unit_load: { value: '222.2 psi', within: '0.1 psi' },
        sommerfeld: { value: '0.135', within: 0.005 },
        least_film: { value: '0.00063 in', within: '2e-5 in' },
        eccentricity: { value: '0.00087 in', within: '2e-5 in' },
        friction_power: { value: '0.075 hp', within: 0.02 },
        flow_variable: { value: '4.28', within: 0.02 },
        side_share: { value: '0.655', within: 0.02 },
        pressure_share: { value: '0.42', within: 0.02 },
      },
    },
    {
      title: 'The same, centred: Petroff',
      source: "f = 2 pi^2 (mu N / P) (r / c), Shigley's Eq (12-6), reference R604: 0.00533",
      grade: 'computed',
      inputs: textbook,
      expect: { centred_friction: { value: '0.00533', within: 2e-3 } },
    },
  ],
  drawing: (v) =>
    journalInBush({
      journal: v.journal,
      clearance: v.clearance,
      offCentre: v.eccentricity,
      names: { journal: 'journal', film: 'least_film' },
    }),
});
