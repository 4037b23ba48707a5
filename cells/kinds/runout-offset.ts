import { defineCell } from '../record/cell.ts';

export default defineCell({
  key: 'runout-offset',
  edition: 1,
  title: 'Runout to offset',
  purpose: 'How far a surface is off its axis, from the total indicator reading over one turn.',
  group: 'measuring',
  inputs: [
    {
      name: 'runout',
      label: 'total indicator reading',
      quantity: 'length',
      role: 'measured',
      sensible: ['0 mm', '10 mm'],
      hint: 'Greatest less least over one turn, about the true axis.',
    },
    {
      name: 'out_of_round',
      label: 'out-of-round, greatest less least diameter',
      quantity: 'length',
      default: '0 mm',
      sensible: ['0 mm', '2 mm'],
      hint: 'Of the surface read. An oval adds up to half of it to the indicator reading.',
    },
  ],
  outputs: [
    {
      name: 'offset',
      label: 'offset of the axis',
      quantity: 'length',
      basis: 'geometry',
      formula: '=runout / 2',
      spread: {
        low: '=-MIN(out_of_round / 4; runout / 2)',
        high: '=0 mm',
        distribution: 'rectangular',
        label: 'share of the oval in the indicator reading',
      },
      face: true,
      display: { in: 'thou', mm: 'mm' },
      hint: 'Half of the indicator reading.',
    },
    {
      name: 'to_turn_true',
      label: 'comes off the diameter to run true',
      quantity: 'length',
      basis: 'geometry',
      formula: '=2 * offset',
      face: true,
      display: { in: 'thou', mm: 'mm' },
      hint: 'Before anything for out-of-round, scores and skin.',
    },
  ],
  validity: [
    {
      holds: '=runout >= 0 mm',
      otherwise: 'An indicator reading over a turn is not below zero.',
      grade: 'caution',
    },
    { holds: '=out_of_round >= 0 mm', otherwise: 'Out-of-round is not below zero.', grade: 'caution' },
    {
      holds: '=out_of_round <= runout',
      otherwise:
        'The surface is more out of round than off centre: map it at eight places round before trusting an offset.',
      grade: 'caution',
    },
  ],
  assumptions: [
    'Read square to the surface, with no end movement of the work.',
    'The out-of-round is an oval (two lobes); lobing with three or more lobes reads otherwise, see the cell on lobing.',
  ],
  sources: [
    'ISO 1101:2017, circular run-out (from memory): it holds both the offset and the form',
    'Indicator reading twice the offset: geometry; common practice, no source',
  ],
  cautions: [],
  examples: [
    {
      title: 'Eccentric shaft 2.5 mm out of the centre: the indicator moves 5 mm in a turn',
      source: 'a published workshop project, turning an eccentric shaft in a four-jaw chuck',
      grade: 'seen',
      inputs: { runout: '5 mm' },
      expect: { offset: { value: '2.5 mm', within: 1e-9 } },
    },
    {
      title: '6 thou of indicator reading is 3 thou of offset',
      source:
        'greatest less least radius of a circle turned about an axis 3 thou off its own, stepped round at 0.1 degree',
      grade: 'recomputed',
      inputs: { runout: '6 thou' },
      expect: { offset: { value: '3 thou', within: 1e-6 }, to_turn_true: { value: '6 thou', within: 1e-6 } },
    },
  ],
  drawing: ({ offset }) =>
    offset === undefined
      ? undefined
      : {
          width: 320,
          height: 220,
          shapes: [
            { kind: 'circle', x: 160, y: 110, r: 80, fill: 'none' },
            { kind: 'circle', x: 178, y: 110, r: 80, fill: 'section-a' },
            { kind: 'line', x1: 60, y1: 110, x2: 280, y2: 110, style: 'centre' },
            { kind: 'line', x1: 160, y1: 20, x2: 160, y2: 200, style: 'centre' },
            { kind: 'line', x1: 178, y1: 20, x2: 178, y2: 200, style: 'centre' },
            { kind: 'dimension', x1: 160, y1: 30, x2: 178, y2: 30, offset: 10, of: 'offset' },
          ],
          exaggeration: 'offset drawn larger than it is',
        },
});
