import { createEffect, on, onCleanup } from 'solid-js';
import type { CheckCounts } from '../../document/storage/row.ts';
import type { Shop } from '../../document/storage/shop.ts';
import { leading } from '../kit/check-words.ts';
import type { Sheet } from './sheet.ts';

const QUIET = 2000;

/** Tells the shop's list how the checks stand, once the sheet has been quiet for a while. */
export const noteChecks = (sheet: Sheet, shop: Shop, id: string): void => {
  let timer: ReturnType<typeof setTimeout> | undefined;
  const note = () => {
    timer = undefined;
    const counts: CheckCounts = {};
    for (const { result } of sheet.lines()) {
      for (const output of Object.values(result?.outputs ?? {})) {
        const { state } = leading(output.check);
        counts[state] = (counts[state] ?? 0) + 1;
      }
    }
    const { state, words } = sheet.standing();
    void shop.noteChecks(id, counts, { state, words });
  };
  createEffect(
    on(
      () => sheet.state.rev,
      (rev) => {
        clearTimeout(timer);
        if (rev > 0) timer = setTimeout(note, QUIET);
      },
    ),
  );
  // Left before it was quiet: the list would tell of the sheet as it was.
  onCleanup(() => {
    if (timer === undefined) return;
    clearTimeout(timer);
    note();
  });
};
