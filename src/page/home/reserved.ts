import { type Accessor, createEffect, onCleanup } from 'solid-js';
import { readKept, writeKept } from '../kit/kept.ts';

const KEY = 'home.jobs';

/** Height the list of jobs had here last, CSS px; 0 where there was none. */
const heightLast = (): number => {
  const kept = readKept(KEY);
  return typeof kept === 'number' && kept > 0 ? kept : 0;
};

/**
 * Keeps the room of the list of jobs free until it is there, so that nothing below it moves under a finger.
 * @param ready the list is there.
 */
export const reserve = (element: HTMLElement, ready: Accessor<boolean>): void => {
  const seen = new ResizeObserver(() => {
    if (ready()) writeKept(KEY, element.offsetHeight || undefined);
  });
  createEffect(() => {
    const height = ready() ? 0 : heightLast();
    element.classList.toggle('kept', height > 0);
    element.style.minHeight = height > 0 ? `${height}px` : '';
  });
  seen.observe(element);
  onCleanup(() => seen.disconnect());
};
