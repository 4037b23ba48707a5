import type { Shape } from '../../../cells/record/cell.ts';

type DimensionShape = Extract<Shape, { kind: 'dimension' }>;

export interface DimensionLine {
  /** Ends of the dimension line itself. */
  x1: number;
  y1: number;
  x2: number;
  y2: number;
  /** Two extension lines, each from the point to a little past the dimension line. */
  extensions: Array<[number, number, number, number]>;
  /** Arrow heads as paths. */
  arrows: string[];
  text: { x: number; y: number; angle: number };
}

/**
 * Lays out a dimension by ISO 129: extension lines from the two points, the dimension line `offset` to the left of the
 * way from the first to the second, figures above the line, read from the bottom or from the right.
 * Where the arrows do not fit between the points they point in from outside, and the figures stand behind the second.
 * @param size height of the figures, in the drawing's own units
 * @param characters length of the figures
 */
export const dimensionLine = (shape: DimensionShape, size: number, characters = 0): DimensionLine => {
  const length = Math.hypot(shape.x2 - shape.x1, shape.y2 - shape.y1) || 1;
  const ux = (shape.x2 - shape.x1) / length;
  const uy = (shape.y2 - shape.y1) / length;
  const nx = uy;
  const ny = -ux;
  const x1 = shape.x1 + nx * shape.offset;
  const y1 = shape.y1 + ny * shape.offset;
  const x2 = shape.x2 + nx * shape.offset;
  const y2 = shape.y2 + ny * shape.offset;
  const past = Math.sign(shape.offset) * size * 0.4;
  const head = size * 0.7;
  // Arrows that would meet are drawn from outside, pointing in.
  const inward = length < head * 3 ? -1 : 1;
  const arrow = (x: number, y: number, way: number) =>
    `M${x} ${y}L${x + (ux * way * head - nx * head * 0.18) * 1} ${y + (uy * way * head - ny * head * 0.18)}` +
    `L${x + (ux * way * head + nx * head * 0.18)} ${y + (uy * way * head + ny * head * 0.18)}Z`;
  let angle = (Math.atan2(uy, ux) * 180) / Math.PI;
  if (angle > 90 - 1e-9) angle -= 180;
  if (angle < -90 - 1e-9) angle += 180;
  const radians = (angle * Math.PI) / 180;
  const lift = size * 0.35;
  const outside = inward === -1;
  const beyond = outside ? length / 2 + head * 1.2 + characters * size * 0.3 : 0;
  return {
    x1,
    y1,
    x2,
    y2,
    extensions:
      shape.offset === 0
        ? []
        : [
            [shape.x1, shape.y1, x1 + nx * past, y1 + ny * past],
            [shape.x2, shape.y2, x2 + nx * past, y2 + ny * past],
          ],
    arrows: [arrow(x1, y1, inward), arrow(x2, y2, -inward)],
    text: {
      x: (x1 + x2) / 2 + ux * beyond + Math.sin(radians) * (outside ? 0 : lift),
      y: (y1 + y2) / 2 + uy * beyond - Math.cos(radians) * (outside ? 0 : lift),
      angle,
    },
  };
};

/** How far a dimension's figures reach beyond a drawing of that size: left and right alike, above, below. */
export const overEdge = (
  { text }: DimensionLine,
  size: number,
  characters: number,
  { width, height }: { width: number; height: number },
): { aside: number; above: number; below: number } => {
  const radians = (text.angle * Math.PI) / 180;
  const [cos, sin] = [Math.abs(Math.cos(radians)), Math.abs(Math.sin(radians))];
  const half = characters * size * 0.3;
  const [across, up] = [half * cos + size * sin, half * sin + size * cos];
  return {
    aside: Math.max(0, across - text.x, text.x + across - width),
    above: Math.max(0, up - text.y),
    below: Math.max(0, text.y + half * sin + size * 0.3 - height),
  };
};
