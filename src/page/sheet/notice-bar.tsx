import { onCleanup, Show } from 'solid-js';
import { useSheet } from '../state/context.ts';
import './notice-bar.css';

/** Tells the page how much of its lower end the message takes, so that what stands there can be reached above it. */
const makeRoom = (element: HTMLElement): void => {
  const { style } = document.documentElement;
  const observer = new ResizeObserver(() => style.setProperty('--notice', `${element.offsetHeight}px`));
  observer.observe(element);
  onCleanup(() => {
    observer.disconnect();
    style.removeProperty('--notice');
  });
};

/** The last message, read out as it comes. */
export const NoticeBar = () => {
  const { notices } = useSheet();
  return (
    <div role="status" aria-live="polite">
      <Show when={notices.notice()} keyed>
        {(notice) => (
          <div class="notice" ref={makeRoom}>
            <span>{notice.text}</span>
            <Show when={notice.action}>
              {(action) => (
                <button
                  type="button"
                  onClick={() => {
                    notices.close();
                    action().run();
                  }}
                >
                  {action().label}
                </button>
              )}
            </Show>
            <button type="button" aria-label="Close the message" onClick={() => notices.close()}>
              <svg viewBox="0 0 16 16" width="14" height="14" aria-hidden="true">
                <path d="M3 3l10 10M13 3L3 13" stroke="currentColor" stroke-width="2" />
              </svg>
            </button>
          </div>
        )}
      </Show>
    </div>
  );
};
