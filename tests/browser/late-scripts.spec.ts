import type { Page } from '@playwright/test';
import { expect, test } from './fixture.ts';
import { bringIn, dialog, isSaved, shortJob, showTool } from './share-steps.ts';
import { figuresAreIn, line, value } from './sheet-steps.ts';

/** Scripts of the page that do not come until `come` is called. */
const withheld = async (page: Page, pattern: RegExp): Promise<{ come: () => Promise<void> }> => {
  await page.route(pattern, (route) => route.abort());
  return { come: () => page.unroute(pattern) };
};

test.use({ serviceWorkers: 'block' });

test('a part of the page that does not come says so, is asked for again, and the sheet goes on', async ({
  page,
  expectComplaint,
}) => {
  expectComplaint(/ERR_FAILED|Failed to (load|fetch)/);
  await bringIn(page, shortJob());
  const history = await withheld(page, /\/history-dialog-[^/]*\.js$/);
  await showTool(page, 'History');
  const said = dialog(page, 'The history');
  await expect(said.getByRole('alert')).toContainText('The history could not be fetched');
  await history.come();
  await said.getByRole('button', { name: 'Try again' }).click();
  await expect(dialog(page, 'History of this sheet')).toBeVisible();
  await page.keyboard.press('Escape');

  const bench = await withheld(page, /\/bench-view-[^/]*\.js$/);
  await page.getByRole('link', { name: 'At the machine' }).click();
  await expect(page.getByRole('alert')).toContainText('The view at the machine could not be fetched');
  await page.getByRole('link', { name: 'Back to the sheet' }).click();
  await expect(value(page, 'grip')).toContainText('3');
  await bench.come();
  await page.getByRole('link', { name: 'At the machine' }).click();
  await expect(page.getByRole('button', { name: 'Take it', exact: true }).first()).toBeVisible();
});

test('an entry is kept and saved while the script that reads entries does not answer', async ({
  page,
  context,
}) => {
  await bringIn(page, shortJob());
  const address = page.url();
  await isSaved(page);
  await page.close();
  const slow = await context.newPage();
  let answer: () => void = () => undefined;
  const answered = new Promise<void>((done) => {
    answer = done;
  });
  await slow.route(/\/commit-(?!typed-)[^/]*\.js$/, async (route) => {
    await answered;
    await route.continue();
  });
  await slow.goto(address);
  await figuresAreIn(slow);
  await line(slow, 'bore')
    .locator('[data-column="entry"]')
    .click({ position: { x: 16, y: 12 } });
  await expect(slow.locator('.editor :is(input, .cm-content)')).toBeFocused();
  await slow.keyboard.press('ControlOrMeta+a');
  await slow.keyboard.type('2.26 ± .0002');
  await slow.keyboard.press('Enter');
  await expect(value(slow, 'bore')).toContainText('2.26');
  await isSaved(slow);
  answer();
  await expect(line(slow, 'bore').locator('[data-column="entry"]')).toContainText('2.26 in ± .0002');
  await isSaved(slow);
  await slow.reload();
  await figuresAreIn(slow);
  await expect(value(slow, 'bore')).toContainText('2.26');
});
