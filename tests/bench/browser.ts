/**
 * In a real Chromium against the built page: from the key that commits an entry to the last line below it that changed,
 * 300 quantities and 60 sources; opening a saved sheet of 100 lines; scrolling down one of 1,000. `npm run bench:browser -- 30`
 * for 30 edits. Prints, and adds to tests/bench/results.json. `npm run bench:browser -- windows` for what is tried on a copy
 * of such a sheet: work back, windows, a map; prints alone.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { type Browser, chromium, type Page } from '@playwright/test';
import { writeSheet } from '../../shared/sheet/write.ts';
import { browserArguments, findBrowser } from '../../src/setup/browser.mjs';
import { buildPage } from '../../src/setup/build-page.mjs';
import { ownServer } from '../browser/own-server.ts';
import { chain, chainSheet, edits, leafEntry } from './chain.ts';
import { opening } from './opening.ts';
import { quantile, round } from './quantile.ts';
import { scrolling } from './scrolling.ts';
import { triedInBrowser } from './tried-in-browser.ts';
import { type Seen, seenLines, watchLines } from './watch.ts';

const OUT = 'tests/bench/results.json';
const WARM = 10;
const [what = '100'] = process.argv.slice(2);
const EDITS = Number(what);
const OPENINGS = 9;

interface Edits {
  /** Number of the first edit: the same one twice would change nothing. */
  from: number;
  count: number;
  /** Milliseconds in which nothing must change for the edit to be over. */
  quiet: number;
  /** Milliseconds from the last sign typed to the key that takes the entry: within them it may be worked out ahead. */
  pause: number;
}

async function measure(page: Page, { from, count, quiet, pause }: Edits) {
  const of = chain(300, 60);
  const all: Seen[] = [];
  for (const [i, { leaf, micrometres }] of edits(of, from + WARM + count)
    .slice(from)
    .entries()) {
    const row = page
      .locator('[data-row]')
      .filter({ has: page.locator('.named', { hasText: new RegExp(`^q${leaf}$`) }) });
    const entry = row.locator('[data-column="entry"]');
    await entry.click();
    const editor = entry.locator('.cm-content');
    await editor.waitFor();
    await page.keyboard.press('ControlOrMeta+a');
    await page.keyboard.insertText(leafEntry(micrometres, of.leaves[leaf]?.tolerance as number));
    if (pause > 0) await page.waitForTimeout(pause);
    await page.keyboard.press('Enter');
    const one = await page.evaluate(seenLines, quiet);
    if (i >= WARM && one.changes > 0) all.push(one);
  }
  const ms = all.map((one) => one.ms);
  return {
    edits: all.length,
    medianMs: round(quantile(ms, 0.5)),
    p95Ms: round(quantile(ms, 0.95)),
    paintedByFrameP95: quantile(
      all.map((one) => one.frame),
      0.95,
    ),
  };
}

/** A chain of that size as a sheet of its own, opened, with a figure on every line. */
async function sheetOf(browser: Browser, address: string, quantities: number, sources: number) {
  const context = await browser.newContext({ viewport: { width: 1280, height: 800 } });
  const page = await context.newPage();
  await page.addInitScript(watchLines);
  await page.goto(address);
  await page.getByLabel('Open a file').setInputFiles({
    name: 'chain.json',
    mimeType: 'application/json',
    buffer: Buffer.from(writeSheet(chainSheet(chain(quantities, sources)))),
  });
  const take = page.getByRole('button', { name: 'Take it over as a new sheet' });
  await take.or(page.getByRole('grid')).first().waitFor();
  if (await take.isVisible()) await take.click();
  await page.getByRole('grid').waitFor();
  const last = page.locator('[data-row]').nth(quantities - 1);
  await last.locator('[data-column="value"] b').waitFor({ timeout: 120_000 });
  await page.locator('.saved-state', { hasText: /^saved$/ }).waitFor();
  return page;
}

async function edited(browser: Browser, address: string) {
  const page = await sheetOf(browser, address, 300, 60);
  const all = WARM + EDITS;
  const few = Math.ceil(EDITS / 4);
  const plain = await measure(page, { from: 0, count: EDITS, quiet: 300, pause: 75 });
  const atOnce = await measure(page, { from: all, count: EDITS, quiet: 300, pause: 0 });
  const session = await page.context().newCDPSession(page);
  await session.send('Emulation.setCPUThrottlingRate', { rate: 6 });
  const throttled = await measure(page, { from: 2 * all, count: few, quiet: 1000, pause: 250 });
  const throttledAtOnce = await measure(page, { from: 3 * all, count: few, quiet: 1000, pause: 0 });
  await page.context().close();
  return { plain, atOnce, throttled, throttledAtOnce };
}

async function opened(browser: Browser, address: string) {
  const page = await sheetOf(browser, address, 100, 30);
  const context = page.context();
  const sheet = page.url();
  await page.close();
  const of = (throttle: number) => opening(context, sheet, { lines: 100, times: OPENINGS, throttle });
  const rows = { plain: await of(1), throttled: await of(6) };
  await context.close();
  return rows;
}

async function scrolled(browser: Browser, address: string) {
  const page = await sheetOf(browser, address, 1000, 100);
  const down = await scrolling(page, { pixels: 30_000, speed: 4000 });
  await page.context().close();
  return down;
}

const found = findBrowser();
if (!found) throw new Error('No Chromium found: set CHROMIUM to its path.');
await buildPage();
const server = await ownServer();
const browser = await chromium.launch({
  executablePath: found.path,
  args: browserArguments,
  env: { ...(process.env as Record<string, string>), ...found.env },
});
try {
  if (what === 'windows') console.table(await triedInBrowser(browser, server.address));
  else await kept();
} finally {
  await browser.close();
  await server.stop();
}

async function kept() {
  const rows = await edited(browser, server.address);
  console.table(rows);
  const opening100 = await opened(browser, server.address);
  console.table(opening100);
  const scrolling1000 = await scrolled(browser, server.address);
  console.table({ scrolling1000 });
  const before = JSON.parse(readFileSync(OUT, 'utf8')) as Record<string, unknown>;
  const results = {
    ...before,
    browser: {
      version: browser.version(),
      quantities: 300,
      sources: 60,
      ...rows,
      opening: { quantities: 100, sources: 30, ...opening100 },
      scrolling: { quantities: 1000, sources: 100, ...scrolling1000 },
    },
  };
  writeFileSync(OUT, `${JSON.stringify(results, null, 2)}\n`);
}
