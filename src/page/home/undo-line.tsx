import { Show } from 'solid-js';
import type { Notices } from '../state/notices.ts';

/** What was just done to a job of the list, read out, and the way to take it back. */
export const UndoLine = (props: { notices: Notices }) => (
  <div role="status" aria-live="polite">
    <Show when={props.notices.notice()} keyed>
      {(notice) => (
        <div class="undo-line notice w-max">
          <span>{notice.text}</span>
          <Show when={notice.action}>
            {(action) => (
              <button
                type="button"
                class="notice-button"
                onClick={() => {
                  props.notices.close();
                  action().run();
                }}
              >
                {action().label}
              </button>
            )}
          </Show>
          <button type="button" class="notice-button" onClick={() => props.notices.close()}>
            Close
          </button>
        </div>
      )}
    </Show>
  </div>
);
