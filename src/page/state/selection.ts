import { createSelector, createSignal } from 'solid-js';

/** The lines between two of them, both included, in the order of the sheet. */
export const linesBetween = (order: readonly string[], a: string, b: string): string[] => {
  const [i, j] = [order.indexOf(a), order.indexOf(b)];
  return i < 0 || j < 0 ? [] : order.slice(Math.min(i, j), Math.max(i, j) + 1);
};

/** Lines chosen together, to be copied, moved or deleted as one. @param order ids of all lines as they stand. */
export const createSelection = (order: () => readonly string[]) => {
  const [chosen, setChosen] = createSignal<ReadonlySet<string>>(new Set());
  const [ticking, setTicking] = createSignal(false);
  let anchor: string | undefined;
  const has = createSelector(chosen, (id: string, ids) => ids.has(id));
  const inOrder = () => order().filter((id) => chosen().has(id));
  return {
    has,
    /** Chosen lines in the order of the sheet; those deleted meanwhile are left out. */
    ids: inOrder,
    any: () => inOrder().length > 0,
    /** From the line where choosing began (`from`, where it begins now) to another. */
    extend: (from: string, to: string) => {
      if (anchor === undefined || !chosen().has(anchor)) anchor = from;
      setChosen(new Set(linesBetween(order(), anchor, to)));
    },
    toggle: (id: string) => {
      const next = new Set(chosen());
      if (next.delete(id)) anchor = undefined;
      else {
        next.add(id);
        anchor = id;
      }
      setChosen(next);
    },
    all: () => setChosen(new Set(order())),
    set: (ids: readonly string[]) => {
      anchor = ids[0];
      setChosen(new Set(ids));
    },
    clear: () => {
      anchor = undefined;
      setTicking(false);
      setChosen(new Set<string>());
    },
    /** Every line shows a box to tick: the way to choose lines by finger. */
    ticking,
    setTicking,
  };
};

export type Selection = ReturnType<typeof createSelection>;
