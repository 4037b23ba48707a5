import type { Drawing, Shape } from '../record/cell.ts';

/** Limit deviations from the nominal size, metres, above zero upwards; names are those of the cell's outputs. */
export interface Zones {
  hole: {
    lower: number | undefined;
    upper: number | undefined;
    names: readonly [lower: string, upper: string];
  };
  shaft: {
    lower: number | undefined;
    upper: number | undefined;
    names: readonly [lower: string, upper: string];
  };
}

const WIDTH = 320;
const HEIGHT = 220;
const TOP = 24;
const BOTTOM = HEIGHT - 24;

/** Tolerance zones over a zero line, as ISO 286-1 draws them. Undefined until every deviation is known. */
export const zones = ({ hole, shaft }: Zones): Drawing | undefined => {
  const all = [hole.lower, hole.upper, shaft.lower, shaft.upper];
  if (!all.every((x): x is number => x !== undefined && Number.isFinite(x))) return undefined;
  const most = Math.max(0, ...all);
  const least = Math.min(0, ...all);
  if (most === least) return undefined;
  const y = (deviation: number): number => TOP + ((most - deviation) / (most - least)) * (BOTTOM - TOP);
  const zone = (z: Zones['hole'], x: number, fill: 'section-a' | 'section-b', text: string): Shape[] => {
    const [high, low] = [y(z.upper as number), y(z.lower as number)];
    const side = x < WIDTH / 2 ? -1 : 1;
    const edge = side < 0 ? x : x + 60;
    const name = (of: string, at: number, step: number): Shape => ({
      kind: 'dimension',
      x1: edge,
      y1: Math.min(y(0), at),
      x2: edge,
      y2: Math.max(y(0), at),
      offset: side * step,
      of,
    });
    return [
      { kind: 'rect', x, y: high, width: 60, height: low - high, fill },
      { kind: 'text', x: x + 30, y: TOP - 8, text, anchor: 'middle' },
      ...(z.upper !== 0 ? [name(z.names[1], high, 20)] : []),
      ...(z.lower !== 0 ? [name(z.names[0], low, 56)] : []),
    ];
  };
  return {
    width: WIDTH,
    height: HEIGHT,
    shapes: [
      ...zone(hole, 92, 'section-b', 'hole'),
      ...zone(shaft, 168, 'section-a', 'shaft'),
      { kind: 'line', x1: 16, y1: y(0), x2: WIDTH - 16, y2: y(0), style: 'outline' },
      { kind: 'text', x: WIDTH / 2, y: HEIGHT - 6, text: 'heavy line: nominal size', anchor: 'middle' },
    ],
    exaggeration: 'deviations alone are drawn; the size itself is left out',
  };
};
