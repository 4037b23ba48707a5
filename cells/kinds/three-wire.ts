import { wiresInThread } from '../drawings/wires-in-thread.ts';
import { defineCell } from '../record/cell.ts';

export default defineCell({
  key: 'three-wire',
  edition: 1,
  title: 'Thread over three wires',
  purpose: 'Pitch diameter of an outside thread from its size over three wires.',
  group: 'measuring',
  inputs: [
    {
      name: 'over_wires',
      label: 'over the wires',
      quantity: 'length',
      role: 'measured',
      sensible: ['1 mm', '500 mm'],
    },
    {
      name: 'wire',
      label: 'wire diameter',
      quantity: 'length',
      counts: 'aside',
      sensible: ['0.1 mm', '10 mm'],
    },
    {
      name: 'pitch',
      label: 'pitch',
      quantity: 'length',
      counts: 'aside',
      sensible: ['0.2 mm', '12 mm'],
      hint: 'For 13 threads to the inch write = 1 in / 13.',
    },
    {
      name: 'thread_angle',
      label: 'thread angle',
      quantity: 'angle',
      counts: 'aside',
      default: '60 deg',
      sensible: ['29 deg', '60 deg'],
      source: 'ISO 68-1:1998 and ASME B1.1-2019: 60 degrees',
    },
    { name: 'starts', label: 'starts', quantity: 'number', default: '1', sensible: ['1', '8'] },
  ],
  outputs: [
    {
      name: 'pitch_diameter',
      label: 'pitch diameter',
      quantity: 'length',
      basis: 'geometry',
      formula: '=over_wires - wires_add',
      face: true,
    },
    {
      name: 'wires_add',
      label: 'what the wires add',
      quantity: 'length',
      basis: 'geometry',
      formula: '=wire * (1 + 1 / SIN(thread_angle / 2)) - pitch / 2 / TAN(thread_angle / 2)',
      hint: 'Over the wires less pitch diameter.',
    },
    {
      name: 'best_wire',
      label: 'best wire',
      quantity: 'length',
      basis: 'geometry',
      formula: '=pitch / 2 / COS(thread_angle / 2)',
      face: true,
      hint: 'Touches the flanks at the pitch line, where an error of the thread angle does no harm.',
    },
    {
      name: 'lead_angle',
      label: 'lead angle',
      quantity: 'angle',
      basis: 'geometry',
      formula: '=ATAN(starts * pitch / (PI() * pitch_diameter))',
      display: { in: 'deg', mm: 'deg' },
    },
    {
      name: 'lead_correction',
      label: 'comes off for the lead angle',
      quantity: 'length',
      basis: 'geometry',
      formula:
        '=wire * (SQRT(1 / SIN(thread_angle / 2) ^ 2 + (TAN(lead_angle) / TAN(thread_angle / 2)) ^ 2) - 1 / SIN(thread_angle / 2))',
      display: { in: 'thou', mm: 'um' },
      hint: 'Not taken off above: by custom standard threads are stated without it.',
    },
  ],
  validity: [
    { holds: '=pitch > 0 mm', otherwise: 'The pitch is above zero.', grade: 'error' },
    { holds: '=wire > 0 mm', otherwise: 'A wire has a diameter above zero.', grade: 'error' },
    {
      holds: '=AND(thread_angle > 0 deg; thread_angle < 180 deg)',
      otherwise: 'The thread angle lies between 0 and 180 degrees.',
      grade: 'error',
    },
    {
      holds: '=over_wires > wire * (1 + 1 / SIN(thread_angle / 2)) - pitch / 2 / TAN(thread_angle / 2)',
      otherwise:
        'The size over the wires is too small for these wires: look at the reading, the wire and the pitch.',
      grade: 'error',
    },
    {
      holds: '=wire >= 0.97 * best_wire',
      otherwise: 'The wire is so small that it may lie below the crests: take one nearer the best wire.',
      grade: 'caution',
    },
    {
      holds: '=wire <= 1.56 * best_wire',
      otherwise: 'The wire is so large that it may ride on the crests: take one nearer the best wire.',
      grade: 'caution',
    },
    {
      holds: '=lead_angle <= 5 deg',
      otherwise:
        'A lead angle above 5 degrees: the plain formula is not enough, take the correction for the lead angle off.',
      grade: 'caution',
    },
    {
      holds: '=ABS(wire - best_wire) <= 0.05 * best_wire',
      otherwise: 'The wire is not the best wire: an error of the thread angle comes into the pitch diameter.',
      grade: 'caution',
    },
    {
      holds: '=AND(starts >= 1; INT(starts) = starts)',
      otherwise: 'Starts are a whole number from 1 up.',
      grade: 'error',
    },
  ],
  assumptions: [
    'Three wires of one diameter; flanks straight and the angle as stated; crests not burred.',
    'The lead angle is not corrected for, as is the custom for standard single-start threads.',
    'Wires for a 60 degree thread fit from 0.560 to 0.900 of the pitch.',
  ],
  sources: [
    'ASME B1.2-1983, thread measuring wires (from memory): E = M - W (1 + cosec(a)) + (P / 2) cot(a), a half the thread angle',
    'Three-wire textbook formula, model engineers’ society page: M = D + 3 W - 1.5155 / N; wires from 0.560 / N to 0.900 / N, best 0.57735 / N',
  ],
  cautions: [],
  examples: [
    {
      title: '7/16-14 with 0.045 in wires: 0.464 in over the wires at basic pitch diameter',
      source:
        'three-wire textbook formula, model engineers’ society page, worked example 7/16-14; pitch diameter D - 0.6495 / N (ASME B1.1)',
      grade: 'seen',
      inputs: { over_wires: '0.464 in', wire: '0.045 in', pitch: '= 1 in / 14' },
      expect: {
        pitch_diameter: { value: '0.3911 in', within: '0.0005 in' },
        best_wire: { value: '0.041 in', within: '0.0005 in' },
      },
    },
    {
      title: '1/2-13 with 0.04441 in wires, 0.5354 in over them',
      source: 'published step-by-step example of a trade calculations page: E = 0.46878 in',
      grade: 'seen',
      inputs: { over_wires: '0.5354 in', wire: '0.04441 in', pitch: '= 1 in / 13' },
      expect: {
        pitch_diameter: { value: '0.46878 in', within: '0.00002 in' },
        best_wire: { value: '0.04441 in', within: '0.00001 in' },
      },
    },
  ],
  drawing: ({ pitch, wire, thread_angle }) =>
    pitch === undefined || wire === undefined || thread_angle === undefined
      ? undefined
      : wiresInThread({ pitch, wire, angle: thread_angle, over: 'over_wires' }),
});
