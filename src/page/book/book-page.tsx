import { Match, Show, Switch } from 'solid-js';
import { useWholeLibrary } from '../state/library.ts';
import { BookIndex } from './book-index.tsx';
import { KindPage } from './kind-page.tsx';

/** The cell book: every cell of the library laid open, found by word and by quantity. */
export default function BookPage(props: { kind?: string | undefined }) {
  const library = useWholeLibrary();
  return (
    <main class="paper">
      <div class="frame book stacked gap-4 p-4 phone:(px-2 py-3)">
        <Show when={library()} fallback={<p>Fetching the library …</p>}>
          {(loaded) => (
            <Switch fallback={<BookIndex library={loaded()} />}>
              <Match when={props.kind !== undefined && props.kind} keyed>
                {(key) => <KindPage library={loaded()} kindKey={key} />}
              </Match>
            </Switch>
          )}
        </Show>
      </div>
    </main>
  );
}
