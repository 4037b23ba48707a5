import type { Fill, Shape } from '../record/cell.ts';

const circle = (x: number, y: number, r: number): string =>
  `M${x - r} ${y}A${r} ${r} 0 1 0 ${x + r} ${y}A${r} ${r} 0 1 0 ${x - r} ${y}Z`;

/** A ring seen along its axis; its hole may stand off centre. One path, so that what lies behind shows through the hole only. */
export const annulus = (
  x: number,
  y: number,
  outside: number,
  bore: number,
  fill: Fill,
  hole: { x: number; y: number } = { x, y },
): Shape => ({ kind: 'path', d: circle(x, y, outside) + circle(hole.x, hole.y, bore), fill });
