import { createResource, createSignal, onCleanup, Show } from 'solid-js';
import { originOfJob } from '../handing-on/origin.ts';
import { whenIdle } from '../kit/idle.ts';
import { addressOfSheet, go } from '../kit/router.ts';
import { say } from '../kit/words.ts';
import { tellOnArrival } from '../state/arrival.ts';
import { useSheet } from '../state/context.ts';
import { useTools } from '../state/tools.ts';

/** One quiet line: that this is a template, or that the job's template has moved on, or that the job departs from it. */
export const TemplateLine = () => {
  const { sheet, notices } = useSheet();
  const tools = useTools();
  const [asked, setAsked] = createSignal<object>();
  whenIdle(() => setAsked({}));
  // A job that takes or leaves the news names the template's new state from then on.
  onCleanup(
    sheet.document.observe((change) => {
      if (change.settings) setAsked({});
    }),
  );
  const [origin] = createResource(asked, () => originOfJob(tools.shop, sheet.document.toFile()), {
    initialValue: undefined,
  });
  const news = () => origin.latest?.news.length ?? 0;
  const departures = () => origin.latest?.departures.length ?? 0;
  const begin = async () => {
    const { begunFrom } = await import('../handing-on/begin.ts');
    const { id, word } = await begunFrom(tools.shop, sheet.document.toFile());
    if (word) tellOnArrival(word);
    go(addressOfSheet(id));
  };
  return (
    <Show
      when={!sheet.document.template()}
      fallback={
        <div class="strip gap-x-3 gap-y-2 py-1 bg-tint lined-b">
          <span>This is a template.</span>
          <button
            type="button"
            onClick={() => void begin().catch((error: unknown) => notices.say(String(error)))}
          >
            Begin a job from it
          </button>
        </div>
      }
    >
      <Show when={news() > 0 || departures() > 0}>
        <div class="strip gap-x-3 gap-y-2 py-1 bg-tint lined-b">
          <Show when={news() > 0}>
            <span>
              The template “{say(origin.latest?.template.title.title ?? '')}” has changed since: {news()}{' '}
              {news() === 1 ? 'line' : 'lines'}.
            </span>
          </Show>
          <Show when={departures() > 0}>
            <span>
              This job departs from what its template locked in {departures()}{' '}
              {departures() === 1 ? 'line' : 'lines'}.
            </span>
          </Show>
          <button type="button" onClick={() => tools.show('template')}>
            Look at it
          </button>
        </div>
      </Show>
    </Show>
  );
};
