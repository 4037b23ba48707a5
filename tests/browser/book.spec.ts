import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Page } from '@playwright/test';
import { walk } from '../walk.ts';
import { expect, test } from './fixture.ts';

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/** What axe finds against, by rule and place. */
const barriers = async (page: Page): Promise<string[]> => {
  await page.evaluate(axe);
  return page.evaluate(async () => {
    const { violations } = await (
      window as unknown as {
        axe: { run(): Promise<{ violations: { id: string; nodes: { html: string }[] }[] }> };
      }
    ).axe.run();
    return violations.flatMap(({ id, nodes }) => nodes.map(({ html }) => `${id}: ${html.slice(0, 160)}`));
  });
};

const cells = (page: Page) => page.locator('main section li > a');

test('while the book is fetched, the page says so and not that a sheet is opened', async ({ page }) => {
  let fetched = () => {};
  await page.route('**/book-page-*.js', async (route) => {
    await new Promise<void>((go) => {
      fetched = go;
    });
    await route.continue();
  });
  await page.goto('/#/book');
  await expect(page.getByText('Opening the cell book …')).toBeVisible();
  fetched();
  await expect(page.getByRole('heading', { level: 1, name: 'Cell book' })).toBeVisible();
});

test('a cell is found by word, by what goes in and by what comes out', async ({ page }) => {
  await page.goto('/#/book');
  await expect(page.getByRole('heading', { level: 1, name: 'Cell book' })).toBeVisible();
  await expect.poll(() => cells(page).count()).toBeGreaterThan(30);
  const all = await cells(page).count();
  await page.getByLabel('Words').fill('wring blocks');
  await expect(page.getByText(`of ${all} cells`)).toBeVisible();
  await expect(cells(page)).not.toHaveCount(all);
  await page.getByLabel('Words').fill('');
  await page.getByLabel('What goes in').selectOption('angle');
  await page.getByLabel('What comes out').selectOption('length');
  await expect(page.getByRole('link', { name: 'Sine bar' })).toBeVisible();
  await expect(page.getByRole('link', { name: 'Gauge', exact: true })).toHaveCount(0);
  await page.getByLabel('Words').fill('no such thing anywhere');
  await expect(page.getByText('No cell holds all of that')).toBeVisible();
  await page.getByRole('button', { name: 'All cells' }).click();
  await expect(cells(page)).toHaveCount(all);
});

test('a cell shows its formula, its conditions and an example worked out by the engine', async ({ page }) => {
  await page.goto('/#/book');
  await page.getByRole('link', { name: 'Sine bar' }).click();
  await expect(page.getByRole('heading', { level: 1, name: 'Sine bar' })).toBeVisible();
  const formula = page.getByRole('figure', { name: 'Formula of height of blocks' });
  await expect(formula.locator('math')).toHaveText('height=roller_distance·sin(angle)');
  await expect(page.getByText('The angle lies from 0 to below 90 degrees.')).toBeVisible();
  const row = page.getByRole('row', { name: /height of blocks/ }).first();
  // L sin(angle) for 5 in and 12.5 degrees, computed by an independent method.
  await expect(row.getByRole('cell').nth(0)).toHaveText(/^1\.0822\sin$/);
  await expect(row).toContainText('1.082198 in');
  await expect(row).toContainText('agrees');
  await page.goBack();
  await expect(page.getByRole('heading', { level: 1, name: 'Cell book' })).toBeVisible();
});

test('an address that names no cell says so', async ({ page }) => {
  await page.goto('/#/book/perpetual-motion');
  await expect(page.getByRole('heading', { name: 'The book has no such cell' })).toBeVisible();
});

for (const width of [1280, 390])
  test(`pages of the book are whole and free of barriers at ${width} px`, async ({ page }) => {
    test.setTimeout(walk(240_000, 1_200_000));
    await page.setViewportSize({ width, height: 844 });
    await page.goto('/#/book');
    await expect(cells(page).first()).toBeVisible();
    expect(await barriers(page)).toEqual([]);
    const pages = await cells(page).evaluateAll((links) =>
      links.map((a) => ({ address: a.getAttribute('href') ?? '', title: a.textContent ?? '' })),
    );
    // A sample looks at every sixth page, at the other width at others: the two together at every third.
    const step = walk(6, 1);
    const looked = pages.filter((_, i) => i % step === (width === 390 ? Math.floor(step / 2) : 0));
    expect(looked.length).toBeGreaterThan(8);
    for (const [i, { address, title }] of looked.entries()) {
      await page.goto(`/${address}`);
      await expect(page.getByRole('heading', { level: 1, name: title, exact: true })).toBeVisible();
      await expect(page.getByText('Working it out')).toHaveCount(0);
      await expect(page.getByText('✓ agrees').first(), address).toBeVisible();
      await expect(page.getByText('does not agree'), address).toHaveCount(0);
      const over = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
      expect(over, `${address} is wider than the screen`).toBeLessThanOrEqual(0);
      // One in five is looked at by axe: the pages are built alike.
      if (i % 5 === 0) expect(await barriers(page), address).toEqual([]);
    }
  });
