import { defineCell } from '../record/cell.ts';
import { cutting } from '../record/hazards.ts';

export default defineCell({
  key: 'thread-limits',
  edition: 1,
  title: 'Thread: sizes, tap drill and limits',
  purpose:
    'Sizes of a standard thread, the drill before tapping and what thread it leaves, and the limits of a class.',
  group: 'threads',
  inputs: [
    {
      name: 'thread',
      label: 'thread',
      choice: 'thread',
      hint: 'As on the drawing, without its class: 3/8-16 UNC, 10-32, M8, M10x1.25.',
    },
    {
      name: 'class',
      label: 'class',
      choice: 'thread-class',
      optional: true,
      hint: 'Bolt: 2A, 3A, 6g. Nut: 2B, 3B, 6H.',
    },
    {
      name: 'hole',
      label: 'hole before tapping',
      quantity: 'length',
      default: '=TAPDRILL(thread)',
      sensible: ['0.5 mm', '200 mm'],
      source: 'the drill usually taken: the tables of threads',
      hint: 'The drill you have: 27/64, #7, F drill.',
    },
  ],
  outputs: [
    {
      name: 'major',
      label: 'basic major diameter',
      quantity: 'length',
      basis: 'geometry',
      formula: '=THREADMAJOR(thread)',
    },
    { name: 'pitch', label: 'pitch', quantity: 'length', basis: 'geometry', formula: '=THREADPITCH(thread)' },
    {
      name: 'pitch_diameter',
      label: 'basic pitch diameter',
      quantity: 'length',
      basis: 'geometry',
      formula: '=THREADPITCHDIAMETER(thread)',
    },
    {
      name: 'minor',
      label: 'basic minor diameter of the nut',
      quantity: 'length',
      basis: 'geometry',
      formula: '=THREADMINOR(thread)',
    },
    {
      name: 'stress_area',
      label: 'stress area of the bolt',
      quantity: 'area',
      basis: 'geometry',
      formula: '=STRESSAREA(thread)',
    },
    {
      name: 'tap_drill',
      label: 'drill to',
      quantity: 'length',
      basis: 'geometry',
      formula: '=hole',
      face: true,
    },
    {
      name: 'thread_share',
      label: 'thread left by it',
      quantity: 'number',
      basis: 'geometry',
      formula: '=THREADSHARE(thread; hole)',
      face: true,
      display: { in: '%', mm: '%' },
      hint: 'Of the full height, 0.65 of the pitch on each side. Three quarters hold nearly as much as all.',
    },
    {
      name: 'pitch_least',
      label: 'pitch diameter, least of the class',
      quantity: 'length',
      basis: 'geometry',
      formula: '=PITCHLEAST(thread; class)',
      face: true,
    },
    {
      name: 'pitch_greatest',
      label: 'pitch diameter, greatest of the class',
      quantity: 'length',
      basis: 'geometry',
      formula: '=PITCHGREATEST(thread; class)',
      face: true,
    },
    {
      name: 'over_class',
      label: 'hole over the greatest minor diameter of the class',
      quantity: 'length',
      basis: 'geometry',
      formula: '=HOLEOVERCLASS(thread; class; hole)',
      display: { in: 'thou', mm: 'um' },
      hint: '0 where it is inside its limits; below zero it is under the least.',
    },
    {
      name: 'crest_least',
      label: 'over the crests, least: major of a bolt, minor of a nut',
      quantity: 'length',
      basis: 'geometry',
      formula: '=CRESTLEAST(thread; class)',
    },
    {
      name: 'crest_greatest',
      label: 'over the crests, greatest: major of a bolt, minor of a nut',
      quantity: 'length',
      basis: 'geometry',
      formula: '=CRESTGREATEST(thread; class)',
    },
  ],
  validity: [
    {
      holds: '=IF(ISBLANK(class); 1 > 0; HOLEOVERCLASS(thread; class; hole) <= 0 m)',
      otherwise:
        'The hole is over the greatest minor diameter of the class: the thread may hold, but a plug gauge of the class rejects it. The share of thread and how far it is over say by how much; take a smaller drill where the drawing names the class.',
      grade: 'caution',
    },
    {
      holds: '=IF(ISBLANK(class); 1 > 0; HOLEOVERCLASS(thread; class; hole) >= 0 m)',
      otherwise:
        'The hole is under the least minor diameter of the class: the tap cuts heavily and may break.',
      grade: 'caution',
    },
    {
      holds: '=hole < THREADMAJOR(thread)',
      otherwise:
        'The hole is as large as the thread: no thread is left. An insert or the next size repairs it.',
      grade: 'error',
    },
    {
      holds: '=thread_share >= 0.5',
      otherwise: 'Less than half a thread: it strips. An insert or the next size repairs it.',
      grade: 'caution',
    },
    {
      holds: '=thread_share <= 0.84',
      otherwise: 'More than a full nut thread: the tap cuts at its root and breaks. Take a larger drill.',
      grade: 'caution',
    },
    {
      holds: '=hole > 0 m',
      otherwise: 'The hole is above zero.',
      grade: 'error',
    },
  ],
  assumptions: [
    'A drill cuts a little over its size, so the thread left is a little less than this.',
    'Cutting taps: a forming tap wants a larger hole, its maker says which.',
  ],
  sources: [
    'ASME B1.1-2003 (UN); ISO 261, 724, 965-1, 965-2 and ISO 2306 (metric): the tables of threads, each row with its source',
    'Percent of thread = 76.98 n (D - hole)',
  ],
  cautions: ['A tap that breaks is sharp and hard: goggles, and no hammer on a broken one.', cutting],
  examples: [
    {
      title: '5/16-18 UNC, nut 2B, with a 17/64 drill: share of thread, and over the class',
      source:
        'printed limits of class 2B: 0.252 to 0.265 in, the drill 0.265625 in; percent = 76.98 n (D - drill) by hand: 64.95',
      grade: 'seen',
      inputs: { thread: '5/16-18 UNC', class: '2B', hole: '17/64 in' },
      expect: {
        over_class: { value: '0.625 thou', within: '0.06 thou' },
        thread_share: { value: '0.6495', within: 1e-3 },
      },
    },
    {
      title: '1/2-13 UNC, nut 2B, with a 27/64 drill',
      source: 'computed: percent = 76.98 n (D - drill) = 78.18',
      grade: 'computed',
      inputs: { thread: '1/2-13 UNC', class: '2B', hole: '27/64 in' },
      expect: { thread_share: { value: '0.7818', within: 1e-3 } },
    },
    {
      title: '3/8-16 UNC, nut 2B: minor diameter',
      source: 'printed limits of class 2B: 0.307 to 0.321 in',
      grade: 'seen',
      inputs: { thread: '3/8-16 UNC', class: '2B' },
      expect: {
        crest_least: { value: '0.307 in', within: '1e-9 in' },
        crest_greatest: { value: '0.321 in', within: '1e-9 in' },
      },
    },
    {
      title: 'M10: the basic sizes',
      source: 'ISO 724 and ISO 898-1: d2 9.026, D1 8.376 mm, stress area 58.0 mm2',
      grade: 'computed',
      inputs: { thread: 'M10', class: '6H' },
      expect: {
        pitch_diameter: { value: '9.026 mm', within: '5.1e-4 mm' },
        minor: { value: '8.376 mm', within: '5.1e-4 mm' },
        stress_area: { value: '57.99 mm2', within: 1e-3 },
      },
    },
  ],
});
