import { expect, test } from './fixture.ts';
import { bringIn, lookAt, shortJob, takeOver } from './share-steps.ts';
import { begin, enter, figuresAreIn, templateFile } from './sheet-steps.ts';

const filled = templateFile('jobs/saw-arbor-bush.json');

test('paper has what the shop needs: sizes with limits, boxes, checks, cautions, sources, code, signature', async ({
  page,
}) => {
  await begin(page, filled.title.title);
  await page.emulateMedia({ media: 'print' });
  const paper = page.locator('.print-sheet');
  await expect(paper.getByRole('heading', { name: filled.title.title })).toBeVisible();
  await expect(page.locator('.sheet')).toBeHidden();

  const cut = paper.locator('table.cut');
  const bore = cut.getByRole('row').filter({ hasText: 'Bush bore, finished' });
  // 1.7510 in ± 0.0002 in, metal on while it is small; not measured yet, so the box is empty.
  await expect(bore.getByRole('cell')).toHaveText([
    /\d+/,
    'Bush bore, finished',
    '1.7510\u00a0in',
    '1.7508',
    '1.7512',
    '',
    'small',
    '',
  ]);
  await expect(
    cut.getByRole('row').filter({ hasText: 'Bush outside diameter' }).getByRole('cell').last(),
  ).toContainText('2.2636');

  for (const heading of ['To cut', 'Checks', 'Figures', 'Caution', 'Sources'])
    await expect(paper.getByRole('heading', { name: heading, exact: true })).toBeVisible();
  await expect(paper.locator('dd').last()).toHaveText(/^(?:[0-9A-Z]{4} ){4}[0-9A-Z]{4}$/);
  await expect(paper.getByText('Signature')).toBeVisible();

  await expect(paper.locator('.print-notes')).toContainText(filled.title.note!);

  await page.emulateMedia({ media: 'screen' });
  await expect(page.locator('.sheet')).toBeVisible();
  await expect(paper).toHaveCount(0);
  // What may be a slip is cut to from paper too.
  await enter(page, 'journal', '1.7481; 1.7480 | 1.7841; 1.7480 in');
  await page.emulateMedia({ media: 'print' });
  await expect(paper.getByText(/1 Journal, drive end: .*Are two digits changed over/)).toBeVisible();
});

test('limits of what is not worked out yet have their unit on paper', async ({ page }) => {
  const journalLine = {
    id: 'journal',
    role: 'measured' as const,
    name: 'journal',
    label: 'Journal, drive end',
    quantity: 'length',
    limits: { lower: '1.7440 in' },
  };
  await bringIn(page, shortJob([journalLine]));
  await page.emulateMedia({ media: 'print' });
  const journal = page.locator('.print-checks').getByRole('row').filter({ hasText: 'Journal, drive end' });
  await expect(journal.getByRole('cell').nth(3)).toHaveText('1.7440\u00a0in');
});

test('paper says why a part is not proven', async ({ page }) => {
  const pin = { id: 'c9', name: 'pin', label: 'Pin', entry: '2.2513 in', limits: { upper: '2.26 in' } };
  await lookAt(page, shortJob([{ ...pin, role: 'measured', quantity: 'length' }]));
  await takeOver(page);
  await figuresAreIn(page);
  await page.emulateMedia({ media: 'print' });
  const row = page.locator('.print-checks').getByRole('row').filter({ hasText: 'Pin' });
  await expect(row).toContainText(/not proven.*Read with neither gauge nor ±/);
});

test('paper is whole at the first print, by the button or by the browser’s own command', async ({ page }) => {
  // The browser takes the page as it stands when it prints, and waits for nothing.
  await page.addInitScript(() => {
    window.print = () => {
      dispatchEvent(new Event('beforeprint'));
      document.documentElement.dataset.paper = document.querySelector('.print-sheet')?.textContent ?? 'none';
      dispatchEvent(new Event('afterprint'));
    };
  });
  const paper = () =>
    page.evaluate(() => {
      const { dataset } = document.documentElement;
      const { paper } = dataset;
      delete dataset.paper;
      return paper;
    });
  await begin(page, filled.title.title);
  await page.getByRole('button', { name: 'Print', exact: true }).first().click();
  await expect.poll(paper).toContain('Hollow Brook');
  await page.reload();
  await expect(page.getByRole('grid')).toBeVisible();
  await expect
    .poll(() =>
      page.evaluate(() =>
        performance
          .getEntriesByType('resource')
          .map(({ name }) => name)
          .join(),
      ),
    )
    .toMatch(/print-sheet[^,]*\.js/);
  await page.waitForLoadState('networkidle');
  await page.evaluate(() => window.print());
  expect(await paper()).toContain('Hollow Brook');
});

for (const format of ['A4', 'Letter'])
  test(`a filled job takes no more than three sheets of ${format}`, async ({ page }) => {
    await begin(page, filled.title.title);
    await page.emulateMedia({ media: 'print' });
    await expect(page.locator('.print-sheet')).toBeVisible();
    const paper = (await page.pdf({ format })).toString('latin1');
    // Cautions in a readable size, the readings one by one and what the press shows are on it since it took two.
    expect(paper.match(/\/Type\s*\/Page\b/g)!.length).toBeLessThanOrEqual(3);
  });
