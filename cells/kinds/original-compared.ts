import type { CellRecord } from '../../shared/sheet/format.ts';
import { defineCell } from '../record/cell.ts';

const LAST = 12;
const numbers = Array.from({ length: LAST }, (_, i) => i + 1);

const feature = (n: number) => ({
  name: `feature_${n}`,
  label: `feature ${n}`,
  record: 'from-original',
  ...(n > 1 ? { optional: true } : { hint: 'Name the lines of the features, one after the other.' }),
});

/** Of every feature that is there; of a blank one what the first gives, so that it says nothing. */
const each = (of: (name: string) => string): string =>
  numbers
    .map((n) =>
      n === 1 ? of('feature_1') : `IF(ISBLANK(feature_${n}); ${of('feature_1')}; ${of(`feature_${n}`)})`,
    )
    .join('; ');

const summed = (of: (name: string) => string): string =>
  numbers
    .map((n) => (n === 1 ? of('feature_1') : `IF(ISBLANK(feature_${n}); 0; ${of(`feature_${n}`)})`))
    .join(' + ');

/** What a shop begins with: each further feature is a copy of one of these, named behind the last. */
const BEGUN = ['first', 'second', 'third'];

export default defineCell({
  key: 'original-compared',
  edition: 1,
  title: 'New part beside its original',
  purpose:
    'All features of a part made after an original: how many are named as different, and whether all the others agree within what was read.',
  group: 'measuring',
  inputs: numbers.map(feature),
  section: [
    { role: 'section', label: 'Against the original, feature by feature' },
    ...BEGUN.flatMap((which, i): readonly Partial<CellRecord>[] => [
      {
        role: 'measured',
        name: `original_${i + 1}`,
        label: `Original: ${which} feature`,
        quantity: 'length',
        note: 'Where it is not worn.',
      },
      {
        role: 'cell',
        kind: 'from-original',
        edition: 1,
        name: `feature_${i + 1}`,
        label: `${which[0]!.toUpperCase()}${which.slice(1)} feature, original and new`,
        inputs: { original: `= original_${i + 1}` },
      },
    ]),
    {
      role: 'cell',
      kind: 'original-compared',
      edition: 1,
      name: 'beside',
      label: 'All of them together',
      inputs: Object.fromEntries(BEGUN.map((_, i) => [`feature_${i + 1}`, `feature_${i + 1}`])),
    },
  ],
  outputs: [
    {
      name: 'features',
      label: 'features compared',
      quantity: 'number',
      formula: `=${summed(() => '1')}`,
      basis: 'geometry',
      face: true,
    },
    {
      name: 'differ',
      label: 'named as different',
      quantity: 'number',
      formula: `=${summed((name) => `${name}.named`)}`,
      basis: 'geometry',
      face: true,
    },
    {
      name: 'others_off',
      label: 'all others: the worst is off by more than agreed',
      quantity: 'length',
      formula: `=MAX(${each((name) => `IF(${name}.named > 0; 0 m - ${name}.agreed; ${name}.over)`)})`,
      basis: 'geometry',
      face: true,
      display: { in: 'thou', mm: 'um' },
      limits: { upper: '=0 m' },
      hint: 'Below zero all agree.',
    },
    {
      name: 'named_off',
      label: 'those named: the worst is off what is meant by more than agreed',
      quantity: 'length',
      formula: `=MAX(${each((name) => `IF(${name}.named > 0; ${name}.over; 0 m - ${name}.agreed)`)})`,
      basis: 'geometry',
      face: true,
      display: { in: 'thou', mm: 'um' },
      limits: { upper: '=0 m' },
      hint: 'Below zero each differs by what is meant.',
    },
  ],
  validity: [
    {
      holds: '=differ < features',
      otherwise:
        'Every feature is named as different: nothing is left that shows it to be the same part. Compare what should agree too.',
      grade: 'caution',
    },
  ],
  assumptions: [
    'What is not in the list is not compared: go over the original feature by feature, and put a line for each.',
  ],
  sources: [
    'No published worked example was found: the examples are held by a second method of our own',
    'Of several that must all agree the worst decides: common practice, no source',
  ],
  cautions: [],
  examples: [
    {
      title: 'Three features, one of them named',
      source:
        'by hand: 0.01 - 0.02 = -0.01 mm and 0.03 - 0.05 = -0.02 mm agree; 0.30 mm is named, 0.02 mm off it, 0.03 mm less than 0.05 mm',
      grade: 'recomputed',
      inputs: {
        feature_1: { over: '-0.01 mm', named: '0', agreed: '0.02 mm' },
        feature_2: { over: '-0.02 mm', named: '0', agreed: '0.05 mm' },
        feature_3: { over: '-0.03 mm', named: '1', agreed: '0.05 mm' },
      },
      expect: {
        features: { value: '3', within: 1e-9 },
        differ: { value: '1', within: 1e-9 },
        others_off: { value: '-0.01 mm', within: '1e-9 mm' },
        named_off: { value: '-0.02 mm', within: '1e-9 mm' },
      },
    },
    {
      title: 'Two features, one off by a tenth',
      source: 'by hand: 0.15 - 0.05 = 0.10 mm too much',
      grade: 'recomputed',
      inputs: {
        feature_1: { over: '-0.01 mm', named: '0', agreed: '0.02 mm' },
        feature_2: { over: '0.10 mm', named: '0', agreed: '0.05 mm' },
      },
      expect: {
        features: { value: '2', within: 1e-9 },
        others_off: { value: '0.10 mm', within: '1e-9 mm' },
      },
    },
  ],
  drawing: ({ features, differ }) => {
    if (features === undefined || differ === undefined) return undefined;
    if (!(features >= 1 && features <= LAST && differ >= 0 && differ <= features)) return undefined;
    const step = 264 / LAST;
    return {
      width: 300,
      height: 110,
      shapes: Array.from({ length: Math.round(features) }, (_, i) => ({
        kind: 'rect' as const,
        x: 18 + i * step,
        y: 36,
        width: step - 5,
        height: 34,
        fill: i < Math.round(features - differ) ? ('section-a' as const) : ('paper' as const),
      })),
      exaggeration: 'a box a feature: hatched those that agree by their plan, plain those named as different',
    };
  },
});
