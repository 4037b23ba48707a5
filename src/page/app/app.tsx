import { createEffect, createResource, type JSX, Match, Show, Suspense, Switch } from 'solid-js';
import { Home } from '../home/home.tsx';
import { late } from '../kit/late.tsx';
import { createPlace, type Place } from '../kit/router.ts';
import { loadShop } from '../state/load-shop.ts';
import { EditionLine } from './edition-line.tsx';

/** In place of a whole page. */
const asPage = (said: JSX.Element) => (
  <main class="paper">
    {said}
    <p>
      <a href="#/">All jobs</a>
    </p>
  </main>
);

const SheetPage = late('The sheet', () => import('../sheet/sheet-page.tsx'), asPage);

const OpenPage = late('The page for sheets from others', () => import('../handing-on/open-page.tsx'), asPage);

const WithheldNote = late('A note on this connection', () => import('./withheld-note.tsx'));

const JoinPage = late(
  'The page that joins the shop’s server',
  () => import('../joined/join-page.tsx'),
  asPage,
);

const BookPage = late('The cell book', () => import('../book/book-page.tsx'), asPage);

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
