import type { Stop } from './stops.ts';

/**
 * The lines whose cautions belong to one step at the machine: all that stand on the sheet behind the step before it, up to
 * its own; with the last step those behind it too, so that none goes unsaid.
 */
export const linesOfStep = (
  order: readonly string[],
  stops: readonly Pick<Stop, 'cell'>[],
  at: number,
): string[] => {
  const place = (k: number) => order.indexOf(stops[k]?.cell ?? '');
  // Several readings of one line are one step.
  const own = place(at);
  const before = stops
    .slice(0, at)
    .reduce((last, _, k) => (place(k) < own ? Math.max(last, place(k)) : last), -1);
  const last = stops.every((_, k) => place(k) <= own);
  return order.slice(before + 1, last ? order.length : own + 1);
};
