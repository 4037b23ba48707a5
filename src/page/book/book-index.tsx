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
      <header class="head">
        <h1>Cell book</h1>
        <nav>
          <a href="#/">All jobs</a>
        </nav>
      </header>
      <search class="find">
        <div class="field">
          <label for="book-words">Words</label>
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
              <h2>{group}</h2>
              <ul>
                <For each={own}>
                  {(kind) => (
                    <li>
                      <a href={addressInBook(kind.key)}>{kind.title}</a>
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
