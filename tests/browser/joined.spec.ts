import type { Browser, BrowserContext, Page } from '@playwright/test';
import { browserArguments } from '../../src/setup/browser.mjs';
import { inRepository } from '../../src/setup/root.mjs';
import { createSiteServer } from '../../src/setup/server.mjs';
import { readSite } from '../../src/setup/site.mjs';
import { KEY, type Relay, relay } from '../shop-relay.ts';
import { expect, test } from './fixture.ts';
import { bringIn, dialog, shortJob, showTool } from './share-steps.ts';
import { enter, figuresAreIn, line } from './sheet-steps.ts';

/** Another machine over plain HTTP, which is no secure origin. */
const HOST = 'shop.test';
const found = JSON.parse(process.env.FITWRIGHT_BROWSER!);

test.use({
  launchOptions: {
    executablePath: found.path,
    args: [...browserArguments, `--host-resolver-rules=MAP ${HOST} 127.0.0.1`],
    env: { ...(process.env as Record<string, string>), ...found.env },
  },
});

let server: Relay;
test.beforeEach(async ({ expectComplaint }) => {
  expectComplaint(/Cross-Origin-Opener-Policy/);
  server = await relay(createSiteServer(readSite(inRepository('dist/page'))));
});
test.afterEach(() => server.stop());

const address = () => `http://${HOST}:${server.port}/`;

const device = async (
  browser: Browser,
  watch: (context: BrowserContext) => Promise<void>,
  phone = false,
): Promise<Page> => {
  const context = await browser.newContext({
    baseURL: address(),
    viewport: phone ? { width: 390, height: 844 } : { width: 1280, height: 800 },
    locale: 'en-GB',
  });
  await watch(context);
  const page = await context.newPage();
  page.setDefaultTimeout(60_000);
  return page;
};

const join = async (page: Page, name: string, key = KEY): Promise<void> => {
  await page.goto(`/#/join/${key}`);
  await page.getByLabel('What the others see this device called').fill(name);
  // The key has left the address.
  expect(page.url()).toBe(`${address()}#/join`);
  await page.getByRole('button', { name: 'Join', exact: true }).click();
};

const atServer = (page: Page) => expect(page.locator('.at-server')).toHaveText('at the shop’s server');
const entryOf = (page: Page, name: string) => line(page, name).locator('[data-column="entry"]');

