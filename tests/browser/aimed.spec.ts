import type { Page } from '@playwright/test';
import { walk } from '../walk.ts';
import { findTargets, pressTarget, type Way } from './aim.ts';
import { expect, test } from './fixture.ts';
import { bringIn, shortJob } from './share-steps.ts';
import { figuresAreIn, line } from './sheet-steps.ts';

/** Every target in a proof, a spread-out sample of them in every test run. */
const STEP = walk(17, 1);

const WALKS: ReadonlyArray<readonly [Way, number]> =
  STEP === 1
    ? [
        ['mouse', 1280],
        ['slow press', 1280],
        ['touch', 1280],
        ['mouse', 390],
        ['touch', 390],
      ]
    : [
        ['mouse', 1280],
        ['touch', 390],
      ];

/** Cells of the library that still ask for list boxes to be chosen from and entries to be made. */
const ASKING = [
  { id: 'c5', role: 'cell', kind: 'material', edition: 1, name: 'iron', label: 'Iron' },
  { id: 'c6', role: 'cell', kind: 'wall-left', edition: 1, name: 'wall', label: 'Wall' },
] as const;

/** What a press may have changed besides where the keyboard is: address, dialogs, lines, what is unfolded, edits, messages. */
const lookOf = (page: Page): Promise<string> =>
  page.evaluate(() => {
    const seen = (selector: string) =>
      [...document.querySelectorAll<HTMLElement>(selector)].filter((one) => one.checkVisibility());
    return JSON.stringify([
      location.href,
      document.documentElement.className,
      seen('dialog[open], .notice, [data-row], .add-line, [role="region"], section, details[open]').map(
        (one) => one.dataset.row ?? one.getAttribute('aria-label') ?? one.className,
      ),
      seen('button, summary').map((one) => `${one.getAttribute('aria-pressed')} ${one.matches(':disabled')}`),
    ]);
  });

for (const [way, width] of WALKS) {
  test(`with an entry open a ${way} at ${width} px lands where it was aimed`, async ({
    browser,
    baseURL,
    watch,
  }) => {
    test.setTimeout(1_200_000);
    const touch = way === 'touch';
    const context = await browser.newContext({
      baseURL: baseURL!,
      viewport: { width, height: 800 },
      serviceWorkers: 'block',
      ...(touch && { hasTouch: true, isMobile: width < 500 }),
    });
    await watch(context);
    const page = await context.newPage();
    await bringIn(page, shortJob([...ASKING]));
    const address = page.url();
    const entry = line(page, 'bore').locator('[data-column="entry"]');
    const STANDS = '2.2513 in ± 0.0002 in';
    const openEntry = async () => {
      await entry.click({ position: { x: 16, y: 12 } });
      await expect(entry.locator('.cm-content')).toBeFocused();
      // Something was typed, and what is entered of it is what stood there.
      await page.keyboard.press('ControlOrMeta+End');
      await page.keyboard.type(' ');
    };
    const anew = async () => {
      await page.goto('about:blank');
      await page.goto(address);
      await figuresAreIn(page);
      await openEntry();
    };
    await openEntry();
    await expect(page.getByRole('region', { name: 'Bore, unfolded' })).toBeVisible();
    // The parts of an unfolded line come one after the other.
    const asAtFirst = await settledLook(page);
    const all = await findTargets(page);
    expect(all.length).toBeGreaterThan(30);
    /** Back to the entry; loads the page again where the press did more than take the keyboard there. */
    const again = async () => {
      await page.keyboard.press('Escape');
      if ((await lookOf(page)) === asAtFirst) {
        await openEntry();
        if ((await lookOf(page)) === asAtFirst) return;
      }
      await anew();
      await expect(page.getByRole('region', { name: 'Bore, unfolded' })).toBeVisible();
      await settledLook(page);
    };
    const wrong: string[] = [];
    const covered: string[] = [];
    let tried = 0;
    for (let i = 0; i < all.length; i += STEP) {
      await again();
      const target = (await findTargets(page)).find(({ words }) => words === all[i]!.words);
      if (!target) {
        // A hint that was sent away does not come again.
        covered.push(`${all[i]!.words}, gone by an earlier press`);
        continue;
      }
      const got = await pressTarget(page, target, way);
      if (got.where === 'covered') {
        covered.push(target.words);
        continue;
      }
      tried += 1;
      if (target.field) await page.keyboard.type('7');
      const stands = entry.locator('.typed, .cm-content').first();
      const text = (await stands.count()) === 0 ? STANDS : ((await stands.textContent()) ?? '').trim();
      // The entry itself and what removes its line are aimed at too.
      if (!got.reached || (target.field && !got.focused) || text !== STANDS)
        wrong.push(`${target.words}: ${JSON.stringify(got)}, the entry stands as ${text}`);
    }
    console.log(
      `${way} at ${width} px: ${tried} of ${all.length} fields and buttons pressed with an entry open`,
    );
    if (covered.length > 0) console.log(`not to be pressed: ${covered.join('; ')}`);
    expect(wrong).toEqual([]);
    await context.close();
  });
}

