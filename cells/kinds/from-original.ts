import { defineCell } from '../record/cell.ts';

export default defineCell({
  key: 'from-original',
  edition: 1,
  title: 'Worked from an original',
  purpose:
    'One feature of a new part beside the original it is made after: whether they agree within what was read, or differ by what is meant.',
  group: 'measuring',
  inputs: [
    {
      name: 'original',
      label: 'original, as read',
      quantity: 'length',
      role: 'measured',
      hint: 'Name the line of its reading.',
    },
    {
      name: 'new',
      label: 'new part',
      quantity: 'length',
      hint: 'Name the line of the size to cut: once that is measured, what was read counts.',
    },
    {
      name: 'meant',
      label: 'meant to differ by',
      quantity: 'length',
      default: '0 mm',
      source: 'to agree, unless you say so',
      hint: 'New less original. Say why in the note of this line.',
    },
    {
      name: 'within',
      label: 'agree within',
      quantity: 'length',
      sensible: ['1 um', '2 mm'],
      hint: 'What the drawing would allow; never less than the readings can tell.',
    },
  ],
  outputs: [
    {
      name: 'difference',
      label: 'new less original',
      quantity: 'length',
      formula: '=new - original',
      basis: 'geometry',
      face: true,
      display: { in: 'thou', mm: 'um' },
    },
    {
      name: 'unexplained',
      label: 'of that not meant',
      quantity: 'length',
      formula: '=difference - meant',
      basis: 'geometry',
      face: true,
      display: { in: 'thou', mm: 'um' },
      limits: { lower: '=0 - within', upper: '=within' },
    },
  ],
  validity: [
    { holds: '=within > 0 m', otherwise: 'What they may differ by is above zero.', grade: 'error' },
    {
      holds: '=AND(original > 0 m; new > 0 m)',
      otherwise: 'A size is above zero.',
      grade: 'error',
    },
    {
      holds: '=ABS(meant) <= original',
      otherwise:
        'Meant to differ by more than the whole size: enter the difference alone, new less original.',
      grade: 'caution',
    },
  ],
  assumptions: [
    'The original is read where it is not worn; what wore off is part of what is meant, and said why.',
  ],
  sources: [
    'No published worked example was found: the examples are held by a second method of our own',
    'A difference within a limit, its doubt counted: ISO 14253-1:2017, 5; the limit is the user’s own',
  ],
  cautions: [],
  examples: [
    {
      title: 'Bush turned 6 thou larger for a bored-out housing',
      source: 'by hand: 2.2560 - 2.2500 = 0.0060 in, of which 0.0060 in is meant',
      grade: 'recomputed',
      inputs: { original: '2.2500 in', new: '2.2560 in', meant: '0.006 in', within: '0.0005 in' },
      expect: {
        difference: { value: '6 thou', within: '1e-6 thou' },
        unexplained: { value: '0 thou', within: '1e-6 thou' },
      },
    },
    {
      title: 'A shoulder 0.08 mm off what it was',
      source: 'by hand: 24.92 - 25.00 = -0.08 mm',
      grade: 'recomputed',
      inputs: { original: '25.00 mm', new: '24.92 mm', within: '0.05 mm' },
      expect: { unexplained: { value: '-0.08 mm', within: '1e-9 mm' } },
    },
  ],
});
