import { createSignal, For, lazy, onMount, Show, Suspense } from 'solid-js';
import type { Shop } from '../../document/storage/shop.ts';
import { say } from '../preferences/words.ts';
import { addressOfBook, addressToOpen } from '../router.ts';
import { createShop } from '../state/shop.ts';
import './home.css';
import { JobList } from './job-list.tsx';
import { LengthsQuestion } from './lengths-question.tsx';
import { reserve } from './reserved.ts';
import { lookAt, openCopy, startEmpty, startFromTemplate } from './start.ts';
import { type Offer, offers } from './templates.ts';
import { WholeShop } from './whole-shop.tsx';

const PreferencesDialog = lazy(() => import('../preferences/preferences-dialog.tsx'));

/** The shop: what to begin with, and the jobs that are there. */
export const Home = (props: { shop: Shop | undefined; failure: string | undefined }) => {
  const [trouble, setTrouble] = createSignal<string>();
  const told = () => trouble() ?? props.failure ?? props.shop?.state.message;
  const [closed, setClosed] = createSignal<string>();
  const [preferring, setPreferring] = createSignal(false);
  let file!: HTMLInputElement;
  onMount(() => {
    document.title = 'Fitwright';
  });
  const failed = (error: unknown) => setTrouble(error instanceof Error ? error.message : String(error));
  const take = async (list: FileList | null) => {
    const [first] = list ?? [];
    if (!first) return;
    setTrouble(await lookAt(first).catch((error: unknown) => String(error)));
    file.value = '';
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
      <div class="frame home">
        <div class="head">
          <div>
            <h1>Fitwright</h1>
            <p>
              Bring a worn machine back to size: every dimension worked out before it is cut, and proven
              after.
            </p>
          </div>
          <div class="buttons">
            <a class="to-book" href={addressOfBook()}>
              Cell book
            </a>
            <button type="button" onClick={() => file.click()}>
              Open a file
            </button>
            <input
              ref={file}
              type="file"
              class="unseen"
              tabindex={-1}
              aria-label="Open a file"
              accept=".json,application/json"
              onChange={(event) => void take(event.currentTarget.files)}
            />
            <a class="button" href={addressToOpen()}>
              Open a code
            </a>
            <button type="button" onClick={() => void startEmpty('in').catch(failed)}>
              Empty sheet, inch
            </button>
            <button type="button" onClick={() => void startEmpty('mm').catch(failed)}>
              Empty sheet, mm
            </button>
            <button type="button" onClick={() => setPreferring(true)}>
              Preferences
            </button>
          </div>
        </div>
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
        <LengthsQuestion />
        <div class="jobs-room" ref={(element) => reserve(element, () => props.shop !== undefined)}>
          <Show when={props.shop} keyed>
            {(shop) => <JobList shop={createShop(shop)} />}
          </Show>
        </div>
        <section>
          <h2>A filled job to look at</h2>
          <For each={offers.filter(({ template }) => !template)}>
            {(offer) => <OfferBox offer={offer} word="Open a copy to play with" onTake={begin} filled />}
          </For>
        </section>
        <section>
          <h2>What is worn?</h2>
          <div class="offers">
            <For each={offers.filter(({ template }) => template)}>
              {(offer) => <OfferBox offer={offer} word="Begin this job" onTake={begin} />}
            </For>
          </div>
        </section>
        <Show when={props.shop} keyed>
          {(shop) => <WholeShop shop={shop} />}
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

const OfferBox = (props: {
  offer: Offer;
  word: string;
  filled?: boolean;
  onTake: (offer: Offer) => void;
}) => (
  <article class="offer" classList={{ filled: props.filled === true }}>
    <Show when={!props.filled}>
      <span class="caption">{(props.offer.title.tags ?? []).map(say).join(', ')}</span>
    </Show>
    <h3>{say(props.offer.title.title)}</h3>
    <p>
      {props.filled
        ? 'Filled in from the first reading on. Change a reading in your copy and see what follows.'
        : say(props.offer.title.note ?? '')}
    </p>
    <div class="buttons">
      <button type="button" class={props.filled ? '' : 'main'} onClick={() => props.onTake(props.offer)}>
        {props.word}
      </button>
    </div>
  </article>
);
