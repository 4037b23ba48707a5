import { gzipSync } from 'node:zlib';
import type { Page } from '@playwright/test';
import { expect, test } from './fixture.ts';
import { figuresAreIn } from './sheet-steps.ts';

/** What the first view may cost before the shop's own code comes in: script, gzipped. */
const FIRST_VIEW = 80_000;

interface Script {
  name: string;
  /** Gzipped. */
  size: number;
}

/** Every script that a page asks for from now on; workers' too. */
const scripts = (page: Page): Script[] => {
  const seen: Script[] = [];
  page.context().on('response', async (response) => {
    if (!/\.js$/.test(new URL(response.url()).pathname)) return;
    const body = await response.body().catch(() => undefined);
    if (body) seen.push({ name: nameOf(response.url()), size: gzipSync(body).length });
  });
  return seen;
};
const nameOf = (url: string): string => url.replace(/^.*\//, '');
const sum = (list: readonly Script[]): number => list.reduce((total, { size }) => total + size, 0);
const kB = (size: number): string => `${(size / 1000).toFixed(1)} kB`;

/** A script and all that it imports from the start, and they in turn. */
const withImports = async (page: Page, script: string): Promise<Set<string>> => {
  const found = new Set<string>();
  const visit = async (name: string): Promise<void> => {
    if (found.has(name)) return;
    found.add(name);
    const text = await (await page.request.get(`assets/${name}`)).text();
    for (const [, next] of text.matchAll(/(?:from|import)\s*["']\.\/([\w.-]+\.js)["']/g)) await visit(next!);
  };
  await visit(script);
  return found;
};

test.use({ serviceWorkers: 'block' });

test('the first view costs little script: the shop’s code comes behind it', async ({ page }) => {
  const all = scripts(page);
  // Held back, so that what is there without the shop's code can be seen and weighed.
  let shop: string | undefined;
  let letGo = (): void => undefined;
  const free = new Promise<void>((resolve) => {
    letGo = resolve;
  });
  await page.route(/\/open-shop-[^/]*\.js$/, async (route) => {
    shop = nameOf(route.request().url());
    await free;
    await route.continue();
  });
  await page.goto('/', { waitUntil: 'commit' });
  await expect(page.getByRole('heading', { name: 'What is worn?' })).toBeVisible();
  await expect(page.getByRole('button', { name: 'Begin this job' }).first()).toBeVisible();
  await expect.poll(() => shop, 'the shop’s code is asked for').toBeDefined();
  const entry = nameOf((await page.locator('script[type="module"]').first().getAttribute('src'))!);
  const own = await withImports(page, entry);
  const behind = [...(await withImports(page, shop!))].filter((name) => !own.has(name));
  const first = all.filter(({ name }) => !behind.includes(name));
  console.log(`first view: ${kB(sum(first))} gzipped, in ${first.length} scripts`);
  expect(first.map(({ name }) => name)).toContain(entry);
  expect(sum(first)).toBeLessThan(FIRST_VIEW);

  // The rest is told, not held to anything here.
  letGo();
  const before = new Set(all);
  const later = (what: string) => {
    const now = all.filter((script) => !before.has(script));
    for (const script of now) before.add(script);
    const worker = now.filter(({ name }) => name.startsWith('worker-'));
    const editor = now.filter(({ name }) => name.startsWith('mount-'));
    const rest = now.filter((script) => !worker.includes(script) && !editor.includes(script));
    console.log(`${what}: ${kB(sum(rest))}, worker ${kB(sum(worker))}, editor ${kB(sum(editor))}`);
  };
  await page.getByRole('button', { name: 'Begin this job' }).first().click();
  await expect(page.getByRole('grid')).toBeVisible();
  await figuresAreIn(page);
  await page
    .getByRole('gridcell', { name: /readings/ })
    .first()
    .click();
  await expect(page.locator('.cm-content')).toBeFocused();
  later('sheet view with shop');
});
