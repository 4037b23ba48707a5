import { randomBytes } from 'node:crypto';
import * as Y from 'yjs';
import { isObject } from '../../../shared/sheet/schema.ts';
import { crc32 } from '../../document/sharing/crc32.ts';
import { LOST_KEPT, type Lost } from '../../document/sharing/wire.ts';
import { wordsOf } from '../base/words.ts';
import { bytesOf, type Database, type Run } from './database.ts';

/** A value that did not remain. */
export interface LostValue extends Omit<Lost, 'n' | 'type'> {
  /** Tells it from all others of the document, whichever server finds it. */
  item: string;
  /** Who wrote it, and where: of several that one device wrote there in its absence the last is kept. */
  place: string;
}

/** A value that did not remain, as it is told. */
export interface KeptLost {
  place: string;
  lost: Lost;
}

/** One more update of a document, what did not remain because of it, and clients of Yjs that are a key's from now on. */
export interface Addition {
  document: string;
  update?: Uint8Array;
  claims?: ReadonlyMap<number, string>;
  lost?: readonly LostValue[];
}

/** A row is not what was stored. */
export class Damaged extends Error {}

/** Codes by which the databases say that their own file is damaged. */
const DAMAGED: ReadonlySet<unknown> = new Set(['SQLITE_CORRUPT', 'SQLITE_NOTADB', 'XX001', 'XX002']);

const lostIn = (content: string): Record<string, unknown> | undefined => {
  try {
    const value: unknown = JSON.parse(content);
    return isObject(value) && typeof value.key === 'string' ? value : undefined;
  } catch {
    return undefined;
  }
};

/** The rows of a document that are merged into one once there are so many. */
const MERGED_FROM = 400;

