import { expect, test } from 'vitest';
import { rowById, titleOf } from '../tables/reference.ts';

/** A figure the engine gave beside the one of a reference row, in the row's own unit. */
export interface Compared {
  got: number;
  expected: number;
  /** Relative. */
  within?: number;
  /** In the row's unit; in place of `within`. */
  near?: number;
}

/** One named check for one row of the reference: id, quantity, source and grade stand in its title. */
export const checkRow = (id: string, compare: () => Compared | Compared[]): void => {
  test(titleOf(rowById(id)), () => {
    const pairs = [compare()].flat();
    expect(pairs.length).toBeGreaterThan(0);
    for (const { got, expected, within, near } of pairs) {
      const tolerance = near ?? Math.abs(expected) * (within ?? 0);
      expect(Math.abs(got - expected), `got ${got}, expected ${expected}`).toBeLessThanOrEqual(tolerance);
    }
  });
};

export const expectedOf = (id: string): number => rowById(id).expected as number;
