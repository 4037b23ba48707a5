import { readFile } from 'node:fs/promises';
import type { CellRecord, SheetFile } from '../../shared/sheet/format.ts';
import { expect, test } from './fixture.ts';
import {
  bringIn,
  codeOfSheet,
  dialog,
  isSaved,
  lookAt,
  shortJob,
  showTool,
  takeOver,
} from './share-steps.ts';
import { enter, FIRST_LINE, figuresAreIn, line, value } from './sheet-steps.ts';

test('what was deleted, put away or copied in the list can be taken back', async ({ page }) => {
  await bringIn(page, shortJob());
  await page.goto('/#/');
  const jobs = page.locator('.job', { hasText: 'Countershaft bush' });
  const undo = page.getByRole('button', { name: 'Undo' });
  for (const [button, left] of [
    ['Delete', 0],
    ['Archive', 0],
    ['Copy', 2],
  ] as const) {
    await jobs.first().getByRole('button', { name: button, exact: true }).click();
    await expect(jobs).toHaveCount(left);
    await undo.click();
    await expect(jobs).toHaveCount(1);
  }
  await jobs.getByRole('button', { name: 'Delete', exact: true }).click();
  await page.getByLabel('Show').selectOption('deleted');
  await jobs.getByRole('button', { name: 'Delete for good' }).click();
  await jobs.getByRole('button', { name: 'Really delete' }).click();
  await expect(jobs).toHaveCount(0);
});

test('jobs are found by words and by marks', async ({ page }) => {
  await bringIn(page, shortJob());
  const pump = shortJob();
  await bringIn(page, {
    ...pump,
    title: { title: 'Pump shaft', customer: 'the lower mill', tags: ['pump', 'mill'] },
    cells: pump.cells.map((cell) => ({ ...cell, id: `p${cell.id}`, label: `Pump ${cell.label}` })),
  });
  await page.goto('/#/');
  const jobs = page.locator('.job');
  await expect(jobs).toHaveCount(2);
  await page.getByLabel('Search').fill('LOWER pump');
  await expect(jobs).toHaveCount(1);
  await page.getByLabel('Search').fill('');
  await page.getByRole('button', { name: 'mill', exact: true }).click();
  await expect(jobs).toHaveCount(2);
  await page.getByRole('button', { name: 'bush', exact: true }).click();
  await expect(jobs).toHaveText([/Countershaft bush/]);
  await page.getByRole('button', { name: 'bush', exact: true }).click();
  await page.getByLabel('In order of').selectOption('title');
  await expect(jobs.locator('a')).toHaveText(['Countershaft bush', 'Pump shaft']);
});

test('the whole shop goes to one file and comes back elsewhere, history and all', async ({
  page,
  browser,
  watch,
}) => {
  await page.goto('/#/');
  await page.getByRole('button', { name: 'Inches', exact: true }).click();
  await bringIn(page, shortJob());
  await showTool(page, 'History');
  await page.getByLabel('Keep the sheet as it stands').fill('as sent out');
  await page.getByRole('button', { name: 'Keep', exact: true }).click();
  await expect(page.locator('.revisions')).toContainText('as sent out');
  await page.goto('/#/');
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save the whole shop to a file' }).click(),
  ]);
  const file = await readFile(await download.path());
  const profile = await browser.newContext();
  await watch(profile);
  const other = await profile.newPage();
  await other.goto(page.url());
  const question = other.getByRole('region', { name: 'Which lengths does this shop work in?' });
  await expect(question).toBeVisible();
  await other.getByLabel('Restore the whole shop from a file').setInputFiles({
    name: download.suggestedFilename(),
    mimeType: 'application/json',
    buffer: file,
  });
  await expect(other.getByText('Added: 1. Here already: 0.')).toBeVisible();
  // What was preferred there holds here, where nothing had been chosen: it is not asked again.
  await expect(question).toHaveCount(0);
  await other.getByRole('link', { name: 'Countershaft bush' }).click();
  await figuresAreIn(other);
  await showTool(other, 'History');
  await expect(dialog(other, 'History of this sheet')).toContainText('as sent out');
  await profile.close();
});

