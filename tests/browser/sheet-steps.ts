import { readFileSync } from 'node:fs';
import type { Locator, Page } from '@playwright/test';
import type { CellRecord, SheetFile } from '../../shared/sheet/format.ts';
import { expect } from './fixture.ts';

/** What a person does on a sheet, by the names and labels they see. */

export const templateFile = (name: string): SheetFile =>
  JSON.parse(readFileSync(new URL(`../../templates/${name}`, import.meta.url), 'utf8')) as SheetFile;

/** Begins a job from the offer with this title. */
export const begin = async (page: Page, title: string): Promise<void> => {
  await page.goto('/');
  await page
    .getByRole('article')
    .filter({ has: page.getByRole('heading', { name: title, exact: true }) })
    .getByRole('button')
    .first()
    .click();
  await expect(page.getByRole('grid')).toBeVisible();
  await figuresAreIn(page);
};

/** Waits for the engine's first answer. */
export const figuresAreIn = async (page: Page): Promise<void> => {
  await expect(page.getByRole('region', { name: 'How the checks stand' })).not.toContainText(
    'Working it out',
  );
};

/** The line of a cell by its name in formulas. */
export const line = (page: Page, name: string): Locator =>
  page
    .locator('[data-row]')
    .filter({ has: page.locator('.named', { hasText: new RegExp(`^${name.replace('.', '\\.')}$`) }) });

export const value = (page: Page, name: string): Locator => line(page, name).locator('[data-column="value"]');
export const check = (page: Page, name: string): Locator => line(page, name).locator('[data-column="check"]');

/** Where the entry stands in its cell: below it a size to cut has its box for what was measured. */
export const FIRST_LINE = { x: 16, y: 12 };

/** Types into an entry of the grid and takes it with Enter. */
export const typeInto = async (page: Page, entry: Locator, text: string): Promise<void> => {
  await entry.click({ position: FIRST_LINE });
  const editor = entry.locator('.cm-content');
  await expect(editor).toBeFocused();
  await page.keyboard.press('ControlOrMeta+a');
  await page.keyboard.insertText(text);
  await page.keyboard.press('Enter');
  await expect(editor).toHaveCount(0);
};

export const enter = (page: Page, name: string, text: string): Promise<void> =>
  typeInto(page, line(page, name).locator('[data-column="entry"]'), text);

/** The row of a library cell's input, which has no name of its own. */
const inputEntry = (page: Page, id: string, input: string): Locator =>
  page.locator(`[data-row$="/in/${input}"][data-cell="${id}"] [data-column="entry"]`);

/** Types a limit that the template asks for, in the unfolded line. */
const fillLimit = async (page: Page, cell: CellRecord, field: string, text: string): Promise<void> => {
  const box = page.locator(`[data-field="${field}"]`);
  await line(page, cell.name!).locator('.label').click();
  await box.locator('input').click();
  const editor = box.locator('.cm-content');
  await expect(editor).toBeFocused();
  await page.keyboard.insertText(text);
  await page.keyboard.press('Enter');
  await expect(editor).toHaveCount(0);
};

/** Types everything a template leaves to be filled in, as its examples give it. */
export const fillIn = async (page: Page, cells: readonly CellRecord[]): Promise<void> => {
  for (const cell of cells) {
    if (cell.example && cell.name) await enter(page, cell.name, cell.example);
    for (const which of ['lower', 'upper', 'wear'] as const) {
      const example = cell.limits?.[`${which}Example`];
      if (example) await fillLimit(page, cell, `limits.${which}`, example);
    }
    if (!cell.examples || !cell.name) continue;
    const row = line(page, cell.name);
    const id = await row.getAttribute('data-cell');
    await row.locator('.label').click();
    for (const [input, text] of Object.entries(cell.examples)) {
      const entry = inputEntry(page, id!, input);
      await expect(entry).toBeVisible();
      const select = entry.locator('select');
      if ((await select.count()) > 0) await select.selectOption(text);
      else await typeInto(page, entry, text);
    }
  }
};
