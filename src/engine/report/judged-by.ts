import { type Band, bandOf } from '../../../shared/checks/band.ts';
import type { Place } from '../../../shared/checks/states.ts';
import type { Figure, OutputResult } from '../rows/results.ts';
import { wearSide } from './limit-figures.ts';

/** A figure and the band that its verdict goes by. */
export interface Judged {
  figure: Figure;
  band: Band;
}

/** The least and the greatest by which a figure with a form is judged: it is shown by its mean, which decides nothing. */
export interface Extremes {
  least: Judged;
  greatest: Judged;
}

/** Undefined where the figure itself is judged. */
export function extremesOf(output: OutputResult | undefined): Extremes | undefined {
  const { ends, ...limits } = output?.limits ?? {};
  if (!output || !ends) return undefined;
  const judged = (figure: Figure, side: 'lower' | 'upper'): Judged => {
    const limit = limits[side];
    return { figure, band: bandOf(figure, limit && { ...output, limits: { [side]: limit } }, true) };
  };
  return { least: judged(ends.least, 'lower'), greatest: judged(ends.greatest, 'upper') };
}

/** The end that is held to a limit. */
export const heldTo = ({ least, greatest }: Extremes, at: Place, limits: OutputResult['limits']): Judged =>
  at === 'upper' || (at === 'wear' && limits && wearSide(limits) === 'high') ? greatest : least;

/** Lengths alone have a form: repeated readings of anything else are one figure, known by their mean. */
export const isOfForm = (name: string, { quantity }: OutputResult): boolean =>
  quantity === 'length' || (name !== 'out_of_round' && name !== 'taper');
