import type { SheetContext } from '../state/context.ts';
import { namesOf } from '../state/lines-commands.ts';

/** Lines of the grid under a point, by the cell they belong to. */
const cellUnder = (x: number, y: number): { id: string; below: boolean; row: HTMLElement } | undefined => {
  const row = document.elementFromPoint(x, y)?.closest<HTMLElement>('[data-cell]');
  const id = row?.dataset.cell;
  if (!row || !id) return undefined;
  const box = row.getBoundingClientRect();
  return { id, below: y > box.top + box.height / 2, row };
};

/** Where a line dropped at a place goes: behind which line, `null` for the top. */
export const dropAfter = (
  order: readonly string[],
  moving: string,
  over: string,
  below: boolean,
): string | null | undefined => {
  if (over === moving) return undefined;
  if (below) return over;
  const before = order.slice(0, order.indexOf(over)).filter((id) => id !== moving);
  return before.at(-1) ?? null;
};

/** Drags lines by the handle of one; letting go moves them, Escape does not. Works by mouse, pen and finger. */
export const carry = (
  start: PointerEvent,
  cells: readonly string[],
  { sheet, notices }: SheetContext,
): void => {
  if (start.button !== 0) return;
  start.preventDefault();
  const handle = start.currentTarget as HTMLElement;
  const own = handle.closest<HTMLElement>('[data-cell]');
  let marked: HTMLElement | undefined;
  let after: string | null | undefined;
  const mark = (row: HTMLElement | undefined) => {
    marked?.classList.remove('drop-after');
    marked = row;
    marked?.classList.add('drop-after');
  };
  const follow = (event: PointerEvent) => {
    own?.classList.add('carried');
    const under = cellUnder(event.clientX, event.clientY);
    after =
      under && !cells.includes(under.id)
        ? dropAfter(sheet.state.order, cells[0]!, under.id, under.below)
        : undefined;
    const last =
      typeof after === 'string'
        ? [...document.querySelectorAll<HTMLElement>(`[data-cell="${after}"]`)].at(-1)
        : undefined;
    mark(after === undefined ? undefined : last);
    const edge = 60;
    if (event.clientY < edge) scrollBy(0, -12);
    else if (event.clientY > innerHeight - edge) scrollBy(0, 12);
  };
  const end = (drop: boolean) => {
    handle.removeEventListener('pointermove', follow);
    handle.removeEventListener('pointerup', up);
    handle.removeEventListener('pointercancel', cancel);
    removeEventListener('keydown', key, true);
    own?.classList.remove('carried');
    mark(undefined);
    if (drop && after !== undefined) {
      sheet.document.moveCells(cells, after);
      notices.say(`Moved ${namesOf({ sheet }, cells)}.`);
    }
  };
  const up = () => end(true);
  const cancel = () => end(false);
  const key = (event: KeyboardEvent) => {
    if (event.key !== 'Escape') return;
    event.stopPropagation();
    end(false);
  };
  handle.setPointerCapture(start.pointerId);
  handle.addEventListener('pointermove', follow);
  handle.addEventListener('pointerup', up);
  handle.addEventListener('pointercancel', cancel);
  addEventListener('keydown', key, true);
};
