import type { Browser, Locator, Page } from '@playwright/test';
import { library } from '../../cells/catalogue.ts';
import type { DecisionRule } from '../../shared/sheet/format.ts';
import { writeSheet } from '../../shared/sheet/write.ts';
import { TrialSheet } from '../../src/engine/trial/trial-sheet.ts';
import { chain } from './chain.ts';
import { quantile, round } from './quantile.ts';
import { goalOf, judged, windows } from './windows.ts';

const TIMES = 9;

/** Runs in the page: presses a button, takes an option, or Enter in the field that has the focus, and tells when what is looked for is drawn. */
const pressed = ([selector, looked, button]: Press): Promise<number> =>
  new Promise((settle) => {
    const part = document.querySelector(selector) as HTMLElement;
    const pattern = new RegExp(looked);
    const said = (): string =>
      part.textContent +
      [...part.querySelectorAll('svg')].map((one) => one.getAttribute('aria-label')).join(' ');
    const begun = performance.now();
    const seen = new MutationObserver(() => {
      if (part.querySelector('progress') || part.querySelector('[role=status]') || !pattern.test(said()))
        return;
      seen.disconnect();
      settle(performance.now() - begun);
    });
    seen.observe(part, { subtree: true, childList: true, characterData: true, attributes: true });
    const option = [...part.querySelectorAll('option')].find((one) => one.textContent === button);
    const box = option?.closest('select');
    const own = [...part.querySelectorAll('button')].find((one) => one.textContent === button);
    if (box && option) {
      box.value = option.value;
      box.dispatchEvent(new Event('change', { bubbles: true }));
    } else if (own) own.click();
    else
      document.activeElement?.dispatchEvent(
        new KeyboardEvent('keydown', { key: 'Enter', bubbles: true, cancelable: true }),
      );
  });

async function opened(browser: Browser, address: string, text: string): Promise<Page> {
  const context = await browser.newContext({ viewport: { width: 1280, height: 800 } });
  const page = await context.newPage();
  await page.goto(address);
  await page
    .getByLabel('Open a file')
    .setInputFiles({ name: 'chain.json', mimeType: 'application/json', buffer: Buffer.from(text) });
  await page.getByRole('button', { name: 'Take it over as a new sheet' }).click();
  await page.getByRole('grid').waitFor();
  return page;
}

const unfold = async (page: Page, name: string): Promise<Locator> => {
  await page.getByRole('button', { name: 'Find', exact: true }).click();
  await page.getByRole('combobox', { name: 'What to find' }).fill(name);
  await page.keyboard.press('Enter');
  const line = page
    .locator('[data-row]')
    .filter({ has: page.locator('.named', { hasText: new RegExp(`^${name}$`) }) });
  await line.locator('.label').click();
  return line;
};

/** The first time is with the copy of the sheet still to be made; the others are an answer on a copy that is there. */
const told = (all: readonly number[]) => ({
  firstMs: round(all[0] as number),
  medianMs: round(quantile(all.slice(1), 0.5)),
  mostMs: round(Math.max(...all.slice(1))),
});

type Press = [selector: string, looked: string, button: string];

const WINDOW: Press = ['.window-part', 'every check holds', 'Work out its window'];
const MAP: Press = ['.map-part', 'of 1600 cells', 'Draw the map of both'];

/**
 * In a Chromium, from the press or the key to the answer in the page, milliseconds: the inputs by influence with the answer of
 * the first, a window, one where draws are wanted, and a map of 40 by 40, at 300 quantities and 60 sources; beside it the plain
 * secant of the same run.
 */
export async function triedInBrowser(browser: Browser, address: string) {
  const of = chain(300, 60);
  const sheet = (rule: DecisionRule, kink: boolean) => judged(of, rule, kink);
  const plain = sheet('worst-case', false);
  const trial = new TrialSheet(library, 'all');
  trial.load(plain);
  const { deep, goal } = goalOf(of, trial);
  trial.destroy();
  const { secantMs } = windows(300, 60);

  const page = await opened(browser, address, writeSheet(plain));
  await unfold(page, `q${deep}`);
  const back: number[] = [];
  for (let i = 0; i < TIMES; i++) {
    await page.getByLabel('Value wanted').click();
    await page.keyboard.press('ControlOrMeta+a');
    const want = (goal * 1e3 + i * 1e-3).toFixed(6);
    await page.keyboard.insertText(`${want} mm`);
    const shown = Number(want).toFixed(3).replace('.', '\\.').slice(0, -1);
    back.push(await page.evaluate(pressed, ['.work-back', `makes it ${shown}`, ''] as Press));
  }
  /** Each time on a line that is unfolded anew: what was worked out before would stand there meanwhile. */
  // A line that a thread moves: each of the threads near its size is tried. Taken in turn with a number, whose answer goes.
  await unfold(page, 'tapped');
  await page.getByLabel('Value wanted').click();
  await page.keyboard.insertText('60 mm');
  await page.evaluate(pressed, ['.work-back', 'makes it', ''] as Press);
  const box = page.getByLabel('What may move for it');
  const titles = await box.locator('option').allTextContents();
  const [number = '', thread = ''] = [titles[0], titles.find((one) => /thread, M8/.test(one))];
  const choice: number[] = [];
  for (let i = 0; i < TIMES; i++) {
    choice.push(await page.evaluate(pressed, ['.work-back', 'Tried: the metric threads', thread] as Press));
    await box.selectOption({ label: number });
    await page.getByText('Tried: the metric threads').waitFor({ state: 'detached' });
  }
  const swept = async (
    page: Page,
    then: (all: number[]) => Promise<void>,
    times = TIMES,
  ): Promise<number[]> => {
    const all: number[] = [];
    for (let i = 0; i < times; i++) {
      const line = await unfold(page, 'q0');
      await page.locator('.window-part').waitFor();
      await then(all);
      await line.locator('[data-column="name"]').focus();
      await page.keyboard.press('Enter');
      await page.locator('.window-part').waitFor({ state: 'detached' });
    }
    return all;
  };
  const windowOf = (page: Page) => async (all: number[]) => {
    all.push(await page.evaluate(pressed, WINDOW));
  };
  const window = await swept(page, windowOf(page));
  const map = await swept(
    page,
    async (all) => {
      await page.evaluate(pressed, WINDOW);
      await page.getByLabel('Together with').selectOption({ index: 2 });
      all.push(await page.evaluate(pressed, MAP));
    },
    5,
  );
  await page.context().close();
  const drawn = await opened(browser, address, writeSheet(sheet('iso14253-2013', true)));
  const byDraws = await swept(drawn, windowOf(drawn));
  await drawn.context().close();
  return {
    'inputs and work back': { ...told(back), secantMs },
    'choice of a thread': { ...told(choice), secantMs },
    window: { ...told(window), secantMs },
    'window by draws': { ...told(byDraws), secantMs },
    map: { ...told(map), secantMs },
  };
}
