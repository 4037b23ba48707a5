import type { Locator, Page } from '@playwright/test';
import type { SheetFile } from '../../shared/sheet/format.ts';
import { begunReading } from '../../src/page/entry/begun-reading.ts';
import { walk } from '../walk.ts';
import { expect, test } from './fixture.ts';
import { begin, check, fillIn, line, templateFile } from './sheet-steps.ts';

/**
 * Whole jobs by mouse and keyboard alone, each press of either counted: told by `npm run prove`. They are walked there
 * alone, since all that is done here other tests do one by one.
 */
const WALKED = walk(0, 1) === 1;

/** Of a list: puts a new line in and takes it. */
const NEW_LINE = '+ new';

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

  /**
   * Types readings: in full, or where one begins as the one before it (as its plan, the first), by its last digits, which
   * the key that takes an offer completes.
   */
  async readings(text: string, plan?: string): Promise<void> {
    const begun = (so: string, tail: string) =>
      begunReading(so + tail, so.length + tail.length, plan)?.reading;
    let so = '';
    for (const part of text.split(/([;|])/)) {
      const digits = [1, 2, 3].map((n) => part.slice(-n)).find((tail) => begun(so, tail) === part);
      if (digits !== undefined) {
        await this.type(digits);
        await this.press('Tab');
      } else await this.type(brief(part, ''));
      so += part;
    }
  }

  /** Chooses from a list that has the focus: by its first letters, as far as they tell it from the others. */
  async choose(list: Locator, value: string): Promise<void> {
    const labels = await list.evaluate((element) =>
      [...(element as HTMLSelectElement).options].map(({ value, text }) => ({ value, text: text.trim() })),
    );
    const { text } = labels.find((one) => one.value === value)!;
    // One of the shop's own has the name of what it is, and what the shop calls it behind.
    const means = (one: { text: string } | undefined) =>
      one?.text === text || one?.text.startsWith(`${text}: `);
    const first = (n: number) =>
      labels.findIndex((one) => one.text.toLowerCase().startsWith(text.slice(0, n).toLowerCase()));
    let n = 1;
    while (n < text.length && !means(labels[first(n)])) n++;
    const letters = text.slice(0, n);
    this.keys += letters.length;
    // A new line is named as soon as it is chosen.
    const isChosen = async () => {
      const now = await list.inputValue();
      return now === value || (value === NEW_LINE && now !== '');
    };
    // A list begins anew where a busy machine brings the letters too slowly: it is typed again until it says what was meant.
    await expect(async () => {
      if (!(await isChosen())) await this.page.keyboard.type(letters);
      await expect.poll(isChosen, { timeout: 2000 }).toBe(true);
    }).toPass();
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

/** Thousandths as the inches a sheet of inches takes a bare number for. */
const inInches = (text: string): string =>
  text.replace(/([\d.]+) thou\b/g, (_, n) => String(Number((Number(n) / 1000).toFixed(6))));

/**
 * As it is said: no unit that a bare number has by itself, no nought before a point or at the end, no blanks that nothing
 * hangs on.
 */
const brief = (text: string, unit: string): string =>
  (unit === 'in' ? inInches(text) : text)
    .replace(new RegExp(` ${unit}\\b`, 'g'), '')
    .replace(/(\.\d*?)0+(?!\d)/g, '$1')
    .replace(unit === 'in' ? / degF\b/g : / degC\b/g, '')
    .replace(/(\d)\.(?!\d)/g, '$1')
    .replace(/(^|[^\d.])0(?=\.\d)/g, '$1')
    .replaceAll('; ', ';')
    .replaceAll(' | ', '|')
    .replaceAll(' ± ', '±');

/** Where the typing goes: a field of a line, as the template's examples are kept. */
const placeOf = async (page: Page): Promise<string> => {
  const focused = page.locator('.cm-content:focus, [data-column="entry"] :is(select, input):focus');
  if ((await focused.count()) !== 1) return '';
  const row = page.locator('[data-row], [role="row"][data-cell]').filter({ has: focused }).last();
  const id = await row.getAttribute('data-cell').catch(() => null);
  const field = await focused
    .evaluate(
      (element) =>
        (element.getRootNode() as ShadowRoot).host?.closest<HTMLElement>('[data-field]')?.dataset.field,
    )
    .catch(() => undefined);
  const input = /\/in\/(.+)$/.exec((await row.getAttribute('data-row').catch(() => '')) ?? '')?.[1];
  return id === null ? '' : `${id} ${field ?? (input ? `inputs.${input}` : 'entry')}`;
};

/** Whether nothing must be made any more: what an entry lets be asked for comes with its figures, for which lines wait. */
const nothingToMake = async (page: Page): Promise<boolean> => {
  const toMake = async () => /entr(y|ies) to make/.test((await standing(page).textContent()) ?? '');
  const waits = async () => (await page.locator('main.sheet.waits').count()) > 0;
  await expect.poll(async () => (await toMake()) || !(await waits())).toBe(true);
  return !(await toMake());
};

/** Fills a template in, from entry to entry, until nothing must be made any more: the key that goes on takes what is typed. */
const fillFrom = async (
  page: Page,
  hand: Hand,
  texts: ReadonlyMap<string, string>,
  unit: string,
): Promise<void> => {
  let before = '';
  for (let left = 200; left > 0; left--) {
    if (await nothingToMake(page)) return;
    await hand.press('F8');
    let place = '';
    await expect
      .poll(async () => {
        place = await placeOf(page);
        return place !== '' && place !== before;
      })
      .toBe(true);
    before = place;
    const text = texts.get(place) ?? '';
    const focused = page.locator('.cm-content:focus, [data-column="entry"] :is(select, input):focus');
    if ((await focused.evaluate((element) => element.tagName)) === 'SELECT') await hand.choose(focused, text);
    else await hand.readings(brief(text, unit));
    // The last is taken by itself: there is nowhere to go on to.
    if (!/\b1 entry to make/.test((await standing(page).textContent()) ?? '')) continue;
    if ((await focused.evaluate((element) => element.tagName)) === 'SELECT') continue;
    await hand.press('Enter');
    await expect(page.locator('.cm-content')).toHaveCount(0);
  }
};

/**
 * Every size that is cut, read twice at what its plan says once it is there: the key that goes on goes from one to the next,
 * past what may be entered where known.
 */
const measure = async (page: Page, hand: Hand): Promise<void> => {
  const box = page.locator('.as-cut .cm-content');
  const other = page.locator('.cm-content:focus, [data-column="entry"] :is(select, input):focus');
  const toRead = async () => /\d sizes? to read/.test((await standing(page).textContent()) ?? '');
  let before = '';
  const here = async () => {
    if ((await box.count()) > 0)
      return `read ${await page.locator('[data-row]').filter({ has: box }).getAttribute('data-cell')}`;
    const row = page.locator('[data-row]').filter({ has: other }).last();
    return (await other.count()) === 1 ? ((await row.getAttribute('data-row')) ?? '') : '';
  };
  for (let left = 60; left > 0; left--) {
    if (!(await toRead())) return;
    await hand.press('F8');
    await expect.poll(async () => (await here()) !== before || !(await toRead())).toBe(true);
    before = await here();
    if (!before.startsWith('read ')) continue;
    await expect(box).toBeFocused();
    const row = page.locator('[data-row]').filter({ has: box });
    const plan = /[\d.]+/.exec(
      (await row.locator('[data-column="value"] b').first().textContent()) ?? '',
    )![0];
    await hand.readings(`${plan};${plan}`, plan);
    await expect(box).toContainText(brief(plan, ''));
  }
};

const KEPT: ReadonlySet<string> = new Set(['gauge', 'bush-press', 'material']);

/** The gauges, the press and the metals of the shop, filled in on another job of the template and kept for this one. */
const equip = async (page: Page, file: SheetFile): Promise<void> => {
  await begin(page, file.title.title);
  for (const cell of file.cells.filter(({ kind = '' }) => KEPT.has(kind))) {
    await fillIn(page, [cell]);
    await line(page, cell.name!).locator('.label').click();
    const keep = page.getByRole('button', { name: 'Keep for the next job' });
    const kept = page.getByRole('button', { name: 'Keep it no more' });
    await expect(keep.or(kept)).toBeVisible();
    if (await keep.isVisible()) await keep.click();
    await expect(kept).toBeVisible();
  }
};

/** All that is cut is read, and nothing is out or open. */
const proven = async (page: Page): Promise<void> => {
  await expect(standing(page)).not.toContainText(/Waiting:|Working|to read/);
  await expect(standing(page).locator('.head-line')).not.toContainText(/Out:|Open:|Hold as planned/);
};

const tell = (job: string, { clicks, keys }: Hand, words: string): void =>
  console.log(`${job}: ${clicks} clicks, ${keys} keys; ${words.trim()}`);

/** A bearing ring of 45 mm takes no less and no more than one of 50 mm (ISO 492, from memory). */
const RING_45: ReadonlyMap<string, string> = new Map([['seat_fit limits.upper', '30 um']]);

/** A template on to the job in which all that is cut is proven, by its readings or by calculation, and none is out or open. */
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
    other: RING_45,
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
    test.setTimeout(300_000);
    const hand = new Hand(page);
    const file = templateFile(name);
    await equip(page, file);
    await begin(page, file.title.title);
    hand.clicks++;
    if (way) {
      hand.clicks += 2;
      await standing(page).getByRole('combobox').selectOption(way);
    }
    await fillFrom(page, hand, new Map([...asked(file, factor), ...(other ?? [])]), file.units.length);
    await expect(standing(page)).not.toContainText(/Waiting:|Working/);
    const words = async () => (await standing(page).locator('.head-line').textContent()) ?? '';
    const plan = await words();
    tell(`${job}, planned`, hand, plan);
    expect(plan).not.toMatch(/Out:|Open:/);
    await measure(page, hand);
    await proven(page);
    tell(`${job}, proven`, hand, await words());
    expect(hand.clicks).toBeLessThanOrEqual(12);
    expect(hand.keys).toBeLessThanOrEqual(250);
  });

