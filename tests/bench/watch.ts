/** What one edit did to the page. */
export interface Seen {
  /** Milliseconds from the keydown to the last change in a line's value. */
  ms: number;
  /** The frame after the key that paints the last change, from 1. */
  frame: number;
  changes: number;
}

interface Watch {
  start: number;
  last: number;
  changes: number;
  frames: number[];
}

type Watched = typeof globalThis & { watch: Watch };

/**
 * Runs in the page: watches the values of the lines from every Enter on. A frame is asked for only once something has
 * changed, which brings one anyhow: one asked for beforehand would be drawn first, and the browser holds the engine's
 * answer to the key back until it is.
 */
export function watchLines(): void {
  const watch: Watch = { start: 0, last: 0, changes: 0, frames: [] };
  (globalThis as Watched).watch = watch;
  document.addEventListener(
    'keydown',
    (event) => {
      if (event.key !== 'Enter') return;
      Object.assign(watch, { start: performance.now(), last: 0, changes: 0, frames: [] });
    },
    { capture: true },
  );
  let asked = false;
  const frame = (): void => {
    asked = false;
    watch.frames.push(performance.now());
  };
  new MutationObserver((records) => {
    if (watch.start === 0) return;
    if (!asked) requestAnimationFrame(frame);
    asked = true;
    const inValue = records.filter(({ type, target }) => {
      const node = target instanceof Element ? target : target.parentElement;
      return type !== 'attributes' && node?.closest('[data-column="value"]');
    });
    if (inValue.length === 0) return;
    watch.last = performance.now();
    watch.changes += inValue.length;
  }).observe(document, { attributes: true, childList: true, characterData: true, subtree: true });
}

/** Runs in the page: waits until nothing has changed for a while. */
export async function seenLines(quiet: number): Promise<Seen> {
  const { watch } = globalThis as Watched;
  const settled = (): boolean =>
    performance.now() - Math.max(watch.start, watch.last) > quiet && watch.last > 0;
  const until = performance.now() + 20 * quiet;
  while (!settled() && performance.now() < until) await new Promise((done) => setTimeout(done, 20));
  const before = watch.frames.filter((at) => at > watch.start && at < watch.last).length;
  return { ms: watch.last - watch.start, frame: before + 1, changes: watch.changes };
}
