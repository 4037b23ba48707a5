/**
 * In a real Chromium against the built page: from the key that commits an entry to the last line below it that changed,
 * 300 quantities and 60 sources. `npm run bench:browser -- 30` for 30 edits. Prints, and adds to tests/bench/results.json.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { chromium, type Page } from '@playwright/test';
import { writeSheet } from '../../shared/sheet/write.ts';
import { browserArguments, findBrowser } from '../../src/setup/browser.mjs';
import { buildPage } from '../../src/setup/build-page.mjs';
import { ownServer } from '../browser/own-server.ts';
import { chain, chainSheet, edits, leafEntry } from './chain.ts';

const OUT = 'tests/bench/results.json';
const WARM = 10;
const EDITS = Number(process.argv[2] ?? 100);

interface Seen {
  /** Milliseconds from the keydown to the last change in a line's value. */
  ms: number;
  /** Frames begun between the two; the change is painted by the next. */
  frames: number;
  changes: number;
}

/** Runs in the page: watches the values of the lines from every Enter on. */
function watchLines(): void {
  const watch = { start: 0, last: 0, changes: 0, frames: [] as number[] };
  (window as unknown as { watch: typeof watch }).watch = watch;
  document.addEventListener(
    'keydown',
    (event) => {
      if (event.key !== 'Enter') return;
      Object.assign(watch, { start: performance.now(), last: 0, changes: 0, frames: [] });
    },
    { capture: true },
  );
  new MutationObserver((records) => {
    const inValue = records.filter((record) => {
      const node = record.target instanceof Element ? record.target : record.target.parentElement;
      return node?.closest('[data-column="value"]');
    });
    if (inValue.length === 0 || watch.start === 0) return;
    watch.last = performance.now();
    watch.changes += inValue.length;
  }).observe(document, { childList: true, characterData: true, subtree: true });
  const frame = (): void => {
    watch.frames.push(performance.now());
    requestAnimationFrame(frame);
  };
  requestAnimationFrame(frame);
}

async function seen(page: Page, quiet: number): Promise<Seen> {
  return page.evaluate(async (wait) => {
    const { watch } = window as unknown as {
      watch: { start: number; last: number; changes: number; frames: number[] };
    };
    const settled = (): boolean =>
      performance.now() - Math.max(watch.start, watch.last) > wait && watch.last > 0;
    const until = performance.now() + 20 * wait;
    while (!settled() && performance.now() < until) await new Promise((done) => setTimeout(done, 20));
    const frames = watch.frames.filter((at) => at > watch.start && at < watch.last).length;
    return { ms: watch.last - watch.start, frames, changes: watch.changes };
  }, quiet);
}

const quantile = (sorted: readonly number[], q: number): number =>
  sorted[Math.min(sorted.length - 1, Math.floor(q * sorted.length))] as number;

/** @param from number of the first edit: the same one twice would change nothing. */
async function measure(page: Page, quiet: number, from: number, count: number) {
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
    await page.waitForTimeout(quiet / 4);
    await page.keyboard.press('Enter');
    const one = await seen(page, quiet);
    if (i >= WARM && one.changes > 0) all.push(one);
  }
  const ms = all.map((one) => one.ms).sort((a, b) => a - b);
  const frames = all.map((one) => one.frames + 1).sort((a, b) => a - b);
  const round = (x: number): number => Number(x.toFixed(1));
  return {
    edits: all.length,
    medianMs: round(quantile(ms, 0.5)),
    p95Ms: round(quantile(ms, 0.95)),
    paintedByFrameP95: quantile(frames, 0.95),
  };
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
  const page = await browser.newPage({ viewport: { width: 1280, height: 800 } });
  await page.addInitScript(watchLines);
  await page.goto(server.address);
  await page.getByLabel('Open a file').setInputFiles({
    name: 'chain.json',
    mimeType: 'application/json',
    buffer: Buffer.from(writeSheet(chainSheet(chain(300, 60)))),
  });
  const take = page.getByRole('button', { name: 'Take it over as a new sheet' });
  await take.or(page.getByRole('grid')).first().waitFor();
  if (await take.isVisible()) await take.click();
  await page.getByRole('grid').waitFor();
  await page.locator('[data-row]').nth(299).locator('[data-column="value"] b').waitFor({ timeout: 60_000 });
  const plain = await measure(page, 300, 0, EDITS);
  const session = await page.context().newCDPSession(page);
  await session.send('Emulation.setCPUThrottlingRate', { rate: 6 });
  const throttled = await measure(page, 1000, WARM + EDITS, Math.ceil(EDITS / 4));
  const rows = { plain, throttled };
  console.table(rows);
  const before = JSON.parse(readFileSync(OUT, 'utf8')) as Record<string, unknown>;
  const results = {
    ...before,
    browser: { version: browser.version(), quantities: 300, sources: 60, ...rows },
  };
  writeFileSync(OUT, `${JSON.stringify(results, null, 2)}\n`);
} finally {
  await browser.close();
  await server.stop();
}
