import type { Page } from '@playwright/test';
import { walk } from '../walk.ts';
import { findings } from './axe-findings.ts';
import { expect, test } from './fixture.ts';
import { dialog, isSaved, lookAt, shortJob, takeOver } from './share-steps.ts';
import { begin, enter, figuresAreIn, line, templateFile, value } from './sheet-steps.ts';

const filled = templateFile('jobs/saw-arbor-bush.json').title.title;

const prefer = async (page: Page, ...choices: string[]): Promise<void> => {
  await page.keyboard.press('F9');
  await expect(page.getByRole('combobox', { name: 'What to find' })).toBeFocused();
  await page.keyboard.type('preferences');
  await page.keyboard.press('Enter');
  for (const choice of choices) await dialog(page, 'Preferences').getByLabel(choice, { exact: true }).check();
  await page.keyboard.press('Escape');
  await expect(dialog(page, 'Preferences')).toHaveCount(0);
};

test('with a decimal comma everything is shown and typed so, and stored as ever', async ({ page }) => {
  await begin(page, filled);
  await prefer(page, 'comma: 2,2515');
  await expect(value(page, 'bush_bore').locator('b')).toHaveText('1,7510\u00a0in');
  await expect(line(page, 'bush_bore').locator('.typed')).toHaveText('1,7510 in');
  await expect(line(page, 'bush_bore').locator('.beside')).toContainText('± 0,0002 in');
  await enter(page, 'bush_bore', '1,7512');
  await expect(line(page, 'bush_bore').locator('.typed')).toHaveText('1,7512 in');
  await expect(value(page, 'bush_bore').locator('b')).toHaveText('1,7512\u00a0in');
  // What can be read in two ways is asked about.
  await enter(page, 'interference', '1.500 thou');
  await expect(line(page, 'interference')).toContainText('can be read in two ways');
  await page.keyboard.press('ControlOrMeta+z');
  await isSaved(page);
  await page.reload();
  await figuresAreIn(page);
  await expect(line(page, 'bush_bore').locator('.typed')).toHaveText('1,7512 in');
  await prefer(page, 'point: 2.2515');
  await expect(line(page, 'bush_bore').locator('.typed')).toHaveText('1.7512 in');
});

test('labels and the library speak the user’s own trade words, names and formulas do not change', async ({
  page,
}) => {
  await begin(page, filled);
  await prefer(page, 'bushing', 'end play');
  await expect(line(page, 'bush_outside').locator('.label')).toHaveText('Bushing outside diameter');
  await expect(line(page, 'bush_outside').locator('.named')).toHaveText('bush_outside');
  await expect(line(page, 'end_float').locator('.label')).toHaveText('End play');
  await expect(line(page, 'close')).toContainText('Close-in of a pressed bushing');
  await line(page, 'bush_outside').locator('.label').click();
  // The field holds what is stored.
  await expect(page.getByLabel('Label', { exact: true })).toHaveValue('Bush outside diameter');
  await page.emulateMedia({ media: 'print' });
  const paper = page.locator('.print-sheet');
  await expect(paper.getByRole('heading', { level: 1 })).toHaveText(/bushing in the opened-out bore$/);
  for (const part of await paper.locator('section:not(.print-small)').all())
    await expect(part).not.toContainText(/\bbush\b/);
  await page.emulateMedia({ media: 'screen' });
  await prefer(page, 'bush', 'end float');
  await expect(line(page, 'end_float').locator('.label')).toHaveText('End float');
});

