import { execFileSync } from 'node:child_process';
import { closeSync, ftruncateSync, mkdtempSync, openSync, rmSync, writeSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, BrowserContext, Page } from '@playwright/test';
import { readSheet } from '../../shared/sheet/read.ts';
import { walk } from '../walk.ts';
import { expect, test } from './fixture.ts';
import { kill, type OwnBrowser, ownBrowser } from './own-browser.ts';
import { bringIn, isSaved, lookAt, shortJob, takeOver } from './share-steps.ts';
import { enter, figuresAreIn, value } from './sheet-steps.ts';

/** How often each way is gone; more when asked. */
const PROVING = process.env.FITWRIGHT_PROVE !== undefined;
const RUNS = walk(1, 20);

const entry = (k: number): string => `${(2.2 + k / 1000).toFixed(4)} in ± 0.0002 in`;
const shown = (k: number): string => (2.2 + k / 1000).toFixed(4);

const other = () => ({ ...shortJob(), title: { title: 'Pump shaft' } });

/** The sheet as the page shows it, whole, after it was closed and opened again. */
const standsWhole = async (page: Page, k: number): Promise<void> => {
  await figuresAreIn(page);
  await expect(value(page, 'bore')).toContainText(shown(k));
  await expect(value(page, 'grip')).toContainText('3');
  await expect(page.getByRole('textbox', { name: 'Title', exact: true })).toHaveValue('Countershaft bush');
};

type Loss = (page: Page, context: BrowserContext) => Promise<void>;

/** Two sheets, one of them open and saved; then the loss, an entry, and the next opening. */
const survives = async (
  page: Page,
  context: BrowserContext,
  loss: Loss,
  k: number,
  editAtOnce: boolean,
): Promise<void> => {
  await bringIn(page, other());
  await bringIn(page, shortJob());
  const address = page.url();
  await enter(page, 'bore', entry(k));
  await isSaved(page);
  await loss(page, context);
  if (editAtOnce) await enter(page, 'bore', entry(k + 1));
  const now = editAtOnce ? k + 1 : k;
  // Beside it stands, for the moment, that the last entry is not saved yet.
  const dropped = page.getByRole('alert').filter({ hasText: 'the browser dropped what it kept' });
  await expect(dropped).toContainText('Pump shaft');
  await isSaved(page);
  // What is called saved stands in the database: a fresh tab reads it there.
  await page.close();
  const fresh = await context.newPage();
  await fresh.goto(address);
  await standsWhole(fresh, now);
  await expect(fresh.getByRole('alert')).toContainText('Pump shaft');
  await fresh.getByRole('button', { name: 'I have read it' }).click();
  await fresh.goto('/#/');
  await expect(fresh.locator('.job')).toHaveText([/Countershaft bush/]);
  await expect(fresh.getByRole('alert')).toHaveCount(0);
  await fresh.close();
};

const clearSiteData: Loss = async (page, context) => {
  const session = await context.newCDPSession(page);
  const { origin } = new URL(page.url());
  await session.send('Storage.clearDataForOrigin', { origin, storageTypes: 'all' });
  await session.detach();
};

const deleteDatabase: Loss = async (_page, context) => {
  const tab = await context.newPage();
  await tab.goto('/#/');
  await tab.evaluate(
    () =>
      new Promise<void>((done, failed) => {
        const request = indexedDB.deleteDatabase('fitwright');
        request.onsuccess = () => done();
        request.onerror = () => failed(request.error);
      }),
  );
  await tab.close();
};

for (const [what, loss] of [
  ['the site’s data are cleared', clearSiteData],
  ['the database is deleted', deleteDatabase],
] as const) {
  test(`where ${what} under an open sheet, it is stored again, whole, and what is missing is named`, async ({
    browser,
    watch,
  }) => {
    test.setTimeout(60_000 + RUNS * 120_000);
    for (let run = 0; run < RUNS; run += 1) {
      const context = await browser.newContext();
      await watch(context);
      await survives(await context.newPage(), context, loss, run, run % 2 === 0);
      await context.close();
    }
  });
}

test('a sheet deleted for good in another tab is not called saved, and comes back whole with the next entry', async ({
  browser,
  watch,
}) => {
  test.setTimeout(60_000 + RUNS * 120_000);
  for (let run = 0; run < RUNS; run += 1) {
    // Nothing is in the trash yet.
    const context = await browser.newContext();
    await watch(context);
    const page = await context.newPage();
    await bringIn(page, shortJob());
    const address = page.url();
    const list = await context.newPage();
    await list.goto('/#/');
    const job = list.locator('.job', { hasText: 'Countershaft bush' }).first();
    await job.getByRole('button', { name: 'Delete', exact: true }).click();
    // The trash is marked where the sheet is open.
    await expect(page.getByRole('alert')).toContainText('This sheet has been deleted');
    await list.getByLabel('Show').selectOption('deleted');
    await list.getByRole('button', { name: 'Delete for good' }).click();
    await list.getByRole('button', { name: 'Really delete' }).click();
    await expect(list.locator('.job a')).toHaveCount(0);
    await expect(page.locator('.saved-state')).toHaveText('not saved');
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('alert').getByRole('button', { name: 'Save to a file' }).click(),
    ]);
    expect(readSheet(await readFile(await download.path(), 'utf8'))).toHaveProperty('file');
    if (run % 2 === 0) await enter(page, 'bore', entry(run));
    else await page.getByRole('button', { name: 'Try again' }).click();
    await isSaved(page);
    await page.reload();
    expect(page.url()).toBe(address);
    await figuresAreIn(page);
    await expect(value(page, 'bore')).toContainText(run % 2 === 0 ? shown(run) : '2.2513');
    await expect(value(page, 'grip')).toContainText('3');
    await list.reload();
    await expect(list.locator('.job')).toHaveText([/Countershaft bush/]);
    await context.close();
  }
  console.log(`deleted for good elsewhere: ${RUNS} runs, each told, and whole again`);
});

