import { join } from 'node:path';
import { openPostgres } from './postgres.ts';
import { openSqlite } from './sqlite.ts';
import { Store } from './store.ts';

/** The file within the data folder of a shop that keeps its own. */
const STORE_FILE = 'shop.db';

/**
 * Opens what a shop's server keeps, and makes it where there is none: in a file of the data folder, or in a database of
 * PostgreSQL that several servers share.
 *
 * @param postgres address of the database, `postgres://...`
 * @param pages at most so many pages of the file: a full disk, made at will
 */
export const openStore = async ({
  folder,
  postgres,
  pages,
}: {
  folder: string;
  postgres?: string | undefined;
  pages?: number | undefined;
}): Promise<Store> => {
  const database =
    postgres === undefined ? await openSqlite(join(folder, STORE_FILE), pages) : await openPostgres(postgres);
  const store = new Store(database);
  await store.prepare();
  return store;
};
