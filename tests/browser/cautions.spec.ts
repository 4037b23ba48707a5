import { readdirSync, readFileSync } from 'node:fs';
import type { Page } from '@playwright/test';
import type { SheetFile } from '../../shared/sheet/format.ts';
import { walk } from '../walk.ts';
import { expect, test } from './fixture.ts';
import { bringIn } from './share-steps.ts';
import { templateFile } from './sheet-steps.ts';

/**
 * Reads off the page what it warns of: at each line folded and unfolded, at the machine, on paper. `npm run prove -- cautions`
 * goes through every template and every kind, and prints the list to be read.
 */
const listed = (folder: string, end: string): string[] =>
  readdirSync(new URL(`../../${folder}/`, import.meta.url))
    .filter((name) => name.endsWith(end))
    .map((name) => name.slice(0, -end.length))
    .sort();

const kinds = listed('cells/kinds', '.ts');
const everyKind: SheetFile = {
  format: 'fitwright-sheet',
  version: 2,
  title: { title: 'Every kind of the library' },
  units: { length: 'in' },
  rule: 'worst-case',
  cells: [
    ...kinds.map((kind) => ({
      id: kind,
      role: 'cell' as const,
      kind,
      name: kind.replaceAll('-', '_'),
      label: kind,
    })),
    { id: 'bore', role: 'measured', name: 'bore', label: 'Bore', quantity: 'length', entry: '2.0001 in' },
  ],
};

const plain = (text: string): string => text.replace(/\s+/g, ' ').trim();
const texts = async (page: Page, selector: string): Promise<string[]> =>
  (await page.locator(selector).allTextContents()).map(plain);
/** Without the numbers of its lines, which stand before it in bold. */
const unnumbered = (text: string): string => text.replace(/^\d+(?:, \d+)* /, '');

/** What the book says of a kind, as Markdown without its marks. */
const inTheBook = (kind: string): string =>
  plain(readFileSync(new URL(`../../cells/book/${kind}.md`, import.meta.url), 'utf8').replace(/\\/g, ''));

/** A template is gone through as the job begun from it. */
const job = (name: string): SheetFile => {
  const { template: _, ...file } = templateFile(name);
  return file;
};

const sheets: Array<[name: string, file: () => SheetFile]> = [
  ...listed('templates', '.json').map((name): [string, () => SheetFile] => [name, () => job(`${name}.json`)]),
  ['jobs/saw-arbor-bush.json', () => templateFile('jobs/saw-arbor-bush.json')],
  ['every kind of the library', () => everyKind],
];
/** One whose walk is short. */
const SAMPLE = 'keyway-next-key';

for (const [name, load] of sheets.filter(([name]) => name === SAMPLE || walk(0, 1) === 1))
  test(`cautions on the page, at the machine and on paper: ${name}`, async ({ page }) => {
    const file = load();
    const isBook = file === everyKind;
    const said: string[] = [`\n== ${file.title.title} (${name})`];
    await bringIn(page, file);

    const lines = page.locator('.library[data-row]');
    const count = file.cells.filter(({ role }) => role === 'cell').length;
    await expect(lines).toHaveCount(count);
    const all = new Set<string>();
    for (let at = 0; at < count; at += 1) {
      const line = lines.nth(at);
      await line.scrollIntoViewIfNeeded();
      const label = plain((await line.locator('.label').textContent()) ?? '');
      const sign = line.getByRole('img', { name: 'with cautions' });
      const signed = (await sign.count()) > 0;
      await line.locator('.label').click();
      await expect(line).not.toHaveClass(/folded/);
      const top = page.getByRole('region', { name: `${label}, what it is for` });
      await expect(top).toBeVisible();
      const here = (await top.locator('section.caution li').allTextContents()).map(plain);
      expect(here.length > 0, `${label} has the sign where it has cautions`).toBe(signed);
      for (const text of here) all.add(text);
      if (isBook) {
        const book = inTheBook(label);
        for (const text of here) expect(book, `the book's page of ${label}`).toContain(text);
      }
      said.push(`  ${label}: ${signed ? `folded the sign; unfolded ${here.length}` : 'none'}`);
      for (const text of here) said.push(`    - ${text}`);
    }
    expect(all.size).toBeGreaterThan(0);

    await page.emulateMedia({ media: 'print' });
    await expect(page.locator('.print-care li').first()).toBeVisible();
    const paper = (await texts(page, '.print-care li')).map(unnumbered);
    expect(new Set(paper).size, 'none twice on paper').toBe(paper.length);
    expect(
      [...all].filter((text) => !paper.includes(text)),
      'not on paper',
    ).toEqual([]);
    const above = await page.evaluate(() => {
      const [care, cut] = ['.print-care', 'table.cut'].map((one) => document.querySelector(one));
      return !care || !cut || care.getBoundingClientRect().bottom <= cut.getBoundingClientRect().top;
    });
    expect(above, 'cautions stand above what is to be cut').toBe(true);
    said.push(`  on paper, above what is to be cut: ${paper.length}, each once`);
    await page.emulateMedia({ media: 'screen' });

    await page.getByRole('link', { name: 'At the machine' }).click();
    const stop = page.getByLabel('Dimension', { exact: true });
    const steps = page.getByLabel('Dimension', { exact: true }).locator('option');
    await expect(page.getByRole('main')).toBeVisible();
    const never = new Set(all);
    const values = await steps.evaluateAll((found) => found.map((one) => (one as HTMLOptionElement).value));
    for (const [k, step] of values.entries()) {
      await stop.selectOption(step);
      const here = (await texts(page, 'details.caution li')).map(unnumbered);
      for (const text of here) never.delete(text);
      said.push(`  at the machine, step ${k + 1} of ${values.length}: ${here.length}`);
    }
    expect([...never], 'never said at the machine').toEqual([]);
    if (process.env.FITWRIGHT_PROVE !== undefined) console.log(said.join('\n'));
  });