test('from every field of the sheet Tab and Shift+Tab go on to another, and typing lands there', async ({
  page,
}) => {
  test.setTimeout(1_200_000);
  await bringIn(page, shortJob([...ASKING]));
  const address = page.url();
  const anew = async () => {
    await page.goto('about:blank');
    await page.goto(address);
    await figuresAreIn(page);
    await line(page, 'bore').locator('.label').click();
    await expect(page.getByRole('region', { name: 'Bore, unfolded' })).toBeVisible();
    return settledLook(page);
  };
  const asAtFirst = await anew();
  const names = (await findTargets(page)).filter(({ field }) => field).map(({ words }) => words);
  expect(names.length).toBeGreaterThan(20);
  const wrong: string[] = [];
  /** Where a field stands, whether it is typed in or not, and what it shows: an editor takes its place while it is. */
  const placeOf = (at: number) =>
    page.evaluate((which) => {
      const one = document.querySelector<HTMLElement>(`[data-aim="${which}"]`)!;
      const row = one.closest<HTMLElement>('[data-row]')?.dataset.row;
      const field = one.closest<HTMLElement>('[data-field]')?.dataset.field;
      if (one.matches('[role="gridcell"]')) return `[data-row="${row}"] [data-column="entry"]`;
      return field ? `[data-field="${field}"]` : `[data-aim="${which}"]`;
    }, at);
  const shown = (place: string) =>
    page.evaluate((selector) => {
      const home = document.querySelector(selector);
      const field = home?.matches('input, select, textarea')
        ? home
        : (home?.querySelector('.typed') ?? home?.querySelector('input, select, textarea') ?? home);
      return (field && 'value' in field ? String(field.value) : (field?.textContent ?? '')).trim();
    }, place);
  /** Leaves what is being typed as it stood; the first press may but close its offers. */
  const leaveIt = async () => {
    for (let left = 3; left > 0; left--) {
      await page.keyboard.press('Escape');
      if ((await page.locator('.cm-content').count()) === 0) return;
    }
  };
  for (let i = 0; i < names.length; i += STEP)
    for (const key of ['Tab', 'Shift+Tab']) {
      await leaveIt();
      if ((await lookOf(page)) !== asAtFirst) await anew();
      const target = (await findTargets(page)).find(({ words }) => words === names[i]);
      if (!target) {
        wrong.push(`${names[i]}: gone`);
        continue;
      }
      const place = await placeOf(target.at);
      const before = await shown(place);
      const got = await pressTarget(page, target, 'mouse');
      const from = await page.evaluateHandle(() => document.activeElement);
      // A list that was pressed lies open, and would take the key to close.
      if (names[i]!.startsWith('select')) await page.keyboard.press('Escape');
      // With nothing typed there are no offers, which Tab would take.
      await page.keyboard.press(key);
      const { left, lost } = await page.evaluate((before) => {
        const now = document.activeElement;
        // A date has a place each for day, month and year.
        return { left: now !== before || now?.matches('[type="date"]'), lost: !now || now === document.body };
      }, from);
      await page.keyboard.type('7');
      const after = await shown(place);
      const isDate = await page.evaluate(() => document.activeElement?.matches('[type="date"]'));
      if (!got.focused || !left || lost || (after !== before && !isDate))
        wrong.push(`${names[i]}, ${key}: ${JSON.stringify({ got, left, lost, before, after })}`);
    }
  console.log(`Tab and Shift+Tab from ${Math.ceil(names.length / STEP)} of ${names.length} fields`);
  expect(wrong).toEqual([]);
});

/** What lies over the sheet or in its place, and how to get there. */
const VIEWS: ReadonlyArray<{ view: string; field: string; open: (page: Page) => Promise<void> }> = [
  ...(['Share', 'History', 'Make a template', 'Preferences'] as const).map((name) => ({
    view: name,
    field: 'dialog :is(input:not([type="checkbox"], [type="radio"]), textarea, select)',
    open: async (page: Page) => {
      await page.getByRole('button', { name, exact: true }).filter({ visible: true }).click();
      await expect(page.getByRole('dialog')).toBeVisible();
    },
  })),
  {
    view: 'the finder',
    field: 'dialog input',
    open: async (page: Page) => {
      await page.keyboard.press('F9');
      await expect(page.getByRole('combobox', { name: 'What to find' })).toBeFocused();
    },
  },
  {
    view: 'a new line',
    field: '.add-line input',
    open: async (page: Page) => {
      await page.getByRole('button', { name: 'Add a line', exact: true }).click();
      await expect(page.getByLabel('What it is')).toBeFocused();
    },
  },
  {
    view: 'at the machine',
    field: '.bench-entry input',
    open: async (page: Page) => {
      await page.getByRole('link', { name: 'At the machine' }).click();
      await expect(page.getByRole('group', { name: 'Keypad' })).toBeVisible();
    },
  },
];