const SIZE = 96;

/** A file system of its own for the browser's profile, where this machine allows one. */
const smallDisk = (): { folder: string; end: () => void } | undefined => {
  const folder = mkdtempSync(join(tmpdir(), 'fitwright-full-'));
  try {
    execFileSync('mount', ['-t', 'tmpfs', '-o', `size=${SIZE}m`, 'tmpfs', folder], { stdio: 'ignore' });
  } catch {
    rmSync(folder, { recursive: true });
    return undefined;
  }
  return {
    folder,
    end: () => {
      execFileSync('umount', ['-l', folder]);
      rmSync(folder, { recursive: true });
    },
  };
};

/** Fills the disk to its last byte. @returns a function that gives the room back. */
const fill = (folder: string): (() => void) => {
  const path = join(folder, 'filler');
  const file = openSync(path, 'a');
  for (let block = 1 << 20; block >= 1; block = block >> 4) {
    try {
      for (;;) writeSync(file, Buffer.alloc(block));
    } catch {
      // No room for a block of this size.
    }
  }
  return () => {
    ftruncateSync(file, 0);
    closeSync(file);
    rmSync(path);
  };
};

test('on a disk that is really full nothing is called saved that is not, and all of it is once there is room', async ({
  baseURL,
}) => {
  const disk = smallDisk();
  test.skip(disk === undefined, 'This machine lets nobody mount a small file system for the profile.');
  test.setTimeout(120_000 + RUNS * 120_000);
  let own: OwnBrowser | undefined;
  try {
    own = await ownBrowser(disk!.folder);
    let page = await firstPage(own.browser);
    await lookAt(page, shortJob(), 'sheet.json', baseURL!);
    await takeOver(page);
    let address = page.url();
    await isSaved(page);
    let k = 0;
    const came = { whole: 0, dropped: 0, filled: 0 };
    // Killed while its disk is full, the browser itself may drop what it kept, which the page can only say: that is for
    // a proof, whose figures are told. In every test run room is made again.
    for (let run = PROVING ? 0 : 1; run < (PROVING ? RUNS : RUNS + 1); run += 1) {
      const free = fill(disk!.folder);
      let saved = k;
      // Entries until the browser has nothing left to write them to.
      let full = false;
      for (let n = 0; n < 40 && !full; n += 1) {
        k += 1;
        await enter(page, 'bore', entry(k));
        await expect(page.locator('.saved-state')).toHaveText(/^(saved|not saved)$/);
        full = (await page.locator('.saved-state').textContent()) !== 'saved';
        if (!full) saved = k;
      }
      if (full) {
        came.filled += 1;
        // Or the browser has dropped what it kept, and made room by it: then the sheet is stored anew, and the page says so.
        const told = page
          .getByRole('alert')
          .filter({ hasText: /Save the sheet to a file now|the browser dropped what it kept/ });
        await expect(told.first()).toBeVisible();
      }
      if (run % 2 === 0) {
        // Ended while the disk is full: what was called saved stands, or is told to be gone.
        await kill(own);
        free();
        own = await ownBrowser(disk!.folder);
        page = await firstPage(own.browser);
        await page.goto(address);
        const absent = page.getByRole('heading', { name: 'The sheet does not open' });
        await expect(absent.or(value(page, 'bore'))).toBeVisible();
        if (await absent.isVisible()) {
          came.dropped += 1;
          await lookAt(page, shortJob(), 'sheet.json', baseURL!);
          await takeOver(page);
          address = page.url();
        } else {
          await figuresAreIn(page);
          const kept = (await value(page, 'bore').locator('b').first().textContent()) ?? '';
          expect(Number(kept.slice(0, 6)), `run ${run}`).toBeGreaterThanOrEqual(Number(shown(saved)));
          came.whole += 1;
        }
        await expect(value(page, 'grip')).toContainText('3');
        await enter(page, 'bore', entry(k));
      } else {
        free();
        const again = page.getByRole('alert').getByRole('button', { name: 'Try again' });
        // Room may have been found meanwhile: a try of its own comes every few seconds.
        if (full && (await again.isVisible())) await again.click({ timeout: 5000 }).catch(() => {});
      }
      await isSaved(page);
      await page.reload();
      await standsWhole(page, k);
    }
    // Else the disk was not full, and nothing was shown.
    expect(came.filled).toBeGreaterThan(0);
    console.log(
      `full disk: ${RUNS} times, no room for an entry in ${came.filled}; ended meanwhile: whole ${came.whole}, dropped by the browser and told ${came.dropped}`,
    );
  } finally {
    if (own) await kill(own);
    disk?.end();
  }
});

const firstPage = (browser: Browser): Promise<Page> => browser.contexts()[0]!.newPage();
