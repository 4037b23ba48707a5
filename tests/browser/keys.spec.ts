import type { Locator, Page } from '@playwright/test';
import { expect, test } from './fixture.ts';
import { dialog } from './share-steps.ts';
import { begin, figuresAreIn, line, templateFile, value } from './sheet-steps.ts';

const filled = templateFile('jobs/saw-arbor-bush.json').title.title;

const find = async (page: Page, words: string): Promise<void> => {
  await page.keyboard.press('F9');
  await expect(page.getByRole('combobox', { name: 'What to find' })).toBeFocused();
  await page.keyboard.type(words);
};

/** Presses Tab until the focus is there: nothing a mouse could do. */
const tabTo = async (page: Page, wanted: Locator, back = false): Promise<void> => {
  for (let presses = 0; presses < 120; presses += 1) {
    if (await wanted.evaluate((element) => element.contains(document.activeElement)).catch(() => false))
      return;
    await page.keyboard.press(back ? 'Shift+Tab' : 'Tab');
  }
  throw new Error(`Tab does not lead to ${wanted}`);
};

test('the finder goes to a line, runs a command and puts in a cell of the library', async ({ page }) => {
  await begin(page, filled);
  await find(page, 'bush_out');
  const first = page.getByRole('listbox', { name: 'Found' }).getByRole('option').first();
  await expect(first).toContainText('Bush outside diameter');
  await expect(first).toHaveAttribute('aria-selected', 'true');
  await page.keyboard.press('Enter');
  await expect(dialog(page, 'Find a command or a line')).toHaveCount(0);
  await expect(line(page, 'bush_outside').locator('[data-column="name"]')).toBeFocused();

  await find(page, 'millimetres');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('button', { name: 'mm', exact: true })).toHaveAttribute('aria-pressed', 'true');
  // Where nothing else asks for it, the focus is back on the line.
  await expect(line(page, 'bush_outside').locator('[data-column="name"]')).toBeFocused();

  await find(page, 'ram trace');
  await page.keyboard.press('Enter');
  await expect(line(page, 'ram_trace').locator('[data-column="name"]')).toBeFocused();

  await find(page, 'zzz');
  await expect(dialog(page, 'Find a command or a line')).toContainText('Nothing holds all of these words.');
  await page.keyboard.press('Escape');
  await expect(dialog(page, 'Find a command or a line')).toHaveCount(0);
});

test('the question mark lists every key, and typing one into an entry does not', async ({ page }) => {
  await begin(page, filled);
  const cell = line(page, 'bush_bore').locator('[data-column="entry"]');
  await cell.focus();
  await page.keyboard.press('F2');
  await expect(page.locator('.cm-content')).toBeFocused();
  await page.keyboard.type('?');
  await expect(page.locator('.cm-content')).toContainText('?');
  await expect(dialog(page, 'Keys')).toHaveCount(0);
  // The first one may only close what the editor offers.
  await page.keyboard.press('Escape');
  await page.keyboard.press('Escape');
  await expect(cell).toBeFocused();
  await page.keyboard.press('?');
  for (const key of ['F9', '?', 'Ctrl+Z', 'Alt+↑', 'Shift+Space', 'Delete', 'Insert', 'F2', 'Page Up'])
    await expect(
      dialog(page, 'Keys')
        .locator('kbd', { hasText: new RegExp(`^${key.replace(/[?+]/g, '\\$&')}$`) })
        .first(),
    ).toBeVisible();
  await page.keyboard.press('Escape');
  await expect(cell).toBeFocused();
});

test('lines are chosen with Shift, moved, copied and deleted as one step each', async ({ page }) => {
  await begin(page, filled);
  const order = () =>
    page
      .locator('[data-row] .named')
      .evaluateAll((names) =>
        names
          .map((n) => n.textContent)
          .filter((n) => ['interference', 'bush_outside', 'interference_got', 'bush_bore'].includes(n ?? '')),
      );
  await line(page, 'bush_outside').locator('[data-column="name"]').focus();
  await page.keyboard.press('Shift+ArrowDown');
  await expect(page.getByRole('toolbar', { name: 'Chosen lines' })).toContainText('2 lines');
  await expect(page.locator('.line.chosen[aria-selected="true"]')).toHaveCount(2);
  await page.keyboard.press('Alt+ArrowUp');
  await expect.poll(order).toEqual(['bush_outside', 'interference_got', 'interference', 'bush_bore']);
  await page.keyboard.press('Control+z');
  await expect(page.locator('.notice')).toContainText('Taken back: move of 2 lines.');
  await expect.poll(order).toEqual(['interference', 'bush_outside', 'interference_got', 'bush_bore']);

  // Other lines depend on these: that is asked first.
  await page.keyboard.press('Delete');
  await expect.poll(order).toEqual(['interference', 'bush_outside', 'interference_got', 'bush_bore']);
  await page.getByRole('button', { name: 'Delete them all the same' }).click();
  await expect.poll(order).toEqual(['interference', 'bush_bore']);
  await expect(page.getByRole('toolbar', { name: 'Chosen lines' })).toHaveCount(0);
  await page.keyboard.press('Control+z');
  await expect(page.locator('.notice')).toContainText('Taken back: deletion of 2 lines.');
  await expect.poll(order).toEqual(['interference', 'bush_outside', 'interference_got', 'bush_bore']);
});

