import { expect, test } from './fixture.ts';
import { bringIn, shortJob } from './share-steps.ts';
import { enter, line } from './sheet-steps.ts';

const job = () =>
  shortJob([
    {
      id: 'b1',
      role: 'chosen',
      name: 'bush_bore',
      label: 'Bush bore',
      quantity: 'length',
      entry: '1.7510 in',
      tolerance: '+0.0005 -0 in',
      limits: { metalOn: 'low' },
    },
    {
      id: 'j1',
      role: 'measured',
      name: 'journal',
      label: 'Journal',
      quantity: 'length',
      entry: '1.7480 in',
      gauge: 'mic',
    },
    {
      id: 'k1',
      role: 'worked',
      name: 'clearance',
      label: 'Running clearance',
      quantity: 'length',
      entry: '=bush_bore - 0.3 * 3 thou - journal',
      limits: { lower: '.0010 in', upper: '.0040 in' },
    },
    {
      id: 'g1',
      role: 'cell',
      name: 'mic',
      kind: 'gauge',
      inputs: { gauge: 'micrometer-1-2-in', certificate: '.0001 in' },
    },
  ]);

test('how far a size may go is told on its line, and drawn beside another input', async ({ page }) => {
  await bringIn(page, job());
  await line(page, 'bush_bore').locator('.label').click();
  const part = page.locator('.window-part');
  await part.getByRole('button', { name: 'Work out its window' }).click();
  // 1.7489 in and 1.0 to 4.0 thou, less what the bore may be cut and the journal read off.
  await expect(part).toContainText(/Now 1\.75100\sin; every check holds from 1\.7502\d\sin to 1\.7520\d\sin/);
  await expect(part.getByRole('img', { name: /^Window from 1\.750/ })).toBeVisible();
  await expect(part).toContainText(/Below 1\.7502\d\sin, where metal is still on, no longer:/);
  await part.getByRole('button', { name: 'Running clearance' }).first().click();
  await expect(line(page, 'clearance')).toBeInViewport();

  await enter(page, 'journal', '1.7465 in');
  await line(page, 'bush_bore').locator('.label').click();
  await part.getByRole('button', { name: 'Work out its window' }).click();
  await expect(part).toContainText(
    /where not every check holds. They all do from 1\.7487\d\sin to 1\.7505\d\sin/,
  );

  await part.getByLabel('Together with').selectOption({ index: 1 });
  const draw = part.getByRole('button', { name: 'Draw the map of both' });
  // Cancelled in the same moment: nothing is drawn, and it can be asked for again.
  await part.locator('.map-part').evaluate((map) => {
    const press = (name: string): void =>
      [...map.querySelectorAll('button')].find(({ textContent }) => textContent === name)?.click();
    press('Draw the map of both');
    press('Cancel');
  });
  await expect(draw).toBeVisible();
  await expect(part.getByRole('img', { name: /of 1600 cells/ })).toHaveCount(0);
  await draw.click();
  await expect(part.getByRole('img', { name: /every check holds in \d+ of 1600 cells/ })).toBeVisible();
  await expect(part).toContainText('By corners');
});

test('a line tells what doubt still proves it, and which gauge has no more', async ({ page }) => {
  await bringIn(page, job());
  await line(page, 'clearance').locator('.label').click();
  const part = page.locator('.gauge-part');
  await part.getByRole('button', { name: 'Work out the doubt it allows' }).click();
  await expect(part).toContainText(/it is proven with a doubt at worst of ± 0\.0011\sin at most/);
  await expect(part.getByRole('row', { name: /micrometer|mic/ })).toContainText('does not reach it');
});
