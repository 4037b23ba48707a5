import { createEffect, createSignal, onCleanup } from 'solid-js';
import { sameEntries } from '../kit/same-entries.ts';
import type { Cursor } from './cursor.ts';
import { cellOfRow } from './row-key.ts';
import type { Sheet } from './sheet.ts';

type Sides = ReadonlyMap<string, 'up' | 'down'>;

/** Which lines lie upstream and downstream of the one under the cursor, for the margin; asked of the engine, a step behind. */
export const createChain = (sheet: Sheet, cursor: Cursor) => {
  // An edit seldom changes what depends on what: then no line is asked again.
  const [sides, setSides] = createSignal<Sides>(new Map(), { equals: sameEntries });
  let asked = 0;
  createEffect(() => {
    const place = cursor.place();
    void sheet.state.rev;
    const ask = ++asked;
    if (!place) return;
    const cell = cellOfRow(place.row);
    // Behind the figures that this same change draws.
    setTimeout(() => {
      if (ask !== asked) return;
      void sheet.engine.chain(cell).then(
        ({ upstream, downstream }) => {
          if (ask !== asked) return;
          setSides(
            new Map([
              ...upstream.map((id) => [id, 'up'] as const),
              ...downstream.map((id) => [id, 'down'] as const),
            ]),
          );
        },
        // The engine may be starting anew: the next results ask again.
        () => undefined,
      );
    }, 0);
  });
  onCleanup(() => {
    asked = -1;
  });
  return { sideOf: (cell: string): 'up' | 'down' | undefined => sides().get(cell) };
};

export type Chain = ReturnType<typeof createChain>;
