import { gzipSync } from 'node:zlib';
import type { Page } from '@playwright/test';
import { expect, test } from './fixture.ts';
import { figuresAreIn } from './sheet-steps.ts';

/**
 * What script may cost, gzipped (`node src/setup/sizes.mjs` tells what weighs how much): what the first view takes before the
 * shop's own code comes in ...
 */
const FIRST_VIEW = 50_000;
/**
 * ... that, the engine in its worker with the kinds of cell of the job, and the editor of an entry, with all that each of
 * them imports ...
 */
const TOGETHER = 450_000;
/** ... and everything until a cell of a job begun from a template stands open in the editor. */
const UNTIL_EDITING = 600_000;

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

/** Names that are in the one set and not in the other. */
const without = (names: ReadonlySet<string>, ...others: ReadonlySet<string>[]): string[] =>
  [...names].filter((name) => !others.some((other) => other.has(name)));

/** A script and all that it imports from the start, and they in turn. */
const withImports = async (page: Page, script: string): Promise<Set<string>> => {
  const found = new Set<string>();
  const visit = async (name: string): Promise<void> => {
    if (found.has(name)) return;
    found.add(name);
    const text = await (await page.request.get(`assets/${name}`)).text();
    for (const [, next] of text.matchAll(/(?:from|import)\s*["'`]\.\/([\w.-]+\.js)["'`]/g))
      await visit(next!);
  };
  await visit(script);
  return found;
};

test('script comes in by little: the first view, the engine and the editor, each when it is used', async ({
  page,
}) => {
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

  // The rest comes when it is used: the sheet, the engine behind it, the editor at the first edit.
  letGo();
  await page.getByRole('button', { name: 'Begin this job' }).first().click();
  await expect(page.getByRole('grid')).toBeVisible();
  await figuresAreIn(page);
  await page
    .getByRole('gridcell', { name: /readings/ })
    .first()
    .click();
  await expect(page.locator('.cm-content')).toBeFocused();
  // What the page fetches when it has nothing else to do is counted too.
  let seen = -1;
  await expect
    .poll(
      () => {
        const still = seen === all.length;
        seen = all.length;
        return still;
      },
      { intervals: [1000] },
    )
    .toBe(true);
  const sizes = new Map(all.map(({ name, size }) => [name, size]));
  const named = (start: string): string => {
    const found = [...sizes.keys()].filter((name) => name.startsWith(start));
    expect(found, `scripts called ${start}`).toHaveLength(1);
    return found[0]!;
  };
  const weigh = (names: Iterable<string>) => [...names].reduce((total, name) => total + sizes.get(name)!, 0);
  const before = new Set(first.map(({ name }) => name));
  const engine = await withImports(page, named('engine-worker-'));
  // Kinds and tables are fetched by use: those this job has used.
  const onUse = await (await page.request.get(`assets/${named('on-use-')}`)).text();
  const used = [...onUse.matchAll(/import\(["'`]\.\/([\w.-]+\.js)["'`]\)/g)]
    .map(([, name]) => name!)
    .filter((name) => sizes.has(name));
  expect(used.length).toBeGreaterThan(0);
  for (const name of used) for (const one of await withImports(page, name)) engine.add(one);
  const worker = new Set(without(engine, before));
  const sheet = await withImports(page, named('sheet-page-'));
  // The editor stands in a sheet that is there already.
  const editor = without(await withImports(page, named('mount-')), before, worker, sheet);
  const together = weigh(before) + weigh(worker) + weigh(editor);
  const until = weigh(sizes.keys());
  console.log(
    `worker ${kB(weigh(worker))} with ${used.length} kinds and tables, editor ${kB(weigh(editor))}: with the first view ${kB(together)}; all until editing ${kB(until)}`,
  );
  expect(together).toBeLessThan(TOGETHER);
  expect(until).toBeLessThan(UNTIL_EDITING);
});
