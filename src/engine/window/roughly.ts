import type { Computed } from '../computed.ts';
import type { Row } from '../network/layout.ts';
import type { CheckBelow } from '../trial/checks.ts';
import { type RoughPiece, roughPieces, spreadOut } from './pieces.ts';
import type { Range } from './range.ts';
import { Sweep, WIDTH } from './sweep.ts';

/** Values at which every check is tried before changes are narrowed. */
const TRIED = 4 * WIDTH;

export interface RoughFound {
  pieces: RoughPiece[];
  never: CheckBelow[];
}

/** Parts of a range in which checks hold as far as trials over corners tell, and the checks that hold at none of the values. */
export function roughly(
  computed: Computed,
  free: Row,
  range: Range,
  about: number,
  checks: readonly CheckBelow[],
): RoughFound {
  const sweep = new Sweep(computed, [free], checks);
  const holds = (xs: Float64Array): Uint8Array[] => {
    const all = sweep.ofCheck.flat().map(() => new Uint8Array(xs.length));
    for (let from = 0; from < xs.length; from += WIDTH) {
      const part = xs.subarray(from, from + WIDTH);
      for (const [c, one] of sweep.run([part], part.length).entries()) all[c]?.set(one, from);
    }
    return all;
  };
  const near = Math.max((range.high - range.low) * 1e-10, Math.abs(about) * 1e-13);
  const xs = spreadOut(range.low, range.high, about, TRIED);
  const { pieces, never } = roughPieces(holds, sweep.ofCheck, xs, near);
  return { pieces, never: never.map((c) => checks[c] as CheckBelow) };
}
