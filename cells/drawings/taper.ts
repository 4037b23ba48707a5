import type { Drawing } from '../record/cell.ts';

/** A tapered shaft in its hub, cut along the axis; sizes in metres, taper on diameter per length. */
export const taperInHub = (v: {
  mean: number | undefined;
  length: number | undefined;
  outside: number | undefined;
  taper: number | undefined;
  names: { mean: string; length: string; outside: string; drawUp: string };
}): Drawing | undefined => {
  const { mean, length, outside, taper } = v;
  if (mean === undefined || length === undefined || outside === undefined || taper === undefined)
    return undefined;
  if (!(mean > 0 && length > 0 && outside > mean && taper > 0)) return undefined;
  const [axis, left, right, tall] = [115, 110, 230, 170];
  // A slow taper is drawn as 1 in 8, so that it is seen.
  const steep = Math.max(taper, 0.125);
  const half = (mean / outside) * (tall / 2);
  const slope = Math.min((steep * (right - left)) / 4, half * 0.6, tall / 2 - half - 4);
  const [big, small, edge] = [half + slope, half - slope, tall / 2];
  const band = (sign: number): string =>
    `M${left} ${axis + sign * big}L${left} ${axis + sign * edge}L${right} ${axis + sign * edge}L${right} ${axis + sign * small}Z`;
  return {
    width: 330,
    height: 250,
    shapes: [
      { kind: 'path', d: band(-1), fill: 'section-b' },
      { kind: 'path', d: band(1), fill: 'section-b' },
      {
        kind: 'path',
        d: `M${left - 16} ${axis - big}L${left} ${axis - big}L${right} ${axis - small}L${right + 14} ${axis - small}L${right + 14} ${axis + small}L${right} ${axis + small}L${left} ${axis + big}L${left - 16} ${axis + big}Z`,
        fill: 'section-a',
      },
      { kind: 'line', x1: left - 40, y1: axis, x2: right + 40, y2: axis, style: 'centre' },
      {
        kind: 'dimension',
        x1: (left + right) / 2,
        y1: axis - half,
        x2: (left + right) / 2,
        y2: axis + half,
        offset: -105,
        of: v.names.mean,
      },
      {
        kind: 'dimension',
        x1: right,
        y1: axis - edge,
        x2: right,
        y2: axis + edge,
        offset: 60,
        of: v.names.outside,
      },
      {
        kind: 'dimension',
        x1: left,
        y1: axis + edge,
        x2: right,
        y2: axis + edge,
        offset: -24,
        of: v.names.length,
      },
      {
        kind: 'dimension',
        x1: left - 16,
        y1: axis - big,
        x2: left,
        y2: axis - big,
        offset: 40,
        of: v.names.drawUp,
      },
    ],
    ...(taper < steep ? { exaggeration: 'taper and draw-up drawn steeper and larger than they are' } : {}),
  };
};
