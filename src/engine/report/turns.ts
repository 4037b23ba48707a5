import { hasTurn } from '../bounds/fault.ts';
import type { AssembledCell } from '../rows/assembled.ts';
import type { Remark } from '../rows/results.ts';
import type { Reading } from './reading.ts';

const TURNS: Remark = {
  grade: 'caution',
  message:
    'A branch or a step of the formula lies within the spread: the value may jump there, and both sides of it are counted.',
};

/**
 * Said of a cell whose own formula comes out by more than one branch, or at more than one step, within its spread; of a
 * figure there is: one that waits for its entries can be anything yet.
 */
export function turnRemark(
  { outputs }: AssembledCell,
  { network, grid }: Pick<Reading, 'network' | 'grid'>,
): Remark | undefined {
  for (const { planned } of outputs) {
    const row = planned === undefined ? undefined : network.rows.get(planned);
    if (row?.bound && typeof grid.nominal(row.slot) === 'number' && hasTurn(row)) return TURNS;
  }
  return undefined;
}
