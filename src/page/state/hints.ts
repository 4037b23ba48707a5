import { createRoot, createSignal } from 'solid-js';
import { readKept, writeKept } from '../kit/kept.ts';

/** Hints for a newcomer, each shown until it has been done once. In the order they are of use. */
const HINTS = [
  {
    id: 'entry',
    text: 'Choose an entry and type: 2.2515 or 2 1/4 or 27/64 or = bore + 2 thou. Enter takes it.',
  },
  { id: 'unfold', text: 'Press on a line, or Enter on its name, to unfold what is behind its figure.' },
  { id: 'find', text: '“Find”, or F9, leads to any command, line or library cell by a word.' },
  { id: 'bench', text: 'On a phone by the machine, “At the machine” takes one reading at a time.' },
] as const;

export type HintId = (typeof HINTS)[number]['id'];

const KEY = 'hints-done';

const [done, setDone] = createRoot(() => {
  const kept = readKept(KEY);
  return createSignal<readonly string[]>(Array.isArray(kept) ? kept.map(String) : []);
});

/** The one hint that is due; nothing once all have been done or waved off. */
export const dueHint = () => HINTS.find(({ id }) => !done().includes(id));

/** To be called where a newcomer does what a hint tells, or waves it off. */
export const didHint = (id: HintId): void => {
  if (done().includes(id)) return;
  const next = [...done(), id];
  setDone(next);
  writeKept(KEY, next);
};

export const noMoreHints = (): void => {
  const next = HINTS.map(({ id }) => id);
  setDone(next);
  writeKept(KEY, next);
};
