import { readFile } from 'node:fs/promises';
import { read } from '@e965/xlsx';
import type { Locator, Page } from '@playwright/test';
import axe from 'axe-core';
import jsQR from 'jsqr';
import { expect, test } from './fixture.ts';
import { bringIn, codeOfSheet, dialog, lookAt, shortJob, showTool, takeOver } from './share-steps.ts';
import { begin, figuresAreIn, templateFile, value } from './sheet-steps.ts';

/** As people compare it, once it has been taken. */
const fingerprintOf = async (shown: Locator): Promise<string> => {
  await expect(shown).toHaveText(/^[2-9A-Z]{4}( [2-9A-Z]{4}){4}$/);
  return (await shown.textContent())!;
};

test('on a phone a sheet that came in fits the screen, and is taken over with a thumb', async ({
  page,
  context,
}) => {
  await page.setViewportSize({ width: 390, height: 844 });
  await lookAt(page, templateFile('jobs/saw-arbor-bush.json'));
  await expect(page.getByRole('article', { name: 'The sheet that came in' })).toBeVisible();
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
  // Nor does the table of what would be taken over hide its entries beside the screen.
  const contents = page.getByRole('region', { name: 'Lines of the sheet' });
  expect(await contents.evaluate((element) => element.scrollWidth - element.clientWidth)).toBe(0);
  await takeOver(page);
  await page.setViewportSize({ width: 1280, height: 800 });

  // A code that is pasted is read without a further press.
  const code = await codeOfSheet(page);
  await context.grantPermissions(['clipboard-read', 'clipboard-write']);
  await page.evaluate((text) => navigator.clipboard.writeText(text), code);
  await page.goto('/#/open');
  await page.getByLabel('Or paste a text or a link').focus();
  await page.keyboard.press('ControlOrMeta+v');
  await expect(page.getByRole('article', { name: 'The sheet that came in' })).toBeVisible();
});

