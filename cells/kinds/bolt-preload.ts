import { defineCell } from '../record/cell.ts';

export default defineCell({
  key: 'bolt-preload',
  edition: 1,
  title: 'Bolt torque and clamp force',
  purpose:
    'Torque for a clamp force, and the clamp force a torque really gives: for cap bolts, covers and flanges.',
  group: 'threads',
  inputs: [
    {
      name: 'thread',
      label: 'thread',
      choice: 'thread',
      hint: 'As on the drawing, without a class: 3/8-16 UNC, 1/2-13, M10, M10x1.25.',
    },
    {
      name: 'grade',
      label: 'grade or class of the bolt',
      choice: 'bolt-grades',
      optional: true,
      hint: 'Blank only where the proof strength below is your own.',
    },
    {
      name: 'own_proof',
      label: 'proof strength, your own figure',
      quantity: 'pressure',
      optional: true,
      sensible: ['100 MPa', '1500 MPa'],
      hint: 'Of a bolt whose maker gives it. Comes before the grade.',
    },
    { name: 'oiling', label: 'how it is oiled', choice: 'nut-factors', default: 'as-received' },
    {
      name: 'torque_applied',
      label: 'torque you set',
      quantity: 'torque',
      sensible: ['0.1 N.m', '100000 N.m'],
      optional: true,
      hint: 'The figure of the machine’s maker comes first. Blank: the torque worked out.',
    },
    {
      name: 'bolts',
      label: 'bolts that share the load',
      quantity: 'number',
      default: '1',
      sensible: ['1', '40'],
      source: 'one bolt by itself',
    },
    {
      name: 'force_needed',
      label: 'clamp force needed, all bolts together',
      quantity: 'force',
      sensible: ['1 N', '10000 kN'],
      optional: true,
      hint: 'Of split shells: what the crush takes, = crush.bolt_load times the bolts, and the running load on top.',
    },
    {
      name: 'proof_share',
      label: 'share of the proof load wanted',
      quantity: 'number',
      default: '0.75',
      sensible: ['0.3', '0.9'],
      source:
        "0.75 for bolts to be taken out again: Budynas & Nisbett, Shigley's Mechanical Engineering Design, 9e, sec. 8-9 (from memory)",
    },
    {
      name: 'own_nut_factor',
      label: 'nut factor, your own figure',
      quantity: 'number',
      optional: true,
      sensible: ['0.08', '0.35'],
      hint: 'The figure alone: its doubt is the next entry.',
    },
    {
      name: 'scatter',
      label: 'doubt of the clamp force a torque gives, either way',
      quantity: 'number',
      default: '30 %',
      sensible: ['0.05', '0.5'],
      source:
        "twenty tests of one torque on bolts as they come: 34.3 kN with a standard deviation of 4.91 kN, so 29 % at two of them (Budynas & Nisbett, Shigley's Mechanical Engineering Design, 9e, Table 8-13, from memory); a tested joint, or bolts measured for stretch, less",
    },
  ],
  outputs: [
    {
      name: 'major',
      label: 'thread diameter',
      quantity: 'length',
      formula: '=THREADMAJOR(thread)',
    },
    {
      name: 'stress_area',
      label: 'stress area',
      quantity: 'area',
      formula: '=STRESSAREA(thread)',
    },
    {
      name: 'grade_proof',
      label: 'proof strength of the grade',
      quantity: 'pressure',
      table: { choice: 'grade', column: 'proof' },
      display: { in: 'ksi', mm: 'MPa' },
    },
    {
      name: 'proof_strength',
      label: 'proof strength taken',
      quantity: 'pressure',
      formula: '=IF(ISBLANK(own_proof); grade_proof; own_proof)',
      display: { in: 'ksi', mm: 'MPa' },
    },
    {
      name: 'yield_strength',
      label: 'yield strength of the grade',
      quantity: 'pressure',
      table: { choice: 'grade', column: 'yield' },
      display: { in: 'ksi', mm: 'MPa' },
    },
    {
      name: 'tensile_strength',
      label: 'tensile strength of the grade',
      quantity: 'pressure',
      table: { choice: 'grade', column: 'tensile' },
      display: { in: 'ksi', mm: 'MPa' },
    },
    {
      name: 'grade_from',
      label: 'figures of the grade hold from',
      quantity: 'length',
      table: { choice: 'grade', column: 'from' },
    },
    {
      name: 'grade_to',
      label: 'figures of the grade hold up to',
      quantity: 'length',
      table: { choice: 'grade', column: 'to' },
    },
    {
      name: 'usual_nut_factor',
      label: 'usual nut factor',
      quantity: 'number',
      table: { choice: 'oiling', column: 'factor' },
    },
    {
      name: 'nut_factor',
      label: 'nut factor taken',
      quantity: 'number',
      formula: '=IF(ISBLANK(own_nut_factor); usual_nut_factor; own_nut_factor)',
    },
    {
      name: 'proof_load',
      label: 'proof load of one bolt',
      quantity: 'force',
      formula: '=proof_strength * stress_area',
    },
    {
      name: 'preload_wanted',
      label: 'clamp force wanted of one bolt',
      quantity: 'force',
      formula: '=proof_share * proof_load',
    },
    {
      name: 'torque',
      label: 'torque for it',
      quantity: 'torque',
      formula: '=nut_factor * major * preload_wanted',
      face: true,
      hint: 'One figure to set on the wrench: what it gives is in the clamp force.',
    },
    {
      name: 'nut_factor_doubt',
      label: 'clamp force over the one aimed at',
      quantity: 'number',
      formula: '=1',
      spread: {
        low: '=-scatter',
        high: '=scatter',
        distribution: 'rectangular',
        label: 'friction of thread and head',
      },
    },
    {
      name: 'clamp_force',
      label: 'clamp force of one bolt',
      quantity: 'force',
      formula:
        '=IF(ISBLANK(torque_applied); torque; torque_applied) / (nut_factor * major) * nut_factor_doubt',
      face: true,
      limits: { upper: '=proof_load' },
      hint: 'From the torque set. Friction eats nine tenths of a torque: a little more or less of it moves this far.',
    },
    {
      name: 'all_together',
      label: 'clamp force of all bolts',
      quantity: 'force',
      formula: '=bolts * clamp_force',
      face: true,
      limits: { lower: '=force_needed' },
      hint: 'At its low end every bolt is taken as badly off as the worst.',
    },
    {
      name: 'share_reached',
      label: 'clamp force over proof load',
      quantity: 'number',
      formula: '=clamp_force / proof_load',
      display: { in: '%', mm: '%' },
    },
  ],
  validity: [
    { holds: '=bolts >= 1', otherwise: 'There is at least one bolt.', grade: 'error' },
    {
      holds: '=AND(scatter >= 0; scatter < 0.9)',
      otherwise: 'The doubt of the clamp force is a share from 0 to below 0.9, such as 30 %.',
      grade: 'error',
    },
    {
      holds: '=AND(proof_share > 0; proof_share <= 1)',
      otherwise: 'The share of the proof load lies above 0 and not above 1.',
      grade: 'error',
    },
    {
      holds: '=IF(ISBLANK(grade); 1 > 0; AND(major >= grade_from; major <= grade_to))',
      otherwise:
        'This grade has other strength figures at that size, or is not made in it: choose the row for the size.',
      grade: 'caution',
    },
    {
      holds: '=NOT(AND(ISBLANK(grade); ISBLANK(own_proof)))',
      otherwise:
        'Neither grade nor proof strength of the bolt is entered: there is nothing to tighten it to.',
      grade: 'caution',
    },
    {
      holds: '=IF(ISBLANK(own_proof); 1 > 0; own_proof > 0 Pa)',
      otherwise: 'The proof strength is above zero.',
      grade: 'error',
    },
    {
      holds: '=share_reached <= 1',
      otherwise:
        'The torque set stretches the bolt past its proof load: less torque, or a bolt of a higher grade.',
      grade: 'caution',
    },
    {
      holds: '=share_reached >= 0.5',
      otherwise:
        'The bolt is clamped to less than half its proof load: it works loose and tires sooner. More torque, or a smaller bolt.',
      grade: 'caution',
    },
    {
      holds: '=IF(ISBLANK(own_nut_factor); 1 > 0; AND(own_nut_factor > 0; own_nut_factor < 1))',
      otherwise: 'A nut factor lies between 0 and 1: mostly 0.1 to 0.3.',
      grade: 'error',
    },
    {
      holds: '=IF(ISBLANK(torque_applied); 1 > 0; torque_applied > 0 N.m)',
      otherwise: 'The torque you set is above zero.',
      grade: 'error',
    },
  ],
  assumptions: [
    'T = K d F: one factor for the friction of thread and head. It differs from bolt to bolt even in one box.',
    'Head, nut and tapped hole are as strong as the bolt: for a tapped hole see the length of engagement.',
    'Bolts tightened to an angle or past yield by their maker’s method are outside it.',
  ],
  sources: [
    "T = K d F and F = 0.75 of the proof load: Budynas & Nisbett, Shigley's Mechanical Engineering Design, 9e (2011), sec. 8-8, 8-9",
    'Strength: SAE J429 (inch); ISO 898-1:2013 (metric, from memory). Nut factors: the same Shigley, Table 8-15 (from memory)',
  ],
  cautions: [
    'The torque of the machine’s maker comes before this, and its word on oil, order and angle; replace bolts it says to replace.',
    'A bolt that breaks or slips throws the wrench: stand so that you cannot fall, and pull rather than push.',
    'Never torque an oiled bolt to a figure meant for a dry one: it stretches by as much as the friction fell.',
    'Lifting, pressure and steering joints are for someone licensed to judge them.',
  ],
  examples: [
    {
      title: '1/4-20 UNC grade 2, K = 0.20, three quarters of proof',
      source: 'torque table by T = K D F with SAE J429: 1312 lbf, 5.4 lbf ft',
      grade: 'seen',
      inputs: { thread: '1/4-20 UNC', grade: '2' },
      expect: {
        preload_wanted: { value: '1312 lbf', within: 0.015 },
        torque: { value: '5.4 lbf.ft', within: 0.015 },
      },
    },
    {
      title: '1/2-13 UNC grade 2, K = 0.20, three quarters of proof',
      source: 'torque table by T = K D F with SAE J429: 5853 lbf, 48.8 lbf ft',
      grade: 'seen',
      inputs: { thread: '1/2-13 UNC', grade: '2' },
      expect: {
        clamp_force: { value: '5853 lbf', within: 0.015 },
        torque: { value: '48.8 lbf.ft', within: 0.015 },
      },
    },
    {
      title: '7/8-9 UNC grade 2: the lower strength of large sizes',
      source:
        "Budynas & Nisbett, Shigley's Mechanical Engineering Design, 9e, Tables 8-2 and 8-9: 33 ksi on 0.462 in2",
      grade: 'memory',
      inputs: { thread: '7/8-9 UNC', grade: '2-large' },
      expect: { proof_load: { value: '15246 lbf', within: 2e-3 } },
    },
    {
      title: 'M10 class 5.8: proof load',
      source: 'ISO 898-1:2013, Table 5: 22 000 N for M10 of class 5.8',
      grade: 'memory',
      inputs: { thread: 'M10', grade: '5.8' },
      expect: {
        proof_load: { value: '22000 N', within: 3e-3 },
        tensile_strength: { value: '520 MPa', within: 1e-9 },
      },
    },
    {
      title: 'M10 class 8.8, K = 0.20, three quarters of proof',
      source: 'T = K d F with ISO 898-1, stress area 58.0 mm2: 25.23 kN, 50.46 N m',
      grade: 'computed',
      inputs: { thread: 'M10', grade: '8.8' },
      expect: {
        preload_wanted: { value: '25.23 kN', within: 0.001 },
        torque: { value: '50.46 N.m', within: 0.001 },
      },
    },
  ],
});
