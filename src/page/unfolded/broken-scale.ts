/** A stretch of the scale, drawn true to its neighbours or, where nothing ends in it, shortened. */
export interface Stretch {
  from: number;
  to: number;
  /** Where it is drawn. */
  at: number;
  length: number;
  broken: boolean;
}

export interface BrokenScale {
  stretches: Stretch[];
  length: number;
  place: (x: number) => number;
}

/** A stretch longer than so many details is shortened. */
const LONGEST = 6;
/** Kept true on either side of an end, in details. */
const MARGIN = 1.5;
/** Drawn length of a shortened stretch, in details. */
const SHORT = 1.5;

/**
 * A scale on which a gap of thousandths can be seen beside dimensions of inches: true near every end, broken between.
 *
 * @param ends where bars begin and end.
 * @param detail the smallest thing that must be seen, such as the gap or the widest spread; above zero.
 * @param length drawn length of the whole.
 */
export const brokenScale = (ends: readonly number[], detail: number, length: number): BrokenScale => {
  const sorted = [...new Set(ends)].sort((a, b) => a - b);
  const first = sorted[0] ?? 0;
  const last = sorted.at(-1) ?? 0;
  const margin = MARGIN * detail;
  const raw: Array<{ from: number; to: number; broken: boolean }> = [];
  let from = first - margin;
  for (const [i, end] of sorted.entries()) {
    const next = sorted[i + 1];
    if (next === undefined || next - end <= 2 * margin + LONGEST * detail) continue;
    raw.push({ from, to: end + margin, broken: false });
    raw.push({ from: end + margin, to: next - margin, broken: true });
    from = next - margin;
  }
  raw.push({ from, to: last + margin, broken: false });
  const width = (one: { from: number; to: number; broken: boolean }) =>
    one.broken ? SHORT * detail : one.to - one.from;
  const whole = raw.reduce((sum, one) => sum + width(one), 0);
  const scale = whole > 0 ? length / whole : 0;
  let at = 0;
  const stretches = raw.map((one): Stretch => {
    const stretch = { ...one, at, length: width(one) * scale };
    at += stretch.length;
    return stretch;
  });
  const place = (x: number): number => {
    const stretch = stretches.find((one) => x <= one.to) ?? stretches.at(-1)!;
    const share = (x - stretch.from) / (stretch.to - stretch.from || 1);
    return Math.min(length, Math.max(0, stretch.at + share * stretch.length));
  };
  return { stretches, length, place };
};
