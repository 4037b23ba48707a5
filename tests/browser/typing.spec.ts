import { readFileSync } from 'node:fs';
import type { Page } from '@playwright/test';
import type { SheetFile } from '../../shared/sheet/format.ts';
import { expect, test } from './fixture.ts';
import { bringIn, isSaved, shortJob } from './share-steps.ts';
import { figuresAreIn, line, value } from './sheet-steps.ts';

const entryOf = (page: Page, name: string) => line(page, name).locator('[data-column="entry"]');
const open = async (page: Page, name: string) => {
  await entryOf(page, name).click({ position: { x: 16, y: 12 } });
  await expect(entryOf(page, name).locator('.cm-content')).toBeFocused();
};

test('what is typed goes where a press has aimed, and the entry that was open is entered as it stood', async ({
  page,
}) => {
  await bringIn(page, shortJob());
  for (const field of ['Title', 'Machine', 'Lower limit', 'Label']) {
    await open(page, 'bore');
    await page.keyboard.press('End');
    await page.keyboard.type(' ');
    await page.getByLabel(field, { exact: true }).first().click();
    await page.keyboard.type('7');
    await page.keyboard.press('Escape');
    await expect(entryOf(page, 'bore').locator('.typed')).toHaveText('2.2513 in ± 0.0002 in');
  }
});

test('Delete on an entry empties it, and a line that others use is asked about first', async ({ page }) => {
  await bringIn(page, shortJob());
  await open(page, 'grip');
  await page.keyboard.press('Escape');
  await expect(entryOf(page, 'grip')).toBeFocused();
  await page.keyboard.press('Delete');
  await expect(entryOf(page, 'grip').locator('.typed')).toHaveCount(0);
  await expect(line(page, 'grip')).toBeVisible();
  await page.keyboard.press('ControlOrMeta+z');
  await expect(entryOf(page, 'grip').locator('.typed')).toHaveText('=od - bore');

  await line(page, 'bore').locator('.label').click();
  await page.keyboard.press('Delete');
  await expect(page.getByText(/Bush outside diameter.*Interference use Bore/)).toBeVisible();
  await expect(line(page, 'bore')).toBeVisible();
  await page.getByRole('button', { name: 'Delete it all the same' }).click();
  await expect(line(page, 'bore')).toHaveCount(0);
  // What was pressed has gone: the focus is with the work, not with the page.
  await expect.poll(() => page.evaluate(() => document.activeElement?.matches('[data-column]'))).toBe(true);
});

test('a locked line says so, what was typed in it waits for the lock, and a file has what is being typed', async ({
  page,
}) => {
  await bringIn(page, shortJob());
  const entry = entryOf(page, 'od');
  await expect(entry.getByRole('img', { name: 'locked' })).toBeVisible();
  await line(page, 'od').locator('.label').click();
  await page.keyboard.press('ArrowRight');
  await expect(entry).toBeFocused();
  await page.keyboard.type('2.2540');
  await page.keyboard.press('Enter');
  await expect(page.getByText('“2.2540” is not entered yet')).toBeVisible();
  await expect(entry.locator('.typed')).toContainText('=bore + 3 thou');
  await page.getByRole('button', { name: 'Unlock it and enter that' }).click();
  await expect(entry.locator('.typed')).toHaveText('2.2540 in');
  // One press was one step.
  await page.keyboard.press('ControlOrMeta+z');
  await expect(entry.locator('.typed')).toContainText('=bore + 3 thou');
  await expect(entry.getByRole('img', { name: 'locked' })).toBeVisible();

  // What is typed is in what a press does with the sheet, though nobody has pressed Enter.
  await open(page, 'bore');
  await page.keyboard.press('ControlOrMeta+a');
  await page.keyboard.insertText('2.2600 in ± 0.0002 in');
  const saved = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save to a file' }).filter({ visible: true }).click();
  const file = JSON.parse(readFileSync(await (await saved).path(), 'utf8')) as SheetFile;
  expect(file.cells.find(({ name }) => name === 'bore')?.entry).toBe('2.2600 in ± 0.0002 in');
});

test('undo goes on after a look at all jobs, and with the focus in a list box', async ({ page }) => {
  await bringIn(page, shortJob());
  await open(page, 'bore');
  await page.keyboard.press('ControlOrMeta+a');
  await page.keyboard.insertText('2.2600 in ± 0.0002 in');
  await page.keyboard.press('Enter');
  await expect(value(page, 'bore')).toContainText('2.2600');
  await isSaved(page);
  await page.getByRole('link', { name: 'All jobs' }).click();
  await expect(page.getByRole('grid')).toHaveCount(0);
  await page.goBack();
  await figuresAreIn(page);
  await page.getByLabel('Checks follow').focus();
  await page.keyboard.press('ControlOrMeta+z');
  await expect(value(page, 'bore')).toContainText('2.2513');
});

test('what was typed and not entered as the page was closed is offered again', async ({ page }) => {
  await bringIn(page, shortJob());
  await isSaved(page);
  await open(page, 'bore');
  await page.keyboard.press('ControlOrMeta+a');
  await page.keyboard.insertText('2.26');
  await page.reload();
  await figuresAreIn(page);
  await expect(entryOf(page, 'bore').locator('.typed')).toHaveText('2.2513 in ± 0.0002 in');
  await page.getByRole('button', { name: 'Go on with it' }).click();
  await expect(entryOf(page, 'bore').locator('.cm-content')).toHaveText('2.26');
  await page.keyboard.press('Escape');
  await page.getByLabel('Label', { exact: true }).click();
  await page.keyboard.press('End');
  await page.keyboard.type(' of the housing');
  await page.reload();
  await figuresAreIn(page);
  await page.getByRole('button', { name: 'Go on with it' }).click();
  await expect(page.getByLabel('Label', { exact: true })).toHaveValue('Bore of the housing');
  await page.keyboard.press('Tab');
  await expect(line(page, 'bore').locator('.label')).toHaveText('Bore of the housing');
});

test('a cell of the library is found and put in by keys alone, and so is the gauge it asks for', async ({
  page,
}) => {
  await bringIn(page, shortJob());
  await line(page, 'grip').locator('.label').click();
  await page.keyboard.press('Insert');
  await page.getByRole('button', { name: 'From the library' }).click();
  await expect(page.getByLabel('What is it for?')).toBeFocused();
  await page.keyboard.type('close-in');
  await page.keyboard.press('ArrowDown');
  await page.keyboard.press('ArrowUp');
  await page.keyboard.press('Enter');
  const material = page.getByLabel(/^bush.*material/i).first();
  await expect(material).toBeVisible();
  await material.selectOption({ label: 'new line: Material' });
  await expect(page.getByText('There is no cell named')).toHaveCount(0);
  await expect(material.locator('option:checked')).not.toHaveText(/new line/);
});
