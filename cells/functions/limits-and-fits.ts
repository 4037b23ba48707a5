import type { Movement, TradeFunction } from '../record/cell.ts';
import { limitDeviations } from '../tables/iso286/iso286.ts';
import { sizeSteps } from '../tables/iso286/steps.ts';
import { isProblem } from '../tables/table.ts';

const takes = [
  { name: 'nominal', quantity: 'length' },
  { name: 'class', text: true },
] as const;

/** One figure a row of the table. */
const movement: Movement = { moves: { nominal: 'rising' }, jumps: () => sizeSteps, steps: true };

const deviation =
  (end: 'upper' | 'lower'): TradeFunction['compute'] =>
  (nominal, designation) => {
    const found = limitDeviations(Number(nominal), String(designation));
    return isProblem(found) ? { message: found.problem } : found[end];
  };

const functions: readonly TradeFunction[] = [
  {
    name: 'UPPERDEVIATION',
    purpose: 'Upper limit deviation of a tolerance class, such as H7 or g6, at a nominal size.',
    takes,
    gives: 'length',
    compute: deviation('upper'),
    movement,
    source: 'ISO 286-1:2010 and ISO 286-2:2010',
  },
  {
    name: 'LOWERDEVIATION',
    purpose: 'Lower limit deviation of a tolerance class, such as H7 or g6, at a nominal size.',
    takes,
    gives: 'length',
    compute: deviation('lower'),
    movement,
    source: 'ISO 286-1:2010 and ISO 286-2:2010',
  },
];

export default functions;
