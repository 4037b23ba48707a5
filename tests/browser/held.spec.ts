import { expect, test } from './fixture.ts';
import { isSaved } from './share-steps.ts';
import { begin, check, enter, figuresAreIn, line, templateFile, value } from './sheet-steps.ts';

const filled = templateFile('jobs/saw-arbor-bush.json').title.title;

test('held figures are compared with for as long as wanted, over a reload too', async ({ page }) => {
  await begin(page, filled);
  await page.keyboard.press('F9');
  await expect(page.getByRole('combobox', { name: 'What to find' })).toBeFocused();
  await page.keyboard.type('hold the figures');
  await page.keyboard.press('Enter');
  const bar = page.getByRole('region', { name: 'Held figures' });
  await expect(bar).toContainText('no line differs');

  await enter(page, 'bush_bore', '1.7560 in');
  await expect(check(page, 'bush_bore').locator('.held-note')).toHaveText('was: holds');
  await expect(value(page, 'bush_bore').locator('.held-note')).toContainText(
    'was 1.7510\u00a0in, now +0.0050',
  );
  await expect(bar).toContainText(/\d+ lines differ/);

  // The next edit ends what moved; what is held stays.
  await enter(page, 'interference', '1.4 thou');
  await expect(value(page, 'bush_bore').locator('.moved')).toBeEmpty();
  await expect(value(page, 'bush_bore').locator('.held-note')).toContainText('1.7510');
  // A change that the figures do not show is not told as one.
  await expect(page.locator('[data-column="value"] .held-note').filter({ hasNotText: ', now ' })).toHaveCount(
    0,
  );
  await isSaved(page);
  await page.reload();
  await figuresAreIn(page);
  await expect(value(page, 'bush_bore').locator('.held-note')).toContainText('1.7510');

  await bar.getByRole('button', { name: 'Drop' }).click();
  await expect(bar).toHaveCount(0);
  await expect(page.locator('.held-note')).toHaveCount(0);
});

test('a part is set against its plan in units and in standard uncertainties', async ({ page }) => {
  await begin(page, filled);
  await line(page, 'bush_outside').locator('.label').click();
  const section = page.getByRole('heading', { name: 'Planned and measured' }).locator('..');
  await expect(section).toContainText('difference');
  await expect(section).toContainText(
    /That is \d\.\d standard uncertainties of the difference: no more than/,
  );
  await enter(page, 'bush_outside', '= bore + 3 thou');
  await expect(section).toContainText(/more than the doubt of both explains/);
});

test('a line is simulated with its progress, cancelled, and drawn against its limits', async ({ page }) => {
  test.slow();
  await begin(page, filled);
  await line(page, 'end_float').locator('.label').click();
  const draws = page.locator('.draws');
  await draws.getByRole('button', { name: /^Simulate 200/ }).click();
  await expect(draws.getByRole('progressbar')).toBeVisible();
  await draws.getByRole('button', { name: 'Cancel' }).click();
  await expect(draws.getByRole('button', { name: /^Simulate 200/ })).toBeVisible();

  await draws.getByRole('button', { name: /^Simulate 200/ }).click();
  await expect(draws.getByRole('img', { name: /95 % of the simulated assemblies lie from/ })).toBeVisible({
    timeout: 60_000,
  });
  await expect(draws).toContainText('shortest 95 % interval');
  await expect(draws).toContainText(/within the limits\s*(all of|9\d)/);
  await expect(draws).toContainText(/JCGM 101, clause 8/);
  // One run serves the other lines.
  await line(page, 'bush_length').locator('.label').click();
  await expect(
    page.locator('.draws').getByRole('img', { name: /of the simulated assemblies lie from/ }),
  ).toBeVisible();
  await enter(page, 'bush_length', '= collar_gap - 7 thou');
  await expect(page.locator('.draws')).toContainText('before the last change');
});

test('a ram trace is drawn with the line through it', async ({ page }) => {
  await begin(page, filled);
  // The whole library comes after it is looked through: what is taken from it waits for it.
  let letGo = (): void => undefined;
  const free = new Promise<void>((resolve) => {
    letGo = resolve;
  });
  await page.route(/\/ram-trace-[^/]*\.js$/, async (route) => {
    await free;
    await route.continue();
  });
  await page.keyboard.press('F9');
  await expect(page.getByRole('combobox', { name: 'What to find' })).toBeFocused();
  await page.keyboard.type('ram trace');
  await page.keyboard.press('Enter');
  letGo();
  const row = line(page, 'ram_trace');
  await expect(row.locator('[data-column="name"]')).toBeFocused();
  const id = await row.getAttribute('data-cell');
  const input = (name: string) => page.locator(`[data-row="${id}/in/${name}"] [data-column="entry"]`);
  await input('trace').click();
  await page.keyboard.insertText('1 in: 600 lbf; 2 in: 1190 lbf; 3 in: 1800 lbf');
  await page.keyboard.press('Enter');
  await input('fit').locator('select').selectOption('fit');
  const drawing = page.locator('.trace');
  await expect(
    drawing.getByRole('img', { name: /^3 pairs of depth and force; the fitted line gains/ }),
  ).toBeVisible();
  await expect(drawing.locator('.point')).toHaveCount(3);
  await expect(drawing.locator('.fitted')).toHaveCount(1);
  await expect(drawing.locator('.plan')).toHaveCount(1);
  // What the slope tells of the interference there is, with its doubt: F = mu pi D p x.
  const implied = page.locator(`[data-row="${id}/out/interference"] [data-column="value"]`);
  await expect(implied).toContainText(/^\d\.\d\s*thou\s*(±|\+)\s*\d\.\d/);
});
