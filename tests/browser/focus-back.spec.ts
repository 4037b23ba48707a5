import type { Page } from '@playwright/test';
import { expect, test } from './fixture.ts';
import { bringIn, shortJob } from './share-steps.ts';
import { enter, FIRST_LINE, figuresAreIn, line } from './sheet-steps.ts';

/** The row the keyboard is in; nothing where it is nowhere. */
const rowInFocus = (page: Page) =>
  page.evaluate(() => document.activeElement?.closest('[data-row]')?.querySelector('.named')?.textContent);

const openEntry = async (page: Page): Promise<void> => {
  await line(page, 'bore').locator('[data-column="entry"]').click({ position: FIRST_LINE });
  await expect(page.locator('.cm-content')).toBeFocused();
};

test('from drawing, machine, finder, dialog, message and undo the keyboard comes back to the work', async ({
  page,
}) => {
  await bringIn(page, shortJob());
  for (const view of ['Chain', 'At the machine']) {
    await openEntry(page);
    await page.getByRole('toolbar', { name: 'Sheet' }).getByRole('link', { name: view }).click();
    await page.getByRole('link', { name: 'Back to the sheet' }).click();
    await figuresAreIn(page);
    await expect.poll(() => rowInFocus(page), view).toBe('bore');
  }
  // From the drawing, to the line that was pressed.
  await page.getByRole('toolbar', { name: 'Sheet' }).getByRole('link', { name: 'Chain' }).click();
  await page.locator('.chain-drawing .node', { hasText: 'Interference' }).click();
  await expect.poll(() => rowInFocus(page), 'a box of the drawing').toBe('grip');
  // With an entry open, which goes when something lies over it.
  await openEntry(page);
  await page.keyboard.press('F9');
  await expect(page.getByRole('combobox', { name: 'What to find' })).toBeFocused();
  await page.keyboard.press('Escape');
  await expect.poll(() => rowInFocus(page), 'the finder').toBe('bore');
  await openEntry(page);
  await page.getByRole('toolbar', { name: 'Sheet' }).getByRole('button', { name: 'Preferences' }).click();
  await page.getByRole('dialog').getByRole('button', { name: 'Close' }).click();
  await expect.poll(() => page.evaluate(() => document.activeElement?.tagName), 'a dialog').not.toBe('BODY');
  // An edit taken back, by key and by the button that can be pressed no more, and its message closed.
  await enter(page, 'bore', '2.26 in ± 0.0002 in');
  await page.keyboard.press('ControlOrMeta+z');
  await expect.poll(() => rowInFocus(page), 'undo by key').toBe('bore');
  await enter(page, 'bore', '2.27 in ± 0.0002 in');
  await page.getByRole('button', { name: /^Undo/ }).click();
  await expect(page.getByRole('button', { name: /^Undo/ })).toBeDisabled();
  await expect.poll(() => rowInFocus(page), 'undo by button').toBe('bore');
  await page.getByRole('button', { name: 'Close the message' }).click();
  await expect.poll(() => rowInFocus(page), 'a message').toBe('bore');
  // A line that is taken back has the keyboard in it.
  await line(page, 'grip').locator('[data-column="number"]').click();
  await page.keyboard.press('Delete');
  await expect(line(page, 'grip')).toHaveCount(0);
  await expect.poll(() => page.evaluate(() => document.activeElement?.tagName), 'deletion').not.toBe('BODY');
  await page.keyboard.press('ControlOrMeta+z');
  await expect(line(page, 'grip')).toHaveCount(1);
  await expect.poll(() => page.evaluate(() => document.activeElement?.tagName), 'line back').not.toBe('BODY');
});
