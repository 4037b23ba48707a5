import * as Y from 'yjs';

export const ORDER = '#order';
export const GONE = '#gone';

/** Where a change came from; the origin of a Yjs transaction is one of these, or something foreign. */
export type Origin = 'local' | 'undo' | 'remote' | 'load';

/** The Yjs side of a sheet: cells and sheet settings as flat fields, nothing else known about them. */
export class Replica {
  readonly doc = new Y.Doc();
  readonly cells: Y.Map<Y.Map<unknown>> = this.doc.getMap('cells');
  readonly sheet: Y.Map<unknown> = this.doc.getMap('sheet');

  has(id: string): boolean {
    const cell = this.cells.get(id);
    return cell !== undefined && cell.get(GONE) !== true;
  }

  /** Ids of the cells that are not deleted, in no order. */
  live(): string[] {
    const ids: string[] = [];
    for (const [id, cell] of this.cells) if (cell.get(GONE) !== true) ids.push(id);
    return ids;
  }

  get(id: string, key: string): unknown {
    return this.cells.get(id)?.get(key);
  }

  fields(id: string): IterableIterator<[string, unknown]> {
    return (this.cells.get(id) ?? new Y.Map<unknown>()).entries();
  }

  transact<T>(fn: () => T, origin: Origin): T {
    return this.doc.transact(fn, origin);
  }
}
