import { createMemo, createSignal, For, onMount, Show } from 'solid-js';
import { grouped } from '../../../cells/groups.ts';
import type { Library } from '../../engine/rows/library.ts';
import { addressInBook } from '../kit/router.ts';
import { SelectField } from '../kit/select-field.tsx';
import { ANYTHING, type BookQuery, findInBook, quantitiesOf } from './search.ts';

/** Kept while the page is open, so that the way back from a cell leads to what was found. */
const [query, setQuery] = createSignal<BookQuery>(ANYTHING);

export const BookIndex = (props: { library: Library }) => {
  const kinds = () => [...props.library.kinds.values()];
  const found = createMemo(() => findInBook(kinds(), query()));
  const asked = () => Object.values(query()).some((text) => text.trim() !== '');
  const quantities = (side: 'inputs' | 'outputs') => [
    { value: '', label: 'anything' },
    ...quantitiesOf(kinds(), side),
  ];
  onMount(() => {
    document.title = 'Cell book · Fitwright';
  });
  return (
    <>
      <header class="flex flex-wrap items-baseline justify-between gap-x-4 gap-y-2 lined-b-wide">
        <h1 class="text-title">Cell book</h1>
        <nav class="flex gap-4">
          <a class="tall-link" href="#/">
            All jobs
          </a>
        </nav>
      </header>
      <search class="grid grid-cols-[minmax(12rem,2fr)_repeat(2,minmax(10rem,1fr))_auto] gap-x-3 gap-y-2 items-end phone:grid-cols-[minmax(0,1fr)]">
        <div class="field">
          <label for="book-words" class="caption">
            Words
          </label>
          <input
            id="book-words"
            type="search"
            autocomplete="off"
            value={query().words}
            onInput={(event) => setQuery({ ...query(), words: event.currentTarget.value })}
          />
        </div>
        <SelectField
          label="What goes in"
          value={query().goesIn}
          options={quantities('inputs')}
          onCommit={(goesIn) => setQuery({ ...query(), goesIn })}
        />
        <SelectField
          label="What comes out"
          value={query().comesOut}
          options={quantities('outputs')}
          onCommit={(comesOut) => setQuery({ ...query(), comesOut })}
        />
        <button type="button" disabled={!asked()} onClick={() => setQuery(ANYTHING)}>
          All cells
        </button>
      </search>
      <p role="status" class="caption">
        {found().length} of {kinds().length} cells
      </p>
      <Show
        when={found().length > 0}
        fallback={<p>No cell holds all of that. Take a word or a quantity out.</p>}
      >
        <For each={grouped(found())}>
          {({ group, kinds: own }) => (
            <section class="group">
              <h2 class="book-head first-letter:uppercase">{group}</h2>
              <ul>
                <For each={own}>
                  {(kind) => (
                    <li class="grid grid-cols-[minmax(14rem,1fr)_2fr] gap-x-3 gap-y-1 items-center py-1 lined-b-rule phone:grid-cols-[minmax(0,1fr)]">
                      <a class="flex items-center min-h-target font-bold" href={addressInBook(kind.key)}>
                        {kind.title}
                      </a>
                      <span>{kind.purpose}</span>
                    </li>
                  )}
                </For>
              </ul>
            </section>
          )}
        </For>
      </Show>
    </>
  );
};
