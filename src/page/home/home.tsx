import { createEffect, createResource, createSignal, For, onMount, Show, Suspense } from 'solid-js';
import type { Shop } from '../../document/storage/shop.ts';
import { MissingSheets } from '../handing-on/missing-sheets.tsx';
import { type Offer, offers } from '../handing-on/templates.ts';
import { idsShared, keyOfShop } from '../joined/keys.ts';
import { whenIdle } from '../kit/idle.ts';
import { late } from '../kit/late.tsx';
import { lateDialog } from '../kit/late-dialog.tsx';
import { createShop } from '../state/shop.ts';
import { HomeHead } from './home-head.tsx';
import { JobList } from './job-list.tsx';
import { LengthsQuestion } from './lengths-question.tsx';
import { OfferBox } from './offer-box.tsx';
import { OfferList } from './offer-list.tsx';
import { reserve } from './reserved.ts';
import { lookAt, openCopy, startEmpty, startFromTemplate } from './start.ts';

const SharedSheets = late('What the shop’s server has', () => import('../joined/shared-sheets.tsx'));
const OwnList = late('What the shop keeps', () => import('./own-list.tsx'));
const WholeShop = late('The whole shop', () => import('./whole-shop.tsx'));
const PreferencesDialog = lateDialog('The preferences', () => import('../kit/preferences-dialog.tsx'));

let broughtUp = false;

/** The shop: what to begin with, and the jobs that are there. */
export const Home = (props: { shop: Shop | undefined; failure: string | undefined }) => {
  const [trouble, setTrouble] = createSignal<string>();
  const told = () => trouble() ?? props.failure ?? props.shop?.state.message;
  const [closed, setClosed] = createSignal<string>();
  /** The shop of this browser, where it has joined the shop's server. */
  const [joined, { refetch }] = createResource(
    () => props.shop,
    async (shop) =>
      (await keyOfShop(shop)) !== undefined || (await idsShared(shop)).length > 0 ? shop : undefined,
    { initialValue: undefined },
  );
  /** Whether it keeps gauges or presses of its own. */
  const [equipped] = createResource(
    () => props.shop,
    async (shop) => (await shop.setting('equipment')) !== undefined,
    { initialValue: false },
  );
  /** Once a page: from then on whoever has a sheet open brings it up. */
  createEffect(() => {
    const { shop } = props;
    if (!shop || broughtUp) return;
    broughtUp = true;
    const begin = async () => {
      const ids = await idsShared(shop);
      if (ids.length > 0) await (await import('../joined/bring-up.ts')).bringUp(shop, ids);
    };
    // Without the script or the database it is tried at the next opening.
    whenIdle(() => void begin().catch(() => undefined));
  });
  const [preferring, setPreferring] = createSignal(false);
  onMount(() => {
    document.title = 'Fitwright';
  });
  const failed = (error: unknown) => setTrouble(error instanceof Error ? error.message : String(error));
  const take = async (list: FileList | null) => {
    const [first] = list ?? [];
    if (!first) return;
    setTrouble(await lookAt(first).catch((error: unknown) => String(error)));
  };
  const begin = (offer: Offer) =>
    void offer
      .file()
      .then(offer.template ? startFromTemplate : openCopy)
      .catch(failed);
  return (
    <main
      class="paper"
      onDragOver={(event) => event.preventDefault()}
      onDrop={(event) => {
        event.preventDefault();
        void take(event.dataTransfer?.files ?? null);
      }}
    >
      <div class="frame home stacked gap-5 p-4 phone:(gap-4 p-3 pb-4)">
        <HomeHead
          onFile={(list) => void take(list)}
          onEmpty={(length) => void startEmpty(length).catch(failed)}
          onPreferences={() => setPreferring(true)}
        />
        <Show when={told() !== closed() && told()}>
          {(text) => (
            <div class="trouble" role="alert">
              <p>{text()}</p>
              <button type="button" onClick={() => setClosed(text())}>
                Close
              </button>
            </div>
          )}
        </Show>
        <Show when={props.shop} keyed>
          {(shop) => <MissingSheets shop={shop} />}
        </Show>
        <div
          class="jobs-room [&:empty:not(.kept)]:hidden"
          ref={(element) => reserve(element, () => props.shop !== undefined)}
        >
          <Show when={props.shop} keyed>
            {(shop) => <JobList shop={createShop(shop)} />}
          </Show>
        </div>
        <Show when={joined.latest} keyed>
          {(shop) => (
            <Suspense>
              <SharedSheets shop={shop} onLeft={() => void refetch()} />
            </Suspense>
          )}
        </Show>
        <section>
          <h2 class="heading mb-3">A filled job to look at</h2>
          <For each={offers.filter(({ template }) => !template)}>
            {(offer) => <OfferBox offer={offer} word="Open a copy to play with" onTake={begin} filled />}
          </For>
        </section>
        <section>
          <h2 class="heading mb-3">What is worn?</h2>
          <LengthsQuestion />
          <OfferList onTake={begin} />
        </section>
        <Show when={props.shop} keyed>
          {(shop) => (
            <>
              <Show when={equipped.latest || joined.latest}>
                <Suspense>
                  <OwnList shop={shop} />
                </Suspense>
              </Show>
              <Suspense>
                <WholeShop shop={shop} />
              </Suspense>
            </>
          )}
        </Show>
      </div>
      <Suspense>
        <Show when={preferring()}>
          <PreferencesDialog onClose={() => setPreferring(false)} />
        </Show>
      </Suspense>
    </main>
  );
};