const LOOKS = [
  ['light', 'all'],
  ['dark', 'colours'],
  ['outdoors: black on white, heavy lines', 'colours'],
] as const;
for (const [look, what] of LOOKS.slice(0, walk(2, 3))) {
  test(`axe finds nothing on the tools of a sheet, ${look.split(':')[0]}`, async ({ page }) => {
    test.slow();
    // A short sheet, which is soon drawn.
    await lookAt(page, shortJob());
    await takeOver(page);
    await figuresAreIn(page);
    await prefer(page, look);
    await expect(page.locator('html')).toHaveAttribute('data-look', look.split(':')[0]!);
    await page.keyboard.press('F9');
    await expect(page.getByRole('listbox', { name: 'Found' }).getByRole('option').first()).toBeVisible();
    expect(await findings(page, what), 'finder').toEqual([]);
    await page.keyboard.press('Escape');
    await line(page, 'grip').locator('.label').click();
    await expect(page.locator('.stack-up')).toBeVisible();
    await page.locator('.draws').getByRole('button').click();
    await expect(page.locator('.draws-outcome')).toBeVisible({ timeout: 60_000 });
    expect(await findings(page, what), 'unfolded with its proof').toEqual([]);
    await line(page, 'od').locator('[data-column="name"]').focus();
    await page.keyboard.press('Shift+ArrowDown');
    await expect(page.getByRole('toolbar', { name: 'Chosen lines' })).toBeVisible();
    expect(await findings(page, what), 'chosen lines').toEqual([]);
    await page.keyboard.press('Escape');
    await page.keyboard.press('?');
    await expect(dialog(page, 'Keys')).toBeVisible();
    expect(await findings(page, what), 'keys').toEqual([]);
    await page.keyboard.press('Escape');
    await page.getByRole('button', { name: 'Preferences' }).click();
    expect(await findings(page, what), 'preferences').toEqual([]);
    await page.keyboard.press('Escape');
    await page.getByRole('link', { name: 'Chain' }).click();
    await expect(page.locator('.chain-drawing')).toBeVisible();
    expect(await findings(page, what), 'chain').toEqual([]);
    await page.getByRole('link', { name: 'Back to the sheet' }).click();
    await page.getByRole('link', { name: 'At the machine' }).click();
    await expect(page.getByRole('group', { name: 'Keypad' })).toBeVisible();
    expect(await findings(page, what), 'at the machine').toEqual([]);
  });
}

test('text is enlarged, and at twice the size nothing is cut off sideways', async ({ page }) => {
  await begin(page, filled);
  await prefer(page, 'larger');
  await expect(page.locator('html')).toHaveCSS('font-size', '21px');
  // 1280 px at 200 % are 640 px.
  await page.setViewportSize({ width: 640, height: 450 });
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(640);
  await page.keyboard.press('F9');
  await expect(page.getByRole('combobox', { name: 'What to find' })).toBeInViewport();
});

test('hints go away by themselves once they have been followed', async ({ page }) => {
  await begin(page, filled);
  const hint = page.getByRole('complementary', { name: 'Hint' });
  await expect(hint).toContainText('Choose an entry and type');
  await enter(page, 'bush_bore', '1.7511 in');
  await expect(hint).toContainText('F9, leads to any command');
  await page.keyboard.press('F9');
  await expect(page.getByRole('combobox', { name: 'What to find' })).toBeFocused();
  await page.keyboard.press('Escape');
  await expect(hint).toContainText('At the machine');
  await hint.getByRole('button', { name: 'No more hints' }).click();
  await expect(hint).toHaveCount(0);
  await isSaved(page);
  await page.reload();
  await figuresAreIn(page);
  await expect(hint).toHaveCount(0);
});

test('where the browser keeps nothing, preferences hold as long as the page', async ({ page }) => {
  await page.addInitScript(() => {
    Object.defineProperty(window, 'localStorage', {
      get: () => {
        throw new DOMException('refused', 'SecurityError');
      },
    });
  });
  await begin(page, filled);
  await prefer(page, 'dark');
  await expect(page.locator('html')).toHaveAttribute('data-look', 'dark');
});

test('preferences are at hand before there is any sheet', async ({ page }) => {
  await page.goto('/');
  await page.getByRole('button', { name: 'Preferences' }).click();
  await dialog(page, 'Preferences').getByLabel('dark', { exact: true }).check();
  await page.keyboard.press('Escape');
  await expect(page.getByRole('button', { name: 'Preferences' })).toBeFocused();
  await expect(page.locator('html')).toHaveAttribute('data-look', 'dark');
  expect(await findings(page)).toEqual([]);
});
