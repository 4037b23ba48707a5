import { extremesOf } from '../../engine/report/judged-by.ts';
import type { OutputResult } from '../../engine/rows/results.ts';
import type { OutputShow } from './show.ts';

/** What a line that is shown by its mean is judged by. */
export const judgedText = (output: OutputResult | undefined, show: OutputShow): string => {
  const extremes = extremesOf(output);
  if (!extremes) return '';
  const [least, greatest] = [extremes.least, extremes.greatest].map(({ figure, band }) => {
    const { value, beside } = show.told(figure, band);
    return `${value} ${beside}`;
  });
  return `judged by least ${least}, greatest ${greatest}`;
};
