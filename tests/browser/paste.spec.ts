import type { Page } from '@playwright/test';
import { expect, test } from './fixture.ts';
import { begin, figuresAreIn, line, templateFile, value } from './sheet-steps.ts';

const filled = templateFile('jobs/saw-arbor-bush.json').title.title;

test.use({ permissions: ['clipboard-read', 'clipboard-write'] });

const onClipboard = (page: Page, text: string): Promise<void> =>
  page.evaluate((t) => navigator.clipboard.writeText(t), text);

const emptySheet = async (page: Page): Promise<void> => {
  await page.goto('/#/');
  await page.getByRole('button', { name: 'Empty sheet, inch' }).click();
  await expect(page.getByRole('grid')).toBeVisible();
};

/** Puts one line in and leaves the cursor on its entry. */
const addLine = async (page: Page, way: string, label: string): Promise<void> => {
  await page.getByRole('button', { name: 'Add a line', exact: true }).click();
  await page.getByRole('button', { name: way, exact: true }).click();
  const text = way === 'Heading' || way === 'Remark';
  await page.getByLabel(text ? 'Text' : 'What it is', { exact: true }).fill(label);
  await page.keyboard.press('Enter');
  if (!text) await expect(page.locator('.cm-content')).toBeFocused();
};

test('lines go to another sheet by the clipboard, with what they say of each other', async ({ page }) => {
  await begin(page, filled);
  await line(page, 'interference').locator('[data-column="name"]').focus();
  await page.keyboard.press('Shift+ArrowDown');
  await page.keyboard.press('Shift+ArrowDown');
  await page.keyboard.press('ControlOrMeta+c');
  await expect(page.locator('.notice')).toContainText('Copied 3 lines.');
  const text = await page.evaluate(() => navigator.clipboard.readText());
  expect(JSON.parse(text)).toMatchObject({ format: 'fitwright-sheet', cells: [{}, {}, {}] });

  await emptySheet(page);
  await addLine(page, 'Given', 'Bore');
  await page.keyboard.insertText('2.2500 in');
  await page.keyboard.press('Enter');
  await line(page, 'bore').locator('[data-column="name"]').focus();
  await page.keyboard.press('ControlOrMeta+v');
  await expect(line(page, 'bush_outside').locator('.typed')).toHaveText('= bore + interference');
  // It takes the bore of this sheet.
  await expect(value(page, 'bush_outside').locator('.plan, b').first()).toContainText('2.');
  await expect(page.getByRole('button', { name: /^Undo: paste of 3 lines/ })).toBeVisible();
  await page.keyboard.press('ControlOrMeta+v');
  await expect(line(page, 'bush_outside_2').locator('.typed')).toHaveText('= bore + interference_2');
  await page.keyboard.press('ControlOrMeta+z');
  await expect(line(page, 'bush_outside_2')).toHaveCount(0);
});

test('names that are not there are told when lines come in', async ({ page }) => {
  await begin(page, filled);
  await line(page, 'bush_outside').locator('[data-column="name"]').focus();
  await page.keyboard.press('ControlOrMeta+x');
  // Others use it.
  await page.getByRole('button', { name: 'Cut it all the same' }).click();
  await expect(page.locator('.notice')).toContainText('Cut Bush outside diameter.');
  await expect(page.getByRole('button', { name: /^Undo: cut of Bush outside diameter/ })).toBeVisible();
  await emptySheet(page);
  await addLine(page, 'Remark', 'Here');
  await page.locator('.line.remark [data-column="name"]').focus();
  await page.keyboard.press('ControlOrMeta+v');
  await expect(page.locator('.notice')).toContainText('This sheet has no bore, interference they refer to.');
});

test('a column from a spreadsheet becomes the readings of a measured line', async ({ page }) => {
  await emptySheet(page);
  await addLine(page, 'Measured', 'Bore as found');
  await page.keyboard.press('Escape');
  const entry = line(page, 'bore_as_found').locator('[data-column="entry"]');
  await expect(entry).toBeFocused();
  await onClipboard(page, 'Bore (mm)\n57.150\n57.162\n57.158\n');
  await page.keyboard.press('ControlOrMeta+v');
  await expect(entry.locator('.typed')).toHaveText('57.150; 57.162; 57.158 mm');
  await expect(page.locator('.notice')).toContainText('Pasted 3 readings');

  // Within the editor too, and two columns as places along.
  await entry.focus();
  await page.keyboard.press('F2');
  await expect(page.locator('.cm-content')).toBeFocused();
  await page.keyboard.press('ControlOrMeta+a');
  await onClipboard(page, '2.2549\t2.2572\n2.2544\t2.2561');
  await page.keyboard.press('ControlOrMeta+v');
  await page.keyboard.press('Enter');
  await expect(entry.locator('.typed')).toHaveText('2.2549; 2.2572 | 2.2544; 2.2561 in');
});

test('a table becomes lines, and figures go back as a table', async ({ page }) => {
  await emptySheet(page);
  await addLine(page, 'Heading', 'Maker’s data');
  await page.locator('.line.section [data-column="name"]').focus();
  await onClipboard(page, 'What\tSize\tUnit\nJournal\t1.7500\tin\nClearance\t2\tthou\n');
  await page.keyboard.press('ControlOrMeta+v');
  await figuresAreIn(page);
  await expect(page.locator('.line .typed')).toHaveText(['1.7500 in', '2 thou']);
  await expect(page.locator('.line:not(.section) .label')).toHaveText(['Journal', 'Clearance']);
  // The sheet was worked out while it was empty: copied at once, the lines would have no figures yet.
  await expect(page.locator('[data-column="value"] b')).toHaveCount(2);
  const bar = page.getByRole('toolbar', { name: 'Chosen lines' });
  await expect(bar).toContainText('2 lines');
  await bar.getByRole('button', { name: 'Copy for a spreadsheet' }).click();
  await expect(page.locator('.notice')).toContainText('as a table');
  const rows = (await page.evaluate(() => navigator.clipboard.readText()))
    .split('\n')
    .map((row) => row.split('\t'));
  expect(rows[0]).toEqual(['No.', 'Dimension', 'Name', 'Value', 'Unit', 'Least', 'Greatest', 'Check']);
  expect(rows[1]?.slice(1, 5)).toEqual(['Journal', 'journal', '1.7500', 'in']);
});

test('lines are ticked on a phone and deleted together', async ({ page }) => {
  await page.setViewportSize({ width: 390, height: 844 });
  await begin(page, filled);
  await page.getByRole('button', { name: 'Choose lines' }).click();
  await page.getByRole('checkbox', { name: 'Choose Interference wanted, on diameter' }).check();
  await page.getByRole('checkbox', { name: 'Choose Bush outside diameter' }).check();
  await page.getByRole('toolbar', { name: 'Chosen lines' }).getByRole('button', { name: 'Delete' }).click();
  // Others use them.
  await page.locator('.notice').getByRole('button', { name: 'Delete them all the same' }).click();
  await expect(line(page, 'bush_outside')).toHaveCount(0);
  await expect(page.locator('.notice')).toContainText('Deleted 2 lines.');
  await page.locator('.notice').getByRole('button', { name: 'Undo' }).click();
  await expect(line(page, 'bush_outside')).toHaveCount(1);
});
