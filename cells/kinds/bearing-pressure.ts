import { defineCell } from '../record/cell.ts';

export default defineCell({
  key: 'bearing-pressure',
  edition: 1,
  title: 'Bearing pressure, speed and pV',
  purpose:
    'Mean pressure, surface speed and their product for a plain bearing, against what its material stands.',
  group: 'clearance',
  inputs: [
    { name: 'journal', label: 'journal diameter', quantity: 'length', sensible: ['2 mm', '1 m'] },
    {
      name: 'bearing_length',
      label: 'length of the bearing',
      quantity: 'length',
      sensible: ['2 mm', '1 m'],
      hint: 'That carries: without chamfers and grooves.',
    },
    { name: 'load', label: 'load', quantity: 'force', sensible: ['1 N', '1000 kN'] },
    {
      name: 'turning_speed',
      label: 'turning speed',
      quantity: 'rotational speed',
      sensible: ['0.1 rpm', '30000 rpm'],
    },
    { name: 'bearing', label: 'bearing material', choice: 'bearing-limits' },
    {
      name: 'running_temperature',
      label: 'bearing temperature, running',
      quantity: 'temperature',
      optional: true,
      sensible: ['0 degC', '300 degC'],
    },
    {
      name: 'own_pressure',
      label: "maker's greatest pressure",
      quantity: 'pressure',
      sensible: ['0.1 MPa', '200 MPa'],
      optional: true,
      hint: 'Comes before the table.',
    },
    {
      name: 'own_speed',
      label: "maker's greatest surface speed",
      quantity: 'speed',
      sensible: ['0.01 m/s', '100 m/s'],
      optional: true,
    },
    {
      name: 'own_pv',
      label: "maker's greatest pV",
      quantity: 'pressure times speed',
      sensible: ['0.01 MPa.m/s', '100 MPa.m/s'],
      optional: true,
    },
  ],
  outputs: [
    {
      name: 'usual_pressure',
      label: 'greatest pressure, table',
      quantity: 'pressure',
      table: { choice: 'bearing', column: 'p' },
    },
    {
      name: 'usual_pv',
      label: 'greatest pV, table',
      quantity: 'pressure times speed',
      table: { choice: 'bearing', column: 'pv' },
    },
    {
      name: 'usual_temperature',
      label: 'greatest temperature, table',
      quantity: 'temperature',
      table: { choice: 'bearing', column: 'temperature' },
    },
    {
      name: 'pressure',
      label: 'mean pressure',
      quantity: 'pressure',
      formula: '=load / (journal * bearing_length)',
      face: true,
      limits: { upper: '=IF(ISBLANK(own_pressure); usual_pressure; own_pressure)' },
      hint: 'Load over diameter times length.',
    },
    {
      name: 'speed',
      label: 'surface speed',
      quantity: 'speed',
      formula: '=PI() * journal * turning_speed',
      face: true,
      limits: { upper: '=own_speed' },
    },
    {
      name: 'speed_share',
      label: 'surface speed over the greatest of the table',
      quantity: 'number',
      formula: '=IF(SPEEDLIMIT(bearing) > 0 m/s; speed / MAX(SPEEDLIMIT(bearing); 0.001 m/s); 0)',
      hint: '0 where the table gives none: full film linings are not limited by speed alone.',
    },
    {
      name: 'pv',
      label: 'pressure times speed',
      quantity: 'pressure times speed',
      formula: '=pressure * speed',
      face: true,
      limits: { upper: '=IF(ISBLANK(own_pv); usual_pv; own_pv)' },
    },
    {
      name: 'temperature',
      label: 'bearing temperature, running',
      quantity: 'temperature',
      formula: '=running_temperature',
      limits: { upper: '=usual_temperature' },
    },
  ],
  validity: [
    {
      holds: '=AND(journal > 0 m; bearing_length > 0 m; load >= 0 N)',
      otherwise: 'Diameter and length must be above zero, and the load not below.',
      grade: 'error',
    },
    {
      holds: '=IF(ISBLANK(own_speed); speed_share <= 1; 1 > 0)',
      otherwise:
        'Faster than the table gives for this bearing material without a full oil film: another material, or see the cell on film thickness.',
      grade: 'caution',
    },
    {
      holds: '=AND(bearing_length >= 0.25 * journal; bearing_length <= 2 * journal)',
      otherwise: 'Length outside a quarter to two diameters: the mean pressure says little about the edges.',
      grade: 'caution',
    },
    {
      holds: '=turning_speed >= 0 rpm',
      otherwise: 'A turning speed is counted without a sign.',
      grade: 'error',
    },
  ],
  assumptions: [
    'Boundary or mixed lubrication: a full oil film stands more, see the cell on film thickness.',
    'Load spread evenly; misalignment and edge load make the true pressure several times this.',
    'Guide values: sources differ, for nylon by a factor of eight, which shows as the spread of the limit.',
  ],
  sources: [
    'Mott, Machine Elements in Mechanical Design, Table 16-1, and the other sources of the table of plain bearing limits',
    'p = W / (d l), V = pi d n',
  ],
  cautions: [
    'A bearing over its pV overheats: PTFE linings give off poisonous fumes above about 260 degC, oil smokes and burns.',
  ],
  examples: [
    {
      title: 'Bush 2 x 2 in, 300 lbf, 500 rpm',
      source: 'p = W / (D L), V = pi D n / 12, reference R629',
      grade: 'computed',
      inputs: {
        journal: '2 in',
        bearing_length: '2 in',
        load: '300 lbf',
        turning_speed: '500 rpm',
        bearing: 'porous-bronze',
      },
      expect: {
        pressure: { value: '75.0 psi', within: 1e-4 },
        speed: { value: '261.8 ft/min', within: 1e-4 },
        pv: { value: '19635 psi.ft/min', within: 1e-4 },
      },
    },
    {
      title: 'Journal 2.5 x 2.5 in, 1500 lbf',
      source: 'Mott, Machine Elements in Mechanical Design, ch. 16, full-film design example: 240 psi',
      grade: 'seen',
      inputs: {
        journal: '2.5 in',
        bearing_length: '2.5 in',
        load: '1500 lbf',
        turning_speed: '850 rpm',
        bearing: 'tin-babbitt',
      },
      expect: { pressure: { value: '240 psi', within: 1e-9 } },
    },
  ],
});
