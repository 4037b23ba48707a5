import type { Page } from '@playwright/test';
import { walk } from '../walk.ts';
import { expect, test } from './fixture.ts';
import { bringIn, isSaved, shortJob } from './share-steps.ts';
import { enter, FIRST_LINE, figuresAreIn, line, value } from './sheet-steps.ts';

test('two tabs on one job see each other’s entries at once, and neither loses one', async ({
  page,
  context,
}) => {
  await bringIn(page, shortJob());
  const other = await context.newPage();
  await other.goto(page.url());
  await figuresAreIn(other);

  await enter(page, 'bore', '2.2600 in ± 0.0002 in');
  await expect(value(other, 'bore')).toContainText('2.2600');
  await expect(value(other, 'od')).toContainText('2.2630');

  // Both write at the same time, in different lines.
  await Promise.all([enter(page, 'grip', '=2 * (od - bore)'), enter(other, 'bore', '2.2700 in ± 0.0002 in')]);
  for (const tab of [page, other]) {
    await expect(value(tab, 'grip')).toContainText('6');
    await expect(value(tab, 'od')).toContainText('2.2730');
  }

  // An entry that is being typed in one tab is not disturbed by what comes from the other.
  await line(page, 'grip').locator('[data-column="entry"]').click();
  const editor = page.locator('.cm-content');
  await expect(editor).toBeFocused();
  await page.keyboard.press('ControlOrMeta+a');
  await page.keyboard.insertText('=3 * (od - bore)');
  await enter(other, 'bore', '2.2800 in ± 0.0002 in');
  await expect(value(page, 'bore')).toContainText('2.2800');
  await expect(editor).toHaveText('=3 * (od - bore)');
  await page.keyboard.press('Enter');
  await expect(value(other, 'grip')).toContainText('9');

  await isSaved(page);
  await isSaved(other);
  await other.close();
  await page.reload();
  await figuresAreIn(page);
  await expect(value(page, 'grip')).toContainText('9');
  await expect(value(page, 'bore')).toContainText('2.2800');
});

test('the list in one tab follows what is done in another', async ({ page, context }) => {
  await bringIn(page, shortJob());
  const list = await context.newPage();
  await list.goto('/#/');
  await expect(list.locator('.job')).toHaveCount(1);
  await page.getByRole('textbox', { name: 'Title', exact: true }).fill('Countershaft bush, second try');
  await page.keyboard.press('Tab');
  await expect(list.locator('.job')).toContainText('second try');
});

/** How often each of these ways is gone; more when asked. */
const RUNS = walk(1, 20);

const entryOf = (page: Page, name: string) => line(page, name).locator('[data-column="entry"]');

test('an entry that was opened and left as it was changes nothing that came meanwhile', async ({
  page,
  context,
}) => {
  test.setTimeout(60_000 + RUNS * 30_000);
  await bringIn(page, shortJob());
  const other = await context.newPage();
  await other.goto(page.url());
  await figuresAreIn(other);
  for (let run = 0; run < RUNS; run += 1) {
    for (const [k, key] of ['Enter', 'Escape', 'blur'].entries()) {
      const now = (2.26 + run / 100 + k / 1000).toFixed(4);
      await page.bringToFront();
      await entryOf(page, 'bore').click({ position: FIRST_LINE });
      await expect(page.locator('.cm-content')).toBeFocused();
      await enter(other, 'bore', `${now} in ± 0.0002 in`);
      await expect(value(page, 'bore')).toContainText(now);
      await page.bringToFront();
      if (key === 'blur') await line(page, 'grip').locator('.label').click();
      else await page.keyboard.press(key);
      await expect(page.locator('.cm-content')).toHaveCount(0);
      await expect(entryOf(page, 'bore')).toContainText(now);
      await expect(entryOf(other, 'bore')).toContainText(now);
      await expect(page.getByRole('alert')).toHaveCount(0);
    }
    // A size as measured, which the other tab enters while the box is open here.
    await line(page, 'od').locator('.as-cut button').click();
    await expect(page.locator('.cm-content')).toBeFocused();
    await line(other, 'od').locator('.as-cut button').click();
    await other.keyboard.press('ControlOrMeta+a');
    const size = (2.2631 + run / 10_000).toFixed(4);
    await other.keyboard.insertText(`${size} in ± 0.0001 in`);
    await other.keyboard.press('Enter');
    await expect(value(page, 'od')).toContainText(size);
    await page.bringToFront();
    await page.keyboard.press('Enter');
    await expect(page.locator('.cm-content')).toHaveCount(0);
    await expect(line(page, 'od').locator('.as-cut')).toContainText(size);
    await expect(line(other, 'od').locator('.as-cut')).toContainText(size);
  }
  await isSaved(page);
  await page.reload();
  await figuresAreIn(page);
  await expect(line(page, 'od').locator('.as-cut')).toContainText('2.26');
});

