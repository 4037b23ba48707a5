import type { TradeFunction } from '../record/cell.ts';
import { type Drill, drillNotAbove, drillNotBelow } from '../tables/drills.ts';

const drill = (
  name: string,
  purpose: string,
  find: (size: number) => Drill | undefined,
  none: string,
): TradeFunction => ({
  name,
  purpose,
  takes: [{ name: 'size', quantity: 'length' }],
  gives: 'length',
  compute: (size) => find(Number(size))?.diameter ?? { message: none },
  movement: { moves: { size: 'rising' }, steps: true },
  source: 'the table of drills: number, letter and fraction',
});

const functions: readonly TradeFunction[] = [
  drill(
    'DRILLNOTABOVE',
    'Diameter of the largest number, letter or fraction drill that is not above a size.',
    (size) => drillNotAbove(size),
    'The table of drills begins above that size.',
  ),
  drill(
    'DRILLNOTBELOW',
    'Diameter of the smallest number, letter or fraction drill that is not below a size.',
    (size) => drillNotBelow(size),
    'The table of drills ends below that size.',
  ),
];

export default functions;
