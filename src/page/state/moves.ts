import type { CheckState } from '../../../shared/checks/check.ts';
import type { CellResult, Figure, OutputResult } from '../../engine/rows/results.ts';
import { leading } from '../kit/check-words.ts';

/** The figure that downstream lines take. */
export const standingFigure = (output: OutputResult | undefined): Figure | undefined =>
  output?.stands === 'measured' ? (output.measured ?? output.planned) : (output?.planned ?? output?.measured);

/** What the last edit did to one output. */
export interface Move {
  /** Figures before and now, SI; one is missing where the output had or has none. */
  from?: number;
  to?: number;
  /** Verdict before, where it was another. */
  check?: CheckState;
}

interface Stood {
  value: number | undefined;
  check: CheckState;
}

const stoodAt = (output: OutputResult): Stood => ({
  value: standingFigure(output)?.value,
  check: leading(output.check).state,
});

/** Results as they stood before the last edit, kept until the next one. */
export class Baseline {
  private before = new Map<string, Record<string, OutputResult>>();

  /** To be called when an edit begins; what the sheet shows then is what the next results are compared with. */
  reset(): void {
    this.before = new Map();
  }

  /** Remembers how a cell's outputs stand, unless it has changed since the edit already. */
  keep(id: string, outputs: Record<string, OutputResult>): void {
    if (!this.before.has(id)) this.before.set(id, outputs);
  }

  /** @returns moves by output; only of those that changed, and nothing where none did. */
  moves(now: CellResult): Record<string, Move> | undefined {
    const before = this.before.get(now.id);
    if (!before) return undefined;
    let moves: Record<string, Move> | undefined;
    for (const name in now.outputs) {
      const [old, output] = [before[name], now.outputs[name]];
      if (!old || !output || old === output) continue;
      const move = moveOf(stoodAt(old), stoodAt(output));
      if (!move) continue;
      moves ??= {};
      moves[name] = move;
    }
    return moves;
  }
}

const moveOf = (old: Stood, { value: to, check: state }: Stood): Move | undefined => {
  const from = old.value;
  const check = old.check === state ? undefined : old.check;
  if (Object.is(from, to) && check === undefined) return undefined;
  return { ...(from !== undefined && { from }), ...(to !== undefined && { to }), ...(check && { check }) };
};
