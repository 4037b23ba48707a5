import type { Page } from '@playwright/test';
import { expect, test } from './fixture.ts';
import { type OwnServer, ownServer } from './own-server.ts';
import { enter, figuresAreIn, value } from './sheet-steps.ts';

test.use({ serviceWorkers: 'allow' });
test.describe.configure({ timeout: 400_000 });

let server: OwnServer;
test.beforeEach(async () => {
  server = await ownServer();
});
test.afterEach(() => server.stop().catch(() => {}));

/** An edition is there once every file of it has come, however slowly they do. */
const ONCE_ALL_IS_FETCHED = { timeout: 170_000 };

/** All files are kept, and the page is under the worker's hand. */
const kept = (page: Page) =>
  page.evaluate(async () => {
    await navigator.serviceWorker.ready;
    while (!navigator.serviceWorker.controller) await new Promise((go) => setTimeout(go, 20));
  });

test('with the server stopped the page opens, begins a job and works it out', async ({ page }) => {
  await page.goto(server.address);
  await kept(page);
  await server.stop();
  await page.goto(`${server.address}?offline`);
  await page.getByRole('button', { name: 'Begin this job' }).first().click();
  await expect(page.getByRole('grid')).toBeVisible();
  await figuresAreIn(page);
  await enter(page, 'journal', '1.5000; 1.5002 in');
  await expect(value(page, 'journal')).toContainText('1.5001');
  await page.reload();
  await expect(value(page, 'journal')).toContainText('1.5001');
  // A part of the page that has not been asked for before.
  await page.goto(`${server.address}#/book`);
  await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
});

test('it can be installed: name, start and icons are there', async ({ page, request }) => {
  await page.goto(server.address);
  const href = await page.locator('link[rel=manifest]').getAttribute('href');
  const manifest = await (await request.get(new URL(href!, server.address).href)).json();
  expect(manifest).toMatchObject({ name: 'Fitwright', start_url: './', display: 'standalone' });
  for (const icon of manifest.icons) {
    const answer = await request.get(new URL(icon.src, server.address).href);
    expect([answer.status(), answer.headers()['content-type']]).toEqual([200, 'image/png']);
    const [width, height] = [16, 20].map((at) => answer.body().then((png) => png.readUInt32BE(at)));
    expect(`${await width}x${await height}`).toBe(icon.sizes);
  }
});

test('a newer edition waits until the user takes it', async ({ page }) => {
  await page.goto(server.address);
  await kept(page);
  // The next edition: another title, and so another worker.
  const change = (path: string, from: string | RegExp, to: string) => {
    const file = server.site.get(path)!;
    const plain = Buffer.from(file.plain.toString().replace(from, to));
    server.site.set(path, { ...file, plain, gzip: null, tag: `${file.tag}-next` });
  };
  change('/', '<meta name="description"', '<meta name="edition" content="next"><meta name="description"');
  change('/service-worker.js', /const edition = '\w+'/, "const edition = 'next'");
  const line = page.getByText('A newer edition of Fitwright is here');
  await page.reload();
  await expect(line).toBeVisible(ONCE_ALL_IS_FETCHED);
  await page.reload();
  await expect(line).toBeVisible();
  await expect(page.locator('meta[name=edition]')).toHaveCount(0);
  await page.getByRole('button', { name: 'Take it now' }).click();
  await expect(page.locator('meta[name=edition]')).toHaveAttribute('content', 'next');
  await expect(line).toHaveCount(0);
});

test('where the browser keeps no workers the page is as ever', async ({ page }) => {
  await page.addInitScript(() => {
    Object.defineProperty(Object.getPrototypeOf(navigator.serviceWorker), 'register', {
      value: () => Promise.reject(new DOMException('refused', 'SecurityError')),
    });
  });
  await page.goto(server.address);
  await expect(page.getByRole('heading', { name: 'Fitwright' })).toBeVisible();
});