test('desk, bench and phone work on one sheet over plain HTTP, apart for a while, and lose nothing', async ({
  browser,
  watch,
  expectComplaint,
}) => {
  // While the line is cut, tries to reach the server may fail, and the browser says so.
  expectComplaint(/Cross-Origin-Opener-Policy|WebSocket connection to/);
  const desk = await device(browser, watch);
  await join(desk, 'Desk');
  const shared = (page: Page) => page.getByRole('region', { name: 'Shared in the shop' });
  await expect(shared(desk)).toBeVisible();
  await desk.getByRole('button', { name: 'I have read it' }).click();
  await bringIn(desk, shortJob());
  await showTool(desk, 'Share');
  await desk.getByRole('button', { name: 'Share with the shop' }).click();
  await expect(dialog(desk, 'Share this sheet')).toContainText('Shared with the shop.');
  await desk.keyboard.press('Escape');
  await atServer(desk);
  await expect(desk.locator('.saved-here')).toHaveText('saved here');

  const phone = await device(browser, watch, true);
  await join(phone, 'Phone');
  await expect(shared(phone)).toContainText('Countershaft bush');
  await expect(shared(phone)).toContainText('shared by Desk');
  await phone.getByRole('button', { name: 'I have read it' }).click();
  await shared(phone).getByRole('button', { name: 'Open it here too' }).click();
  await figuresAreIn(phone);
  await atServer(phone);

  // Each sees who else is there, and what is being typed.
  await expect(desk.locator('.joined')).toContainText('Phone');
  await entryOf(phone, 'bore').click();
  await expect(line(desk, 'bore')).toContainText('Phone is typing here');
  await phone.keyboard.press('Escape');
  await expect(line(desk, 'bore')).not.toContainText('is typing here');

  // The pad at the machine fills the reading that the desk is watching.
  await enter(desk, 'bore', '2.2513; 2.2514 in ± 0.0002 in');
  await phone.getByRole('link', { name: 'At the machine' }).click();
  await phone.getByLabel('Dimension', { exact: true }).selectOption({ index: 0 });
  await phone.getByRole('button', { name: 'One more here' }).click();
  await phone.getByRole('textbox', { name: /^Reading of/ }).fill('2.2516');
  await phone.getByRole('button', { name: 'Take it' }).click();
  await expect(entryOf(desk, 'bore')).toContainText('2.2513; 2.2514; 2.2516 in');
  await phone.getByRole('link', { name: 'Back to the sheet' }).click();

  // Apart: both add to the list, and both write one field.
  for (const page of [desk, phone]) await page.context().setOffline(true);
  server.drop();
  for (const page of [desk, phone])
    await expect(page.locator('.at-server')).toContainText('not at the shop’s server');
  await enter(desk, 'bore', '2.2513; 2.2514; 2.2516; 2.2521 in ± 0.0002 in');
  await enter(phone, 'bore', '2.2513; 2.2514; 2.2516; 2.2522 in ± 0.0002 in');
  await enter(desk, 'grip', '=2 * (od - bore)');
  await enter(phone, 'grip', '=3 * (od - bore)');
  for (const page of [desk, phone]) await page.context().setOffline(false);
  for (const page of [desk, phone]) {
    await atServer(page);
    await expect(entryOf(page, 'bore')).toContainText('2.2521');
    await expect(entryOf(page, 'bore')).toContainText('2.2522');
  }
  const told = (page: Page) => page.getByRole('alert').filter({ hasText: 'does not stand' });
  await expect
    .poll(async () => (await told(desk).count()) + (await told(phone).count()))
    .toBeGreaterThanOrEqual(1);
  const loser = (await told(desk).count()) > 0 ? desk : phone;
  await told(loser).getByRole('button', { name: 'Enter mine' }).click();
  const mine = loser === desk ? '=2 * (od - bore)' : '=3 * (od - bore)';
  for (const page of [desk, phone]) await expect(entryOf(page, 'grip')).toContainText(mine);

  // A wrong key and an ended one are refused, and show nothing.
  const stranger = await device(browser, watch);
  await join(stranger, 'Stranger', 'W'.repeat(22));
  await expect(stranger.getByRole('alert')).toContainText('does not know this key');
  await stranger.goto('/#/');
  await expect(stranger.getByRole('heading', { name: 'What is worn?' })).toBeVisible();
  await expect(shared(stranger)).toHaveCount(0);
  await expect(stranger.getByText('Countershaft bush')).toHaveCount(0);
  for (const page of [desk, phone, stranger]) await page.context().close();
});

test('a key that only reads changes nothing, and says so', async ({ browser, watch }) => {
  const desk = await device(browser, watch);
  await join(desk, 'Desk');
  await desk.getByRole('button', { name: 'I have read it' }).click();
  await bringIn(desk, shortJob());
  await showTool(desk, 'Share');
  await desk.getByRole('button', { name: 'Share with the shop' }).click();
  await desk.keyboard.press('Escape');
  await atServer(desk);
  const sheet = /sheet\/([\w-]+)/.exec(desk.url())![1]!;
  const key = 'R'.repeat(22);
  server.keys.set(key, { readOnly: true, sheet });
  const guest = await device(browser, watch);
  await guest.goto(`/#/join/${key}/${sheet}`);
  await guest.getByRole('button', { name: 'Join', exact: true }).click();
  await figuresAreIn(guest);
  await expect(guest.locator('.joined')).toContainText('to be read');
  await entryOf(guest, 'bore').click();
  await guest.keyboard.press('ControlOrMeta+a');
  await guest.keyboard.insertText('3 in');
  await guest.keyboard.press('Enter');
  await expect(guest.getByText('nothing is changed here')).toBeVisible();
  await expect(entryOf(guest, 'bore')).toContainText('2.2513');
  await enter(desk, 'bore', '2.2600 in ± 0.0002 in');
  await expect(entryOf(guest, 'bore')).toContainText('2.2600');
  for (const page of [desk, guest]) await page.context().close();
});
