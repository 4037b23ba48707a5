import { defineCell } from '../record/cell.ts';

export default defineCell({
  key: 'depth-by-difference',
  edition: 1,
  title: 'Proud height by difference',
  purpose: 'How far a part stands proud of a face, from two depths below one datum.',
  group: 'measuring',
  inputs: [
    {
      name: 'to_face',
      label: 'datum to the face',
      quantity: 'length',
      role: 'measured',
      sensible: ['0 mm', '1 m'],
    },
    {
      name: 'to_part',
      label: 'datum to the part',
      quantity: 'length',
      role: 'measured',
      sensible: ['0 mm', '1 m'],
    },
    {
      name: 'gauge',
      label: 'gauge, both depths',
      record: 'gauge',
      optional: true,
      reads: { sizes: ['to_face', 'to_part'] },
      hint: 'Leave blank where the depths come from reading cells: those bring their gauge along.',
    },
  ],
  outputs: [
    {
      name: 'proud',
      label: 'stands proud by',
      quantity: 'length',
      basis: 'geometry',
      formula: '=to_face - to_part + readings_error',
      face: true,
      display: { in: 'thou', mm: 'mm' },
      hint: 'Below zero: it lies that far below the face.',
    },
    {
      name: 'below',
      label: 'lies below by',
      quantity: 'length',
      basis: 'geometry',
      formula: '=-proud',
      display: { in: 'thou', mm: 'mm' },
    },
    {
      name: 'readings_error',
      label: 'error of the two readings',
      quantity: 'length',
      basis: 'geometry',
      formula: '=0 mm',
      spread: {
        low: '=IF(ISBLANK(gauge); 0 mm; -2 * SQRT(2) * gauge.repeatability)',
        high: '=IF(ISBLANK(gauge); 0 mm; 2 * SQRT(2) * gauge.repeatability)',
        distribution: 'normal',
        label: 'scatter of two readings',
      },
    },
  ],
  validity: [
    { holds: '=to_face >= 0 mm', otherwise: 'A depth below the datum is not below zero.', grade: 'caution' },
    { holds: '=to_part >= 0 mm', otherwise: 'A depth below the datum is not below zero.', grade: 'caution' },
  ],
  assumptions: [
    'One datum and one gauge for both depths: its constant error drops out of the difference.',
    'The datum face is flat and square to the depth; take the mean of places opposite each other where it may not be.',
  ],
  sources: ['JCGM 100:2008, 5.2 and F.1.2.3 (errors common to two readings)'],
  cautions: [],
  examples: [
    {
      title: 'Liner 0.14 mm below the block, 0.15 mm of shim under it: 0.01 mm proud',
      source:
        'an engine maker’s service manual, table of liner shims: recess 0.14 mm without, protrusion 0.01 mm with a shim of 0.15 mm; a datum 20 mm above the block is ours',
      grade: 'seen',
      inputs: { to_face: '20 mm', to_part: '= 20 mm + 0.14 mm - 0.15 mm' },
      expect: { proud: { value: '0.01 mm', within: 1e-9 } },
    },
    {
      title: 'Face 0.5625 in below the datum, shell edge 0.5590 in',
      source: 'by hand: 0.5625 - 0.5590 = 0.0035',
      grade: 'recomputed',
      inputs: { to_face: '0.5625 in', to_part: '0.5590 in' },
      expect: { proud: { value: '3.5 thou', within: 1e-9 }, below: { value: '-3.5 thou', within: 1e-9 } },
    },
  ],
  drawing: ({ to_face, to_part, proud }) => {
    if (to_face === undefined || to_part === undefined || proud === undefined || !Number.isFinite(proud))
      return undefined;
    const deepest = Math.max(to_face, to_part, 1e-9);
    const face = 40 + (100 * to_face) / deepest;
    const apart = Math.sign(proud) * Math.max(12, (100 * Math.abs(proud)) / deepest);
    const part = proud === 0 ? face : face - apart;
    return {
      width: 320,
      height: 200,
      shapes: [
        { kind: 'line', x1: 20, y1: 40, x2: 300, y2: 40, style: 'centre' },
        { kind: 'text', x: 24, y: 34, text: 'datum' },
        { kind: 'rect', x: 40, y: face, width: 80, height: 190 - face, fill: 'section-a' },
        { kind: 'rect', x: 200, y: face, width: 80, height: 190 - face, fill: 'section-a' },
        { kind: 'rect', x: 120, y: part, width: 80, height: 190 - part, fill: 'section-b' },
        { kind: 'dimension', x1: 40, y1: 40, x2: 40, y2: face, offset: -18, of: 'to_face' },
        { kind: 'dimension', x1: 160, y1: 40, x2: 160, y2: part, offset: 0, of: 'to_part' },
        { kind: 'dimension', x1: 280, y1: part, x2: 280, y2: face, offset: 18, of: 'proud' },
      ],
      exaggeration: 'proud height drawn larger than it is',
    };
  },
});
