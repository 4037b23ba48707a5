import { createEffect, createResource, lazy, Match, Show, Suspense, Switch } from 'solid-js';
import { openShop } from '../document/storage/open-shop.ts';
import { Home } from './home/home.tsx';
import { createPlace } from './router.ts';

const SheetPage = lazy(() =>
  import('./sheet/sheet-page.tsx').then((module) => ({ default: module.SheetPage })),
);

export const App = () => {
  const place = createPlace();
  const [shop] = createResource(() => openShop());
  createEffect((before: string | undefined) => {
    const now = JSON.stringify(place());
    if (before !== undefined && before !== now) scrollTo(0, 0);
    return now;
  });
  return (
    <Show when={shop()} fallback={<p class="paper">Opening the shop …</p>}>
      {(opened) => (
        <Suspense fallback={<p class="paper">Opening the sheet …</p>}>
          <Switch fallback={<Home shop={opened()} />}>
            <Match when={place().view === 'sheet' && (place() as { id: string }).id} keyed>
              {(id) => <SheetPage shop={opened()} id={id} />}
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
      )}
    </Show>
  );
};
