import type { Expr } from '../../language/syntax/syntax.ts';
import type { SolvedIn } from '../rows/row.ts';

/**
 * A ring of rows, cut where one is solved: the formulas round it, each after those it uses, the last that of the solved row
 * itself. In them `x` is the solved row, `r0`, `r1` ... the formulas before, and `a0`, `a1` ... the rows outside the ring.
 */
export interface Ring extends SolvedIn {
  formulas: Expr[];
  /** Rows outside. */
  outside: number;
}

/** A ring as the text that stands in a formula, in which the grid takes neither quotes nor what escapes them. */
export const ringText = (ring: Ring): string =>
  JSON.stringify(ring).replaceAll('~', '~0').replaceAll('"', '~1').replaceAll('\\', '~2');

export const ringOf = (text: string): Ring =>
  JSON.parse(text.replaceAll('~2', '\\').replaceAll('~1', '"').replaceAll('~0', '~')) as Ring;

/** Where what a formula of the ring names stands: the size that goes in, what stands outside, what comes out of each formula. */
export const slotIn =
  ({ outside }: Ring) =>
  ({ name }: { name: string }): number => {
    const at = Number(name.slice(1));
    return name === 'x' ? 0 : name.startsWith('a') ? 1 + at : 1 + outside + at;
  };
