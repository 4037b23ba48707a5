import { defineCell } from '../record/cell.ts';

export default defineCell({
  key: 'from-original',
  edition: 1,
  title: 'Worked from an original',
  purpose:
    'One feature of a new part beside the original it is made after: whether they agree within what was read, or differ by what is meant, and why.',
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
      name: 'within',
      label: 'agree within, another than was read to',
      quantity: 'length',
      optional: true,
      sensible: ['1 um', '2 mm'],
      hint: 'Blank: what both were read to, the ± or the gauges of the two together. Else what a drawing allows.',
    },
    {
      name: 'meant',
      label: 'meant to differ by',
      quantity: 'length',
      optional: true,
      hint: 'New less original. Blank: made as the original is.',
    },
    {
      name: 'why',
      label: 'why it differs',
      choice: 'reasons-to-differ',
      optional: true,
      hint: 'The rest of it in the note of this line.',
    },
  ],
  outputs: [
    {
      name: 'was',
      label: 'original',
      quantity: 'length',
      formula: '=original',
      basis: 'geometry',
      face: true,
    },
    {
      name: 'made',
      label: 'new',
      quantity: 'length',
      formula: '=new',
      basis: 'geometry',
      face: true,
    },
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
      name: 'agreed',
      label: 'agrees within',
      quantity: 'length',
      formula: '=IF(ISBLANK(within); SQRT(original.doubt ^ 2 + new.doubt ^ 2); within)',
      basis: 'geometry',
      display: { in: 'thou', mm: 'um' },
      hint: 'What was read can tell: the doubt of both at 95 %, taken together as if they had no gauge in common.',
    },
    {
      name: 'as_read',
      label: 'of that not meant, as read',
      quantity: 'length',
      formula: '=new.mean - original.mean - IF(ISBLANK(meant); 0 m; meant)',
      basis: 'geometry',
      held: true,
      display: { in: 'thou', mm: 'um' },
      hint: 'Held to what both were read to, their doubt is in that: it is not counted twice.',
    },
    {
      name: 'unexplained',
      label: 'of that not meant',
      quantity: 'length',
      formula: '=IF(ISBLANK(within); as_read; difference - IF(ISBLANK(meant); 0 m; meant))',
      basis: 'geometry',
      face: true,
      display: { in: 'thou', mm: 'um' },
      limits: { lower: '=0 - agreed', upper: '=agreed' },
    },
    {
      name: 'over',
      label: 'off by more than agreed',
      quantity: 'length',
      formula: '=ABS(unexplained) - agreed',
      basis: 'geometry',
      display: { in: 'thou', mm: 'um' },
      hint: 'Below zero it agrees.',
    },
    {
      name: 'named',
      label: 'named as different',
      quantity: 'number',
      formula: '=IF(ISBLANK(meant); 0; 1)',
      basis: 'geometry',
      hint: '1 where it is meant to differ.',
    },
  ],
  validity: [
    {
      holds: '=IF(ISBLANK(within); original.doubt + new.doubt > 0 m; within > 0 m)',
      otherwise:
        'What they may differ by is above zero: read the original with its gauge or with ±, or enter what a drawing allows.',
      grade: 'error',
    },
    {
      holds: '=AND(original > 0 m; new > 0 m)',
      otherwise: 'A size is above zero.',
      grade: 'error',
    },
    {
      holds: '=IF(ISBLANK(meant); 1 > 0; ABS(meant) <= original)',
      otherwise:
        'Meant to differ by more than the whole size: enter the difference alone, new less original.',
      grade: 'caution',
    },
    {
      holds: '=IF(ISBLANK(meant); 1 > 0; NOT(ISBLANK(why)))',
      otherwise: 'It is meant to differ: say why, for whoever works from this part next.',
      grade: 'caution',
    },
    {
      holds: '=IF(ISBLANK(why); 1 > 0; NOT(ISBLANK(meant)))',
      otherwise:
        'A reason to differ is given, and no difference: enter by how much, or leave the reason blank.',
      grade: 'caution',
    },
  ],
  assumptions: [
    'The original is read where it is not worn; what wore off is part of what is meant, and said why.',
  ],
  sources: [
    'No published worked example was found: the examples are held by a second method of our own',
    'A difference within a limit, its doubt counted: ISO 14253-1:2017, 5; the limit is the user’s own',
    'Two readings agree where they differ by less than the expanded uncertainty of their difference: metrological compatibility, JCGM 200:2012, 2.47',
  ],
  cautions: [],
  examples: [
    {
      title: 'Bush turned 6 thou larger for a bored-out housing',
      source: 'by hand: 2.2560 - 2.2500 = 0.0060 in, of which 0.0060 in is meant',
      grade: 'recomputed',
      inputs: {
        original: '2.2500 in',
        new: '2.2560 in',
        meant: '0.006 in',
        why: 'partner-cut',
        within: '0.0005 in',
      },
      expect: {
        difference: { value: '6 thou', within: '1e-6 thou' },
        unexplained: { value: '0 thou', within: '1e-6 thou' },
        over: { value: '-0.5 thou', within: '1e-6 thou' },
        named: { value: '1', within: 1e-9 },
      },
    },
    {
      title: 'A groove of 4.06 mm where 4.10 mm was read to 0.05 mm',
      source: 'by hand: 4.06 - 4.10 = -0.04 mm, 0.01 mm less than the 0.05 mm the original was read to',
      grade: 'recomputed',
      inputs: { original: '4.10 mm ± 0.05 mm', new: '4.06 mm' },
      expect: {
        agreed: { value: '0.05 mm', within: '1e-9 mm' },
        unexplained: { value: '-0.04 mm', within: '1e-9 mm' },
        over: { value: '-0.01 mm', within: '1e-9 mm' },
      },
    },
    {
      title: 'A shoulder 0.08 mm off what it was',
      source: 'by hand: 24.92 - 25.00 = -0.08 mm, 0.03 mm more than 0.05 mm',
      grade: 'recomputed',
      inputs: { original: '25.00 mm', new: '24.92 mm', within: '0.05 mm' },
      expect: {
        unexplained: { value: '-0.08 mm', within: '1e-9 mm' },
        over: { value: '0.03 mm', within: '1e-9 mm' },
        named: { value: '0', within: 1e-9 },
      },
    },
  ],
  drawing: ({ was, made, difference }) => {
    if (was === undefined || made === undefined || difference === undefined) return undefined;
    if (!(was > 0 && made > 0) || !Number.isFinite(was) || !Number.isFinite(made)) return undefined;
    // What differs is drawn large, or it would not be seen.
    const step = difference === 0 ? 0 : 26 * Math.sign(difference);
    const [x, long] = [40, 170];
    return {
      width: 300,
      height: 180,
      shapes: [
        { kind: 'rect', x, y: 44, width: long, height: 34, fill: 'section-b' },
        { kind: 'rect', x, y: 92, width: long + step, height: 34, fill: 'section-a' },
        { kind: 'dimension', x1: x, y1: 44, x2: x + long, y2: 44, offset: 18, of: 'was' },
        { kind: 'dimension', x1: x, y1: 126, x2: x + long + step, y2: 126, offset: -26, of: 'made' },
        { kind: 'line', x1: x + long, y1: 38, x2: x + long, y2: 132, style: 'thin' },
      ],
      ...(step === 0 ? {} : { exaggeration: 'original above, new below; what differs drawn large' }),
    };
  },
});
