import { findings } from './axe-findings.ts';
import { expect, test } from './fixture.ts';
import { begin, check, FIRST_LINE, line, templateFile, value } from './sheet-steps.ts';

const filled = templateFile('jobs/saw-arbor-bush.json').title.title;

test('inside the parentheses of a function its arguments are shown, the present one marked', async ({
  page,
}) => {
  await begin(page, filled);
  const entry = line(page, 'bush_bore').locator('[data-column="entry"]');
  await entry.click({ position: FIRST_LINE });
  await expect(entry.locator('.cm-content')).toBeFocused();
  await page.keyboard.press('ControlOrMeta+a');
  await page.keyboard.type('= ROUND(journal; ');
  const hint = entry.locator('.w-arguments');
  await expect(hint.locator('.w-now')).toHaveText('places');
  await expect(hint.locator('.w-kind')).toHaveText('places: a plain whole number');
  await expect(entry.getByRole('status').filter({ hasText: 'argument 2 of 2: places' })).toBeAttached();
  expect(await findings(page)).toEqual([]);

  await page.keyboard.type('MAX(journal; ');
  await expect(hint.locator('.w-kind')).toHaveText('value: any quantity');
  await page.keyboard.type('bore)');
  await expect(hint.locator('.w-now')).toHaveText('places');
  // Escape sends the hint away and leaves what is typed; one more leaves the entry.
  await page.keyboard.press('Escape');
  await page.keyboard.press('Escape');
  await expect(hint).toHaveCount(0);
  const editor = entry.locator('.cm-content');
  if ((await editor.count()) > 0) await page.keyboard.press('Escape');
  await expect(entry).toBeFocused();
  await expect(entry.locator('.typed')).toHaveText('1.7510 in');
});

test('where a note says that readings go here, a click there types them, and not the formula', async ({
  page,
}) => {
  await begin(page, filled);
  const bush = line(page, 'bush_bore');
  await bush.getByRole('button', { name: 'Bush bore, finished: as measured, once cut' }).click();
  await expect(bush.locator('.cm-content')).toBeFocused();
  await page.keyboard.type('1.7507 in');
  await page.keyboard.press('Enter');
  await expect(value(page, 'bush_bore').locator('.actual b')).toHaveText('1.7507\u00a0in');
  await expect(check(page, 'bush_bore')).toContainText('proven in limits');
  // What is proven has its sign filled, whatever the plan had before.
  await expect(check(page, 'bush_bore').locator('.verdict')).toHaveClass(/\bpart\b/);
  await expect(bush.locator('.typed')).toHaveText('1.7510 in');

  // The same by keys alone, and Escape leaves it as it was.
  await bush.locator('[data-column="entry"]').focus();
  await page.keyboard.press('Shift+F2');
  await expect(bush.locator('.cm-content')).toHaveText('1.7507 in');
  await page.keyboard.press('Escape');
  await expect(bush.locator('.cm-content')).toHaveCount(0);
  await expect(bush.locator('[data-column="entry"]')).toBeFocused();
});

test('a line that is filled in stays marked as the one the cursor is on', async ({ page }) => {
  await begin(page, templateFile('bush-in-opened-out-bore.json').title.title);
  const journal = line(page, 'journal');
  await journal.locator('[data-column="entry"]').click();
  await page.keyboard.type('1.7481 in');
  await page.keyboard.press('Enter');
  await expect(value(page, 'journal').locator('b')).toHaveText('1.7481\u00a0in');
  await expect(journal).toHaveClass(/\bhere\b/);
});
