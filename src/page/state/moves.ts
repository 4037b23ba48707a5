import type { CheckState } from '../../../shared/check.ts';
import type { CellResult, Figure, OutputResult } from '../../engine/results.ts';
import { leading } from '../marks/check-words.ts';

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

/** What of an output is compared: kept apart from the result itself, which the store changes in place. */
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
  private before = new Map<string, Record<string, Stood>>();

  /** To be called when an edit begins; what the sheet shows then is what the next results are compared with. */
  reset(): void {
    this.before = new Map();
  }

  /** Remembers how a cell's outputs stand, unless it has changed since the edit already. */
  keep(id: string, outputs: () => Record<string, OutputResult>): void {
    if (this.before.has(id)) return;
    const stood = Object.entries(outputs()).map(([name, output]) => [name, stoodAt(output)] as const);
    this.before.set(id, Object.fromEntries(stood));
  }

  /** @returns moves by output; only of those that changed. */
  moves(now: CellResult): Record<string, Move> {
    const before = this.before.get(now.id);
    if (!before) return {};
    const moves: Record<string, Move> = {};
    for (const [name, output] of Object.entries(now.outputs)) {
      const old = before[name];
      if (!old) continue;
      const move = moveOf(old, output);
      if (move) moves[name] = move;
    }
    return moves;
  }
}

const moveOf = (old: Stood, now: OutputResult): Move | undefined => {
  const { value: to, check: state } = stoodAt(now);
  const from = old.value;
  const check = old.check === state ? undefined : old.check;
  if (Object.is(from, to) && check === undefined) return undefined;
  return { ...(from !== undefined && { from }), ...(to !== undefined && { to }), ...(check && { check }) };
};
