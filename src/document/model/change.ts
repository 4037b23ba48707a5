import type { Reading } from './reading.ts';
import { GONE, ORDER, type Origin, type Replica } from './replica.ts';

/** What a transaction did, for those who show or compute the sheet. */
export interface Change {
  /** Cells to read again: edited, added, or showing a name that is another now. */
  changed: readonly string[];
  gone: readonly string[];
  /** Lines were added, deleted or moved. */
  order: boolean;
  /** Title block, units, rule or another setting of the sheet. */
  settings: boolean;
  origin: Origin;
}

const ORIGINS: readonly unknown[] = ['local', 'undo', 'load'];

/** Calls `emit` once after each transaction that changed something, the reading being up to date by then. */
export function watchChanges(replica: Replica, reading: Reading, emit: (change: Change) => void): void {
  let touched = new Set<string>();
  let order = false;
  let settings = false;

  replica.cells.observeDeep((events) => {
    for (const event of events) {
      const nested = event.path[0];
      const keys = event.changes.keys;
      const ids = nested === undefined ? [...keys.keys()] : [String(nested)];
      for (const id of ids) {
        touched.add(id);
        reading.touch(id);
      }
      if (nested === undefined || keys.has(GONE) || keys.has(ORDER)) order = true;
    }
  });
  replica.sheet.observe(() => {
    settings = true;
  });
  replica.doc.on('afterTransaction', (transaction) => {
    if (touched.size === 0 && !settings) return;
    const changed = reading.renamed();
    const gone: string[] = [];
    for (const id of touched) {
      if (replica.has(id)) changed.add(id);
      else gone.push(id);
    }
    const origin = ORIGINS.includes(transaction.origin) ? (transaction.origin as Origin) : 'remote';
    const change: Change = { changed: [...changed], gone, order, settings, origin };
    touched = new Set();
    order = false;
    settings = false;
    emit(change);
  });
}
