import * as Y from 'yjs';
import { LOST_KEPT, type Lost } from '../../document/sharing/wire.ts';
import { bytesOf, type Database, type Run } from './database.ts';

/** One more update of a document. */
export interface Addition {
  document: string;
  update: Uint8Array;
}

/** The rows of a document that are merged into one once there are so many. */
const MERGED_FROM = 400;

/** What the server keeps of documents. Updates are appended, and never overwritten: what several servers append is all there. */
export class Store {
  constructor(readonly database: Database) {}

  /** Makes the tables where they are missing. */
  prepare(): Promise<void> {
    const { counted, bytes, whole } = this.database.words;
    return this.database.transaction(async (run) => {
      // Two servers may start at once over one database; making the same table twice is an error there.
      if (this.database.forUpdate) await run('SELECT pg_advisory_xact_lock(4870)');
      await run(
        `CREATE TABLE IF NOT EXISTS updates (n ${counted}, document TEXT NOT NULL, bytes ${bytes} NOT NULL)`,
      );
      await run('CREATE INDEX IF NOT EXISTS updates_of ON updates (document, n)');
      await run(
        `CREATE TABLE IF NOT EXISTS lost (n ${counted}, document TEXT NOT NULL, item TEXT NOT NULL, content TEXT NOT NULL, UNIQUE (document, item))`,
      );
      await run(
        `CREATE TABLE IF NOT EXISTS keys (id TEXT PRIMARY KEY, hash ${bytes} NOT NULL, label TEXT NOT NULL, sheet TEXT, reads_only ${whole} NOT NULL, printed ${whole} NOT NULL, made ${whole} NOT NULL, ended ${whole}, last_used ${whole})`,
      );
      await run('CREATE TABLE IF NOT EXISTS settings (name TEXT PRIMARY KEY, content TEXT NOT NULL)');
    });
  }

  /** Everything stored of a document, in the order in which it came. */
  load(document: string): Promise<Uint8Array[]> {
    return this.database.transaction(async (run) => (await rowsOf(run, document)).map(({ bytes }) => bytes));
  }

  /** Names of the documents that there are. */
  documents(): Promise<string[]> {
    return this.database.transaction(async (run) =>
      (await run('SELECT DISTINCT document FROM updates ORDER BY document')).map(({ document }) =>
        String(document),
      ),
    );
  }

  /** All of them in one transaction. */
  append(additions: readonly Addition[]): Promise<void> {
    return this.database.transaction(async (run) => {
      for (const { document, update } of additions)
        await run('INSERT INTO updates (document, bytes) VALUES (?, ?)', document, update);
    });
  }

  /**
   * Puts one update in place of the many a document has grown to. Only rows that were read within the transaction go, so
   * that what another server appends meanwhile stays.
   */
  merge(document: string, from = MERGED_FROM): Promise<void> {
    return this.database.transaction(async (run) => {
      const rows = await rowsOf(run, document, this.database.forUpdate);
      const last = rows.at(-1);
      if (!last || rows.length < from) return;
      const whole = new Y.Doc();
      whole.transact(() => {
        for (const { bytes } of rows) Y.applyUpdate(whole, bytes);
      });
      // In place of the last row: a server that reads meanwhile finds either all or this one.
      await run('UPDATE updates SET bytes = ? WHERE n = ?', Y.encodeStateAsUpdate(whole), last.n);
      for (const { n } of rows.slice(0, -1)) await run('DELETE FROM updates WHERE n = ?', n);
      whole.destroy();
    });
  }

  /**
   * Keeps a lost value.
   * @param item tells it from others of the document: two servers may find the same one
   * @returns its number; undefined where it is kept already.
   */
  keepLost(document: string, item: string, lost: Omit<Lost, 'n' | 'type'>): Promise<number | undefined> {
    return this.database.transaction(async (run) => {
      const [row] = await run(
        'INSERT INTO lost (document, item, content) VALUES (?, ?, ?) ON CONFLICT DO NOTHING RETURNING n',
        document,
        item,
        JSON.stringify(lost),
      );
      if (!row) return undefined;
      await run(
        `DELETE FROM lost WHERE document = ? AND n NOT IN (SELECT n FROM lost WHERE document = ? ORDER BY n DESC LIMIT ${LOST_KEPT})`,
        document,
        document,
      );
      return Number(row.n);
    });
  }

  /** The last lost values of a document, the earliest first. */
  lost(document: string): Promise<Lost[]> {
    return this.database.transaction(async (run) =>
      (await run('SELECT n, content FROM lost WHERE document = ? ORDER BY n', document)).map(
        ({ n, content }) => ({ ...JSON.parse(String(content)), type: 'lost', n: Number(n) }) as Lost,
      ),
    );
  }

  /** Rejects when the database does not answer. */
  async answers(): Promise<void> {
    await this.database.transaction((run) => run('SELECT 1'));
  }
}

const rowsOf = async (
  run: Run,
  document: string,
  forUpdate = '',
): Promise<Array<{ n: number; bytes: Uint8Array }>> =>
  (await run(`SELECT n, bytes FROM updates WHERE document = ? ORDER BY n${forUpdate}`, document)).map(
    ({ n, bytes }) => ({ n: Number(n), bytes: bytesOf(bytes) }),
  );
