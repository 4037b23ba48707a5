import type { CellRecord } from '../../shared/sheet/format.ts';
import type { CellResult, Figure } from '../engine/rows/results.ts';

/**
 * Of what alone the readings of a line tell, where that is less than the part: no taper without a second place, no
 * out-of-round without a second direction. Undefined for a size that was not read, and for what is no length.
 */
export function readAt({ role }: CellRecord, { outputs }: CellResult): string | undefined {
  const value = outputs.value;
  if (role === 'cell' || value?.quantity !== 'length') return undefined;
  const isMeasured = value.stands === 'measured';
  const figure = (name: string): Figure | undefined =>
    isMeasured ? outputs[name]?.measured : outputs[name]?.planned;
  if (!isMeasured && (role !== 'measured' || !value.planned)) return undefined;
  if (!figure('taper')) return 'at one place';
  return figure('out_of_round') ? undefined : 'in one direction';
}