test('a job goes to a shop that works in millimetres: looked at first, read in its units, no value changed', async ({
  page,
  browser,
  watch,
}) => {
  const sent: string[] = [];
  const follow = (one: Page) => one.on('request', (request) => sent.push(request.url()));
  follow(page);
  await begin(page, 'Saw arbor, drive end: bush in the opened-out bore');
  const bore = await value(page, 'bore').locator('b').first().textContent();
  const code = await codeOfSheet(page);
  const print = await fingerprintOf(dialog(page, 'Share this sheet').locator('.fingerprint'));

  const profile = await browser.newContext({ locale: 'de-DE' });
  await watch(profile);
  const other = await profile.newPage();
  follow(other);
  await other.goto(page.url().replace(/#.*/, ''));
  await other.getByRole('button', { name: 'Millimetres', exact: true }).click();
  await other.getByRole('link', { name: 'Open a text' }).click();
  await other
    .getByLabel('Or paste a text or a link')
    .fill(`Here it is:\n${page.url().replace(/#.*/, '')}#/open/${code}`);
  await other.getByRole('button', { name: 'Read the text' }).click();

  const sheet = other.getByRole('article', { name: 'The sheet that came in' });
  await expect(sheet).toContainText('Nothing of it has been taken over yet');
  await expect(sheet.getByRole('heading', { level: 2 })).toHaveText(/Saw arbor/);
  await expect(sheet.locator('.fingerprint')).toHaveText(print!);
  await expect(sheet.locator('.cautions li').first()).toBeVisible();
  await expect(sheet.getByRole('table')).toContainText('Bore as found');
  await other.getByRole('link', { name: 'All jobs' }).click();
  await expect(other.getByRole('heading', { name: 'Jobs' })).toHaveCount(0);

  // Nothing was taken over by looking. Now by the link itself.
  await other.goto(`${page.url().replace(/#.*/, '')}#/open/${code}`);
  await takeOver(other);
  await expect(other.getByRole('button', { name: 'mm', exact: true })).toHaveAttribute(
    'aria-pressed',
    'true',
  );
  const inches = Number(bore!.replace(/[^\d.]/g, ''));
  const shown = await value(other, 'bore').locator('b').first().textContent();
  expect(Number(shown!.replace(/[^\d.]/g, ''))).toBeCloseTo(inches * 25.4, 2);
  await codeOfSheet(other);
  expect(await fingerprintOf(dialog(other, 'Share this sheet').locator('.fingerprint'))).toBe(print);

  // The sheet is behind the #, and nothing else went out either.
  const origin = new URL(page.url()).origin;
  expect(sent.filter((url) => !url.startsWith(origin) && !url.startsWith('blob:'))).toEqual([]);
  expect(sent.filter((url) => url.includes(code.slice(20, 60)))).toEqual([]);
  await profile.close();
});

test('a damaged code says so, in words that tell what to do', async ({ page }) => {
  await page.goto('/#/open');
  const paste = async (text: string) => {
    await page.getByLabel('Or paste a text or a link').fill(text);
    await page.getByRole('button', { name: 'Read the text' }).click();
  };
  await paste('AQAAA');
  await expect(page.getByRole('alert')).toContainText('too short');
  await paste('2 1/4 in');
  await expect(page.getByRole('alert')).toContainText('not the text of a sheet');
  await paste('{"format":"fitwright-sheet"}');
  await expect(page.getByRole('alert')).toContainText('cannot be read');
});

test('a sheet from a stranger is text: nothing in it runs, and tricks with signs are shown', async ({
  page,
}) => {
  const trap = '<img src=x onerror="window.ran=1"><script>window.ran=1</script>';
  await lookAt(page, {
    ...shortJob([
      { id: 'h1', role: 'remark', label: trap, note: `${trap} javascript:alert(1)` },
      { id: 'h2', role: 'given', name: 'b\u043ere', label: 'turned \u202e round', entry: '1 in' },
      { id: 'h3', role: 'given', name: 'fixed', entry: '=HYPERLINK("http://127.0.0.1:1")', note: trap },
    ]),
    title: { title: trap, drawnBy: trap, note: trap, customer: trap },
    ['__proto__']: { ran: 1 },
  });
  const article = page.getByRole('article', { name: 'The sheet that came in' });
  await expect(article).toContainText('<script>window.ran=1</script>');
  await expect(article.locator('.warnings')).toContainText('mixes Latin letters');
  await expect(article.locator('.warnings')).toContainText('writing direction');
  await expect(article).toContainText('turned ⟨U+202E⟩ round');
  await takeOver(page);
  await expect(page.locator('.like')).toHaveText([/of line 4/, /of line 1/]);
  await expect(page.locator('#page img, #page script')).toHaveCount(0);
  expect(await page.evaluate(() => (window as { ran?: number }).ran)).toBeUndefined();
});

test('what comes in is held against what is here, and takes its place only when asked', async ({
  page,
  context,
}) => {
  await bringIn(page, shortJob());
  const other = await context.newPage();
  await other.goto(page.url());
  await figuresAreIn(other);
  const changed = shortJob();
  changed.cells[2]!.entry = '=bore + 3.5 thou';
  await lookAt(page, changed, 'from-the-lower-mill.json');
  const held = page.locator('.held');
  await expect(held).toContainText('says other things in these places');
  await expect(held.locator('.difference')).toHaveCount(1);
  await expect(held.locator('.difference')).toContainText('=bore + 3 thou');
  await expect(held.locator('.difference')).toContainText('=bore + 3.5 thou');
  await held.getByRole('button', { name: 'Make the one that is here say this' }).click();
  await figuresAreIn(page);
  await expect(value(page, 'grip')).toContainText('3.5');
  // In another tab that had the sheet open it came in too, and is taken back for both.
  await expect(value(other, 'grip')).toContainText('3.5 thou+');
  await page.keyboard.press('ControlOrMeta+z');
  await expect(value(page, 'grip')).toContainText('3.0 thou+');
  await expect(value(other, 'grip')).toContainText('3.0 thou+');
  await page.keyboard.press('ControlOrMeta+Shift+z');
  await expect(value(other, 'grip')).toContainText('3.5 thou+');
  await other.close();
  await showTool(page, 'History');
  await expect(dialog(page, 'History of this sheet')).toContainText('before the sheet that came in');
  await page.keyboard.press('Escape');
  await lookAt(page, changed);
  await expect(page.locator('.held')).toContainText('here already, word for word');

  // Of another, one line is taken and one left.
  changed.cells[1]!.entry = '2.9 in ± 0.0002 in';
  changed.cells[2]!.entry = '=bore + 4 thou';
  await lookAt(page, changed);
  await held.getByRole('checkbox', { name: /Bore/ }).uncheck();
  await held.getByRole('button', { name: 'Take the 1 ticked into the one that is here' }).click();
  await figuresAreIn(page);
  await expect(value(page, 'grip')).toContainText('4.0 thou');
  await expect(value(page, 'bore')).toContainText('2.2513');
  await page.keyboard.press('ControlOrMeta+z');
  await expect(value(page, 'grip')).toContainText('3.5 thou');
  await lookAt(page, changed);
  await page.getByRole('button', { name: 'Leave it' }).click();
  await expect(page.locator('.job')).toHaveCount(1);
});

/** What a QR code on the page says: drawn anew from its path and read by another library. */
const readQr = async (page: Page, name: string): Promise<string | undefined> => {
  const picture = page.getByRole('img', { name });
  await expect(picture).toBeVisible();
  const size = Number((await picture.getAttribute('viewBox'))!.split(' ')[2]);
  const path = (await picture.locator('path').getAttribute('d'))!;
  const scale = 4;
  const pixels = new Uint8ClampedArray((size * scale) ** 2 * 4).fill(255);
  for (const [, x, y, run] of path.matchAll(/M(\d+) (\d+)h(\d+)/g))
    for (let py = Number(y) * scale; py < (Number(y) + 1) * scale; py++)
      for (let px = Number(x) * scale; px < (Number(x) + Number(run)) * scale; px++)
        pixels.fill(0, (py * size * scale + px) * 4, (py * size * scale + px) * 4 + 3);
  return jsQR(pixels, size * scale, size * scale)?.data;
};

test('a QR code holds a short sheet; a long one goes in several, which come together where they are opened', async ({
  page,
}) => {
  await bringIn(page, shortJob());
  const code = await codeOfSheet(page);
  expect(await readQr(page, 'QR code of this sheet')).toBe(code);

  await begin(page, 'Saw arbor, drive end: bush in the opened-out bore');
  await codeOfSheet(page);
  const title = await page.getByRole('heading', { name: /As \d+ QR codes/ }).textContent();
  const of = Number(/\d+/.exec(title!)![0]);
  expect(of).toBeGreaterThan(1);
  const parts: string[] = [];
  for (let k = 1; k <= of; k++) {
    parts.push((await readQr(page, `QR code ${k} of ${of}`))!);
    if (k < of) await page.getByRole('button', { name: 'Next code' }).click();
  }
  await expect(page.getByRole('button', { name: 'Next code' })).toBeDisabled();

  // Each opens a page of its own, as a phone does; the last but one is pasted, the last is not the first.
  const came = page.getByRole('article', { name: 'The sheet that came in' });
  for (const part of parts.slice(1, -1)) {
    await page.goto('/#/');
    await page.goto(`/#/open/${part}`);
    await expect(page.getByText(/^Code \d+ of \d+ is here\. Still to come: 1/)).toBeVisible();
  }
  await page.getByLabel('Or paste a text or a link').fill(parts.at(-1)!);
  await page.getByRole('button', { name: 'Read the text' }).click();
  await expect(page.getByText(`Code ${of} of ${of} is here. Still to come: 1.`)).toBeVisible();
  await expect(page.getByLabel('Or paste a text or a link')).toHaveValue('');
  await expect(came).toHaveCount(0);
  await page.goto(`/#/open/${parts[0]}`);
  await expect(came.getByRole('heading', { level: 2 })).toHaveText(/Saw arbor/);
  await expect(came).toContainText(`from ${of} codes`);
});

test('a table and a workbook can be had, and are what other programs read', async ({ page }) => {
  await bringIn(page, shortJob());
  await codeOfSheet(page);
  const download = async (name: string) => {
    const [got] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name }).click(),
    ]);
    return { name: got.suggestedFilename(), content: await readFile(await got.path()) };
  };
  const table = await download('Table (CSV)');
  expect(table.name).toBe('countershaft-bush.csv');
  expect(table.content.toString()).toContain(
    '"od","Bush outside diameter","chosen","\'=bore + 3 thou","2.2543","in"',
  );
  const workbook = await download('Spreadsheet workbook');
  expect(workbook.name).toBe('countershaft-bush.xlsx');
  const book = read(workbook.content, { cellFormula: true });
  const cells = Object.values(book.Sheets[book.SheetNames[0]!]!) as { f?: string; v?: unknown }[];
  expect(cells.filter(({ f }) => f?.includes('0.0000762'))).toHaveLength(1);
});

