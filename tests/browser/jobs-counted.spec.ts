import type { Locator, Page } from '@playwright/test';
import type { SheetFile } from '../../shared/sheet/format.ts';
import { walk } from '../walk.ts';
import { expect, test } from './fixture.ts';
import { begin, line, templateFile } from './sheet-steps.ts';

/**
 * Whole jobs by mouse and keyboard alone, each press of either counted: told by `npm run prove`. They are walked there
 * alone, since all that is done here other tests do one by one.
 */
const WALKED = walk(0, 1) === 1;

/** A person at the machine, counted. */
class Hand {
  clicks = 0;
  keys = 0;
  constructor(private readonly page: Page) {}

  async click(on: Locator): Promise<void> {
    this.clicks++;
    await on.click();
  }

  async press(key: string): Promise<void> {
    this.keys++;
    await this.page.keyboard.press(key);
  }

  async type(text: string): Promise<void> {
    this.keys += text.length;
    await this.page.keyboard.type(text);
  }

  /** Chooses from a list that has the focus: by its first letters, as far as they tell it from the others. */
  async choose(list: Locator, value: string): Promise<void> {
    const labels = await list.evaluate((element) =>
      [...(element as HTMLSelectElement).options].map(({ value, text }) => ({ value, text: text.trim() })),
    );
    const { text } = labels.find((one) => one.value === value)!;
    const first = (n: number) =>
      labels.findIndex((one) => one.text.toLowerCase().startsWith(text.slice(0, n).toLowerCase()));
    let n = 1;
    while (n < text.length && labels[first(n)]!.value !== value) n++;
    await this.type(text.slice(0, n));
    if ((await list.inputValue()) === value) return;
    this.clicks += 2;
    await list.selectOption(value);
  }
}

const NUMBER = /\d*\.?\d+(?=(?:\s*[;|]\s*\.?\d[\d.]*)*(?:\s*±\s*\d*\.?\d+)?\s*(?:in|mm|thou|um)\b)/g;

/** What a template leaves to be filled in, by row and field, as its examples give it, lengths so many times as large. */
const asked = (file: SheetFile, factor: number): Map<string, string> => {
  const found = new Map<string, string>();
  const set = (key: string, text: string) =>
    found.set(
      key,
      factor === 1 ? text : text.replace(NUMBER, (one) => String(Number((Number(one) * factor).toFixed(4)))),
    );
  for (const { id, example, limits, examples, outputs } of file.cells) {
    if (example) set(`${id} entry`, example);
    for (const which of ['lower', 'upper', 'wear'] as const) {
      if (limits?.[`${which}Example`]) set(`${id} limits.${which}`, limits[`${which}Example`]!);
      for (const [name, one] of Object.entries(outputs ?? {}))
        if (one.limits?.[`${which}Example`])
          set(`${id} outputs.${name}.limits.${which}`, one.limits[`${which}Example`]!);
    }
    for (const [name, text] of Object.entries(examples ?? {})) set(`${id} inputs.${name}`, text);
  }
  return found;
};

const standing = (page: Page) => page.getByRole('region', { name: 'How the checks stand' });

/** Fills a template in, from entry to entry, until nothing must be made any more. */
const fillFrom = async (page: Page, hand: Hand, texts: ReadonlyMap<string, string>): Promise<void> => {
  for (let left = 200; left > 0; left--) {
    // What an entry lets be asked for comes with its figures.
    const isDone = async () => !/entr(y|ies) to make/.test((await standing(page).textContent()) ?? '');
    if (await isDone()) {
      await page.waitForTimeout(1000);
      if (await isDone()) return;
    }
    await hand.press('F8');
    const focused = page.locator('.cm-content:focus, [data-column="entry"] :is(select, input):focus');
    await expect(focused).toHaveCount(1);
    const row = page.locator('[data-row], [role="row"][data-cell]').filter({ has: focused }).last();
    const id = (await row.getAttribute('data-cell'))!;
    const field = await focused.evaluate(
      (element) =>
        (element.getRootNode() as ShadowRoot).host?.closest<HTMLElement>('[data-field]')?.dataset.field,
    );
    const input = /\/in\/(.+)$/.exec((await row.getAttribute('data-row')) ?? '')?.[1];
    const text = texts.get(`${id} ${field ?? (input ? `inputs.${input}` : 'entry')}`) ?? '';
    if ((await focused.evaluate((element) => element.tagName)) === 'SELECT') await hand.choose(focused, text);
    else {
      // As it is said: blanks that nothing depends on are not typed.
      await hand.type(text.replaceAll('; ', ';').replaceAll(' | ', '|').replaceAll(' ± ', '±'));
      await hand.press('Enter');
      await expect(page.locator('.cm-content')).toHaveCount(0);
    }
  }
};

