import { expect, test } from './fixture.ts';
import { bringIn, isSaved, shortJob } from './share-steps.ts';
import { enter, figuresAreIn, line, value } from './sheet-steps.ts';

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