test('as a template it leaves readings and names out', async ({ page }) => {
  await bringIn(page, shortJob());
  const whole = await codeOfSheet(page);
  await page.getByLabel('As a template: leave out readings').check();
  const field = page.locator('#share-code');
  await expect(field).not.toHaveValue(whole);
  await page.goto(`/#/open/${await field.inputValue()}`);
  const article = page.getByRole('article', { name: 'The sheet that came in' });
  await expect(article).toContainText('A template from a text');
  await expect(article).toContainText('The sheet does not say.');
  await expect(article).not.toContainText('E. Quill');
  await page.getByRole('button', { name: 'Keep it and begin a job from it' }).click();
  await figuresAreIn(page);
  await page.goto('/#/');
  await page.getByLabel('Show').selectOption('own templates');
  await expect(page.locator('.job')).toHaveCount(1);
});

for (const [what, open] of [
  ['the dialog to hand on', async (page: Page) => void (await codeOfSheet(page))],
  ['the history', (page: Page) => showTool(page, 'History')],
  ['the dialog to make a template', (page: Page) => showTool(page, 'Make a template')],
  ['a sheet that is looked at', (page: Page) => lookAt(page, shortJob())],
] as const) {
  test(`${what} has no fault that axe knows`, async ({ page }) => {
    await bringIn(page, shortJob());
    await open(page);
    await page.evaluate(axe.source);
    const { violations } = await page.evaluate(() =>
      (globalThis as unknown as { axe: typeof import('axe-core') }).axe.run('dialog, main'),
    );
    expect(violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(' ')}`)).toEqual(
      [],
    );
  });
}
