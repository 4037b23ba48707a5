import type { TradeFunction } from '../record/cell.ts';
import { isProblem } from '../tables/table.ts';
import { type ChosenThread, drillNext, threadForHole } from '../tables/threads/thread-choice.ts';
import { holeForPercent, threadByDesignation } from '../tables/threads/threads.ts';

const source = 'the tables of threads and of drills; percent of thread = 76.98 n (D - hole)';

const nextDrill = (name: string, side: 'below' | 'above'): TradeFunction => ({
  name,
  purpose: `Diameter of the drill of a series next ${side} a size, or on it.`,
  takes: [
    { name: 'drills', text: true },
    { name: 'size', quantity: 'length' },
  ],
  gives: 'length',
  compute: (series, size) => {
    const found = drillNext(String(series), Number(size), side);
    return isProblem(found) ? { message: found.problem } : found.diameter;
  },
  movement: { moves: { size: 'rising' }, steps: true },
  source,
});

const chosen = (name: string, purpose: string, read: (thread: ChosenThread) => number): TradeFunction => ({
  name,
  purpose,
  takes: [
    { name: 'series', text: true },
    { name: 'drills', text: true },
    { name: 'hole', quantity: 'length' },
    { name: 'least', quantity: 'number' },
    { name: 'most', quantity: 'number' },
  ],
  gives: 'length',
  compute: (series, drills, hole, least, most) => {
    const found = threadForHole(String(series), String(drills), Number(hole), Number(least), Number(most));
    return isProblem(found) ? { message: found.problem } : read(found);
  },
  // Fewer threads will do for a larger hole, and for a narrower range of shares: then a larger one is taken.
  movement: { moves: { hole: 'rising', least: 'rising', most: 'falling' }, steps: true },
  source,
});

const functions: readonly TradeFunction[] = [
  {
    name: 'HOLEFORSHARE',
    purpose: 'Hole before tapping that leaves a share of the full thread height.',
    takes: [
      { name: 'thread', text: true },
      { name: 'share', quantity: 'number' },
    ],
    gives: 'length',
    compute: (designation, share) => {
      const found = threadByDesignation(String(designation));
      return isProblem(found)
        ? { message: found.problem }
        : holeForPercent(found.major, found.pitch, Number(share) * 100);
    },
    movement: { moves: { share: 'falling' } },
    source,
  },
  {
    name: 'THREADROOT',
    purpose: 'Root diameter of the bolt thread: what is left of the bolt under its thread.',
    takes: [{ name: 'thread', text: true }],
    gives: 'length',
    compute: (designation) => {
      const found = threadByDesignation(String(designation));
      if (isProblem(found)) return { message: found.problem };
      return found.major - (found.system === 'inch' ? 1.299038 : 1.226869) * found.pitch;
    },
    source:
      "d - 1.226869 p (metric), d - 1.299038 p (inch): Budynas & Nisbett, Shigley's Mechanical Engineering Design, Tables 8-1 and 8-2 (from memory)",
  },
  nextDrill('DRILLBELOW', 'below'),
  nextDrill('DRILLABOVE', 'above'),
  chosen(
    'REPAIRMAJOR',
    'Major diameter of the smallest thread of a series whose drill cleans a hole up.',
    ({ major }) => major,
  ),
  chosen('REPAIRPITCH', 'Pitch of that thread.', ({ pitch }) => pitch),
  chosen('REPAIRDRILL', 'Drill before tapping that thread.', ({ drill }) => drill.diameter),
];

export default functions;