/** What the cell of the library asks for, by input; the metals from its lists. */
const CLOSE_IN: ReadonlyMap<string, string> = new Map([
  ['bush_outside', '=bush_outside'],
  ['bush_bore', '=bush_bore'],
  ['interference', '=interference'],
  ['bush_material', NEW_LINE],
  ['housing_material', NEW_LINE],
]);
const METALS = ['c93200', 'gray-iron-30'];

test('counted: pump idler bush from an empty sheet', async ({ page }) => {
  test.skip(!WALKED, 'by npm run prove');
  const hand = new Hand(page);
  await page.goto('/');
  await hand.click(page.getByRole('button', { name: /empty sheet/i }).first());
  await expect(page.getByRole('grid')).toBeVisible();
  const title = page.getByRole('textbox', { name: 'Title', exact: true });
  await hand.click(title);
  await hand.press('ControlOrMeta+a');
  await hand.type('Pump idler bush');
  await hand.press('Enter');
  /** The form for a new line: by its button at first, by the key on a line from then on. */
  const open = async (role: string) => {
    if ((await page.locator('[role="gridcell"]:focus').count()) > 0) await hand.press('Insert');
    else await hand.click(page.getByRole('button', { name: 'Add a line', exact: true }).last());
    await hand.click(page.getByRole('button', { name: role, exact: true }).last());
  };
  const add = async (role: string, label: string, entry: string) => {
    await open(role);
    const what = page.locator('#new-line-label');
    if (!(await what.evaluate((element) => element === document.activeElement))) await hand.click(what);
    await hand.type(label);
    await hand.press('Enter');
    await expect(page.locator('.cm-content')).toBeFocused();
    await hand.type(entry);
    await hand.press('Enter');
    await expect(page.locator('.cm-content')).toHaveCount(0);
  };
  // Three directions at each end: by two it would not be shown that the widest place was met.
  await add('Measured', 'Journal', '1.2488;1.2487;1.2488|1.2488;1.2486;1.2487±.0001');
  await add('Measured', 'Housing', '1.5003;1.5004|1.5003;1.5002±.0001');
  await add('Chosen', 'Interference', '1.2 thou');
  await add('Chosen', 'Bush outside', '=housing+interference');
  await add('Chosen', 'Bush bore', '1.2517±.0002');
  await open('From the library');
  await expect(page.locator('#kind-search')).toBeFocused();
  await hand.type('close-in');
  await expect(page.locator('.add-line button b').first()).toContainText('Close-in of a pressed bush');
  await hand.press('Enter');
  await expect(page.locator('.add-line')).toHaveCount(0);
  const metals = [...METALS];
  for (let left = 12; left > 0; left -= 1) {
    if (await nothingToMake(page)) break;
    await hand.press('F8');
    const focused = page.locator('.cm-content:focus, [data-column="entry"] :is(select, input):focus');
    await expect(focused).toHaveCount(1);
    const row = page.locator('[data-row]').filter({ has: focused }).last();
    const input = /\/in\/(.+)$/.exec((await row.getAttribute('data-row')) ?? '')?.[1] ?? '';
    const text = CLOSE_IN.get(input) ?? metals.shift()!;
    if ((await focused.evaluate((element) => element.tagName)) === 'SELECT') await hand.choose(focused, text);
    else {
      await hand.type(text);
      await hand.press('Enter');
    }
    await expect(page.locator('.cm-content')).toHaveCount(0);
  }
  const name = await page
    .locator('[data-row] .named', { hasText: /^close_in/ })
    .first()
    .textContent();
  /** The limits of the line that was put in last, from one to the next. */
  const limits = async (lower: string, upper: string) => {
    for (const [field, text] of [
      ['limits.lower', lower],
      ['limits.upper', upper],
    ] as const) {
      await hand.click(page.locator(`[data-field="${field}"] input`));
      await expect(page.locator('.cm-content')).toBeFocused();
      await hand.type(text);
      await hand.press('Enter');
      await expect(page.locator('.cm-content')).toHaveCount(0);
    }
  };
  await add('Worked out', 'Pressed bore', `=bush_bore-${name!.trim()}.close_in_long_housing`);
  await limits('=journal+1 thou', '=journal+3 thou');
  await add('Worked out', 'Clearance', '=pressed_bore-journal');
  await limits('1 thou', '3 thou');
  await expect(check(page, 'clearance')).toContainText(/holds|misses|may miss/);
  await expect(standing(page)).not.toContainText('Waiting:');
  tell('pump idler bush from an empty sheet, planned', hand, (await standing(page).textContent()) ?? '');
  // What was cut: the bore before it was pressed, and what it closed in to.
  for (const [of, plan, text] of [
    ['bush_bore', '1.2517', '1.2517;1.2518±.0001'],
    ['pressed_bore', '1.2507', '1.2507;1.2508±.0001'],
  ] as const) {
    await hand.click(line(page, of).locator('.as-cut button'));
    await expect(page.locator('.as-cut .cm-content')).toBeFocused();
    await hand.readings(text, plan);
    await hand.press('Enter');
    await expect(page.locator('.cm-content')).toHaveCount(0);
  }
  await expect(check(page, 'clearance')).toContainText('proven in limits');
  await proven(page);
  tell('pump idler bush from an empty sheet, proven', hand, (await standing(page).textContent()) ?? '');
  expect(hand.clicks).toBeLessThanOrEqual(45);
  expect(hand.keys).toBeLessThanOrEqual(550);
});
