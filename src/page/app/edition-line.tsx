import { Show } from 'solid-js';
import { edition, takeEdition } from './editions.ts';

/** One quiet line when there is a newer edition; it comes when the user takes it. */
export const EditionLine = () => (
  <div role="status">
    <Show when={edition() !== 'present'}>
      <div class="edition-line along justify-center gap-x-3 min-h-target px-3 py-1 bg-tint lined-b-rule text-small print:hidden">
        <Show
          when={edition() === 'waiting'}
          fallback={
            <span>Another tab has taken a newer edition. Load this page again when it suits you.</span>
          }
        >
          <span>A newer edition of Fitwright is here. Finish the line you are typing, then take it.</span>
          <button type="button" onClick={takeEdition}>
            Take it now
          </button>
        </Show>
      </div>
    </Show>
  </div>
);
