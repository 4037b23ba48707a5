import { walk } from '../walk.ts';
import { findings } from './axe-findings.ts';
import { expect, test } from './fixture.ts';
import { begin, FIRST_LINE, figuresAreIn, line, templateFile } from './sheet-steps.ts';

const filled = templateFile('jobs/saw-arbor-bush.json').title.title;

for (const [colorScheme, what, widths] of [
  ['light', 'all', [1280, 390]],
  ['dark', 'colours', [390, 1280]],
] as const) {
  // A sample takes each at one of the widths.
  for (const width of widths.slice(0, walk(1, 2))) {
    test(`axe finds nothing on any view, ${colorScheme}, ${width} px`, async ({ page }) => {
      test.slow();
      await page.setViewportSize({ width, height: 900 });
      await page.emulateMedia({ colorScheme });
      await page.goto('/');
      await expect(page.getByRole('article').first()).toBeVisible();
      expect(await findings(page, what), 'first page').toEqual([]);

      await begin(page, filled);
      expect(await findings(page, what), 'sheet').toEqual([]);

      await line(page, 'bush_outside').locator('.label').click();
      await expect(page.getByRole('heading', { name: 'Where the spread comes from' })).toBeVisible();
      expect(await findings(page, what), 'line unfolded').toEqual([]);

      await line(page, 'bush_outside').locator('[data-column="entry"]').click({ position: FIRST_LINE });
      await expect(page.locator('.cm-content')).toBeFocused();
      await page.keyboard.press('ControlOrMeta+a');
      await page.keyboard.type('=bu');
      await expect(page.locator('.cm-tooltip-autocomplete [role=option]').first()).toBeVisible();
      expect(await findings(page, what), 'editor with offers').toEqual([]);
      await page.keyboard.press('Escape');
      await page.keyboard.press('Escape');

      await line(page, 'fit').locator('.label').click();
      await expect(page.getByRole('heading', { name: 'Taken for granted' })).toBeVisible();
      expect(await findings(page, what), 'library cell unfolded').toEqual([]);

      await page.getByRole('button', { name: 'Add a line below' }).click();
      await page.getByRole('button', { name: 'From the library' }).click();
      await expect(page.getByLabel('What is it for?')).toBeVisible();
      expect(await findings(page, what), 'adding from the library').toEqual([]);

      await page.goto('/#/');
      await expect(page.getByRole('heading', { name: 'Jobs' })).toBeVisible();
      expect(await findings(page, what), 'first page with jobs').toEqual([]);
    });
  }
}

test('a line is added, filled, moved, deleted and brought back by keyboard alone', async ({ page }) => {
  await page.goto('/');
  await page.getByRole('button', { name: 'Empty sheet, inch' }).click();
  await expect(page.getByRole('grid')).toBeVisible();
  await figuresAreIn(page).catch(() => undefined);

  const add = async (way: string, label: string) => {
    await page.getByRole('button', { name: way, exact: true }).press('Enter');
    await page.getByLabel('What it is').fill(label);
    await page.keyboard.press('Enter');
  };
  await page.getByRole('button', { name: 'Add a line' }).press('Enter');
  await add('Measured', 'Journal');
  await expect(page.locator('.cm-content')).toBeFocused();
  await page.keyboard.type('1.7482 ± .0001');
  await page.keyboard.press('Enter');
  // A bare number takes the sheet's unit as it is taken.
  await expect(line(page, 'journal').locator('.typed')).toHaveText('1.7482 in ± .0001');
  await expect(line(page, 'journal').locator('[data-column="entry"]')).toBeFocused();

  await page.keyboard.press('Alt+Enter');
  await add('Worked out', 'Half of it');
  await page.keyboard.type('=jou');
  await expect(page.getByRole('option', { name: /journal/ })).toBeVisible();
  await page.keyboard.press('Tab');
  await page.keyboard.type('/2');
  await page.keyboard.press('Enter');
  const half = line(page, 'half_of_it');
  await expect(half.locator('[data-column="value"] b')).toHaveText('0.87410\u00a0in');

  await page.keyboard.press('Escape');
  await page.keyboard.press('Alt+ArrowUp');
  await expect(page.locator('.named').first()).toHaveText('half_of_it');
  await page.keyboard.press('Control+Home');
  await page.keyboard.press('Delete');
  await expect(half).toHaveCount(0);
  await page.keyboard.press('Control+z');
  await expect(half).toHaveCount(1);

  // Typing in the grid begins a new entry, Escape leaves it as it was.
  await line(page, 'journal').locator('[data-column="entry"]').focus();
  await page.keyboard.press('9');
  await expect(page.locator('.cm-content')).toBeFocused();
  await expect(page.locator('.cm-content')).toHaveText('9');
  await page.keyboard.press('Escape');
  await expect(line(page, 'journal').locator('.typed')).toHaveText('1.7482 in ± .0001');
  await expect(line(page, 'journal').locator('[data-column="entry"]')).toBeFocused();
});
