import { createEffect, createSignal, on, onCleanup } from 'solid-js';
import type { Trying } from '../../engine/window/client.ts';
import type { Answers, Asked } from '../../engine/window/messages.ts';
import type { Sheet } from '../state/sheet.ts';

/** Something tried on a copy of the sheet. */
export type TriedState<T> =
  | { is: 'none' }
  | { is: 'running'; done: number; of: number; cancel: () => void; before?: T }
  | { is: 'there'; answer: T }
  | { is: 'failed'; message: string };

const numbers = new WeakMap<Sheet, number>();
let sheets = 0;

/** A sheet and its state, for whoever keeps a copy of it. */
const revOf = (sheet: Sheet): string => {
  let number = numbers.get(sheet);
  if (number === undefined) {
    number = sheets++;
    numbers.set(sheet, number);
  }
  return `${number}.${sheet.state.rev}`;
};

/** Tries something on a copy of the sheet when it is asked for, and again with every change of the sheet from then on. */
export const createTried = <K extends keyof Answers>(
  sheet: Sheet,
  asked: () => Extract<Asked, { ask: K }> | undefined,
) => {
  const [state, setState] = createSignal<TriedState<Answers[K]>>({ is: 'none' });
  let cancel = () => {};
  let isStale = false;
  const run = async (): Promise<void> => {
    const wanted = asked();
    if (!wanted) return;
    const now = state();
    if (now.is === 'running') {
      isStale = true;
      return;
    }
    let trying: Trying<Answers[K]> | undefined;
    let isCancelled = false;
    // Also before what tries it has come.
    cancel = () => {
      isStale = false;
      isCancelled = true;
      trying?.cancel();
    };
    const before = now.is === 'there' ? { before: now.answer } : {};
    const at = (done: number, of: number) => setState({ is: 'running', done, of, cancel, ...before });
    at(0, 1);
    try {
      const { tryOn } = await import('../../engine/window/client.ts');
      if (!isCancelled) trying = tryOn<K>(sheet.file(), revOf(sheet), wanted, at);
      const answer = await trying?.result;
      setState(() => (answer ? { is: 'there', answer } : { is: 'none' }));
    } catch (error) {
      setState({ is: 'failed', message: error instanceof Error ? error.message : String(error) });
    }
    if (isStale) {
      isStale = false;
      void run();
    }
  };
  // What it says is of the sheet as it stands.
  createEffect(
    on(
      () => [sheet.state.rev, JSON.stringify(asked())],
      () => {
        if (state().is !== 'none') void run();
      },
      { defer: true },
    ),
  );
  onCleanup(() => {
    if (state().is === 'running') cancel();
  });
  return { state, run };
};
