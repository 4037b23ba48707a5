import type { Drawing } from '../record/cell.ts';

/** Flank section of a thread with its three wires. Lengths in one unit, angle in radians; `over` names what is dimensioned. */
export function wiresInThread(of: {
  pitch: number;
  wire: number;
  angle: number;
  over: string;
}): Drawing | undefined {
  const half = of.angle / 2;
  if (!(of.pitch > 0) || !(half > 0.1) || !(half < 1.4)) return undefined;
  const pitch = 60;
  const scale = pitch / of.pitch;
  const depth = Math.min(70, (pitch / 2 / Math.tan(half)) * 0.75);
  const flat = pitch / 2 - depth * Math.tan(half);
  const radius = Math.min(pitch / 2 - 1, (of.wire * scale) / 2);
  // Height of a wire's centre above the sharp bottom of its groove.
  const up = radius / Math.sin(half);
  const sharp = (pitch - flat) / 2 / Math.tan(half);
  const top = 70;
  const bottom = 190;
  const points: string[] = [];
  const wave = (from: number, to: number, y: number, out: number, shift: number) => {
    const step = from < to ? 1 : -1;
    for (let i = from; i !== to; i += step) {
      const x = 20 + shift + i * pitch;
      const crest = flat / 2;
      points.push(`${x - step * crest} ${y}`, `${x + step * crest} ${y}`);
      points.push(`${x + (step * pitch) / 2 - step * crest} ${y + out * depth}`);
      points.push(`${x + (step * pitch) / 2 + step * crest} ${y + out * depth}`);
    }
  };
  wave(0, 5, top, 1, 0);
  wave(5, 0, bottom, -1, -pitch / 2);
  const groove = top + sharp - up;
  const lower = bottom - sharp + up;
  return {
    width: 340,
    height: 260,
    shapes: [
      { kind: 'path', d: `M${points.join(' L')} Z`, fill: 'section-a' },
      { kind: 'circle', x: 20 + 1.5 * pitch, y: groove, r: radius, fill: 'none' },
      { kind: 'circle', x: 20 + 2.5 * pitch, y: groove, r: radius, fill: 'none' },
      { kind: 'circle', x: 20 + 2 * pitch, y: lower, r: radius, fill: 'none' },
      { kind: 'line', x1: 10, y1: (top + bottom) / 2, x2: 330, y2: (top + bottom) / 2, style: 'centre' },
      {
        kind: 'dimension',
        x1: 20 + 2.5 * pitch,
        y1: groove - radius,
        x2: 20 + 2.5 * pitch,
        y2: lower + radius,
        offset: 130,
        of: of.over,
      },
    ],
  };
}
