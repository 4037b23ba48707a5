import type { Drill, DrillSeries } from '../drills.ts';
import { drillNotAbove, drillNotBelow } from '../drills.ts';
import type { TableProblem } from '../table.ts';
import { inch, mm } from '../table.ts';
import { holeForPercent, inchThreads, metricThreads } from './threads.ts';

/** Series of drills by the name a shop gives what it has at hand. */
const atHand: Readonly<Record<string, readonly DrillSeries[]>> = {
  inch: ['number', 'letter', 'fraction'],
  fraction: ['fraction'],
  number: ['number', 'letter'],
  metric: ['metric'],
  any: ['number', 'letter', 'fraction', 'metric'],
};

/** The drill of a series next to a size, below it or above. */
export const drillNext = (series: string, size: number, side: 'below' | 'above'): Drill | TableProblem => {
  const of = atHand[series];
  if (!of) return { problem: `There are no drills "${series}": inch, fraction, number, metric or any.` };
  const found = side === 'below' ? drillNotAbove(size, of) : drillNotBelow(size, of);
  return found ?? { problem: `No such drill is ${side} ${Math.round(size * 1e6) / 1e3} mm: bore the hole.` };
};

export interface ChosenThread {
  name: string;
  /** m */
  major: number;
  pitch: number;
  drill: Drill;
}

/** ISO 262 (from memory): the sizes of ISO 261 that screws and taps are kept in; M7, M9 and M11 are none of them. */
const kept = new Set([
  1.6, 2, 2.5, 3, 3.5, 4, 5, 6, 8, 10, 12, 14, 16, 18, 20, 22, 24, 27, 30, 33, 36, 39, 42, 45, 48, 52, 56, 60,
  64,
]);

const ofSeries = (series: string): { name: string; major: number; pitch: number }[] | undefined => {
  if (series === 'metric')
    return metricThreads.flatMap(({ major, coarse }) =>
      coarse === undefined || !kept.has(major)
        ? []
        : [{ name: `M${major}x${coarse}`, major: mm(major), pitch: mm(coarse) }],
    );
  if (series !== 'UNC' && series !== 'UNF') return undefined;
  return inchThreads
    .filter((row) => row.series === series)
    .map((row) => ({
      name: `${row.size}-${row.perInch} ${series}`,
      major: inch(row.major),
      pitch: inch(1 / row.perInch),
    }));
};

/**
 * The smallest thread of a series whose tapping drill cleans a worn hole up: the smallest drill that is not below `hole`
 * and leaves no more than `most` of thread must leave at least `least` of it.
 */
export const threadForHole = (
  series: string,
  drills: string,
  hole: number,
  least: number,
  most: number,
): ChosenThread | TableProblem => {
  const threads = ofSeries(series);
  if (!threads) return { problem: `There is no series "${series}": UNC, UNF or metric.` };
  for (const { name, major, pitch } of [...threads].sort((a, b) => a.major - b.major)) {
    const drill = drillNext(drills, Math.max(hole, holeForPercent(major, pitch, most * 100)), 'above');
    if ('problem' in drill) continue;
    if (drill.diameter <= holeForPercent(major, pitch, least * 100) + 1e-9)
      return { name, major, pitch, drill };
  }
  return {
    problem: `No ${series} thread has a tapping drill that cleans up a hole of ${Math.round(hole * 1e6) / 1e3} mm: plug it, or fit an insert.`,
  };
};
