import { type CellOutput, defineCell } from '../record/cell.ts';
import { cutting } from '../record/hazards.ts';
import { drills } from '../tables/drills.ts';

/** Of each kind of drill the one nearest to the hole, by its key in the table of drills. */
const kinds = [
  ['fraction', 'fraction'],
  ['number', 'number or letter'],
  ['metric', 'millimetre'],
] as const;

const nearest = (series: string): string => {
  const [below, above] = ['BELOW', 'ABOVE'].map((side) => `DRILL${side}("${series}"; hole)`);
  return `=IF(hole - ${below} <= ${above} - hole; ${below}; ${above})`;
};

export default defineCell({
  key: 'tap-drill',
  edition: 1,
  title: 'Tap drill for a share of thread',
  purpose:
    'The hole that leaves the share of thread you want, the drills at hand on either side of it, and what each really leaves.',
  group: 'threads',
  inputs: [
    {
      name: 'thread',
      label: 'thread',
      choice: 'thread',
      hint: 'As on the drawing, without its class: 3/8-16 UNC, 10-32, M8, M10x1.25.',
    },
    {
      name: 'share',
      label: 'share of thread wanted',
      quantity: 'number',
      default: '70 %',
      sensible: ['0.5', '0.83'],
      source:
        'common practice, no source: 60 to 75 %; less in tough metal and deep holes, more in thin walls',
    },
    { name: 'drills_at_hand', label: 'drills at hand', choice: 'drill-series', default: 'any' },
    {
      name: 'class',
      label: 'class of the nut thread',
      choice: 'thread-class',
      optional: true,
      hint: '2B, 3B, 6H',
    },
  ],
  outputs: [
    {
      name: 'hole',
      label: 'hole for that share',
      quantity: 'length',
      formula: '=HOLEFORSHARE(thread; share)',
      basis: 'geometry',
    },
    {
      name: 'smaller',
      label: 'drill next below',
      quantity: 'length',
      formula: '=DRILLBELOW(drills_at_hand; hole)',
      basis: 'geometry',
      held: true,
      face: true,
      hint: 'Its name is under the drawing.',
    },
    {
      name: 'smaller_leaves',
      label: 'thread left by it',
      quantity: 'number',
      formula: '=THREADSHARE(thread; smaller)',
      basis: 'geometry',
      face: true,
      display: { in: '%', mm: '%' },
    },
    {
      name: 'larger',
      label: 'drill next above',
      quantity: 'length',
      formula: '=DRILLABOVE(drills_at_hand; hole)',
      basis: 'geometry',
      held: true,
      face: true,
    },
    {
      name: 'larger_leaves',
      label: 'thread left by it',
      quantity: 'number',
      formula: '=THREADSHARE(thread; larger)',
      basis: 'geometry',
      face: true,
      display: { in: '%', mm: '%' },
    },
    {
      name: 'smaller_over_class',
      label: 'smaller drill over the greatest minor diameter of the class',
      quantity: 'length',
      formula: '=HOLEOVERCLASS(thread; class; smaller)',
      basis: 'geometry',
      display: { in: 'thou', mm: 'um' },
      hint: '0 where it is inside the limits of the class; below zero it is under the least.',
    },
    {
      name: 'larger_over_class',
      label: 'larger drill over the greatest minor diameter of the class',
      quantity: 'length',
      formula: '=HOLEOVERCLASS(thread; class; larger)',
      basis: 'geometry',
      display: { in: 'thou', mm: 'um' },
    },
    ...kinds.flatMap(([series, name]): CellOutput[] => [
      {
        name: `${series}_drill`,
        label: `nearest ${name} drill`,
        quantity: 'length',
        formula: nearest(series),
        basis: 'geometry',
        held: true,
        hint: 'Its name is under the drawing.',
      },
      {
        name: `${series}_leaves`,
        label: `thread left by the ${name} drill`,
        quantity: 'number',
        formula: `=THREADSHARE(thread; ${series}_drill)`,
        basis: 'geometry',
        display: { in: '%', mm: '%' },
      },
      {
        name: `${series}_over_class`,
        label: `${name} drill over the greatest minor diameter of the class`,
        quantity: 'length',
        formula: `=HOLEOVERCLASS(thread; class; ${series}_drill)`,
        basis: 'geometry',
        display: { in: 'thou', mm: 'um' },
      },
    ]),
  ],
  validity: [
    {
      holds: '=AND(share > 0; share <= 1)',
      otherwise: 'The share of thread lies above 0 and not above 100 %.',
      grade: 'error',
    },
    {
      holds: '=share <= 0.84',
      otherwise: 'More than a full nut thread: the tap cuts at its root and breaks.',
      grade: 'caution',
    },
    {
      holds: '=share >= 0.5',
      otherwise: 'Less than half a thread strips: an insert or the next size repairs it.',
      grade: 'caution',
    },
    {
      holds: '=IF(ISBLANK(class); 1 > 0; HOLEOVERCLASS(thread; class; larger) <= 0 m)',
      otherwise: 'The larger drill is over the class: where the drawing names it, take the smaller.',
      grade: 'caution',
    },
    {
      holds: '=IF(ISBLANK(class); 1 > 0; HOLEOVERCLASS(thread; class; smaller) <= 0 m)',
      otherwise:
        'Even the smaller drill is over the greatest minor diameter of the class: ask for more thread.',
      grade: 'caution',
    },
  ],
  assumptions: [
    'A drill cuts a little over its size: the thread left is a little less than this.',
    'Cutting taps: a forming tap wants a larger hole, its maker says which.',
  ],
  sources: [
    'Percent of thread = 76.98 n (D - hole): ASME B1.1-2003; the same rule for metric threads',
    'ASME B94.11M-1993 (drills), ISO 235 (millimetre drills, from memory)',
  ],
  cautions: ['A tap that breaks is sharp and hard: goggles, and no hammer on a broken one.', cutting],
  examples: [
    {
      title: '1/2-13 UNC: 27/64 leaves 78 %',
      source: 'computed: percent = 76.98 n (D - drill) = 78.18 for 27/64',
      grade: 'computed',
      inputs: { thread: '1/2-13 UNC', share: '78.1 %', drills_at_hand: 'fraction', class: '2B' },
      expect: {
        smaller: { value: '27/64 in', within: '1e-9 in' },
        smaller_leaves: { value: '0.7818', within: 1e-3 },
        larger: { value: '7/16 in', within: '1e-9 in' },
        smaller_over_class: { value: '0 in', within: '1e-9 in' },
      },
    },
    {
      title: '5/16-18 UNC at 65 % in class 2B: G is inside the class, 17/64 over it',
      source:
        'printed limits of class 2B: 0.252 to 0.265 in; drills G 0.261, 17/64 0.265625 in of B94.11M; percent by hand',
      grade: 'seen',
      inputs: { thread: '5/16-18 UNC', share: '68 %', drills_at_hand: 'inch', class: '2B' },
      expect: {
        smaller: { value: '0.261 in', within: '1e-9 in' },
        smaller_leaves: { value: '0.7136', within: 1e-3 },
        larger: { value: '17/64 in', within: '1e-9 in' },
        larger_over_class: { value: '0.625 thou', within: '0.06 thou' },
        fraction_drill: { value: '17/64 in', within: '1e-9 in' },
        fraction_leaves: { value: '0.6495', within: 1e-3 },
        fraction_over_class: { value: '0.625 thou', within: '0.06 thou' },
        number_drill: { value: '0.261 in', within: '1e-9 in' },
        number_leaves: { value: '0.7136', within: 1e-3 },
        number_over_class: { value: '0 in', within: '1e-9 in' },
        metric_drill: { value: '6.7 mm', within: '1e-6 mm' },
        metric_leaves: { value: '0.6756', within: 1e-3 },
      },
    },
  ],
  drawing: ({ hole, smaller, larger, smaller_leaves, larger_leaves, ...of }) => {
    if (smaller === undefined || larger === undefined || !(smaller > 0 && larger > 0)) return undefined;
    const nameOf = (size: number): string =>
      drills
        .filter(({ diameter }) => Math.abs(diameter - size) < 1e-9)
        .map(({ name }) => name)
        .join(' or ');
    const percent = (share: number | undefined): string =>
      share === undefined || !Number.isFinite(share) ? '' : `, ${(share * 100).toFixed(1)} % of thread`;
    const [low, high] = [nameOf(smaller), nameOf(larger)];
    if (low === '' || high === '') return undefined;
    const each = kinds.flatMap(([series, name]) => {
      const drill = of[`${series}_drill`];
      const called = drill === undefined ? '' : nameOf(drill);
      return called === '' ? [] : [`nearest ${name}: ${called}${percent(of[`${series}_leaves`])}`];
    });
    return {
      width: 320,
      height: 110 + 20 * each.length,
      shapes: [
        { kind: 'line', x1: 40, y1: 50, x2: 280, y2: 50, style: 'outline' },
        { kind: 'line', x1: 70, y1: 40, x2: 70, y2: 60, style: 'outline' },
        { kind: 'line', x1: 250, y1: 40, x2: 250, y2: 60, style: 'outline' },
        ...(hole !== undefined && Number.isFinite(hole) && larger > smaller
          ? [
              {
                kind: 'line' as const,
                x1: 70 + (180 * (hole - smaller)) / (larger - smaller),
                y1: 36,
                x2: 70 + (180 * (hole - smaller)) / (larger - smaller),
                y2: 64,
                style: 'centre' as const,
              },
            ]
          : []),
        { kind: 'text', x: 12, y: 24, text: `${low}${percent(smaller_leaves)}`, anchor: 'start' },
        { kind: 'text', x: 308, y: 90, text: `${high}${percent(larger_leaves)}`, anchor: 'end' },
        ...each.map((text, i) => ({
          kind: 'text' as const,
          x: 12,
          y: 114 + 20 * i,
          text,
          anchor: 'start' as const,
        })),
      ],
    };
  },
});
