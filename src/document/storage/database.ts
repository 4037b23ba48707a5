import { type DBSchema, type IDBPDatabase, type IDBPTransaction, openDB, type StoreNames } from 'idb';
import type { ListRow } from './row.ts';
import type { Revision } from './vault.ts';

export const DATABASE = 'fitwright';
const VERSION = 1;

/** `record` is the shop record: what finished jobs taught. */
export interface Schema extends DBSchema {
  /**
   * Updates of a sheet, each built on those before it. `base` names the first one, which holds all the sheet said then:
   * a tab that knows the sheet by another base must not add to this one. Absent in what older editions stored.
   */
  updates: { key: [string, number]; value: StoredUpdate };
  list: { key: string; value: ListRow };
  revisions: { key: [string, number]; value: Revision };
  record: { key: number; value: { id?: number; sheet: string } };
  settings: { key: string; value: unknown };
}

export type Database = IDBPDatabase<Schema>;
interface StoredUpdate {
  sheet: string;
  n: number;
  update: Uint8Array;
  base?: string;
}

type Writing<Names extends StoreNames<Schema>> = IDBPTransaction<Schema, Names[], 'readwrite'>;

/**
 * @param lost is called when the connection is gone: closed by the browser (which may have dropped the data), or given up
 * because the database is being deleted or is wanted by a newer edition.
 */
export function openDatabase(lost: () => void): Promise<Database> {
  return openDB<Schema>(DATABASE, VERSION, {
    upgrade(db) {
      db.createObjectStore('updates', { keyPath: ['sheet', 'n'] });
      db.createObjectStore('list', { keyPath: 'id' });
      db.createObjectStore('revisions', { keyPath: ['sheet', 'n'] });
      db.createObjectStore('record', { keyPath: 'id', autoIncrement: true });
      db.createObjectStore('settings');
    },
    blocking(_current, _blocked, event) {
      (event.target as IDBDatabase).close();
      lost();
    },
    terminated: lost,
  });
}

/** All keys of one sheet in a store keyed by sheet and number. */
export const ofSheet = (sheet: string): IDBKeyRange =>
  IDBKeyRange.bound([sheet, Number.NEGATIVE_INFINITY], [sheet, Number.POSITIVE_INFINITY]);

/**
 * One transaction that is on the disk when the promise is kept, and has left no trace when it is broken. `fn` may await
 * nothing but requests of the transaction.
 */
export async function writing<Names extends StoreNames<Schema>, T>(
  db: Database,
  stores: Names[],
  fn: (transaction: Writing<Names>) => Promise<T>,
): Promise<T> {
  const transaction = db.transaction(stores, 'readwrite', { durability: 'strict' });
  const done = transaction.done;
  done.catch(() => {}); // heard below; this only keeps it from being reported as unheard
  let result: T;
  try {
    result = await fn(transaction);
  } catch (error) {
    try {
      transaction.abort();
    } catch {
      // It had aborted by itself.
    }
    await done.catch(() => {});
    throw transaction.error ?? error;
  }
  await done;
  return result;
}
