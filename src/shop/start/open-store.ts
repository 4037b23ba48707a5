import { existsSync, mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { openPostgres } from '../store/postgres.ts';
import { openSqlite } from '../store/sqlite.ts';
import { Store } from '../store/store.ts';
import { Failure } from './failure.ts';
import { holdFolder } from './in-use.ts';
import type { Options } from './options.ts';

const fileOf = ({ data }: Options): string => join(data, 'shop.sqlite');

/** Whether there may be something in the store: a database is asked by whoever opens it. */
export const hasStore = (options: Options): boolean =>
  Boolean(options.postgres) || existsSync(fileOf(options));

/**
 * Holds the data folder for this process. @returns a function that lets go
 * @throws Failure in words where another server uses it
 */
export const holdStore = ({ data, postgres }: Options): (() => void) => {
  if (postgres) return () => {};
  let letGo: (() => void) | undefined;
  try {
    mkdirSync(data, { recursive: true, mode: 0o700 });
    letGo = holdFolder(data);
  } catch (error) {
    throw new Failure(`Nothing can be kept in ${data}: ${(error as Error).message}`);
  }
  if (letGo) return letGo;
  throw new Failure(
    `A server uses ${data} already, and two would not hear of each other's edits. Stop it, or give another folder: --data FOLDER`,
  );
};

/** Where sheets and keys are kept, for people: without the password in an address. */
export const storeWords = (options: Options): string => {
  if (!options.postgres) return fileOf(options);
  const { host, pathname } = new URL(options.postgres);
  return `the database ${pathname.slice(1)} at ${host}`;
};

/** Opens the store and makes its tables where they are missing. @throws Failure in words where it cannot be had. */
export const openStore = async (options: Options): Promise<Store> => {
  const { postgres } = options;
  try {
    const store = new Store(postgres ? await openPostgres(postgres) : await openSqlite(fileOf(options)));
    await store.prepare();
    return store;
  } catch (error) {
    throw new Failure(`${storeWords(options)} cannot be opened: ${(error as Error).message}`);
  }
};
