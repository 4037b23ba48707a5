import type { SheetFile } from '../../shared/sheet/format.ts';
import { GuardedEngine } from './guarded-engine.ts';
import type { Library } from './rows/library.ts';
import type { CellResult, Contribution } from './rows/results.ts';

/** A sheet computed once: results by cell id, in the order of the sheet. */
export interface ComputedSheet {
  cells: CellResult[];
  byName(name: string): CellResult | undefined;
  budget(cell: string, output: string): Contribution[];
}

/** Computes a whole sheet, in Node or anywhere. `measured: false` leaves as-measured values out. */
export function computeSheet(
  file: SheetFile,
  library: Library,
  options: { measured?: boolean } = {},
): ComputedSheet {
  const engine = new GuardedEngine(library);
  if (options.measured === false) engine.apply({ measured: false });
  const results = engine.load(file);
  const byId = new Map(results.cells.map((cell) => [cell.id, cell]));
  // There is nobody to wait here: the verdicts that draws decide are settled at once.
  while (engine.isSettling) for (const cell of engine.draw(true).cells) byId.set(cell.id, cell);
  const idOf = new Map(file.cells.filter((cell) => cell.name).map((cell) => [cell.name as string, cell.id]));
  return {
    cells: file.cells.map((cell) => byId.get(cell.id)).filter((cell) => cell !== undefined),
    byName: (name) => byId.get(idOf.get(name) ?? ''),
    budget: (cell, output) => engine.budget(cell, output),
  };
}
