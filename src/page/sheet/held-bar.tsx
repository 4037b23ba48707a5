import { Show } from 'solid-js';
import { useSheet } from '../state/context.ts';
import { useTools } from '../state/tools.ts';

const when = new Intl.DateTimeFormat(undefined, { dateStyle: 'medium', timeStyle: 'short' });

/** Since when figures are held, how many lines differ from them by now, and the way to hold anew or drop them. */
export default function HeldBar() {
  const { sheet, goTo } = useSheet();
  const { held } = useTools();
  const changed = () => held.changed();
  return (
    <Show when={held.held()}>
      {(figures) => (
        <section class="strip gap-x-2 gap-y-1 py-1 lined-b" aria-label="Held figures">
          <p class="flex-[1_1_16rem]">
            Compared with the figures held {when.format(figures().at)}:{' '}
            {changed().length === 0
              ? 'no line differs.'
              : `${changed().length} ${changed().length === 1 ? 'line differs' : 'lines differ'}.`}
          </p>
          <Show when={changed()[0]}>
            {(first) => (
              <button type="button" onClick={() => goTo(first())}>
                Go to the first
              </button>
            )}
          </Show>
          <button type="button" disabled={sheet.state.rev === 0} onClick={() => held.hold()}>
            Hold these instead
          </button>
          <button type="button" onClick={() => held.drop()}>
            Drop
          </button>
        </section>
      )}
    </Show>
  );
}
