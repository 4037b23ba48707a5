import { createMemo, createSignal } from 'solid-js';
import type { Differences } from '../../document/differences.ts';
import type { Taken } from '../../document/sharing/take-differences.ts';
import type { Ticks } from './differences-list.tsx';

const keyOf = (what: 'cell' | 'setting' | 'order', which: string): string => `${what} ${which}`;

/** What of a sheet that came in is taken over: at first all of it. */
export const createChosen = (all: () => Differences) => {
  const [left, setLeft] = createSignal<ReadonlySet<string>>(new Set());
  const isTaken = (what: 'cell' | 'setting' | 'order', which: string) => !left().has(keyOf(what, which));
  const ticks: Ticks = {
    cell: (id) => isTaken('cell', id),
    setting: (field) => isTaken('setting', field),
    order: () => isTaken('order', 'order'),
    turn: (what, which) => {
      const next = new Set(left());
      if (!next.delete(keyOf(what, which))) next.add(keyOf(what, which));
      setLeft(next);
    },
  };
  const taken = createMemo((): Taken => {
    const { cells, sheet, moved } = all();
    return {
      cells: new Set(cells.flatMap(({ id }) => (ticks.cell(id) ? [id] : []))),
      sheet: new Set(sheet.flatMap(({ field }) => (ticks.setting(field) ? [field] : []))),
      order: moved && ticks.order(),
    };
  });
  const count = () => taken().cells.size + taken().sheet.size + (taken().order ? 1 : 0);
  const of = () => all().cells.length + all().sheet.length + (all().moved ? 1 : 0);
  /** Undefined where nothing is left out. */
  const some = (): Taken | undefined => (count() < of() ? taken() : undefined);
  return { ticks, some, count };
};
