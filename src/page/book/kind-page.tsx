import { createMemo, For, onCleanup, onMount, Show } from 'solid-js';
import { functionsUsed } from '../../../cells/functions-used.ts';
import { cautionTexts } from '../../../cells/record/caution.ts';
import type { CellKind } from '../../../cells/record/cell.ts';
import type { Library } from '../../engine/rows/library.ts';
import { createEngineClient } from '../../engine/worker/client.ts';
import type { EngineClient } from '../../engine/worker/client-types.ts';
import { addressOfBook } from '../kit/router.ts';
import { ExamplePart } from './example-part.tsx';
import { InputsPart } from './inputs-part.tsx';
import { OutputsPart } from './outputs-part.tsx';
import { TextList } from './text-list.tsx';
import { ValidityPart } from './validity-part.tsx';

/** One cell of the book. */
export const KindPage = (props: { library: Library; kindKey: string }) => {
  const kind = createMemo(() => props.library.kinds.get(props.kindKey));
  onMount(() => {
    document.title = `${kind()?.title ?? 'Cell book'} · Fitwright`;
  });
  return (
    <>
      <header class="flex flex-wrap items-baseline justify-between gap-x-4 gap-y-2 lined-b-wide">
        <h1 class="text-title">{kind()?.title ?? 'The book has no such cell'}</h1>
        <nav class="flex gap-4">
          <a class="tall-link" href={addressOfBook()}>
            Cell book
          </a>
          <a class="tall-link" href="#/">
            All jobs
          </a>
        </nav>
      </header>
      <Show when={kind()}>{(found) => <Laid library={props.library} kind={found()} />}</Show>
    </>
  );
};

const Laid = (props: { library: Library; kind: CellKind }) => {
  let engine: EngineClient | undefined;
  /** Started for the first example asked for, ended with the page. */
  const workOut = (at: number) => {
    engine ??= createEngineClient();
    return engine.example(props.kind.key, props.kind.examples[at]!);
  };
  onCleanup(() => engine?.close());
  const functions = () => functionsUsed(props.kind, props.library.functions);
  const sources = () => [
    ...props.kind.sources,
    ...props.kind.inputs.flatMap((input) => (input.source ? [`${input.label}: ${input.source}`] : [])),
  ];
  return (
    <>
      <p class="max-w-60rem text-figure">{props.kind.purpose}</p>
      <p class="caption">
        {props.kind.group} · cell <code>{props.kind.key}</code>, edition {props.kind.edition}
      </p>
      <Show when={props.kind.cautions.length > 0}>
        <section class="caution">
          <h2 class="text-head text-doubt">Caution</h2>
          <TextList texts={cautionTexts(props.kind)} />
        </section>
      </Show>
      <InputsPart library={props.library} kind={props.kind} />
      <OutputsPart kind={props.kind} />
      <Show when={functions().length > 0}>
        <section>
          <h2 class="book-head">Look-ups the formulas use</h2>
          <dl>
            <For each={functions()}>
              {(one) => (
                <>
                  <dt class="font-bold">
                    <code>{one.name.toLowerCase()}</code>
                  </dt>
                  <dd class="mb-2">
                    {one.purpose} <span class="caption">{one.source}</span>
                  </dd>
                </>
              )}
            </For>
          </dl>
        </section>
      </Show>
      <ValidityPart kind={props.kind} />
      <section>
        <h2 class="book-head">Taken for granted</h2>
        <TextList texts={props.kind.assumptions} />
      </section>
      <section>
        <h2 class="book-head">Sources</h2>
        <TextList texts={sources()} />
      </section>
      <section>
        <h2 class="book-head">Worked examples</h2>
        <For each={props.kind.examples}>
          {(example, at) => <ExamplePart kind={props.kind} example={example} workOut={() => workOut(at())} />}
        </For>
      </section>
    </>
  );
};
