import { createSignal } from 'solid-js';
import type { RowKey } from './row-key.ts';

/** What a locked line says in its place. */
export interface LockedSaid {
  text: string;
  /** Something was typed there and waits: it is said until it is answered, wherever the cursor goes. */
  waits: boolean;
  label: string;
  unlock: () => void;
}

/** What locked lines say of an entry that was begun in them, by row. */
export const createLocked = () => {
  const [said, setSaid] = createSignal<ReadonlyMap<RowKey, LockedSaid>>(new Map());
  const change = (row: RowKey, one: LockedSaid | undefined) => {
    const next = new Map(said());
    if (one) next.set(row, one);
    else next.delete(row);
    setSaid(next);
  };
  return {
    of: (row: RowKey) => said().get(row),
    say: (row: RowKey, one: LockedSaid) => change(row, one),
    leave: (row: RowKey) => said().has(row) && change(row, undefined),
  };
};
