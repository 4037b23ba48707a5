import { expect, test } from './fixture.ts';
import { bringIn, shortJob } from './share-steps.ts';
import { begin, check, line, templateFile, value } from './sheet-steps.ts';

const job = templateFile('jobs/saw-arbor-bush.json');

test('a figure is made to come to what is wanted, and one undo takes it back', async ({ page }) => {
  await begin(page, job.title.title);
  await line(page, 'end_float').locator('.label').click();
  const part = page.locator('.work-back');
  await part.getByLabel('Value wanted').click();
  await page.keyboard.insertText('7 thou');
  await page.keyboard.press('Enter');
  // The size still to be cut comes first: 4.0062 in between the collars less 7 thou.
  await expect(part.getByLabel('What may move for it')).toHaveValue(/ entry$/);
  const answer = part.getByRole('listitem').filter({ hasText: /^3\.9992\sin makes it 7\.0\sthou/ });
  await expect(answer).toContainText(/checks hold as before/);
  // The formula is shown before it goes.
  await expect(
    part.getByText('= collar_gap - (least_end_float + greatest_end_float) / 2', { exact: true }),
  ).toBeVisible();
  await answer.getByRole('button', { name: 'Put it in place of the formula' }).click();
  await expect(value(page, 'end_float')).toContainText('7.0');
  await expect(answer).toContainText('It stands so.');
  await page.getByRole('button', { name: 'Undo', exact: true }).first().click();
  await expect(value(page, 'end_float')).toContainText('6.5');
  await expect(value(page, 'bush_length')).toContainText('3.9997');

  // Shims or bars at hand: the nearest on either side, the one that leaves metal on to aim for.
  await part.getByLabel('Sizes that can be made').selectOption('sizes at hand');
  await part.getByLabel('Sizes at hand').click();
  await page.keyboard.insertText('3.9; 3.998; 4 in');
  await page.keyboard.press('Enter');
  await expect(part).toContainText(/3\.998\sin makes it 8\.2\sthou/);
  await expect(part).toContainText(/4\sin makes it 6\.2\sthou, to aim for/);

  // Out of reach: the range that was looked through is told, and can be another.
  await part.getByLabel('Look for it from .. to').click();
  await page.keyboard.insertText('3.9 in .. 3.95 in');
  await page.keyboard.press('Enter');
  await expect(part).toContainText(/Out of reach: with .* from 3\.9000 to 3\.9500\sin/);
  await expect(check(page, 'end_float')).toContainText('holds');
});

test('a size that depends on itself is solved on its line', async ({ page }) => {
  // By hand: x = 1.5 in + x / 4, so x = 2 in.
  await bringIn(
    page,
    shortJob([
      {
        id: 'r1',
        role: 'worked',
        name: 'cut',
        label: 'Cut to',
        quantity: 'length',
        entry: '=1.5 in + close',
      },
      { id: 'r2', role: 'worked', name: 'close', label: 'Closes in', quantity: 'length', entry: '=cut / 4' },
    ]),
  );
  await expect(line(page, 'cut')).toContainText('in a ring');
  await line(page, 'cut').locator('.label').click();
  await page.getByRole('button', { name: 'Solve it here' }).click();
  await expect(value(page, 'cut')).toContainText('2.0000');
  await expect(page.getByText('Solved so that')).toContainText('1.5 in + close');
});
