import 'fake-indexeddb/auto';
import { deleteDB } from 'idb';
import { afterEach, beforeEach, vi } from 'vitest';
import type { Problem } from '../../../shared/problem.ts';
import { DATABASE } from '../../../src/document/storage/database.ts';
import type { OpenSheet } from '../../../src/document/storage/open-sheet.ts';
import { openShop } from '../../../src/document/storage/open-shop.ts';
import type { Shop } from '../../../src/document/storage/shop.ts';
import { printer } from '../prints.ts';

/** Every test gets an empty database; shops opened through `newShop` are closed after it. */
export function useShops(): () => Promise<Shop> {
  vi.setConfig({ testTimeout: 30_000 });
  const shops: Shop[] = [];
  beforeEach(() => deleteDB(DATABASE));
  afterEach(async () => {
    vi.restoreAllMocks();
    await Promise.all(shops.splice(0).map((shop) => shop.close()));
  });
  return async () => {
    const shop = await openShop(printer);
    shops.push(shop);
    return shop;
  };
}

/** The sheet, or a failed test. */
export function opened(sheet: OpenSheet | Problem): OpenSheet {
  if ('message' in sheet) throw new Error(sheet.message);
  return sheet;
}

/** Makes the browser refuse to add records, as when the disk is full. */
export function refuseWrites(name = 'QuotaExceededError', text = 'no space') {
  return vi.spyOn(IDBObjectStore.prototype, 'add').mockImplementation(() => {
    throw new DOMException(text, name);
  });
}

export const until = (holds: () => boolean): Promise<void> =>
  vi.waitFor(
    () => {
      if (!holds()) throw new Error('still waiting');
    },
    { timeout: 20_000, interval: 5 },
  );
