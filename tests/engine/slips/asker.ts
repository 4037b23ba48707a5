import { library } from '../../../cells/catalogue.ts';
import type { SheetFile } from '../../../shared/sheet/format.ts';
import { Engine } from '../../../src/engine/engine.ts';
import type { CellResult, Slip } from '../../../src/engine/rows/results.ts';
import { NO_HANDBOOK, parseEntry } from '../../../src/language/parse.ts';

/** Computes sheet after sheet in one engine; a fresh one now and then, so that nothing is carried along. */
export class Asker {
  private engine = new Engine(library);
  private loads = 0;

  /** Slips by cell id. */
  ask(file: SheetFile): Map<string, Slip[]> {
    return new Map(this.results(file).map((cell) => [cell.id, cell.slips]));
  }

  /** Slips by cell id, and what is asked because it cannot be read one way only. */
  askAll(file: SheetFile): Map<string, Pick<Slip, 'key' | 'message' | 'offer'>[]> {
    return new Map(
      this.results(file).map(({ id, slips, problems }) => {
        const unread = problems.filter(({ kind }) => kind === 'ask');
        return [id, [...slips, ...unread.map(({ message }) => ({ key: 'unread', message }))]];
      }),
    );
  }

  results(file: SheetFile): CellResult[] {
    if (++this.loads % 200 === 0) {
      this.engine.destroy();
      this.engine = new Engine(library);
    }
    // Ids of one sheet come again in the next: what is left of the last one goes first.
    this.engine.load({ ...file, cells: [] });
    return this.engine.load(file).cells;
  }

  close(): void {
    this.engine.destroy();
  }
}

/** Lengths in a text, SI; undefined where it holds none. */
export function valuesIn(text: string, length: 'in' | 'mm' = 'in'): number[] | undefined {
  const units = { length };
  const { entry } = parseEntry(text, { quantity: 'length', units, role: 'measured', handbook: NO_HANDBOOK });
  if (entry.kind === 'readings') return entry.stations.flat().map((one) => one.value);
  return entry.kind === 'value' || entry.kind === 'offset' ? [entry.value.value] : undefined;
}
