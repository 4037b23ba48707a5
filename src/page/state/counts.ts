import type { CellResult } from '../../engine/rows/results.ts';
import { leading, ORDER, type Standing, standingOf } from '../kit/check-words.ts';

export interface CheckCounts {
  /** Checks by what they mean for the work; lines without limits are not counted. */
  of: Record<Standing, number>;
  /** Place of the first check that asks for something, worst kind first. */
  first?: { cell: string; output: string };
  total: number;
}

/** Counts a sheet's checks, in the order of its lines. */
export const countChecks = (results: Iterable<CellResult>): CheckCounts => {
  const of: Record<Standing, number> = { misses: 0, doubt: 0, waiting: 0, edge: 0, holds: 0, none: 0 };
  const firstOf = new Map<Standing, { cell: string; output: string }>();
  for (const result of results) {
    for (const [output, { check }] of Object.entries(result.outputs)) {
      const standing = standingOf(leading(check).state);
      of[standing] += 1;
      if (!firstOf.has(standing)) firstOf.set(standing, { cell: result.id, output });
    }
  }
  const worst = ORDER.slice(0, 3).find((standing) => firstOf.has(standing));
  const first = worst && firstOf.get(worst);
  const total = of.misses + of.doubt + of.waiting + of.edge + of.holds;
  return { of, total, ...(first && { first }) };
};

export const sameCounts = (a: CheckCounts, b: CheckCounts): boolean =>
  a.first?.cell === b.first?.cell &&
  a.first?.output === b.first?.output &&
  ORDER.every((standing) => a.of[standing] === b.of[standing]);
