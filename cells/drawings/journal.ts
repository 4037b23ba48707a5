import type { Drawing } from '../record/cell.ts';
import { annulus } from './annulus.ts';
import { roundly } from './rings.ts';

/** A journal low in its bush, seen along the axis, the clearance drawn large. Sizes in metres. */
export const journalInBush = (v: {
  journal: number | undefined;
  clearance: number | undefined;
  /** How far the journal stands off centre; absent: resting on the bore. */
  offCentre?: number | undefined;
  names: { journal: string; film?: string };
}): Drawing | undefined => {
  const { journal, clearance } = v;
  if (journal === undefined || clearance === undefined || !(journal > 0 && clearance > 0)) return undefined;
  if (!Number.isFinite(journal) || !Number.isFinite(clearance)) return undefined;
  const [x, y, bore, gap] = [150, 115, 80, 16];
  const share = v.offCentre === undefined ? 1 : Math.min(1, Math.max(0, (2 * v.offCentre) / clearance));
  const down = Number.isFinite(share) ? share * gap : gap;
  const shaft = bore - gap;
  const times = roundly(gap / shaft / (clearance / journal));
  return {
    width: 300,
    height: 260,
    shapes: [
      annulus(x, y, bore + 24, bore, 'section-b'),
      annulus(x, y, bore, shaft, 'gap', { x, y: y + down }),
      { kind: 'circle', x, y: y + down, r: shaft, fill: 'section-a' },
      { kind: 'line', x1: x - bore - 34, y1: y, x2: x + bore + 34, y2: y, style: 'centre' },
      { kind: 'line', x1: x, y1: y - bore - 34, x2: x, y2: y + bore + 34, style: 'centre' },
      {
        kind: 'dimension',
        x1: x - shaft,
        y1: y + down,
        x2: x + shaft,
        y2: y + down,
        offset: down - 106,
        of: v.names.journal,
      },
      ...(v.names.film && down < gap
        ? [
            {
              kind: 'dimension',
              x1: x,
              y1: y + down + shaft,
              x2: x,
              y2: y + bore,
              offset: 124,
              of: v.names.film,
            } as const,
          ]
        : []),
    ],
    ...(times > 1 ? { exaggeration: `clearance drawn about ${times} times its size` } : {}),
  };
};
