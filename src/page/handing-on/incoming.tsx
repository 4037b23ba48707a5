import { createResource, createSignal, For, Show } from 'solid-js';
import { cautionTexts } from '../../../cells/record/caution.ts';
import { shortFingerprint } from '../../../shared/sheet/fingerprint.ts';
import { heldHere } from '../../document/sharing/here.ts';
import type { Shop } from '../../document/storage/shop.ts';
import { addressOfSheet } from '../kit/router.ts';
import { useLibrary } from '../state/library.ts';
import { inLengths } from '../state/own-units.ts';
import type { Arrival } from './arrivals.ts';
import { Contents } from './contents.tsx';
import { HeldHere } from './held-here.tsx';
import { Said } from './said.tsx';
import { beginJob, takeAsNew } from './take-over.ts';

/** What is in a sheet that came in, before anything of it is taken over. */
export const Incoming = (props: { arrival: Arrival; shop: Shop; onLeave: () => void }) => {
  const file = () => props.arrival.file;
  const title = () => file().title;
  const library = useLibrary();
  const [held] = createResource(
    file,
    (came) => heldHere(props.shop, came, async (one, length) => (await inLengths(one, length)).file),
    { initialValue: [] },
  );
  const [trouble, setTrouble] = createSignal<string>();
  const [print] = createResource(file, (came) => props.shop.printer.print(came));
  const kinds = () => [...new Set(file().cells.flatMap(({ kind }) => kind ?? []))];
  const cautions = () => [
    ...new Set(kinds().flatMap((kind) => cautionTexts(library()?.kinds.get(kind) ?? { cautions: [] }))),
  ];
  const unknown = () => (library() ? kinds().filter((kind) => !library()!.kinds.has(kind)) : []);
  const same = () => held.latest.find((one) => one.standing === 'same');
  const lines = () => file().cells.filter(({ role }) => role !== 'section' && role !== 'remark').length;
  const run = (work: Promise<unknown>) =>
    void work
      .then((said) => setTrouble(typeof said === 'string' ? said : undefined))
      .catch((error: unknown) => setTrouble(String(error)));

  return (
    <article class="incoming stacked gap-3" aria-label="The sheet that came in">
      <p class="caption">
        {file().template ? 'A template' : 'A job sheet'} from {props.arrival.source}. Nothing of it has been
        taken over yet.
      </p>
      <h2 class="heading wrap-anywhere">
        <Said text={title().title || 'without a title'} />
      </h2>
      <dl class="grid grid-cols-[repeat(auto-fill,minmax(min(16rem,100%),1fr))] gap-x-4 gap-y-2">
        <For
          each={
            [
              ['Part', title().part],
              ['Machine', title().machine],
              ['For whom', title().customer],
              ['Material', title().material],
              ['Date', title().date],
              ['Revision', title().revision],
              ['Note', title().note],
            ] as const
          }
        >
          {([label, text]) => (
            <Show when={text}>
              <div>
                <dt class="caption">{label}</dt>
                <dd class="wrap-anywhere">
                  <Said text={text} />
                </dd>
              </div>
            </Show>
          )}
        </For>
        <div>
          <dt class="caption">Who wrote it</dt>
          <dd class="wrap-anywhere">
            <Show when={title().drawnBy || title().checkedBy} fallback="The sheet does not say.">
              The sheet says:{' '}
              <Show when={title().drawnBy}>
                drawn by <Said text={title().drawnBy} />
              </Show>
              <Show when={title().checkedBy}>
                {title().drawnBy ? ', ' : ''}checked by <Said text={title().checkedBy} />
              </Show>
              . Nothing here proves it.
            </Show>
          </dd>
        </div>
        <div>
          <dt class="caption">Fingerprint</dt>
          <dd class="wrap-anywhere">
            <strong class="fingerprint text-figure tracking-[0.06em]">
              {print.latest ? shortFingerprint(print.latest) : '…'}
            </strong>{' '}
            Whoever sent it sees the same characters, all of them, if this is the same sheet. They say nothing
            of who wrote it.
          </dd>
        </div>
        <div>
          <dt class="caption">Lengths in</dt>
          <dd class="wrap-anywhere">{file().units.length === 'in' ? 'inches' : 'millimetres'}</dd>
        </div>
      </dl>
      <Show when={props.arrival.warnings.length > 0 || unknown().length > 0}>
        <section class="warnings px-3 py-2 lined-wide-doubt [&_li]:(ml-4 [list-style:square])">
          <h3 class="text-figure mb-1">Look at this first</h3>
          <ul>
            <For each={props.arrival.warnings}>
              {(warning) => (
                <li>
                  <Said text={warning} />
                </li>
              )}
            </For>
            <Show when={unknown().length > 0}>
              <li>
                This edition has no such cells: <Said text={unknown().join(', ')} />. They stay in the sheet
                and are not worked out.
              </li>
            </Show>
          </ul>
        </section>
      </Show>
      <Show when={cautions().length > 0}>
        <section>
          <h3 class="text-figure mb-1">Cautions that come with its cells</h3>
          <ul class="cautions [&>li]:(ml-4 [list-style:square])">
            <For each={cautions()}>{(caution) => <li>{caution}</li>}</For>
          </ul>
        </section>
      </Show>
      <section>
        <h3 class="text-figure mb-1">
          {lines()} {lines() === 1 ? 'line' : 'lines'}
        </h3>
        <Contents cells={file().cells} />
      </section>
      <Show when={held.latest.length > 0}>
        <HeldHere held={held.latest} file={file()} shop={props.shop} onRun={run} />
      </Show>
      <Show when={trouble()}>
        {(text) => (
          <p class="trouble" role="alert">
            {text()}
          </p>
        )}
      </Show>
      {/* At hand from the first line on, however long the sheet is. */}
      <div class="buttons sticky bottom-0 z-1 py-2 bg-paper lined-t">
        <Show
          when={same()}
          fallback={
            <button type="button" class="main" onClick={() => run(takeAsNew(props.shop, file()))}>
              {file().template ? 'Keep it among the templates' : 'Take it over as a new sheet'}
            </button>
          }
        >
          {(one) => (
            <a class="button main" href={addressOfSheet(one().id)}>
              Open the one that is here
            </a>
          )}
        </Show>
        <Show when={file().template}>
          <button type="button" onClick={() => run(beginJob(props.shop, file()))}>
            Keep it and begin a job from it
          </button>
        </Show>
        <Show when={same()}>
          <button type="button" onClick={() => run(takeAsNew(props.shop, file()))}>
            Take over a second one
          </button>
        </Show>
        <button type="button" onClick={props.onLeave}>
          Leave it
        </button>
      </div>
    </article>
  );
};