test('history tells what changed, looks back with the values of then, and leads back', async ({ page }) => {
  await bringIn(page, shortJob());
  const history = dialog(page, 'History of this sheet');
  const keep = async (words: string) => {
    await showTool(page, 'History');
    await page.getByLabel('Keep the sheet as it stands').fill(words);
    await page.getByRole('button', { name: 'Keep', exact: true }).click();
    await expect(history.locator('.revisions')).toContainText(words);
    await page.keyboard.press('Escape');
  };
  await keep('before boring');
  await enter(page, 'bore', '2.2600 in ± 0.0002 in');
  await expect(value(page, 'od')).toContainText('2.2630');
  await keep('after boring');
  await showTool(page, 'History');
  const after = history.getByRole('listitem').filter({ hasText: 'after boring' });
  await after.getByRole('button', { name: 'Changed: 1 line' }).click();
  await expect(after).toContainText('entry: 2.2513 in ± 0.0002 in → 2.2600 in ± 0.0002 in');
  const before = history.getByRole('listitem').filter({ hasText: 'before boring' });
  await before.getByRole('button', { name: 'Look at it' }).click();
  await expect(history.getByRole('row').filter({ hasText: 'Bush outside diameter' })).toContainText('2.2543');
  await history.getByRole('button', { name: 'Return the sheet to this state' }).click();
  await expect(value(page, 'od')).toContainText('2.2543');
  await page.getByRole('button', { name: 'Undo', exact: true }).last().click();
  await expect(value(page, 'od')).toContainText('2.2630');
});

test('a template that moves on tells its jobs, which take or leave it line by line', async ({ page }) => {
  // The template, kept and begun from.
  await bringIn(page, shortJob());
  await showTool(page, 'Make a template');
  const make = dialog(page, 'Save as a template');
  await expect(make).toContainText('2.2513 in ± 0.0002 in');
  await expect(make).toContainText('E. Quill');
  await expect(make.getByLabel('Bore: to fill in')).toBeChecked();
  await make.getByLabel('Title of the template').fill('Bush, our way');
  await make.getByRole('button', { name: 'Save the template' }).click();
  await page.getByRole('button', { name: 'Open it' }).click();
  await expect(page.getByText('This is a template.')).toBeVisible();
  await page.getByRole('button', { name: 'Begin a job from it' }).click();
  await expect(page.getByText('This is a template.')).toHaveCount(0);
  await figuresAreIn(page);
  await enter(page, 'bore', '2.3000 in ± 0.0002 in');
  await expect(value(page, 'od')).toContainText('2.3030');
  await isSaved(page);

  // The template changes in two lines.
  await page.goto('/#/');
  await page.getByLabel('Show').selectOption('own templates');
  await page.getByRole('link', { name: 'Bush, our way' }).click();
  await figuresAreIn(page);
  await page.getByRole('button', { name: 'Begin a job from it' }).waitFor();
  await enter(page, 'grip', '=(od - bore) * 1');
  // The line is locked, and says so first.
  await line(page, 'od').locator('[data-column="entry"]').click({ position: FIRST_LINE });
  await expect(page.getByText(/^“.*” is locked\./)).toBeVisible();
  await page.getByRole('button', { name: 'Unlock it' }).click();
  await enter(page, 'od', '=bore + 4 thou');
  await line(page, 'od').locator('[data-column="entry"]').click({ position: FIRST_LINE });
  await page.keyboard.press('Escape');
  await page.getByRole('button', { name: 'Lock', exact: true }).click();
  await isSaved(page);

  await page.goto('/#/');
  await page.getByRole('link', { name: 'Bush, our way' }).click();
  await expect(page.getByText(/has changed since: 2 lines/)).toBeVisible();
  await page.getByRole('button', { name: 'Look at it' }).click();
  const news = dialog(page, 'The template of this job');
  await news.getByRole('checkbox', { name: 'Interference' }).uncheck();
  await news.getByRole('button', { name: 'Take the 1 ticked, leave the rest' }).click();
  await expect(value(page, 'od')).toContainText('2.3040');
  await expect(page.getByText(/has changed since/)).toHaveCount(0);
  await expect(value(page, 'bore')).toContainText('2.3000');

  // A locked line can be unlocked; the job then says where it departs.
  await line(page, 'od').locator('[data-column="entry"]').click({ position: FIRST_LINE });
  await expect(page.getByText(/^The author of the template locked “/)).toBeVisible();
  await page.getByRole('button', { name: 'Unlock it' }).click();
  await enter(page, 'od', '=bore + 1 thou');
  await isSaved(page);
  await page.reload();
  await expect(page.getByText('departs from what its template locked in 1 line')).toBeVisible();
});

