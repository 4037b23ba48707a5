import type { ShownFigure } from '../../../shared/quantities/figures.ts';

/** Of half its spread: a move smaller than this share of it decides nothing, and its figure reads as before. */
const SEEN = 1e-3;

/**
 * How a move is written: absent where there is none, where it comes to nothing in the figures there is room for, or
 * where it is lost in the spread of what moved.
 * @param by SI.
 * @param text the move as it would be shown.
 */
export const moveText = (
  by: number | undefined,
  like: Pick<ShownFigure, 'low' | 'high'> | undefined,
  text: (by: number) => string,
): string | undefined => {
  if (by === undefined || by === 0) return undefined;
  const half = like ? (like.high - like.low) / 2 : 0;
  if (Math.abs(by) < SEEN * half) return undefined;
  const written = text(by);
  return /[1-9]/.test(written) ? written : undefined;
};
