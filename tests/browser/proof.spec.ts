import type { Page } from '@playwright/test';
import { expect, test } from './fixture.ts';
import { lookAt, shortJob, takeOver } from './share-steps.ts';
import { begin, check, enter, figuresAreIn, line, templateFile } from './sheet-steps.ts';

const filled = templateFile('jobs/saw-arbor-bush.json').title.title;

const draw = async (page: Page): Promise<string[]> => {
  const draws = page.locator('.draws');
  await draws.getByRole('button', { name: /^Simulate/ }).click();
  await expect(draws.getByRole('progressbar')).toBeVisible();
  await expect(draws.getByRole('button', { name: 'Simulate again' })).toBeVisible({ timeout: 60_000 });
  return draws.locator('tr').allTextContents();
};

test('the draws of a sheet come out the same again, now and on another day', async ({ page }) => {
  // A short sheet: what is the same again here is so in a long one.
  await lookAt(page, shortJob());
  await takeOver(page);
  await figuresAreIn(page);
  await line(page, 'od').locator('.label').click();
  const first = await draw(page);
  for (const word of ['mean', 'shortest 95 % interval', 'within the limits', 'below the lower limit'])
    expect(first.join('\n')).toContain(word);
  expect(await draw(page)).toEqual(first);
  await page.reload();
  await figuresAreIn(page);
  await line(page, 'od').locator('.label').click();
  expect(await draw(page)).toEqual(first);
});

test('an unfolded figure has its degrees of freedom and the factor that goes with them', async ({ page }) => {
  await begin(page, filled);
  // Form is the part's own, and the scatter is pooled with what is known of the gauge: 151 degrees, Student's t 1.98.
  await line(page, 'journal').locator('.label').click();
  const part = page.getByRole('heading', { name: 'Uncertainty', exact: true }).locator('..');
  const row = (name: string) => part.getByRole('row', { name });
  await expect(row('standard uncertainty u')).toContainText(/0\.000\d+\s*in/);
  await expect(row('effective degrees of freedom')).toContainText('freedom151');
  await expect(row('coverage factor for 95 %')).toContainText('1.98');
  // The same of each source, largest first.
  const budget = page.getByRole('heading', { name: 'Where the spread comes from' }).locator('..');
  await expect(budget.getByRole('row').nth(1)).toContainText(/\d+ %/);
  await expect(budget).toContainText(/ν\s*\d/);
  // Not on the face of the line.
  await expect(line(page, 'journal')).not.toContainText('freedom');
});

test('a line that goes by a rule of its own says so, on paper too', async ({ page }) => {
  await begin(page, filled);
  // Which band stands behind the figures follows the rule of the sheet.
  const head = page.getByRole('columnheader', { name: /^Value and spread/ });
  await expect(head).not.toContainText('with limits');
  await page.getByLabel('Checks follow').selectOption('iso14253-2013');
  await expect(head).toContainText('with limits: k=2');
  await page.getByLabel('Checks follow').selectOption('worst-case');
  await line(page, 'end_float').locator('.label').click();
  await page.locator('.unfold').getByLabel('Judged by').first().selectOption('simple');
  await expect(check(page, 'end_float')).toContainText('with no allowance for measuring error');
  await expect(check(page, 'bush_length')).not.toContainText('by ');
  await page.emulateMedia({ media: 'print' });
  await expect(page.locator('.print-checks')).toContainText('with no allowance for measuring error');
  await expect(page.locator('.print-title')).toContainText('worst case');
});

test('the head says what is proven and what is out, and leads to the first that does not hold', async ({
  page,
}) => {
  await begin(page, filled);
  const head = page.getByRole('region', { name: 'How the checks stand' });
  await expect(head).toContainText(/Proven in limits: \d+ of \d+/);
  await expect(head).not.toContainText('Out:');
  await enter(page, 'bush_length', '= collar_gap - 30 thou');
  await expect(check(page, 'bush_length')).toContainText('misses');
  await expect(head).toContainText(/Out: Bush length, .* against .*; End float /);
  await line(page, 'journal').locator('[data-column="entry"]').focus();
  await head.getByRole('button', { name: 'Go to the first that does not hold' }).click();
  await expect(line(page, 'bush_length').locator('[data-column="name"]')).toBeFocused();
});
