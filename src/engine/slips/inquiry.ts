import type { AssembledCell } from '../rows/assembled.ts';
import type { Slip } from '../rows/results.ts';
import { Register } from './register.ts';
import { Round } from './round.ts';
import type { Standing } from './sheet-asked.ts';

/** Asks, after an edit, about what reads well but is probably not what was meant; remembers what it asked. */
export class Inquiry {
  private readonly register = new Register();
  private readonly asked = new Map<string, { slips: Slip[]; text: string }>();

  /** Slips of a cell as last asked. */
  slipsOf(cell: string): Slip[] {
    return this.asked.get(cell)?.slips ?? [];
  }

  /**
   * Takes an edit in: cells assembled anew, cells gone, and cells any of whose figures moved. Gives the cells whose
   * questions changed.
   */
  ask(
    assembled: readonly AssembledCell[],
    gone: readonly string[],
    moved: Iterable<string>,
    standing: Standing,
  ): Set<string> {
    const before = this.register.around([...gone, ...assembled.map((cell) => cell.id)]);
    this.register.take(assembled, gone, standing.scope, standing.reference);
    for (const id of gone) this.asked.delete(id);
    const examined = this.register.around(moved);
    for (const id of before) examined.add(id);
    const round = new Round(this.register, standing);
    const changed = new Set<string>();
    for (const id of examined) {
      const sheaf = this.register.sheaves.get(id);
      const record = standing.scope.records.get(id);
      const slips = sheaf && record ? round.slips(sheaf, record) : [];
      const text = slips.length > 0 ? JSON.stringify(slips) : '';
      if ((this.asked.get(id)?.text ?? '') === text) continue;
      if (text === '') this.asked.delete(id);
      else this.asked.set(id, { slips, text });
      changed.add(id);
    }
    return changed;
  }
}
