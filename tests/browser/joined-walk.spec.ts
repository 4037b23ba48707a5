import type { Page } from '@playwright/test';
import { shopServer } from '../shop-server.ts';
import { walk } from '../walk.ts';
import { expect, test } from './fixture.ts';
import { atServer, device, entryOf, joinAs, launchOptions, sharedIn, shareFirst } from './joined-steps.ts';
import { shortJob } from './share-steps.ts';
import { enter, figuresAreIn } from './sheet-steps.ts';

/** How often the server is killed, and how much each device enters round each time. */
const ROUNDS = walk(1, 20);
const EDITS = walk(2, 50);

test.use({ launchOptions });

const own = ['desk_size', 'bench_size', 'phone_size'] as const;
const job = shortJob(
  own.map((name, k) => ({ id: `d${k}`, role: 'given', name, quantity: 'length', entry: '1 in' })),
);

const textOf = async (page: Page, name: string): Promise<string> =>
  (await entryOf(page, name).textContent()) ?? '';

const entries = (page: Page): Promise<string[]> =>
  Promise.all(['bore', 'grip', ...own].map((name) => textOf(page, name)));

const sizeAt = (edit: number): string => `${(1 + edit / 10_000).toFixed(4)} in`;

/** Enters one text after the other in a line: the first by a click, the others by the keyboard alone, which is where it was left. */
const enterAll = async (page: Page, name: string, texts: readonly string[]): Promise<void> => {
  const [first, ...more] = texts;
  if (first === undefined) return;
  await enter(page, name, first);
  for (const text of more) {
    await page.keyboard.press('Enter');
    await page.keyboard.press('ControlOrMeta+a');
    await page.keyboard.insertText(text);
    await page.keyboard.press('Enter');
    await page.waitForFunction(
      ([id, said]) =>
        document.querySelector(`[data-cell="${id}"] [data-column="entry"]`)?.textContent?.includes(said!),
      [`d${own.indexOf(name as (typeof own)[number])}`, text],
    );
  }
};

test(`three devices enter ${ROUNDS * EDITS} each while the server is killed ${ROUNDS} times: all end alike, and every value that does not stand is told`, async ({
  browser,
  watch,
  expectComplaint,
}) => {
  test.setTimeout(120_000 + ROUNDS * (60_000 + EDITS * 6000));
  expectComplaint(/WebSocket connection to|ERR_CONNECTION_REFUSED/);
  const server = await shopServer();
  const pages = [await device(server, browser, watch), await device(server, browser, watch)];
  pages.push(await device(server, browser, watch, true));
  await shareFirst(pages[0]!, server, job);
  for (const [k, page] of pages.entries()) {
    if (k === 0) continue;
    await joinAs(page, server, k === 1 ? 'Bench' : 'Phone');
    await page.getByRole('button', { name: 'I have read it' }).click();
    await sharedIn(page).getByRole('button', { name: 'Open it here too' }).click();
    await figuresAreIn(page);
    await atServer(page);
  }
  const told = (page: Page) => page.getByRole('alert').filter({ hasText: 'Changed in two places' });
  const readings: string[] = [];
  let n = 0;
  for (let round = 0; round < ROUNDS; round += 1) {
    // Half of what each enters with the server, half without it.
    const enterOwn = async (from: number, to: number) =>
      Promise.all(
        pages.map((page, k) =>
          enterAll(
            page,
            own[k]!,
            Array.from({ length: to - from }, (_, i) => sizeAt(round * EDITS + from + i)),
          ),
        ),
      );
    await enterOwn(0, EDITS >> 1);
    await server.kill();
    await enterOwn(EDITS >> 1, EDITS);
    const formulas: string[] = [];
    for (const page of pages) {
      n += 1;
      const reading = (2.25 + n / 10_000).toFixed(4);
      readings.push(reading);
      const before = await textOf(page, 'bore');
      const list = before.replace(/ in.*/s, '').trim();
      await enter(page, 'bore', `${list}; ${reading} in ± 0.0002 in`);
      formulas.push(`=${n + 1} * (od - bore)`);
      await enter(page, 'grip', formulas.at(-1)!);
    }
    await server.start();
    for (const page of pages) await atServer(page);
    await expect.poll(async () => new Set((await Promise.all(pages.map(entries))).map(String)).size).toBe(1);
    const stands = await textOf(pages[0]!, 'grip');
    const lost = formulas.filter((formula) => !stands.includes(formula));
    expect(lost).toHaveLength(2);
    const words = async () =>
      (await Promise.all(pages.map((page) => told(page).allInnerTexts()))).flat().join();
    for (const formula of lost) await expect.poll(words).toContain(formula);
    for (const page of pages)
      while ((await told(page).count()) > 0)
        await told(page)
          .getByRole('button', { name: /^Leave (theirs|it)$/ })
          .first()
          .click();
  }
  // Each device's own line is as it entered it last; no reading is gone.
  const last = sizeAt(ROUNDS * EDITS - 1);
  for (const name of own) await expect(entryOf(pages[0]!, name)).toContainText(last);
  for (const reading of readings) await expect(entryOf(pages[0]!, 'bore')).toContainText(reading);

  // What was at the server is in its file alone: killed, and opened by a browser that has nothing.
  const all = String(await entries(pages[0]!));
  for (const page of pages) await page.context().close();
  await server.kill();
  await server.start();
  const fresh = await device(server, browser, watch);
  await joinAs(fresh, server, 'Fresh');
  await fresh.getByRole('button', { name: 'I have read it' }).click();
  await sharedIn(fresh).getByRole('button', { name: 'Open it here too' }).click();
  await figuresAreIn(fresh);
  expect(String(await entries(fresh))).toBe(all);
  await fresh.context().close();
  expect(await server.stop()).toBe(0);
});
