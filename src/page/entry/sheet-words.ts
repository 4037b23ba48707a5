import type { TradeFunction } from '../../../cells/record/cell.ts';
import type { Problem } from '../../../shared/problem.ts';
import { quantityKind, quantityKinds } from '../../../shared/quantities/quantities.ts';
import { say } from '../kit/words.ts';
import { loadLibrary } from '../state/library.ts';
import type { Sheet } from '../state/sheet.ts';
import type { EntrySpot } from './spot.ts';

/** A cell that a formula can name. */
interface NameWord {
  name: string;
  label: string;
  /** How its value reads now. */
  outputs: ReadonlyArray<{ name: string; label: string }>;
}

/** What the editor asks of the sheet around it; read when asked, so that it is never stale. */
export interface SheetWords {
  names: () => NameWord[];
  /** Symbols of units that fit the place, the likeliest first. */
  units: () => string[];
  /** Functions of the library, as it has them. */
  library: () => Promise<readonly TradeFunction[]>;
  problems: (text: string) => Promise<Problem[]>;
}

export const sheetWords = (sheet: Sheet, spot: EntrySpot): SheetWords => ({
  names: () =>
    sheet.state.order.flatMap((id) => {
      const line = sheet.line(id);
      if (!line?.record.name || id === spot.cell) return [];
      const outputs = Object.entries(line.result?.outputs ?? {})
        .filter(([name]) => name !== 'value')
        .map(([name, output]) => ({ name, label: say(output.label ?? '') }));
      return [{ name: line.record.name, label: say(line.record.label ?? ''), outputs }];
    }),
  units: () => {
    const system = sheet.state.units.length;
    const other = system === 'in' ? 'mm' : 'in';
    const kind = spot.quantity === undefined ? undefined : quantityKind(spot.quantity);
    const kinds = kind ? [kind] : quantityKinds;
    const symbols = [...kinds.flatMap((k) => k.units[system]), ...kinds.flatMap((k) => k.units[other])];
    return [...new Set(symbols)].filter((symbol) => symbol !== '');
  },
  library: async () => (await loadLibrary()).functions,
  problems: async (text) => {
    const { entryProblems } = await import('./check-text.ts');
    return entryProblems(sheet, spot, text);
  },
});
