import type { CheckState } from '../../../shared/check.ts';
import type { CellResult, Figure, OutputResult } from '../../engine/results.ts';

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

/** Results as they stood before the last edit, kept until the next one. */
export class Baseline {
  private before = new Map<string, Record<string, OutputResult>>();

  /** To be called when an edit begins; what the sheet shows then is what the next results are compared with. */
  reset(): void {
    this.before = new Map();
  }

  /** Remembers a cell's outputs, as a copy, unless it has changed since the edit already. */
  keep(id: string, copy: () => Record<string, OutputResult>): void {
    if (!this.before.has(id)) this.before.set(id, copy());
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

export const moveOf = (old: OutputResult, now: OutputResult): Move | undefined => {
  const from = standingFigure(old)?.value;
  const to = standingFigure(now)?.value;
  const check = old.check.asNew.state === now.check.asNew.state ? undefined : old.check.asNew.state;
  if (Object.is(from, to) && check === undefined) return undefined;
  return { ...(from !== undefined && { from }), ...(to !== undefined && { to }), ...(check && { check }) };
};
