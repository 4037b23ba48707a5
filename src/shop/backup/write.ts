import { createWriteStream, existsSync } from 'node:fs';
import { rename, rm } from 'node:fs/promises';
import { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import { createGzip } from 'node:zlib';
import { bytesOf, type Database, type Row, type Run } from '../store/database.ts';

export const BACKUP_FORMAT = 'fitwright-shop';
export const BACKUP_VERSION = 1;

/** The tables of the store. */
export const TABLES: readonly string[] = ['updates', 'lost', 'keys', 'settings'];

/** A row as it is written: bytes in base64, under their own name. */
const lineOf = (table: string, row: Row): string => {
  const values = Object.entries(row).map(([column, value]) => {
    if (value instanceof Uint8Array || value instanceof ArrayBuffer)
      return [column, { base64: Buffer.from(bytesOf(value)).toString('base64') }];
    // One of the databases gives whole numbers of 64 bits as text.
    return [column, WHOLE.has(column) && value !== null ? Number(value) : value];
  });
  return `${JSON.stringify({ table, row: Object.fromEntries(values) })}\n`;
};

const WHOLE: ReadonlySet<string> = new Set([
  'n',
  'sum',
  'reads_only',
  'printed',
  'made',
  'ended',
  'last_used',
]);

/** Sheet by sheet, so that no more than one is in memory. */
async function* linesOf(run: Run): AsyncGenerator<string> {
  let count = 0;
  yield `${JSON.stringify({ format: BACKUP_FORMAT, version: BACKUP_VERSION, made: Date.now() })}\n`;
  for (const { document } of await run('SELECT DISTINCT document FROM updates ORDER BY document'))
    for (const row of await run(
      'SELECT document, bytes, sum FROM updates WHERE document = ? ORDER BY n',
      String(document),
    )) {
      count += 1;
      yield lineOf('updates', row);
    }
  // A lost value with its number: devices remember up to which they were told.
  for (const table of TABLES.filter((name) => name !== 'updates'))
    for (const row of await run(`SELECT * FROM ${table}`)) {
      count += 1;
      yield lineOf(table, row);
    }
  yield `${JSON.stringify({ end: count })}\n`;
}

/**
 * Writes everything a store has, as of one moment, into a new file that only its owner reads; the server may run meanwhile.
 * The file is there whole or not at all.
 * @returns what is wrong, in words, where nothing was written
 */
export const writeBackup = async (database: Database, file: string): Promise<string | undefined> => {
  if (existsSync(file)) return `${file} is there already: a backup overwrites nothing. Give another name.`;
  const part = `${file}.part`;
  try {
    await database.transaction(async (run) => {
      // One moment for all statements, where it does not go without saying.
      if (database.forUpdate) await run('SET TRANSACTION ISOLATION LEVEL REPEATABLE READ');
      const target = createWriteStream(part, { mode: 0o600, flush: true });
      await pipeline(Readable.from(linesOf(run)), createGzip(), target);
    });
    await rename(part, file);
    return undefined;
  } catch (error) {
    await rm(part, { force: true });
    return `The backup was not written: ${(error as Error).message}`;
  }
};
