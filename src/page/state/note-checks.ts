import { createEffect, on, onCleanup } from 'solid-js';
import type { CheckCounts } from '../../document/storage/row.ts';
import type { Shop } from '../../document/storage/shop.ts';
import { leading } from '../marks/check-words.ts';
import type { Sheet } from './sheet.ts';

const QUIET = 2000;

/** Tells the shop's list how the checks stand, once the sheet has been quiet for a while. */
export const noteChecks = (sheet: Sheet, shop: Shop, id: string): void => {
  let timer: ReturnType<typeof setTimeout> | undefined;
  createEffect(
    on(
      () => sheet.state.rev,
      (rev) => {
        clearTimeout(timer);
        if (rev === 0) return;
        timer = setTimeout(() => {
          const counts: CheckCounts = {};
          for (const cell of sheet.state.order) {
            for (const output of Object.values(sheet.line(cell)?.result?.outputs ?? {})) {
              const { state } = leading(output.check);
              counts[state] = (counts[state] ?? 0) + 1;
            }
          }
          void shop.noteChecks(id, counts);
        }, QUIET);
      },
    ),
  );
  onCleanup(() => clearTimeout(timer));
};