test('a template that moved on reaches a job of it in another shop: told line by line, in the units of each', async ({
  browser,
  watch,
}) => {
  /** A shop of its own: another browser, which works in these lengths. */
  const shop = async (lengths: string) => {
    const profile = await browser.newContext();
    await watch(profile);
    const page = await profile.newPage();
    await page.goto('/#/');
    await page.getByRole('button', { name: lengths, exact: true }).click();
    await expect(page.getByText('Which lengths does this shop work in?')).toHaveCount(0);
    return page;
  };
  const edition = (grip: string): SheetFile => {
    const { cells, ...rest } = shortJob();
    const [section, bore, od, ...more] = cells as [CellRecord, CellRecord, CellRecord, ...CellRecord[]];
    const { entry, ...asked } = bore;
    return {
      ...rest,
      template: true,
      title: { title: 'Bush, our way' },
      cells: [
        section,
        { ...asked, fill: true, example: entry! },
        { ...od, entry: `=bore + ${grip}` },
        ...more,
      ],
    };
  };
  // The shop that made it works in inches, the one that has it in millimetres and has begun a job from it.
  const maker = await shop('Inches');
  await bringIn(maker, edition('3 thou'));
  const first = await codeOfSheet(maker);
  const taker = await shop('Millimetres');
  const arrive = async (code: string) => {
    await taker.goto(`/#/open/${code}`);
    await taker.reload();
    await expect(taker.getByRole('article', { name: 'The sheet that came in' })).toBeVisible();
  };
  await arrive(first);
  await takeOver(taker);
  await taker.getByRole('button', { name: 'Begin a job from it' }).click();
  await expect(taker.getByText('This is a template.')).toHaveCount(0);
  await figuresAreIn(taker);
  await enter(taker, 'bore', '58.400 mm ± 0.005 mm');
  await expect(value(taker, 'od')).toContainText('58.476');
  await isSaved(taker);
  const job = taker.url();

  // It moves on where it was made, and comes again.
  await maker.keyboard.press('Escape');
  await lookAt(maker, edition('4 thou'));
  await maker.locator('.held').getByRole('button', { name: 'Make the one that is here say this' }).click();
  await figuresAreIn(maker);
  await arrive(await codeOfSheet(maker));
  await expect(taker.locator('.held').locator('.difference')).toHaveCount(1);
  await taker.locator('.held').getByRole('button', { name: 'Make the one that is here say this' }).click();
  await figuresAreIn(taker);

  // The job stands as it was until its shop takes the line, and keeps its reading.
  await taker.goto(job);
  await taker.reload();
  await expect(value(taker, 'od')).toContainText('58.476');
  await expect(taker.getByText(/has changed since: 1 line/)).toBeVisible();
  await taker.getByRole('button', { name: 'Look at it' }).click();
  const news = dialog(taker, 'The template of this job');
  await expect(news).toContainText('Bush outside diameter');
  await expect(news).toContainText('=bore + 4 thou');
  await news.getByRole('button', { name: 'Take the 1 ticked' }).click();
  await expect(value(taker, 'od')).toContainText('58.502');
  await expect(value(taker, 'bore')).toContainText('58.400');
  await taker.context().close();
  await maker.context().close();
});

test('a shop asked for its lengths begins templates in them', async ({ page }) => {
  await lookAt(page, shortJob());
  // The file is read behind the first page: left too soon, the page would be taken away again.
  await expect(page.getByRole('article', { name: 'The sheet that came in' })).toBeVisible();
  await page.goto('/#/');
  await page.getByRole('button', { name: 'Millimetres', exact: true }).click();
  await expect(page.getByText('Which lengths does this shop work in?')).toHaveCount(0);
  await page.getByRole('button', { name: 'Begin this job' }).first().click();
  await expect(page.getByRole('button', { name: 'mm', exact: true })).toHaveAttribute('aria-pressed', 'true');
  await page.goto('/#/');
  await expect(page.getByText('Which lengths does this shop work in?')).toHaveCount(0);
});