/** Where typing goes while a press is aimed elsewhere. */
const within = (view: string) =>
  view === 'at the machine' ? '.bench' : view === 'a new line' ? '.add-line' : 'dialog';

/** The look of a view once what it fetches is there. */
const settledLook = async (page: Page): Promise<string> => {
  let before = '';
  await expect
    .poll(
      async () => {
        const now = await lookOf(page);
        const same = now === before;
        before = now;
        return same;
      },
      { intervals: [500] },
    )
    .toBe(true);
  return before;
};

const walkOf = (way: Way, width: number, { view, field, open }: (typeof VIEWS)[number]) =>
  test(`in ${view} a ${way} at ${width} px lands where it was aimed`, async ({ browser, baseURL, watch }) => {
    test.setTimeout(1_200_000);
    const context = await browser.newContext({
      baseURL: baseURL!,
      viewport: { width, height: 800 },
      serviceWorkers: 'block',
      ...(way === 'touch' && { hasTouch: true, isMobile: width < 500 }),
    });
    await watch(context);
    const page = await context.newPage();
    await bringIn(page, shortJob());
    const address = page.url();
    const wrong: string[] = [];
    const covered: string[] = [];
    let tried = 0;
    /** What there was to press at first: in some views a press adds to it. */
    let names: string[] = [''];
    let asAtFirst = '';
    for (let i = 0; i < names.length; i += STEP === 1 ? 1 : 9) {
      // Loaded again only where the press did more than take the keyboard there.
      if (i === 0 || (await lookOf(page)) !== asAtFirst) {
        await page.goto('about:blank');
        await page.goto(address);
        await figuresAreIn(page);
        await open(page);
        if (i === 0) asAtFirst = await settledLook(page);
      }
      const typedIn = page.locator(field).filter({ visible: true }).first();
      if ((await typedIn.count()) > 0) {
        await typedIn.focus();
        await page.keyboard.press('ControlOrMeta+a');
        await page.keyboard.type('2');
      }
      const all = await findTargets(page, within(view));
      if (i === 0) names = all.map(({ words }) => words);
      const target = all.find(({ words }) => words === names[i]);
      if (!target) {
        covered.push(`${names[i]}, gone by an earlier press`);
        continue;
      }
      const before = (await typedIn.count()) > 0 ? await typedIn.inputValue() : '';
      const got = await pressTarget(page, target, way);
      if (got.where === 'covered') {
        covered.push(target.words);
        continue;
      }
      tried += 1;
      const own = await page.evaluate(
        ([at, selector]) =>
          document.querySelector(selector!) === document.querySelector(`[data-aim="${at}"]`),
        [String(target.at), field] as const,
      );
      if (!got.reached || (target.field && !got.focused))
        wrong.push(`${target.words}: ${JSON.stringify(got)}`);
      if (!target.field || own) continue;
      await page.keyboard.type('7');
      const now = (await typedIn.count()) > 0 ? await typedIn.inputValue() : before;
      if (now !== before) wrong.push(`${target.words}: typing went to the field left, ${now}`);
    }
    console.log(`${way} at ${width} px in ${view}: ${tried} of ${names.length} fields and buttons pressed`);
    if (covered.length > 0) console.log(`not to be pressed: ${covered.join('; ')}`);
    expect(wrong).toEqual([]);
    expect(tried).toBeGreaterThan(0);
    await context.close();
  });

if (STEP === 1) for (const [way, width] of WALKS) for (const one of VIEWS) walkOf(way, width, one);
else walkOf('touch', 390, VIEWS.find(({ view }) => view === 'at the machine')!);

for (const { view, open } of VIEWS.filter((one) => STEP === 1 || one.view === 'at the machine'))
  test(`in ${view} Tab goes round all fields and buttons, and never to the page`, async ({ page }) => {
    await bringIn(page, shortJob());
    await open(page);
    const all = await findTargets(page, within(view));
    expect(all.length).toBeGreaterThan(0);
    const seen = new Set<string>();
    // From the first on: what is no dialog goes on to the rest of the sheet behind its last.
    await page.locator('[data-aim="0"]').focus();
    seen.add('0');
    for (let k = 0; k < all.length + 4; k += 1) {
      await page.keyboard.press('Tab');
      const at = await page.evaluate(
        () => document.activeElement?.closest<HTMLElement>('[data-aim]')?.dataset.aim,
      );
      if (at !== undefined) seen.add(at);
    }
    // What a roving stop or a list holds is reached by its arrows.
    const missed = await page.evaluate(
      (got) =>
        [...document.querySelectorAll<HTMLElement>('[data-aim]')]
          .filter(
            (one) =>
              !got.includes(one.dataset.aim!) &&
              one.tabIndex >= 0 &&
              !one.matches('[type="radio"]:not(:checked)'),
          )
          .map((one) => one.textContent?.trim() || one.getAttribute('aria-label')),
      [...seen],
    );
    expect(missed).toEqual([]);
  });
