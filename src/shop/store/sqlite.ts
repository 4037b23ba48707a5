import Libsql from 'libsql/promise';
import type { Database, Row, Run, Value } from './database.ts';

/** The part of a statement of `libsql/promise` that is used here; its own types say `any`. */
interface Statement {
  reader: boolean;
  run(values: Value[]): Promise<unknown>;
  all(values: Value[]): Promise<Row[]>;
}

/**
 * A file of SQLite. A commit is on the disk before it is told (write-ahead log, `synchronous=FULL`), and waits in a thread of
 * its own. One connection: transactions follow each other.
 *
 * @param pages at most so many pages of 4096 bytes: a full disk, made at will
 */
export async function openSqlite(file: string, pages?: number): Promise<Database> {
  // Another process (a key that is made, a backup) may hold the file for a moment.
  const connection = new Libsql(file, { timeout: 10_000 });
  const statements = new Map<string, Statement>();
  const prepared = async (sql: string): Promise<Statement> => {
    const known = statements.get(sql);
    if (known) return known;
    const statement = (await connection.prepare(sql)) as Statement;
    statements.set(sql, statement);
    return statement;
  };
  const run: Run = async (sql, ...values) => {
    const statement = await prepared(sql);
    // Bytes must be a Buffer here; any other array of bytes is taken for a list of values.
    const bound = values.map((value) => (value instanceof Uint8Array ? Buffer.from(value) : value));
    if (statement.reader) return statement.all(bound);
    await statement.run(bound);
    return [];
  };
  await run('PRAGMA journal_mode=WAL');
  await connection.exec('PRAGMA synchronous=FULL');
  if (pages !== undefined) await run(`PRAGMA max_page_count=${pages}`);

  let last: Promise<unknown> = Promise.resolve();
  return {
    transaction(work) {
      const turn = last.then(async () => {
        await connection.exec('BEGIN IMMEDIATE');
        try {
          const result = await work(run);
          await connection.exec('COMMIT');
          return result;
        } catch (error) {
          // A full disk may have ended the transaction already: then there is nothing to take back.
          await connection.exec('ROLLBACK').catch(() => {});
          throw error;
        }
      });
      last = turn.catch(() => {});
      return turn;
    },
    words: { counted: 'INTEGER PRIMARY KEY AUTOINCREMENT', bytes: 'BLOB', whole: 'INTEGER' },
    forUpdate: '',
    isFull: (error) =>
      error instanceof Error &&
      (('code' in error && error.code === 'SQLITE_FULL') || /disk is full/i.test(error.message)),
    async close() {
      await last;
      statements.clear();
      connection.close();
    },
  };
}
