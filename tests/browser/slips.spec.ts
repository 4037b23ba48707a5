import type { Page } from '@playwright/test';
import { expect, test } from './fixture.ts';
import { isSaved } from './share-steps.ts';
import { begin, enter, figuresAreIn, line, templateFile } from './sheet-steps.ts';

const filled = templateFile('jobs/saw-arbor-bush.json').title.title;
const SWAPPED = '1.7481; 1.7480 | 1.7841; 1.7480 in';
const MEANT = '1.7481; 1.7480 | 1.7481; 1.7480 in';

const asked = (page: Page) => line(page, 'journal').locator('.remark-note');
const typed = (page: Page) => line(page, 'journal').locator('.typed').first();

test('a slip is asked about on its line, and one key puts it right', async ({ page }) => {
  await begin(page, filled);
  await expect(asked(page)).toHaveCount(0);
  await enter(page, 'journal', SWAPPED);
  await expect(asked(page)).toContainText('Are two digits changed over?');
  await expect(asked(page)).toContainText(MEANT);
  // Nothing is changed before it is answered.
  await expect(typed(page)).toHaveText(SWAPPED);
  await page.keyboard.press('F4');
  await expect(typed(page)).toHaveText(MEANT);
  await expect(asked(page)).toHaveCount(0);
  await page.keyboard.press('ControlOrMeta+z');
  await expect(typed(page)).toHaveText(SWAPPED);
  await expect(asked(page)).toContainText('Are two digits changed over?');
  // Unfolded, the line asks no second time.
  await line(page, 'journal').locator('.label').click();
  await expect(page.getByRole('region', { name: 'Journal, drive end, unfolded' })).toBeVisible();
  await expect(page.getByText('Are two digits changed over?')).toHaveCount(1);
  // By a press as well, for whoever has no keys; the line keeps the cursor.
  await asked(page).getByRole('button', { name: /take/ }).click();
  await expect(typed(page)).toHaveText(MEANT);
  await expect(line(page, 'journal').locator(':focus')).toHaveCount(1);
});

test('one key says that it is right, which is remembered until the text changes', async ({ page }) => {
  await begin(page, filled);
  await enter(page, 'journal', SWAPPED);
  await expect(asked(page)).toContainText('Are two digits changed over?');
  await page.keyboard.press('Shift+F4');
  await expect(asked(page)).toHaveCount(0);
  await expect(typed(page)).toHaveText(SWAPPED);
  await isSaved(page);
  await page.reload();
  await figuresAreIn(page);
  await expect(typed(page)).toHaveText(SWAPPED);
  await expect(asked(page)).toHaveCount(0);
  await enter(page, 'journal', '1.7841; 1.7480 | 1.7481; 1.7480 in');
  await expect(asked(page)).toContainText('Are two digits changed over?');
});

test('a part read warm is asked about by its cost in the fit, and the answer holds', async ({ page }) => {
  await begin(page, filled);
  await line(page, 'bush_outside').locator('.label').click();
  await page.locator('.unfold').getByLabel('Part temperature').first().click();
  await page.keyboard.insertText('95 degF');
  await page.keyboard.press('Enter');
  // Of what metal it is says what the warmth costs; until then nothing is said of it.
  await page.locator('.unfold').getByLabel('Part is of').first().selectOption('bronze');
  const question = page.locator('.remark-note').filter({ hasText: /above reference temperature/ });
  await expect(question).toContainText(/% of what/);
  await question.getByRole('button', { name: /95 degF is right/ }).click();
  await expect(question).toHaveCount(0);
});