/** Rows that one statement puts in: each costs a way to the database and back. */
const IN_ONE = 50;

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
      // Stores that were begun without checksums: what is in them is read as it is.
      if (this.database.forUpdate) await run(`ALTER TABLE updates ADD COLUMN IF NOT EXISTS sum ${whole}`);
      else if ((await run("SELECT 1 FROM pragma_table_info('updates') WHERE name = 'sum'")).length === 0)
        await run(`ALTER TABLE updates ADD COLUMN sum ${whole}`);
      await run('CREATE INDEX IF NOT EXISTS updates_of ON updates (document, n)');
      await run(
        `CREATE TABLE IF NOT EXISTS lost (n ${counted}, document TEXT NOT NULL, place TEXT NOT NULL, item TEXT NOT NULL, content TEXT NOT NULL, UNIQUE (document, place))`,
      );
      await run(
        `CREATE TABLE IF NOT EXISTS keys (id TEXT PRIMARY KEY, hash ${bytes} NOT NULL, label TEXT NOT NULL, sheet TEXT, reads_only ${whole} NOT NULL, printed ${whole} NOT NULL, made ${whole} NOT NULL, ended ${whole}, last_used ${whole})`,
      );
      await run(
        `CREATE TABLE IF NOT EXISTS clients (document TEXT NOT NULL, client ${whole} NOT NULL, key_id TEXT NOT NULL, PRIMARY KEY (document, client))`,
      );
      await run('CREATE TABLE IF NOT EXISTS settings (name TEXT PRIMARY KEY, content TEXT NOT NULL)');
    });
  }

  /** Everything stored of a document, in the order in which it came. @throws Damaged where that is not what was stored */
  async load(document: string): Promise<Uint8Array[]> {
    try {
      return await this.database.transaction(async (run) =>
        (await rowsOf(run, document)).map(({ bytes }) => bytes),
      );
    } catch (error) {
      throw error instanceof Error && 'code' in error && DAMAGED.has(error.code)
        ? new Damaged(wordsOf(error))
        : error;
    }
  }

  /** Names of the documents that there are. */
  documents(): Promise<string[]> {
    return this.database.transaction(async (run) =>
      (await run('SELECT DISTINCT document FROM updates ORDER BY document')).map(({ document }) =>
        String(document),
      ),
    );
  }

  /** All of them in one transaction. @returns for each the lost values that were not known already */
  append(additions: readonly Addition[]): Promise<KeptLost[][]> {
    return this.database.transaction(async (run) => {
      const rows = additions.flatMap(({ document, update }) => (update ? [{ document, update }] : []));
      for (let from = 0; from < rows.length; from += IN_ONE) {
        const some = rows.slice(from, from + IN_ONE);
        await run(
          `INSERT INTO updates (document, bytes, sum) VALUES ${some.map(() => '(?, ?, ?)').join(', ')}`,
          ...some.flatMap(({ document, update }) => [document, update, crc32(update)]),
        );
      }
      const told: KeptLost[][] = [];
      for (const { document, lost = [], claims = [] } of additions) {
        const claimed = [...claims].map(([client, key]) => [document, client, key] as const);
        if (claimed.length > 0)
          await run(
            `INSERT INTO clients (document, client, key_id) VALUES ${claimed.map(() => '(?, ?, ?)').join(', ')} ON CONFLICT DO NOTHING`,
            ...claimed.flat(),
          );
        const news: KeptLost[] = [];
        for (const one of lost) news.push(...(await keepLost(run, document, one)));
        told.push(news);
      }
      return told;
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
      const bytes = Y.encodeStateAsUpdate(whole);
      await run('UPDATE updates SET bytes = ?, sum = ? WHERE n = ?', bytes, crc32(bytes), last.n);
      for (const { n } of rows.slice(0, -1)) await run('DELETE FROM updates WHERE n = ?', n);
      whole.destroy();
    });
  }

  /** Which key each client of Yjs is of, by its id: the first that wrote as it. */
  clients(document: string): Promise<Map<number, string>> {
    return this.database.transaction(async (run) => {
      const rows = await run('SELECT client, key_id FROM clients WHERE document = ?', document);
      return new Map(rows.map(({ client, key_id }) => [Number(client), String(key_id)]));
    });
  }

  /** The last lost values of a document, the earliest first. */
  lost(document: string): Promise<KeptLost[]> {
    return this.database.transaction(async (run) =>
      (await run('SELECT n, place, content FROM lost WHERE document = ? ORDER BY n', document)).flatMap(
        ({ n, place, content }) => {
          const lost = lostIn(String(content));
          if (lost) return [{ place: String(place), lost: { ...lost, type: 'lost', n: Number(n) } as Lost }];
          // It is told of and nothing hangs on it: the sheet opens all the same.
          console.error(`Row ${n} of the values that did not remain in ${document} cannot be read.`);
          return [];
        },
      ),
    );
  }

  /** Tells this shop from others. */
  shop(): Promise<string> {
    return this.database.transaction(async (run) => {
      const made = randomBytes(8).toString('hex');
      await run("INSERT INTO settings (name, content) VALUES ('shop', ?) ON CONFLICT DO NOTHING", made);
      const [row] = await run("SELECT content FROM settings WHERE name = 'shop'");
      return String(row?.content);
    });
  }

  /** Rejects when the database does not answer. */
  async answers(): Promise<void> {
    await this.database.transaction((run) => run('SELECT 1'));
  }
}

const keepLost = async (
  run: Run,
  document: string,
  { item, place, ...lost }: LostValue,
): Promise<KeptLost[]> => {
  const [held] = await run('SELECT item FROM lost WHERE document = ? AND place = ?', document, place);
  if (held?.item === item) return [];
  // A later one counts as new, and has a number of its own.
  if (held) await run('DELETE FROM lost WHERE document = ? AND place = ?', document, place);
  const [row] = await run(
    'INSERT INTO lost (document, place, item, content) VALUES (?, ?, ?, ?) ON CONFLICT DO NOTHING RETURNING n',
    document,
    place,
    item,
    JSON.stringify(lost),
  );
  if (!row) return [];
  await run(
    `DELETE FROM lost WHERE document = ? AND n NOT IN (SELECT n FROM lost WHERE document = ? ORDER BY n DESC LIMIT ${LOST_KEPT})`,
    document,
    document,
  );
  return [{ place, lost: { type: 'lost', n: Number(row.n), ...lost } }];
};

const rowsOf = async (
  run: Run,
  document: string,
  forUpdate = '',
): Promise<Array<{ n: number; bytes: Uint8Array }>> =>
  (await run(`SELECT n, bytes, sum FROM updates WHERE document = ? ORDER BY n${forUpdate}`, document)).map(
    ({ n, bytes, sum }) => {
      const row = { n: Number(n), bytes: bytesOf(bytes) };
      if (sum !== null && crc32(row.bytes) !== Number(sum))
        throw new Damaged(`row ${row.n} is not as it was written`);
      return row;
    },
  );
