import { wiresInThread } from '../drawings/wires-in-thread.ts';
import { defineCell } from '../record/cell.ts';

export default defineCell({
  key: 'wires-to-cut-to',
  edition: 1,
  title: 'Size over wires to cut a thread to',
  purpose: 'What three wires should measure over a thread of the pitch diameter wanted.',
  group: 'measuring',
  inputs: [
    {
      name: 'pitch_diameter',
      label: 'pitch diameter wanted',
      quantity: 'length',
      sensible: ['1 mm', '500 mm'],
      hint: 'Enter the limits of the class as a range: the size over wires then comes out as a range too.',
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
  ],
  outputs: [
    {
      name: 'over_wires',
      label: 'over the wires',
      quantity: 'length',
      basis: 'geometry',
      ofPart: true,
      formula: '=pitch_diameter + wire * (1 + 1 / SIN(thread_angle / 2)) - pitch / 2 / TAN(thread_angle / 2)',
      face: true,
    },
    {
      name: 'best_wire',
      label: 'best wire',
      quantity: 'length',
      basis: 'geometry',
      formula: '=pitch / 2 / COS(thread_angle / 2)',
      face: true,
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
      holds: '=AND(wire >= 0.97 * best_wire; wire <= 1.56 * best_wire)',
      otherwise: 'The wire lies too deep or rides on the crests: take one nearer the best wire.',
      grade: 'caution',
    },
    {
      holds: '=pitch_diameter > 0 mm',
      otherwise: 'The pitch diameter is above zero.',
      grade: 'error',
    },
  ],
  assumptions: [
    'Three wires of one diameter; flanks straight and the angle as stated.',
    'Standard single-start thread: no correction for the lead angle.',
  ],
  sources: [
    'ASME B1.2-1983, thread measuring wires (from memory): M = E + W (1 + cosec(a)) - (P / 2) cot(a), a half the thread angle',
    'Three-wire textbook formula, model engineers’ society page: M = D + 3 W - 1.5155 / N',
  ],
  cautions: [],
  examples: [
    {
      title: '7/16-14 at basic pitch diameter, 0.045 in wires',
      source: 'three-wire textbook formula, model engineers’ society page, worked example 7/16-14: 0.464 in',
      grade: 'seen',
      inputs: { pitch_diameter: '= 0.4375 in - 0.649519 in / 14', wire: '0.045 in', pitch: '= 1 in / 14' },
      expect: { over_wires: { value: '0.464 in', within: '0.0005 in' } },
    },
    {
      title: '1/4-20, class 2A at its largest pitch diameter 0.2164 in, 0.0289 in wires',
      source: 'published worked example of a thread measuring guide: window 0.2560 to 0.2597 in',
      grade: 'seen',
      inputs: { pitch_diameter: '0.2164 in', wire: '0.0289 in', pitch: '= 1 in / 20' },
      expect: { over_wires: { value: '0.2597 in', within: '0.0001 in' } },
    },
  ],
  drawing: ({ pitch, wire, thread_angle }) =>
    pitch === undefined || wire === undefined || thread_angle === undefined
      ? undefined
      : wiresInThread({ pitch, wire, angle: thread_angle, over: 'over_wires' }),
});
