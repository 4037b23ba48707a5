import { expect, test } from './fixture.ts';
import { isSaved, lookAt, shortJob, takeOver } from './share-steps.ts';
import { enter, value } from './sheet-steps.ts';

test('an entry is there after a reload that comes before the database has taken it', async ({
  page,
  context,
}) => {
  await lookAt(page, shortJob());
  await takeOver(page);
  await isSaved(page);
  // Another page of this browser is writing, so that the database takes nothing from this one meanwhile.
  const other = await context.newPage();
  await other.goto('/');
  await other.evaluate(async () => {
    const db = await new Promise<IDBDatabase>((settle) => {
      const opening = indexedDB.open('fitwright');
      opening.onsuccess = () => settle(opening.result);
    });
    const store = db.transaction('updates', 'readwrite').objectStore('updates');
    await new Promise<void>((begun) => {
      const again = () => {
        begun();
        if (!('enough' in globalThis)) store.count().onsuccess = again;
      };
      store.count().onsuccess = again;
    });
  });
  await enter(page, 'bore', '2.2561 in ± 0.0002 in');
  await expect(value(page, 'bore')).toContainText('2.2561');
  await page.reload();
  await other.evaluate(() => Object.assign(globalThis, { enough: true }));
  await expect(value(page, 'bore')).toContainText('2.2561');
  // And it is stored now: what was put aside is gone, the entry is not.
  await isSaved(page);
  await expect
    .poll(() => page.evaluate(() => Object.keys(localStorage).filter((key) => key.includes('left'))))
    .toEqual([]);
  await page.reload();
  await expect(value(page, 'bore')).toContainText('2.2561');
});
