import { defineCell } from '../record/cell.ts';

export default defineCell({
  key: 'micrometer-check',
  edition: 1,
  title: 'Micrometer against a block',
  purpose: 'Error of a micrometer at one size, and the correction its readings take.',
  group: 'measuring',
  inputs: [
    {
      name: 'block',
      label: 'block or standard',
      quantity: 'length',
      counts: 'aside',
      sensible: ['0 mm', '1 m'],
    },
    {
      name: 'reading',
      label: 'micrometer reads',
      quantity: 'length',
      role: 'measured',
      sensible: ['0 mm', '1 m'],
    },
    {
      name: 'permitted',
      label: 'error permitted, either way',
      quantity: 'length',
      sensible: ['1 um', '50 um'],
      hint: 'Of its maker or your own rule.',
    },
  ],
  outputs: [
    {
      name: 'error',
      label: 'error of the reading',
      quantity: 'length',
      basis: 'geometry',
      formula: '=reading - block',
      face: true,
      display: { in: 'thou', mm: 'um' },
      limits: { lower: '=-permitted', upper: '=permitted' },
    },
    {
      name: 'correction',
      label: 'comes onto a reading',
      quantity: 'length',
      basis: 'geometry',
      formula: '=-error',
      face: true,
      display: { in: 'thou', mm: 'um' },
    },
  ],
  validity: [
    {
      holds: '=permitted > 0 mm',
      otherwise: 'The permitted error is a figure above zero, without a sign.',
      grade: 'error',
    },
    {
      holds: '=ABS(error) <= 0.1 mm',
      otherwise:
        'The error is above 0.1 mm: look whether block and reading belong together, and whether the turn is right.',
      grade: 'caution',
    },
  ],
  assumptions: [
    'Micrometer and block at one temperature; anvils and block clean; the error at this size only.',
  ],
  sources: [
    'ISO 3611:2023, micrometers for external measurements: error of indication (from memory)',
    'JCGM 200:2012, 2.16 and 2.53 (error, correction)',
  ],
  cautions: [],
  examples: [
    {
      title: 'Closed jaws read 0.03 mm, and 0.03 mm comes off every reading',
      source:
        'course slides on reading micrometers, published: zero error +0.03 mm, to be subtracted from what is read',
      grade: 'seen',
      inputs: { block: '0 mm', reading: '0.03 mm', permitted: '0.004 mm' },
      expect: {
        error: { value: '0.03 mm', within: 1e-9 },
        correction: { value: '-0.03 mm', within: 1e-9 },
      },
    },
    {
      title: 'Reads 1.0002 in on a 1 in standard',
      source: 'by hand: 1.0002 - 1.0000',
      grade: 'recomputed',
      inputs: { block: '1 in', reading: '1.0002 in', permitted: '0.0001 in' },
      expect: {
        error: { value: '0.2 thou', within: 1e-9 },
        correction: { value: '-0.2 thou', within: 1e-9 },
      },
    },
  ],
});
