import type { Page } from '@playwright/test';
import { quantile, round } from './quantile.ts';

const FRAME = 1000 / 60;

type Framed = typeof globalThis & { drawn?: number[] };

/** Scrolls down a sheet by wheel, fast, and tells how long its frames took; at 60 a second one takes 16.7 ms. */
export async function scrolling(page: Page, { pixels, speed }: { pixels: number; speed: number }) {
  const session = await page.context().newCDPSession(page);
  await page.evaluate(() => {
    const frames: number[] = [];
    (globalThis as Framed).drawn = frames;
    const frame = (at: number): void => {
      frames.push(at);
      if ((globalThis as Framed).drawn) requestAnimationFrame(frame);
    };
    requestAnimationFrame(frame);
  });
  await session.send('Input.synthesizeScrollGesture', {
    x: 600,
    y: 500,
    yDistance: -pixels,
    speed,
    gestureSourceType: 'mouse',
    preventFling: true,
  });
  const { frames, moved } = await page.evaluate(() => {
    const all = (globalThis as Framed).drawn ?? [];
    (globalThis as Framed).drawn = undefined;
    return { frames: all, moved: scrollY };
  });
  const took = frames.slice(1).map((at, i) => at - (frames[i] as number));
  const dropped = took.reduce((sum, ms) => sum + Math.max(0, Math.round(ms / FRAME) - 1), 0);
  return {
    pixels: Math.round(moved),
    frames: took.length,
    medianMs: round(quantile(took, 0.5)),
    p95Ms: round(quantile(took, 0.95)),
    droppedShare: Number((dropped / (took.length + dropped)).toFixed(3)),
  };
}
