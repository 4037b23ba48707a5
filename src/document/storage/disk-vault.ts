import { uniqueId } from '../unique-id.ts';
import { type Database, ofSheet, openDatabase, writing } from './database.ts';
import type { ListRow, RowChange } from './row.ts';
import type { Addition, Revision, Vault } from './vault.ts';

/** Longest wait for a write to be told of, ms. What is written twice says the same. */
const PATIENCE = 12_000;

/** Keeps a shop in the browser's database. A lost connection is opened again at the next call. */
export class DiskVault implements Vault {
  private connection: Promise<Database> | undefined;
  private readonly listeners = new Set<() => void>();

  private db(): Promise<Database> {
    if (!this.connection) {
      const opening = openDatabase(() => {
        if (this.connection !== opening) return;
        this.connection = undefined;
        for (const listener of [...this.listeners]) listener();
      });
      opening.catch(() => {
        if (this.connection === opening) this.connection = undefined;
      });
      this.connection = opening;
    }
    return this.connection;
  }

  async rows() {
    return (await this.db()).getAll('list');
  }

  async changeRow(id: string, change: RowChange) {
    return writing(await this.db(), ['list'], (tx) => putRow(tx.objectStore('list'), id, change));
  }

  async updates(sheet: string) {
    const stored = await (await this.db()).getAll('updates', ofSheet(sheet));
    return { updates: stored.map(({ update }) => update), base: stored.at(-1)?.base };
  }

  async append(sheet: string, { update, base, whole }: Addition, change: RowChange) {
    const db = await this.db();
    const written = writing(db, ['updates', 'list'], async (tx) => {
      const [updates, list] = [tx.objectStore('updates'), tx.objectStore('list')];
      // Numbered within the transaction: another tab may be writing the same sheet.
      const [cursor, before] = await Promise.all([
        updates.openCursor(ofSheet(sheet), 'prev'),
        list.get(sheet),
      ]);
      const last = cursor?.value;
      const built = last !== undefined && last.base === base;
      // A base of its own, never that of before: another tab must see that what it knows is gone.
      const now = last ? last.base : uniqueId();
      const row = change(before);
      const counted = heard(updates.count(ofSheet(sheet)));
      const written = [
        heard(
          updates.add({
            sheet,
            n: (last?.n ?? 0) + 1,
            update: built ? update : whole(),
            ...(now !== undefined && { base: now }),
          }),
        ),
        row ? heard(list.put(row)) : before && heard(list.delete(sheet)),
      ];
      // From here on the browser needs this page no more: the entry is stored though the page ends.
      tx.commit();
      await Promise.all(written);
      return { count: (await counted) + 1, base: now };
    });
    return this.answered(db, written);
  }

  /** A transaction that was committed as the disk was full may never end: the connection is then given up with it. */
  private async answered<T>(db: Database, written: Promise<T>): Promise<T> {
    let timer: ReturnType<typeof setTimeout> | undefined;
    const silent = new Promise<never>((_, reject) => {
      timer = setTimeout(() => {
        this.connection = undefined;
        db.close();
        reject(new Error('the browser gave no answer'));
      }, PATIENCE);
    });
    try {
      return await Promise.race([written, silent]);
    } finally {
      clearTimeout(timer);
    }
  }

  async compact(sheet: string, merge: (updates: Uint8Array[]) => Uint8Array) {
    await writing(await this.db(), ['updates'], async (tx) => {
      const updates = tx.objectStore('updates');
      const stored = await updates.getAll(ofSheet(sheet));
      const last = stored.at(-1);
      if (!last || stored.length === 1) return;
      const update = merge(stored.map((one) => one.update));
      await updates.delete(ofSheet(sheet));
      await updates.add({ ...last, update });
    });
  }

  async discard(sheet: string) {
    await writing(await this.db(), ['updates', 'list', 'revisions'], async (tx) => {
      await tx.objectStore('updates').delete(ofSheet(sheet));
      await tx.objectStore('revisions').delete(ofSheet(sheet));
      await tx.objectStore('list').delete(sheet);
    });
  }

  async addRevision(revision: Omit<Revision, 'n'>) {
    return writing(await this.db(), ['revisions'], async (tx) => {
      const revisions = tx.objectStore('revisions');
      const last = await revisions.openKeyCursor(ofSheet(revision.sheet), 'prev');
      const added = { ...revision, n: (last?.primaryKey[1] ?? 0) + 1 };
      await revisions.add(added);
      return added;
    });
  }

  async revisions(sheet: string) {
    return (await this.db()).getAll('revisions', ofSheet(sheet));
  }

  async setting(key: string) {
    return (await this.db()).get('settings', key);
  }

  async settings() {
    const tx = (await this.db()).transaction('settings');
    const [keys, values] = await Promise.all([tx.store.getAllKeys(), tx.store.getAll(), tx.done]);
    return keys.map((key, k) => [key, values[k]] as [string, unknown]);
  }

  async changeSetting(key: string, change: (now: unknown) => unknown) {
    await writing(await this.db(), ['settings'], async (tx) => {
      const settings = tx.objectStore('settings');
      await settings.put(change(await settings.get(key)), key);
    });
  }

  onLoss(listener: () => void) {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  }

  close() {
    this.connection?.then((db) => db.close()).catch(() => {});
    this.connection = undefined;
  }
}

/** A request that others stand beside: where one of them fails, the transaction tells, and not each that ends with it. */
const heard = <T>(request: Promise<T>): Promise<T> => {
  request.catch(() => {});
  return request;
};

interface Rows {
  get(id: string): Promise<ListRow | undefined>;
  put(row: ListRow): Promise<unknown>;
  delete(id: string): Promise<void>;
}

async function putRow(list: Rows, id: string, change: RowChange): Promise<ListRow | undefined> {
  const before = await list.get(id);
  const row = change(before);
  if (row) await list.put(row);
  else if (before) await list.delete(id);
  return row;
}
