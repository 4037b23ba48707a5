import { createReadStream } from 'node:fs';
import { createGunzip } from 'node:zlib';
import { isObject } from '../../../shared/sheet/schema.ts';
import type { Database, Run, Value } from '../store/database.ts';
import { BACKUP_FORMAT, BACKUP_VERSION, TABLES } from './write.ts';

class NoBackup extends Error {}

const FOREIGN = 'it holds what no backup of this edition holds';

/** A row of the file, as values to be bound by the names of their columns. */
const rowIn = ({ table, row }: Record<string, unknown>): { table: string; row: [string, Value][] } => {
  if (typeof table !== 'string' || !TABLES.includes(table) || !isObject(row)) throw new NoBackup(FOREIGN);
  const values = Object.entries(row).map(([column, value]): [string, Value] => {
    if (!/^[a-z_]{1,30}$/.test(column)) throw new NoBackup(FOREIGN);
    if (value === null || typeof value === 'number' || typeof value === 'string') return [column, value];
    if (!isObject(value) || typeof value.base64 !== 'string') throw new NoBackup(FOREIGN);
    return [column, new Uint8Array(Buffer.from(value.base64, 'base64'))];
  });
  return { table, row: values };
};

const insert = (run: Run, table: string, row: readonly [string, Value][]) =>
  run(
    `INSERT INTO ${table} (${row.map(([column]) => column).join(', ')}) VALUES (${row.map(() => '?').join(', ')})${
      // The keys that a server printed since stay.
      table === 'updates' ? '' : ' ON CONFLICT DO NOTHING'
    }`,
    ...row.map(([, value]) => value),
  );

const parsed = (line: string): Record<string, unknown> => {
  let value: unknown;
  try {
    value = JSON.parse(line);
  } catch {
    value = undefined;
  }
  if (!isObject(value)) throw new NoBackup('it is not one of a shop’s server');
  return value;
};

/** Of a stream that fails it throws the failure, which a reader of lines from Node would keep to itself. */
async function* linesIn(chunks: AsyncIterable<Buffer>): AsyncGenerator<string> {
  const decoder = new TextDecoder();
  let rest = '';
  for await (const chunk of chunks) {
    const lines = (rest + decoder.decode(chunk, { stream: true })).split('\n');
    rest = lines.pop() ?? '';
    yield* lines;
  }
  if (rest !== '') yield rest;
}

const readInto = async (run: Run, file: string): Promise<number> => {
  const source = createReadStream(file);
  const plain = source.pipe(createGunzip());
  source.on('error', (error) => plain.destroy(error));
  let count = -1;
  let end: unknown;
  const documents = new Set<Value>();
  for await (const text of linesIn(plain)) {
    const line = parsed(text);
    if (count < 0) {
      if (line.format !== BACKUP_FORMAT) throw new NoBackup('it is not one of a shop’s server');
      if (line.version !== BACKUP_VERSION)
        throw new NoBackup(
          `its version is ${String(line.version)}, and this edition reads ${BACKUP_VERSION}`,
        );
      count = 0;
    } else if ('end' in line) {
      end = line.end;
    } else {
      const { table, row } = rowIn(line);
      await insert(run, table, row);
      if (table === 'updates') documents.add(Object.fromEntries(row).document ?? null);
      count += 1;
    }
  }
  if (end !== count) throw new NoBackup('its end is missing');
  return documents.size;
};

/**
 * Takes a backup into a store that has no sheet: all of it or nothing.
 * @returns how many documents came; what is wrong, in words, where nothing was taken in
 */
export const readBackup = async (database: Database, file: string): Promise<number | string> => {
  try {
    return await database.transaction(async (run) => {
      if ((await run('SELECT n FROM updates LIMIT 1')).length > 0)
        throw new NoBackup(
          'the store has sheets already, and a backup is never mixed with them. Give an empty folder: --data FOLDER',
        );
      const documents = await readInto(run, file);
      // A number that was given here is not counted by a sequence.
      if (database.forUpdate)
        await run(
          "SELECT setval(pg_get_serial_sequence('lost', 'n'), (SELECT COALESCE(MAX(n), 0) + 1 FROM lost), false)",
        );
      return documents;
    });
  } catch (error) {
    const known = error instanceof NoBackup ? error.message : undefined;
    const packed =
      error instanceof Error && 'code' in error && /^Z_/.test(String(error.code))
        ? 'it is damaged or no backup'
        : undefined;
    return `${file} was not taken in: ${known ?? packed ?? (error as Error).message}.`;
  }
};
