import { onCleanup, Show } from 'solid-js';
import { useSheet } from '../state/context.ts';
import { focusWork } from '../state/focus-work.ts';

/** Brings out what is being worked at, where the message has come to lie on it. */
const uncover = (element: HTMLElement): void => {
  const work = document.activeElement?.closest('[data-row], .field, section');
  const own = element.getBoundingClientRect();
  const { top, bottom, left, right } = work?.getBoundingClientRect() ?? own;
  if (!work || top > own.bottom || left > own.right || right < own.left) return;
  // Of what is taller than the window its beginning stays in sight.
  const over = Math.min(bottom - own.top, top - window.innerHeight / 4);
  if (over > 0) scrollBy({ top: over });
};

/** Tells the page how much of its lower end the message takes, so that what is there can be reached above it. */
const makeRoom = (element: HTMLElement): void => {
  const { style } = document.documentElement;
  const observer = new ResizeObserver(() => {
    style.setProperty('--notice', `${element.offsetHeight}px`);
    uncover(element);
  });
  observer.observe(element);
  onCleanup(() => {
    observer.disconnect();
    style.removeProperty('--notice');
  });
};

/** The last message, read out as it comes. */
export const NoticeBar = () => {
  const context = useSheet();
  const { notices } = context;
  const done = (action?: () => void) => {
    notices.close();
    action?.();
    // What was pressed has gone, and the focus with it.
    queueMicrotask(() => focusWork(context));
  };
  return (
    <div class="notices" role="status" aria-live="polite">
      <Show when={notices.notice()} keyed>
        {(notice) => (
          // As wide as a phone it would lie on what stands at the foot: that moves up, and the page ends below it.
          <div
            class="notice flex-nowrap phone:(bottom-0 w-full max-w-none) [.selection-bar~.notices_&]:(bottom-[calc(var(--s6)+var(--s5))] phone:bottom-0) [.bench~.notices_&]:(top-0 bottom-auto)"
            ref={makeRoom}
            onPointerEnter={notices.stay}
            onPointerLeave={notices.leaveLater}
            onFocusIn={notices.stay}
            onFocusOut={notices.leaveLater}
          >
            <span class="phone:flex-1">{notice.text}</span>
            <Show when={notice.action}>
              {(action) => (
                <button type="button" class="notice-button flex-none" onClick={() => done(action().run)}>
                  {action().label}
                </button>
              )}
            </Show>
            <button
              type="button"
              class="notice-button flex-none"
              aria-label="Close the message"
              onClick={() => done()}
            >
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
