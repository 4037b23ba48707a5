import { readFile } from 'node:fs/promises';
import type { Page } from '@playwright/test';
import { readSheet } from '../../shared/sheet/read.ts';
import { expect, test } from './fixture.ts';
import { bringIn, isSaved, shortJob } from './share-steps.ts';
import { enter, figuresAreIn, value } from './sheet-steps.ts';

/** The file a warning offers to save, read. */
const savedFile = async (page: Page) => {
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('alert').getByRole('button', { name: 'Save to a file' }).click(),
  ]);
  const read = readSheet(await readFile(await download.path(), 'utf8'));
  if (!('file' in read)) throw new Error(read.message);
  return read.file;
};

const warning = (page: Page) => page.getByRole('alert').filter({ hasText: 'Save the sheet to a file now' });

test('where the browser refuses to keep anything it is said at once, and work goes on', async ({ page }) => {
  await page.addInitScript(() => {
    IDBFactory.prototype.open = () => {
      throw new DOMException('The operation is insecure.', 'SecurityError');
    };
  });
  await page.goto('/');
  await expect(warning(page)).toContainText('refuses to keep data');
  await bringIn(page, shortJob());
  await expect(warning(page)).toBeVisible();
  await enter(page, 'bore', '2.2600 in ± 0.0002 in');
  await expect(value(page, 'od')).toContainText('2.2630');
  await expect(page.locator('.saved-state')).toHaveText('not saved');
  expect((await savedFile(page)).cells[1]!.entry).toBe('2.2600 in ± 0.0002 in');
});

test('a sheet that cannot be reached is not called deleted', async ({ page }) => {
  await bringIn(page, shortJob());
  await isSaved(page);
  await page.addInitScript(() => {
    IDBFactory.prototype.open = () => {
      throw new DOMException('Internal error opening backing store for indexedDB.open.', 'UnknownError');
    };
  });
  await page.reload();
  await expect(page.getByRole('main')).toContainText('That does not mean that it is lost');
});

test('where there is no database at all it is the same', async ({ page }) => {
  await page.addInitScript(() => {
    Object.defineProperty(window, 'indexedDB', { get: () => undefined });
  });
  await page.goto('/');
  await expect(warning(page)).toContainText('keeps no data for this page');
});

test('a database that never answers is given up, and it is said', async ({ page }) => {
  await page.addInitScript(() => {
    // A request that waits for ever behind a connection nobody closes.
    indexedDB.open('held');
    IDBFactory.prototype.open = () => indexedDB.deleteDatabase('held');
  });
  await page.goto('/');
  await expect(warning(page)).toContainText('does not answer', { timeout: 15_000 });
});

test('a full disk is said at the entry that was not saved, which is kept and saved once there is room', async ({
  page,
}) => {
  await page.addInitScript(() => {
    const { add } = IDBObjectStore.prototype;
    IDBObjectStore.prototype.add = function (this: IDBObjectStore, ...given) {
      if ((window as { full?: boolean }).full) throw new DOMException('No room.', 'QuotaExceededError');
      return add.apply(this, given);
    };
  });
  await bringIn(page, shortJob());
  await isSaved(page);
  await page.evaluate(() => {
    (window as { full?: boolean }).full = true;
  });
  await enter(page, 'bore', '2.2600 in ± 0.0002 in');
  await expect(warning(page)).toContainText('disk space for this page is full');
  await expect(value(page, 'od')).toContainText('2.2630');
  expect((await savedFile(page)).cells[1]!.entry).toBe('2.2600 in ± 0.0002 in');
  await page.evaluate(() => {
    (window as { full?: boolean }).full = false;
  });
  await page.getByRole('alert').getByRole('button', { name: 'Try again' }).click();
  await isSaved(page);
  await page.reload();
  await figuresAreIn(page);
  await expect(value(page, 'bore')).toContainText('2.2600');
});