test('where both typed, the second is told and chooses', async ({ page, context }) => {
  test.setTimeout(60_000 + RUNS * 30_000);
  await bringIn(page, shortJob());
  const other = await context.newPage();
  await other.goto(page.url());
  await figuresAreIn(other);
  for (let run = 0; run < RUNS; run += 1) {
    for (const [k, choice] of ['Leave theirs', 'Enter mine'].entries()) {
      const at = 2.26 + run / 100 + k / 1000;
      const [theirs, mine] = [at.toFixed(4), (at + 0.005).toFixed(4)];
      await page.bringToFront();
      await entryOf(page, 'bore').click({ position: FIRST_LINE });
      await expect(page.locator('.cm-content')).toBeFocused();
      await page.keyboard.press('ControlOrMeta+a');
      await page.keyboard.insertText(`${mine} in ± 0.0002 in`);
      await enter(other, 'bore', `${theirs} in ± 0.0002 in`);
      await expect(value(page, 'bore')).toContainText(theirs);
      await page.bringToFront();
      await page.keyboard.press('Enter');
      const told = page.getByRole('alert').filter({ hasText: 'does not stand' });
      await expect(told).toContainText(`you entered “${mine} in ± 0.0002 in”`);
      await expect(told).toContainText(`another entered “${theirs} in ± 0.0002 in”`);
      await expect(entryOf(page, 'bore')).toContainText(theirs);
      await told.getByRole('button', { name: choice }).click();
      await expect(told).toHaveCount(0);
      const stands = choice === 'Enter mine' ? mine : theirs;
      for (const tab of [page, other]) await expect(entryOf(tab, 'bore')).toContainText(stands);
    }
  }
  // The line is deleted while its entry is being typed.
  await entryOf(page, 'bore').click({ position: FIRST_LINE });
  await expect(page.locator('.cm-content')).toBeFocused();
  await page.keyboard.press('ControlOrMeta+a');
  await page.keyboard.insertText('2.3 in');
  await line(other, 'bore').locator('[data-column="number"]').click();
  await line(other, 'bore').locator('[data-column="number"]').press('Delete');
  // Others use it: that is asked first.
  await other.getByRole('button', { name: 'Delete it all the same' }).click();
  await expect(line(other, 'bore')).toHaveCount(0);
  await page.bringToFront();
  const told = page.getByRole('alert').filter({ hasText: 'deleted meanwhile' });
  await expect(told).toContainText('you entered “2.3 in”');
  await told.getByRole('button', { name: 'Bring the line back with mine' }).click();
  for (const tab of [page, other]) await expect(entryOf(tab, 'bore')).toContainText('2.3 in');
});

/** Rounds in which both enter at once: two entries each. */
const ROUNDS = walk(2, 500);

test(`of ${2 * ROUNDS} entries made in two tabs at once, each that does not stand is told`, async ({
  page,
  context,
}) => {
  test.setTimeout(60_000 + ROUNDS * 10_000);
  await bringIn(page, shortJob());
  const other = await context.newPage();
  await other.goto(page.url());
  await figuresAreIn(other);
  const tabs = [page, other];
  let told = 0;
  for (let round = 0; round < ROUNDS; round += 1) {
    const typed = tabs.map((_, k) => `${(2 + round / 1000 + k / 10_000).toFixed(4)} in ± 0.0002 in`);
    for (const [k, tab] of tabs.entries()) {
      await entryOf(tab, 'bore').click({ position: FIRST_LINE });
      await expect(tab.locator('.cm-content')).toBeFocused();
      await tab.keyboard.press('ControlOrMeta+a');
      await tab.keyboard.insertText(typed[k]!);
    }
    await Promise.all(tabs.map((tab) => tab.keyboard.press('Enter')));
    const says = async (tab: Page) => (await entryOf(tab, 'bore').textContent()) ?? '';
    await expect
      .poll(async () => {
        const [one, two] = await Promise.all(tabs.map(says));
        return one === two && typed.filter((text) => one!.includes(text)).length;
      })
      .toBe(1);
    const stands = await says(page);
    const loser = typed.findIndex((text) => !stands.includes(text));
    const said = tabs[loser]!.getByRole('alert').filter({ hasText: 'does not stand' });
    await expect(said).toContainText(`you entered “${typed[loser]!.split(' ±')[0]}`);
    told += 1;
    await said.getByRole('button', { name: 'Leave theirs' }).click();
    await expect(said).toHaveCount(0);
    await expect(tabs[1 - loser]!.getByRole('alert')).toHaveCount(0);
  }
  console.log(`two tabs: ${2 * ROUNDS} entries, ${told} overwritten, each told`);
});

test('a title typed in two tabs at once is not lost without a word', async ({ page, context }) => {
  await bringIn(page, shortJob());
  const other = await context.newPage();
  await other.goto(page.url());
  await figuresAreIn(other);
  const title = (tab: Page) => tab.getByRole('textbox', { name: 'Title', exact: true });
  await title(page).fill('Mine');
  await title(other).fill('Theirs');
  await other.keyboard.press('Enter');
  await page.bringToFront();
  await expect(page).toHaveTitle(/Theirs/);
  await expect(title(page)).toHaveValue('Mine');
  await page.keyboard.press('Enter');
  await expect(page.getByText('“Theirs” was entered here meanwhile')).toBeVisible();
  await expect(title(other)).toHaveValue('Theirs');
  await page.keyboard.press('Enter');
  await expect(title(other)).toHaveValue('Mine');
});
