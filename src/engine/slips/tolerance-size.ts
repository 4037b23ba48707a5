import type { Slip } from '../rows/results.ts';

/** A size that is to be cut, with its tolerance as typed, SI. */
export interface ToleranceAsked {
  text: string;
  field: string;
  size: number;
  /** Upper less lower. */
  width: number;
  /** The narrowest limits of what follows from it. */
  band: { width: number; said: string } | undefined;
  said(si: number): string;
}

/** Tolerance unit of ISO 286-1 in m: i = 0.45 D^(1/3) + 0.001 D, D in mm and i in micrometres. */
const unitOf = (size: number): number => {
  const mm = Math.abs(size) * 1e3;
  return (0.45 * Math.cbrt(mm) + 0.001 * mm) * 1e-6;
};

/** Below so many tolerance units only gauges are made: IT 5 is 7 of them (ISO 286-1; the rest common practice, no source). */
const FINEST = 2;

/** A tolerance somewhat wider than what it is to hold is a plan that may miss, and no slip. */
const WIDER = 1.5;

/** The text with every number in it times 10 or a tenth, its point moved. */
const moved = (text: string, factor: 10 | 0.1): string =>
  text.replace(/\d*\.\d+|\d+/g, (number) => {
    const places = /\.(\d+)/.exec(number)?.[1]?.length ?? 0;
    const put = (Number(number) * factor).toFixed(Math.max(0, places + (factor === 10 ? -1 : 1)));
    return Number(number) === 0 ? number : put;
  });

/** A tolerance ten times too wide for what follows from its size, or too fine for anything that is cut. */
export function toleranceQuestion({
  text,
  field,
  size,
  width,
  band,
  said,
}: ToleranceAsked): Slip | undefined {
  if (!(width > 0) || !/\d/.test(text)) return undefined;
  const key = `tolerance:${field}`;
  if (band && width > WIDER * band.width && width / 10 <= band.width)
    return {
      key,
      field,
      message: `The tolerance takes ${said(width)}, and ${band.said} leave ${said(band.width)}. Is it ten times too wide?`,
      offer: moved(text, 0.1),
      cost: width - band.width,
    };
  if (width < FINEST * unitOf(size))
    return {
      key,
      field,
      message: `A tolerance of ${said(width)} in all is finer than a size of ${said(size)} is cut to. Is it ten times too narrow?`,
      offer: moved(text, 10),
      cost: 9 * width,
    };
  return undefined;
}
