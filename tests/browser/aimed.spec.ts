import { findTargets, pressTarget, type Way } from './aim.ts';
import { expect, test } from './fixture.ts';
import { bringIn, shortJob } from './share-steps.ts';
import { figuresAreIn, line } from './sheet-steps.ts';

/** Every target in a proof, a spread-out sample of them in every test run. */
const STEP = process.env.FITWRIGHT_PROVE ? 1 : 17;

const WALKS: ReadonlyArray<readonly [Way, number]> = process.env.FITWRIGHT_PROVE
  ? [
      ['mouse', 1280],
      ['slow press', 1280],
      ['touch', 1280],
      ['mouse', 390],
      ['touch', 390],
    ]
  : [
      ['mouse', 1280],
      ['touch', 390],
    ];

for (const [way, width] of WALKS) {
  test(`with an entry open a ${way} at ${width} px lands where it was aimed`, async ({
    browser,
    baseURL,
    watch,
  }) => {
    test.setTimeout(1_200_000);
    const touch = way === 'touch';
    const context = await browser.newContext({
      baseURL: baseURL!,
      viewport: { width, height: 800 },
      serviceWorkers: 'block',
      ...(touch && { hasTouch: true, isMobile: width < 500 }),
    });
    await watch(context);
    const page = await context.newPage();
    await bringIn(page, shortJob());
    const address = page.url();
    const entry = line(page, 'bore').locator('[data-column="entry"]');
    const STANDS = '2.2513 in ± 0.0002 in';
    const openEntry = async () => {
      await entry.click({ position: { x: 16, y: 12 } });
      await expect(entry.locator('.cm-content')).toBeFocused();
      // Something was typed, and what is entered of it is what stood there.
      await page.keyboard.press('End');
      await page.keyboard.type(' ');
    };
    const anew = async () => {
      await page.goto('about:blank');
      await page.goto(address);
      await figuresAreIn(page);
      await openEntry();
    };
    await openEntry();
    await expect(page.getByRole('region', { name: /unfolded$/ })).toBeVisible();
    const all = await findTargets(page);
    expect(all.length).toBeGreaterThan(30);
    const wrong: string[] = [];
    for (let i = 0; i < all.length; i += STEP) {
      await anew();
      await expect(page.getByRole('region', { name: /unfolded$/ })).toBeVisible();
      const target = (await findTargets(page)).find(({ words }) => words === all[i]!.words);
      if (!target) continue;
      const got = await pressTarget(page, target, way);
      if (got.where === 'covered') continue;
      if (target.field) await page.keyboard.type('7');
      const stands = entry.locator('.typed, .cm-content').first();
      const text = (await stands.count()) === 0 ? STANDS : ((await stands.textContent()) ?? '').trim();
      // The entry itself and what removes its line are aimed at too.
      if (!got.reached || (target.field && !got.focused) || text !== STANDS)
        wrong.push(`${target.words}: ${JSON.stringify(got)}, the entry stands as ${text}`);
    }
    expect(wrong).toEqual([]);
    await context.close();
  });
}

test('with an entry open Tab and Shift+Tab go on to a field, and typing lands there', async ({ page }) => {
  await bringIn(page, shortJob());
  for (const key of ['Tab', 'Shift+Tab']) {
    const entry = line(page, 'bore').locator('[data-column="entry"]');
    await entry.click({ position: { x: 16, y: 12 } });
    await expect(entry.locator('.cm-content')).toBeFocused();
    // With nothing typed there are no offers, which Tab would take.
    await page.keyboard.press(key);
    await page.keyboard.type('7');
    await expect(entry.locator('.typed')).toHaveText('2.2513 in ± 0.0002 in');
    expect(await page.evaluate(() => document.activeElement !== document.body)).toBe(true);
    await page.keyboard.press('Escape');
  }
});