const tell = (job: string, { clicks, keys }: Hand, words: string): void =>
  console.log(`${job}: ${clicks} clicks, ${keys} keys; ${words.trim()}`);

/** 45 k6: +18 +2 µm (ISO 286-2:2010); a fit and a heat that go by the size of no seat. */
const SEAT_45: ReadonlyMap<string, string> = new Map([
  ['seat entry', '45.010 mm'],
  ['seat limits.lower', '45.002 mm'],
  ['seat limits.upper', '45.018 mm'],
  ['seat_fit limits.lower', '2 um'],
  ['seat_fit limits.upper', '30 um'],
  ['heat inputs.assembly_clearance', '0.05 mm'],
]);

/** A template to the first plan in which nothing is out, open or waiting. */
const JOBS = [
  {
    job: 'inch bush from its template',
    name: 'bush-in-opened-out-bore.json',
    factor: 1,
    way: 'finished in place',
  },
  {
    job: 'metric seat of 45 mm from its template',
    name: 'worn-seat-sleeved.json',
    factor: 0.9,
    other: SEAT_45,
  },
  {
    job: 'stripped hole from its template',
    name: 'stripped-hole.json',
    factor: 1,
    way: 'by the next thread',
  },
];

for (const { job, name, factor, way, other } of JOBS)
  test(`counted: ${job}`, async ({ page }) => {
    test.skip(!WALKED, 'by npm run prove');
    const hand = new Hand(page);
    const file = templateFile(name);
    await begin(page, file.title.title);
    hand.clicks++;
    if (way) {
      hand.clicks += 2;
      await standing(page).getByRole('combobox').selectOption(way);
    }
    await fillFrom(page, hand, new Map([...asked(file, factor), ...(other ?? [])]));
    await expect(standing(page)).not.toContainText(/Waiting:|Working/);
    const words = (await standing(page).locator('.head-line').textContent()) ?? '';
    tell(job, hand, words);
    expect(words).not.toMatch(/Out:|Open:/);
  });

test('counted: clearance of a pump idler bush from an empty sheet', async ({ page }) => {
  test.skip(!WALKED, 'by npm run prove');
  const hand = new Hand(page);
  await page.goto('/');
  await hand.click(page.getByRole('button', { name: /empty sheet/i }).first());
  await expect(page.getByRole('grid')).toBeVisible();
  const add = async (role: string, label: string, entry: string) => {
    await hand.click(page.getByRole('button', { name: 'Add a line', exact: true }).last());
    await hand.click(page.getByRole('button', { name: role, exact: true }).last());
    const what = page.getByLabel('What it is');
    if (!(await what.evaluate((element) => element === document.activeElement))) await hand.click(what);
    await hand.type(label);
    await hand.press('Enter');
    await expect(page.locator('.cm-content')).toBeFocused();
    await hand.type(entry);
    await hand.press('Enter');
    await expect(page.locator('.cm-content')).toHaveCount(0);
  };
  await add('Measured', 'Journal', '1.2488;1.2487|1.2488;1.2486±.0001');
  await add('Measured', 'Housing', '1.5003;1.5004|1.5003;1.5002±.0001');
  await add('Chosen', 'Interference', '1.2 thou');
  await add('Chosen', 'Bush outside', '= housing + interference');
  await add('Chosen', 'Bush bore', '1.2510');
  await add('Worked out', 'Clearance', '= bush_bore - journal');
  await expect(line(page, 'clearance').locator('[data-column="value"]')).toContainText('0.002');
  tell(
    'pump idler bush from an empty sheet, without limits',
    hand,
    (await standing(page).textContent()) ?? '',
  );
});
