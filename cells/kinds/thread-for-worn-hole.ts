import { defineCell } from '../record/cell.ts';
import { cutting, licensed } from '../record/hazards.ts';
import { inch, mm } from '../tables/table.ts';
import { inchThreads, metricThreads } from '../tables/threads/threads.ts';

/** Name of the thread of those sizes, for the drawing: the engine holds numbers alone. */
const nameOf = (major: number, pitch: number): string | undefined => {
  const near = (a: number, b: number): boolean => Math.abs(a - b) < 1e-8;
  const ofInch = inchThreads.find(
    (row) => near(inch(row.major), major) && near(inch(1 / row.perInch), pitch),
  );
  if (ofInch) return `${ofInch.size}-${ofInch.perInch} ${ofInch.series}`;
  const metric = metricThreads.find((row) => near(mm(row.major), major) && near(mm(row.coarse ?? 0), pitch));
  return metric ? `M${metric.major}x${metric.coarse}` : undefined;
};

/** What is cut: the thread that is found, until a larger one is taken. */
const major = 'IF(ISBLANK(thread); major; MAX(major; THREADMAJOR(thread)))';

const chosen = 'series; drills_at_hand; cleans_up_at; least_share; most_share';

export default defineCell({
  key: 'thread-for-worn-hole',
  edition: 1,
  title: 'Thread that cleans up a worn hole',
  purpose:
    'The smallest standard thread whose tapping drill cleans up a stripped or worn hole, with the wall and the engagement it leaves.',
  group: 'threads',
  inputs: [
    {
      name: 'hole',
      label: 'greatest diameter of the hole as found',
      quantity: 'length',
      role: 'measured',
      sensible: ['1 mm', '150 mm'],
      hint: 'Of all places and directions, bell mouth and torn threads included.',
    },
    {
      name: 'skin',
      label: 'to come off beyond it, on the diameter',
      quantity: 'length',
      default: '0.2 mm',
      sensible: ['0 mm', '3 mm'],
      source: 'common practice, no source: the drill must cut all round',
    },
    { name: 'series', label: 'series of threads', choice: 'thread-series' },
    { name: 'drills_at_hand', label: 'drills at hand', choice: 'drill-series', default: 'any' },
    {
      name: 'least_share',
      label: 'least share of thread',
      quantity: 'number',
      default: '55 %',
      sensible: ['0.5', '0.8'],
      source: 'common practice, no source: below half it strips',
    },
    {
      name: 'most_share',
      label: 'most share of thread',
      quantity: 'number',
      default: '77 %',
      sensible: ['0.6', '0.84'],
      source: 'common practice, no source: usual tap drills leave about three quarters',
    },
    {
      name: 'edge',
      label: 'axis of the hole to the nearest edge',
      quantity: 'length',
      optional: true,
      sensible: ['1 mm', '500 mm'],
    },
    {
      name: 'engaged',
      label: 'length of thread engaged',
      quantity: 'length',
      optional: true,
      sensible: ['2 mm', '300 mm'],
    },
    {
      name: 'thread',
      label: 'thread taken',
      choice: 'thread',
      optional: true,
      hint: 'The one found, as its drawing names it, or a larger one: other lines name it from here. A decision, so it stays when the hole is read anew.',
    },
  ],
  outputs: [
    {
      name: 'cleans_up_at',
      label: 'cleans up at',
      quantity: 'length',
      formula: '=hole + skin',
      basis: 'geometry',
    },
    {
      name: 'major',
      label: 'thread diameter',
      quantity: 'length',
      formula: `=REPAIRMAJOR(${chosen})`,
      basis: 'geometry',
      held: true,
      face: true,
      hint: 'Its name is in the drawing.',
    },
    {
      name: 'pitch',
      label: 'pitch',
      quantity: 'length',
      formula: `=REPAIRPITCH(${chosen})`,
      basis: 'geometry',
      held: true,
    },
    {
      name: 'drill',
      label: 'drill to',
      quantity: 'length',
      formula: `=IF(ISBLANK(thread); REPAIRDRILL(${chosen}); DRILLABOVE(drills_at_hand; MAX(cleans_up_at; HOLEFORSHARE(thread; most_share))))`,
      basis: 'geometry',
      held: true,
      face: true,
    },
    {
      name: 'thread_left',
      label: 'thread it leaves',
      quantity: 'number',
      formula: '=IF(ISBLANK(thread); (major - drill) / (1.299038 * pitch); THREADSHARE(thread; drill))',
      basis: 'geometry',
      face: true,
      display: { in: '%', mm: '%' },
    },
    {
      name: 'to_spare',
      label: 'drill beyond what cleans up',
      quantity: 'length',
      formula: '=drill - cleans_up_at',
      basis: 'geometry',
      limits: { lower: '=0 m' },
      display: { in: 'thou', mm: 'mm' },
    },
    {
      name: 'taken_over',
      label: 'thread taken over the one found',
      quantity: 'length',
      formula: '=THREADMAJOR(thread) - major',
      basis: 'geometry',
      limits: { lower: '=-1 um' },
      display: { in: 'thou', mm: 'mm' },
      hint: 'Below nought the thread taken does not clean the hole up.',
    },
    {
      name: 'edge_wall',
      label: 'wall left from thread to edge',
      quantity: 'length',
      formula: `=edge - ${major} / 2`,
      basis: 'geometry',
      face: true,
      limits: { lower: '=IF(ISBLANK(thread); pitch; THREADPITCH(thread))' },
      hint: 'Held to a pitch at least; half the thread diameter is better (common practice, no source).',
    },
    {
      name: 'in_diameters',
      label: 'engagement, in diameters',
      quantity: 'number',
      formula: `=engaged / ${major}`,
      basis: 'geometry',
      hint: 'What it must be for the metal is in the cell on length of engagement.',
    },
  ],
  validity: [
    {
      holds: '=IF(ISBLANK(thread); 1 > 0; thread_left >= least_share)',
      otherwise:
        'The next drill at hand leaves the thread taken less than its least share: bore the hole to size, or take another thread.',
      grade: 'caution',
    },
    {
      holds: '=AND(hole > 0 m; skin >= 0 m)',
      otherwise: 'The hole is above zero, and what comes off not below.',
      grade: 'error',
    },
    {
      holds: '=AND(least_share > 0; least_share < most_share; most_share <= 0.84)',
      otherwise: 'Least and most share of thread rise in this order, from above 0 to 84 %.',
      grade: 'error',
    },
    {
      holds: '=IF(ISBLANK(edge); 1 > 0; edge > 0 m)',
      otherwise: 'The distance to the edge is above zero.',
      grade: 'error',
    },
    {
      holds: '=IF(ISBLANK(engaged); 1 > 0; engaged > 0 m)',
      otherwise: 'The length engaged is above zero.',
      grade: 'error',
    },
    {
      holds: `=IF(ISBLANK(edge); 1 > 0; edge_wall >= ${major} / 2)`,
      otherwise:
        'Less than half a diameter is left to the edge: a cast edge breaks out. A plug or an insert keeps the old thread.',
      grade: 'caution',
    },
  ],
  assumptions: [
    'The hole is drilled about its own axis: a worn hole off its place wants boring, see the cell on bore clean-up.',
    'The bolt, its head and the hole in the cover grow with the thread: look at them before drilling.',
  ],
  sources: [
    'Percent of thread = 76.98 n (D - hole): ASME B1.1-2003; ISO 261 coarse series, of it the sizes of ISO 262 (from memory)',
    'The tables of threads and of drills',
  ],
  cautions: [
    'A drill that meets an old thread grabs and lifts the part: clamp it, and open up in steps or by a boring tool.',
    'Lifting eyes, pressure covers, brakes and steering: whether a larger thread may be cut is for someone licensed to say.',
    licensed,
    cutting,
  ],
  examples: [
    {
      title: 'Stripped 3/8-16 worn to 0.390 in: 1/2-13 with 7/16',
      source:
        'by hand along the UNC table of B1.1: 7/16-14 wants at most 0.4375 - 0.55 x 0.0928 = 0.3865 in, too small; 1/2-13 at 77 % 0.4231 in, next drill 27/64 is under it, next 7/16 leaves 62.5 %',
      grade: 'recomputed',
      inputs: {
        hole: '0.390 in',
        skin: '0.008 in',
        series: 'UNC',
        drills_at_hand: 'fraction',
        edge: '0.75 in',
        engaged: '0.75 in',
      },
      expect: {
        major: { value: '0.5 in', within: '1e-9 in' },
        drill: { value: '7/16 in', within: '1e-9 in' },
        thread_left: { value: '0.6255', within: 1e-3 },
        edge_wall: { value: '0.5 in', within: '1e-9 in' },
        in_diameters: { value: '1.5', within: 1e-9 },
      },
    },
    {
      title: 'M8 stripped to 8.1 mm: M10 with its usual 8.5 mm drill',
      source: 'ISO 2306: tap drill of M10 8.5 mm; percent of thread (10 - 8.5) / (1.299 x 1.5) = 77.0',
      grade: 'computed',
      inputs: { hole: '8.1 mm', series: 'metric', drills_at_hand: 'metric', most_share: '77 %' },
      expect: {
        major: { value: '10 mm', within: 1e-9 },
        drill: { value: '8.5 mm', within: '1e-6 mm' },
        thread_left: { value: '0.770', within: 1e-3 },
      },
    },
    {
      title: 'The same hole, M12 taken for its pin: 14 mm to the edge less half of 12 mm',
      source:
        'by hand: 14 - 12 / 2 = 8 mm of wall; 18 / 12 = 1.5 diameters engaged; 12 - 0.77 x 1.29904 x 1.75 = 10.2495 mm, next drill 10.25, (12 - 10.25) / 2.27332 = 0.7698',
      grade: 'recomputed',
      inputs: {
        hole: '8.1 mm',
        series: 'metric',
        drills_at_hand: 'metric',
        most_share: '77 %',
        edge: '14 mm',
        engaged: '18 mm',
        thread: 'M12',
      },
      expect: {
        major: { value: '10 mm', within: 1e-9 },
        taken_over: { value: '2 mm', within: 1e-9 },
        drill: { value: '10.25 mm', within: 1e-9 },
        thread_left: { value: '0.7698', within: 1e-3 },
        edge_wall: { value: '8 mm', within: 1e-9 },
        in_diameters: { value: '1.5', within: 1e-9 },
      },
    },
  ],
  drawing: ({ major, pitch, drill, cleans_up_at }) => {
    if (major === undefined || pitch === undefined || drill === undefined) return undefined;
    const name = nameOf(major, pitch);
    if (name === undefined || !(drill > 0 && drill < major)) return undefined;
    const [x, y, scale] = [110, 100, 140 / major];
    return {
      width: 320,
      height: 200,
      shapes: [
        { kind: 'circle', x, y, r: (major * scale) / 2, fill: 'section-b' },
        { kind: 'circle', x, y, r: (drill * scale) / 2, fill: 'paper' },
        ...(cleans_up_at !== undefined && cleans_up_at > 0 && cleans_up_at < major
          ? [{ kind: 'circle' as const, x, y, r: (cleans_up_at * scale) / 2, fill: 'none' as const }]
          : []),
        { kind: 'line', x1: 25, y1: y, x2: 195, y2: y, style: 'centre' },
        { kind: 'line', x1: x, y1: 15, x2: x, y2: 185, style: 'centre' },
        { kind: 'text', x: 308, y: 60, text: name, anchor: 'end' },
        {
          kind: 'dimension',
          x1: x - (drill * scale) / 2,
          y1: y,
          x2: x + (drill * scale) / 2,
          y2: y,
          offset: 84,
          of: 'drill',
        },
      ],
    };
  },
});
