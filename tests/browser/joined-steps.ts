import type { Browser, BrowserContext, Page } from '@playwright/test';
import { browserArguments } from '../../src/setup/browser.mjs';
import { NAME as HOST, type ShopServer } from '../shop-server.ts';
import { expect } from './fixture.ts';
import { bringIn, dialog, showTool } from './share-steps.ts';
import { line } from './sheet-steps.ts';

const found = JSON.parse(process.env.FITWRIGHT_BROWSER!);

export const launchOptions = {
  executablePath: found.path,
  args: [...browserArguments, `--host-resolver-rules=MAP ${HOST} 127.0.0.1`],
  env: { ...(process.env as Record<string, string>), ...found.env },
};

/** A server, and its address where that is another than over plain HTTP. */
type Joined = Pick<ShopServer, 'port' | 'key'> & { baseURL?: string };

export const addressOf = ({ port, baseURL }: Joined): string => baseURL ?? `http://${HOST}:${port}/`;

/** One more browser, with nothing of the others. */
export const device = async (
  server: ShopServer,
  browser: Browser,
  watch: (context: BrowserContext) => Promise<void>,
  phone = false,
): Promise<Page> => {
  const context = await browser.newContext({
    baseURL: addressOf(server),
    viewport: phone ? { width: 390, height: 844 } : { width: 1280, height: 800 },
    locale: 'en-GB',
  });
  await watch(context);
  const page = await context.newPage();
  page.setDefaultTimeout(60_000);
  return page;
};

export const joinAs = async (page: Page, server: Joined, name: string, key = server.key): Promise<void> => {
  await page.goto(`/#/join/${key}`);
  await page.getByLabel('What the others see this device called').fill(name);
  // The key has left the address.
  expect(page.url()).toBe(`${addressOf(server)}#/join`);
  await page.getByRole('button', { name: 'Join', exact: true }).click();
};

/** What the page says of the server, among the lines and at the machine. */
export const standing = (page: Page) => page.locator('.at-server').filter({ visible: true });

export const atServer = (page: Page) => expect(standing(page)).toHaveText('at the shop’s server');

export const entryOf = (page: Page, name: string) => line(page, name).locator('[data-column="entry"]');

export const sharedIn = (page: Page) => page.getByRole('region', { name: 'Shared in the shop' });

/** Joins, and shares a sheet that stays open. */
export const shareFirst = async (page: Page, server: Joined, file: unknown): Promise<void> => {
  await joinAs(page, server, 'Desk');
  await expect(sharedIn(page)).toBeVisible();
  await page.getByRole('button', { name: 'I have read it' }).click();
  await shareSheet(page, file);
};

/** Brings a sheet in, and shares it from a device that has joined. */
export const shareSheet = async (page: Page, file: unknown): Promise<void> => {
  await bringIn(page, file);
  await showTool(page, 'Share');
  await page.getByRole('button', { name: 'Share with the shop' }).click();
  const share = dialog(page, 'Share this sheet');
  await expect(share).toContainText('Shared with the shop.');
  // The page under it was not put away and drawn anew meanwhile.
  expect(await share.evaluate((element) => element.matches(':modal'))).toBe(true);
  await page.keyboard.press('Escape');
  await atServer(page);
};
