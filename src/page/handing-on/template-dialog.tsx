import { createResource, createSignal, For, Show } from 'solid-js';
import { roomIn } from '../../document/room.ts';
import type { News } from '../../document/sharing/template-news.ts';
import { Dialog } from '../kit/dialog.tsx';
import { say } from '../kit/words.ts';
import { useSheet } from '../state/context.ts';
import { useTools } from '../state/tools.ts';
import { cellTitle, FieldChange } from './differences-list.tsx';
import { originOfJob } from './origin.ts';
import { Said } from './said.tsx';

const WHAT = { added: 'new line', gone: 'taken out', changed: '' } as const;

/** The template the job came from: what it says otherwise now, to take or leave line by line, and where the job departs. */
export default function TemplateDialog(props: { onClose: () => void }) {
  const { sheet, notices } = useSheet();
  const tools = useTools();
  const [origin] = createResource(() => originOfJob(tools.shop, sheet.document.toFile()));
  const [refused, setRefused] = createSignal('');
  /** Lines that are left although they are ticked at first, or the other way round. Of a template as nobody here knew it none is. */
  const [turned, setTurned] = createSignal<ReadonlySet<string>>(new Set());
  // What the job has changed itself is not overwritten unless somebody says so.
  const isTicked = (news: News) =>
    (origin()?.base === undefined || news.fields.some(({ departs }) => departs)) === turned().has(news.id);
  const turn = (id: string) => {
    const next = new Set(turned());
    if (!next.delete(id)) next.add(id);
    setTurned(next);
  };
  const settle = async (taken: News[]) => {
    const found = origin();
    if (!found) return;
    const [{ takeNews }, { keepTemplate }] = await Promise.all([
      import('../../document/sharing/template-news.ts'),
      import('../../document/sharing/template-of.ts'),
    ]);
    const { template, own, fingerprint } = found;
    await keepTemplate(tools.shop, template).catch(() => undefined);
    const job = takeNews(sheet.document.toFile(), own, taken);
    const full = roomIn(job);
    if (full) {
      setRefused(full.message);
      return;
    }
    const from = { title: template.title.title, fingerprint };
    sheet.document.become({ ...job, from }, 'what the template changed');
    notices.say(
      taken.length > 0
        ? `Taken over from the template: ${taken.length} ${taken.length === 1 ? 'line' : 'lines'}.`
        : 'Left as it was. The job now goes by the template as it stands.',
      { label: 'Undo', run: () => sheet.document.undo() },
    );
    props.onClose();
  };
  const ticked = () => (origin()?.news ?? []).filter(isTicked);
  return (
    <Dialog title="The template of this job" onClose={props.onClose}>
      <Show
        when={origin()}
        fallback={
          <p>
            {origin.loading
              ? 'Comparing …'
              : sheet.document.from()
                ? `This job came from the template “${sheet.document.from()?.title}”, which is not here any more.`
                : 'This job came from no template.'}
          </p>
        }
      >
        {(found) => (
          <>
            <p>
              From <strong>{say(found().template.title.title)}</strong>,{' '}
              {found().current ? 'which has not changed since.' : 'which has changed since.'}
            </p>
            <Show when={!found().current}>
              <Show when={!found().base && found().news.length > 0}>
                <p class="caption">
                  How it was when the job began is not known here: these are all the places where the two
                  differ now, and none is taken unless you tick it.
                </p>
              </Show>
              <Show when={found().unclear.length > 0}>
                <p class="caption">
                  Not offered, for their numbers have no unit and the template is in other lengths:{' '}
                  {found().unclear.map(cellTitle).join(', ')}.
                </p>
              </Show>
              <ul>
                <For
                  each={found().news}
                  fallback={<li class="py-1 lined-t-rule">Nothing that concerns this job.</li>}
                >
                  {(news) => (
                    <li class="py-1 lined-t-rule">
                      <label class="along min-h-target">
                        <input
                          class="tickable"
                          type="checkbox"
                          checked={isTicked(news)}
                          onChange={() => turn(news.id)}
                        />
                        <strong>
                          <Said text={cellTitle(news.cell)} />
                        </strong>{' '}
                        <span class="caption">{WHAT[news.what]}</span>
                      </label>
                      <ul class="pl-5">
                        <For each={news.fields}>
                          {(field) => (
                            <>
                              <FieldChange
                                kind={news.cell.kind}
                                field={field.field}
                                before={field.now}
                                after={field.after}
                              />
                              <Show when={field.departs}>
                                <li class="caption">The job has gone its own way here.</li>
                              </Show>
                            </>
                          )}
                        </For>
                      </ul>
                    </li>
                  )}
                </For>
              </ul>
              <p role="alert" class="problem empty:hidden">
                {refused()}
              </p>
              <div class="buttons">
                <button
                  type="button"
                  class="main"
                  disabled={ticked().length === 0}
                  onClick={() => void settle(ticked())}
                >
                  Take the {ticked().length} ticked, leave the rest
                </button>
                <button type="button" onClick={() => void settle([])}>
                  Leave it all
                </button>
              </div>
            </Show>
            <Show when={found().departures.length > 0}>
              <section>
                <h3 class="text-figure">Where the job departs from what the author locked</h3>
                <ul>
                  <For each={found().departures}>
                    {(news) => (
                      <li class="py-1 lined-t-rule">
                        <strong>
                          <Said text={cellTitle(news.cell)} />
                        </strong>
                        <ul class="pl-5">
                          <For each={news.fields}>
                            {(field) => (
                              <FieldChange
                                kind={news.cell.kind}
                                field={field.field}
                                before={field.after}
                                after={field.now}
                              />
                            )}
                          </For>
                        </ul>
                      </li>
                    )}
                  </For>
                </ul>
              </section>
            </Show>
          </>
        )}
      </Show>
    </Dialog>
  );
}