test('an edit tells which checks changed, once and together', async ({ page }) => {
  await begin(page, filled);
  const told = page.locator('[data-announcer]');
  await expect(told).toHaveText('');
  await line(page, 'bush_bore').locator('[data-column="entry"]').focus();
  await page.keyboard.press('F2');
  await expect(page.locator('.cm-content')).toBeFocused();
  await page.keyboard.press('ControlOrMeta+a');
  await page.keyboard.insertText('1.7560 in');
  await page.keyboard.press('Enter');
  await expect(told).toContainText('Bush bore, finished: misses, was holds');
});

test('the three uses by keyboard alone: make a template, change one dimension, hand it to another shop', async ({
  page,
  browser,
  watch,
}) => {
  test.slow();
  await page.goto('/');
  await tabTo(page, page.getByRole('button', { name: 'Empty sheet, inch' }));
  await page.keyboard.press('Enter');
  await expect(page.getByRole('grid')).toBeVisible();
  const add = async (way: string, label: string, entry: string) => {
    await find(page, 'add a line');
    await page.keyboard.press('Enter');
    await tabTo(page, page.getByRole('button', { name: way, exact: true }), true);
    await page.keyboard.press('Enter');
    await tabTo(page, page.getByLabel('What it is'));
    await page.keyboard.type(label);
    await page.keyboard.press('Enter');
    await expect(page.locator('.cm-content')).toBeFocused();
    await page.keyboard.insertText(entry);
    await page.keyboard.press('Enter');
    await expect(page.locator('.cm-content')).toHaveCount(0);
  };
  await add('Measured', 'Housing bore', '2.2500 ± .0001');
  await add('Chosen', 'Interference', '2 thou');
  await add('Worked out', 'Bush outside', '= housing_bore + interference');
  await expect(value(page, 'bush_outside').locator('b')).toHaveText('2.2520\u00a0in');

  // A template of it.
  await find(page, 'save template');
  await page.keyboard.press('Enter');
  const saving = dialog(page, 'Save as a template');
  await tabTo(page, saving.getByLabel('Title of the template'));
  await page.keyboard.press('ControlOrMeta+a');
  await page.keyboard.type('Bush to a bore');
  await tabTo(page, saving.getByRole('button', { name: /^Save/ }).first());
  await page.keyboard.press('Enter');
  await expect(saving).toHaveCount(0);

  // One dimension changed: what depends on it follows and says by how much.
  await find(page, 'housing bore');
  await page.keyboard.press('Enter');
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('F2');
  await expect(page.locator('.cm-content')).toBeFocused();
  await page.keyboard.press('ControlOrMeta+a');
  await page.keyboard.insertText('2.2510 ± .0001');
  await page.keyboard.press('Enter');
  await expect(value(page, 'bush_outside').locator('b')).toHaveText('2.2530\u00a0in');
  await expect(value(page, 'bush_outside').locator('.moved')).toContainText('+0.0010');

  // To a shop that works in millimetres.
  await find(page, 'share the sheet');
  await page.keyboard.press('Enter');
  const code = dialog(page, 'Share this sheet').locator('#share-code');
  await expect(code).toHaveValue(/^A/);
  const text = await code.inputValue();
  const profile = await browser.newContext();
  await watch(profile);
  const other = await profile.newPage();
  await other.goto(page.url().replace(/#.*/, '#/open'));
  await tabTo(other, other.getByLabel('Or paste a text or a link'));
  await other.keyboard.insertText(text);
  await tabTo(other, other.getByRole('button', { name: 'Read the text' }));
  await other.keyboard.press('Enter');
  await tabTo(other, other.getByRole('button', { name: 'Take it over as a new sheet' }));
  await other.keyboard.press('Enter');
  await figuresAreIn(other);
  await find(other, 'show lengths in millimetres');
  await other.keyboard.press('Enter');
  await expect(value(other, 'bush_outside').locator('b')).toHaveText('57.226\u00a0mm');
  await profile.close();
});
