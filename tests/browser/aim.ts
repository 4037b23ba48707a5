import type { Page } from '@playwright/test';

/** How a target is reached while an entry is open. */
export type Way = 'mouse' | 'slow press' | 'touch';

export interface Target {
  at: number;
  /** What it is, for the report: tag and accessible name. */
  words: string;
  /** Typing is expected to land in it. */
  field: boolean;
}

/**
 * Finds everything on the page that a press can be aimed at, from the page itself and no list, and marks each.
 * Left out: the open entry itself, and pickers of files, which open a window of the system.
 */
export const findTargets = (page: Page, within = 'body'): Promise<Target[]> =>
  page.evaluate((root) => {
    for (const one of document.querySelectorAll<HTMLElement>('[data-aim], [data-aim-home]')) {
      delete one.dataset.aim;
      delete one.dataset.aimHome;
    }
    const all = [
      ...document.querySelectorAll<HTMLElement>(
        `${root} :is(button, input, select, textarea, a[href], summary, [role="gridcell"].can-type)`,
      ),
    ];
    const aimable = all.filter(
      (one) =>
        one.checkVisibility({ visibilityProperty: true }) &&
        !one.matches(':disabled, [type="file"]') &&
        !one.closest('.editor') &&
        !one.querySelector('.editor') &&
        one.getBoundingClientRect().width > 0,
    );
    const met = new Map<string, number>();
    return aimable.map((one, at) => {
      one.dataset.aim = String(at);
      const label = (one as HTMLInputElement).labels?.[0]?.textContent;
      const words = one.getAttribute('aria-label') ?? label ?? one.textContent ?? '';
      const row = one.closest<HTMLElement>('[data-row]')?.dataset.row ?? '';
      const named = `${one.tagName.toLowerCase()} "${words.trim().slice(0, 50)}" ${row}`;
      const times = (met.get(named) ?? 0) + 1;
      met.set(named, times);
      return {
        at,
        words: times === 1 ? named : `${named} (${times})`,
        field: one.matches(
          'input:not([type="checkbox"], [type="radio"]), textarea, select, [role="gridcell"]',
        ),
      };
    });
  }, within);

/** Presses the middle of a target and tells whether it was reached, and where the keyboard is afterwards. */
export const pressTarget = async (
  page: Page,
  target: Target,
  way: Way,
): Promise<{ reached: boolean; focused: boolean; where: string }> => {
  const place = await page.evaluate((at) => {
    const one = document.querySelector<HTMLElement>(`[data-aim="${at}"]`)!;
    one.scrollIntoView({ block: 'center' });
    // What takes the place of a field while it is typed in stands in the same box.
    const home =
      one.closest<HTMLElement>('[role="gridcell"]') ??
      (one.matches('input, textarea, select') ? one.parentElement! : one);
    home.dataset.aimHome = String(at);
    const box = one.getBoundingClientRect();
    // A wide cell holds other things further down: its first line is what is aimed at.
    const x = one.matches('[role="gridcell"]') ? box.left + 16 : box.left + box.width / 2;
    const y = one.matches('[role="gridcell"]') ? box.top + 12 : box.top + box.height / 2;
    const top = document.elementFromPoint(x, y);
    const own = window as unknown as { aimed?: string[] };
    if (!own.aimed)
      addEventListener(
        'click',
        (event) =>
          own.aimed!.push(
            (event.target as Element).closest<HTMLElement>('[data-aim]')?.dataset.aim ?? 'none',
          ),
        true,
      );
    own.aimed = [];
    return { x, y, covered: top !== one && !one.contains(top) && !top?.contains(one) };
  }, target.at);
  if (place.covered) return { reached: true, focused: true, where: 'covered' };
  if (way === 'touch') await page.touchscreen.tap(place.x, place.y);
  else {
    await page.mouse.move(place.x, place.y);
    await page.mouse.down();
    if (way === 'slow press')
      await page.waitForFunction(
        (from) => performance.now() - from > 700,
        await page.evaluate(() => performance.now()),
      );
    await page.mouse.up();
  }
  // Whatever follows the press comes behind it in tasks and frames of its own.
  await page.evaluate(
    () =>
      new Promise((done) => requestAnimationFrame(() => setTimeout(() => requestAnimationFrame(done), 60))),
  );
  return page.evaluate((at) => {
    const { aimed } = window as unknown as { aimed: string[] };
    const home = document.querySelector<HTMLElement>(`[data-aim-home="${at}"]`);
    const active = document.activeElement as HTMLElement | null;
    const name =
      active?.getAttribute('aria-label') ?? (active as HTMLInputElement)?.labels?.[0]?.textContent ?? '';
    return {
      reached: aimed.includes(String(at)),
      focused: Boolean(active && home?.contains(active)),
      where: `${active?.tagName.toLowerCase()}.${active?.className} "${name}" in ${active?.closest<HTMLElement>('[data-row]')?.dataset.row ?? ''}; clicks: ${aimed.join(' ')}`,
    };
  }, target.at);
};
