import { createEffect, createResource, lazy, Match, Show, Suspense, Switch } from 'solid-js';
import { Home } from '../home/home.tsx';
import { createPlace, type Place } from '../kit/router.ts';
import { loadShop } from '../state/load-shop.ts';
import { EditionLine } from './edition-line.tsx';

const SheetPage = lazy(() =>
  import('../sheet/sheet-page.tsx').then((module) => ({ default: module.SheetPage })),
);

const OpenPage = lazy(() =>
  import('../handing-on/open-page.tsx').then((module) => ({ default: module.OpenPage })),
);

const WithheldNote = lazy(() => import('./withheld-note.tsx'));

const JoinPage = lazy(() => import('../joined/join-page.tsx'));

const BookPage = lazy(() => import('../book/book-page.tsx').then((module) => ({ default: module.BookPage })));

/** What is being fetched, where the page behind an address takes a moment. */
const OPENING: { [view in Place['view']]?: string } = {
  sheet: 'Opening the sheet …',
  book: 'Opening the cell book …',
};

export const App = () => {
  const place = createPlace();
  const [shop] = createResource(loadShop);
  /** Read without waiting for it: the first page stands before the shop is open. */
  const soFar = () => (shop.state === 'ready' ? shop() : undefined);
  const failure = () => (shop.error ? `The shop could not be opened: ${String(shop.error)}` : undefined);
  createEffect((before: string | undefined) => {
    const now = JSON.stringify(place());
    if (before !== undefined && before !== now) scrollTo(0, 0);
    return now;
  });
  const opening = () => OPENING[place().view] ?? 'One moment …';
  return (
    <>
      <EditionLine />
      <Show when={!isSecureContext}>
        <Suspense>
          <WithheldNote />
        </Suspense>
      </Show>
      <Suspense fallback={<p class="paper">{opening()}</p>}>
        <Switch fallback={<Home shop={soFar()} failure={failure()} />}>
          <Match when={place().view === 'sheet' && (place() as { id: string }).id} keyed>
            {(id) => (
              <Show when={shop()} fallback={<p class="paper">Opening the sheet …</p>}>
                {(opened) => <SheetPage shop={opened()} id={id} />}
              </Show>
            )}
          </Match>
          <Match when={place().view === 'open'}>
            <OpenPage code={(place() as { code?: string }).code} />
          </Match>
          <Match when={place().view === 'book'}>
            <BookPage kind={(place() as { kind?: string }).kind} />
          </Match>
          <Match when={place().view === 'join' && (place() as { key?: string; sheet?: string })} keyed>
            {({ key, sheet }) => (
              <JoinPage asked={key === undefined ? undefined : { key, ...(sheet && { sheet }) }} />
            )}
          </Match>
          <Match when={place().view === 'unknown'}>
            <main class="paper">
              <h1>There is nothing at this address</h1>
              <p>
                <a href="#/">All jobs</a>
              </p>
            </main>
          </Match>
        </Switch>
      </Suspense>
    </>
  );
};
