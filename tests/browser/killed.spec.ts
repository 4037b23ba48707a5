import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from '@playwright/test';
import { walk } from '../walk.ts';
import { expect, test } from './fixture.ts';
import { kill, type OwnBrowser, ownBrowser } from './own-browser.ts';
import { isSaved, lookAt, shortJob, takeOver } from './share-steps.ts';
import { enter, figuresAreIn, line, value } from './sheet-steps.ts';

/** How often the browser and the tab alone are killed, by turns. */
const RUNS = walk(3, 100);

const entry = (k: number): string => `${(2.2 + k / 1000).toFixed(4)} in ± 0.0002 in`;
const shown = (k: number): string => (2.2 + k / 1000).toFixed(4);

/**
 * Hears of the moment at which a text stands in a value, before it is painted. The page tells by a message, so that whoever
 * has heard of it may end the browser at once.
 */
const heard = async (page: Page): Promise<(text: string) => Promise<void>> => {
  let settle: (() => void) | undefined;
  await page.exposeFunction('standsNow', () => settle?.());
  return async (text) => {
    const stands = new Promise<void>((resolve) => {
      settle = resolve;
    });
    await value(page, 'bore').evaluate((cell, wanted) => {
      const look = () => {
        if (!cell.textContent?.includes(wanted)) return;
        observer.disconnect();
        (window as unknown as { standsNow(): void }).standsNow();
      };
      const observer = new MutationObserver(look);
      observer.observe(cell, { subtree: true, childList: true, characterData: true });
    }, text);
    await page.keyboard.press('Enter');
    await stands;
  };
};

test(`killed in mid-edit ${RUNS} times, it loses at most what was neither saved nor shown`, async ({
  baseURL,
}) => {
  test.setTimeout(60_000 + RUNS * 60_000);
  const lost: string[] = [];
  const folder = mkdtempSync(join(tmpdir(), 'fitwright-killed-'));
  let own: OwnBrowser | undefined;
  let random = 1;
  /** Seeded: the same moments every time, as far as the machine is the same. */
  const upTo = (n: number) => {
    random = (random * 48_271) % 2_147_483_647;
    return random % n;
  };
  try {
    own = await ownBrowser(folder);
    let page: Page = await own.browser.contexts()[0]!.newPage();
    await lookAt(page, shortJob(), 'sheet.json', baseURL!);
    await takeOver(page);
    const address = page.url();
    await isSaved(page);

    let k = 0;
    for (let run = 0; run < RUNS; run++) {
      // Some entries that the page says are saved.
      for (let n = 1 + upTo(2); n > 0; n--) {
        k += 1;
        await enter(page, 'bore', entry(k));
        await expect(value(page, 'bore')).toContainText(shown(k));
        await isSaved(page);
      }
      // The next one is being typed, just taken, or taken and its figure just shown, when the end comes.
      const moment = (['typed', 'taken', 'shown'] as const)[run % 3]!;
      const taken = moment !== 'typed';
      await line(page, 'bore').locator('[data-column="entry"]').click();
      await expect(page.locator('.cm-content')).toBeFocused();
      await page.keyboard.press('ControlOrMeta+a');
      await page.keyboard.insertText(taken ? entry(k + 1) : entry(k + 1).slice(0, 3));
      if (moment === 'shown') await (await heard(page))(shown(k + 1));
      else {
        if (taken) await page.keyboard.press('Enter');
        await new Promise((go) => setTimeout(go, upTo(taken ? 40 : 200)));
      }

      const whole = upTo(2) === 0;
      if (whole) {
        await kill(own);
        own = await ownBrowser(folder);
      } else {
        const session = await page.context().newCDPSession(page);
        const crashed = page.waitForEvent('crash');
        void session.send('Page.crash').catch(() => {});
        await crashed;
        await page.close();
      }
      page = await own.browser.contexts()[0]!.newPage();
      await page.goto(address);
      await figuresAreIn(page);
      const kept = (await value(page, 'bore').locator('b').first().textContent()) ?? '';
      const allowed = { typed: [shown(k)], taken: [shown(k), shown(k + 1)], shown: [shown(k + 1)] }[moment];
      if (!allowed.includes(kept.slice(0, 6)))
        lost.push(
          `${run}: ${moment}, ${whole ? 'browser' : 'tab'} ended, ${kept} for ${allowed.join(' or ')}`,
        );
      // The whole sheet stands, and goes on computing.
      await expect(value(page, 'grip')).toContainText('3');
      if (kept.startsWith(shown(k + 1))) k += 1;
      if ((run + 1) % 10 === 0) console.log(`killed ${run + 1} times, lost: ${lost.length}`);
    }
    console.log(`killed ${RUNS} times, lost: ${lost.length}`);
    expect(lost).toEqual([]);
  } finally {
    if (own) await kill(own);
    rmSync(folder, { recursive: true, force: true, maxRetries: 5, retryDelay: 200 });
  }
});
