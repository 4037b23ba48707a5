import type { BrowserContext } from '@playwright/test';
import { quantile, round } from './quantile.ts';

/** Runs in the page: notes when a sheet's last figure stands there and the frame that paints it has been drawn. */
function watchOpening(lines: number): void {
  const observer = new MutationObserver(() => {
    if (document.querySelectorAll('[data-column="value"] b').length < lines) return;
    observer.disconnect();
    // A task behind the frame: by then the page answers again.
    requestAnimationFrame(() =>
      setTimeout(() => {
        (globalThis as { openedAt?: number }).openedAt = performance.now();
      }, 0),
    );
  });
  observer.observe(document, { childList: true, characterData: true, subtree: true });
}

/** Opens a saved sheet again and again, each time in a page of its own: from the navigation to figures on every line, ms. */
export async function opening(
  context: BrowserContext,
  address: string,
  { lines, times, throttle }: { lines: number; times: number; throttle: number },
) {
  const all: number[] = [];
  for (let k = 0; k < times; k++) {
    const page = await context.newPage();
    const session = await context.newCDPSession(page);
    await session.send('Emulation.setCPUThrottlingRate', { rate: throttle });
    await page.addInitScript(watchOpening, lines);
    await page.goto(address);
    const handle = await page.waitForFunction(() => (globalThis as { openedAt?: number }).openedAt, null, {
      timeout: 120_000,
    });
    all.push((await handle.jsonValue()) as number);
    await page.close();
  }
  return { times, medianMs: round(quantile(all, 0.5)), worstMs: round(Math.max(...all)) };
}
