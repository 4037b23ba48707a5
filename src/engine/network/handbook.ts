import { limitDeviations } from '../../../cells/tables/iso286/iso286.ts';
import type { EngineFunction } from './functions.ts';

/** ISO 286 deviations at a nominal that is itself computed, and the way a failed condition says why. */
export const sheetFunctions: readonly EngineFunction[] = [
  { name: 'FAIL', args: { min: 1, max: 1 }, compute: (message) => ({ message: String(message) }) },
  {
    name: 'CLASS_LOWER',
    args: { min: 2, max: 2 },
    compute: (nominal, name) => deviation(nominal, name, 'lower'),
  },
  {
    name: 'CLASS_UPPER',
    args: { min: 2, max: 2 },
    compute: (nominal, name) => deviation(nominal, name, 'upper'),
  },
  {
    // Middle of a class that lies on one side of its nominal; 0 of one that holds it. A class that is not there moves
    // no size either: its lower and upper end say that it is not, so the size stands, and its spread waits.
    name: 'CLASS_MIDDLE',
    args: { min: 2, max: 2 },
    compute: (nominal, name) => {
      const [lower, upper] = [deviation(nominal, name, 'lower'), deviation(nominal, name, 'upper')];
      if (typeof lower === 'object' || typeof upper === 'object') return 0;
      return lower * upper > 0 ? (lower + upper) / 2 : 0;
    },
  },
];

function deviation(
  nominal: number | boolean | string,
  name: number | boolean | string,
  which: 'lower' | 'upper',
) {
  const found = limitDeviations(Number(nominal), String(name));
  return 'problem' in found ? { message: found.problem } : found[which];
}
