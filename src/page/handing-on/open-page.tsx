import { createEffect, createResource, createSignal, on, onCleanup, onMount, Show, Suspense } from 'solid-js';
import { LeadsElsewhere } from '../camera/leads-elsewhere.tsx';
import { late } from '../kit/late.tsx';
import { go, hashOfJoinLink } from '../kit/router.ts';
import { loadShop } from '../state/load-shop.ts';
import { type Arrival, arrival, readFile, readPasted, setArrival } from './arrivals.ts';
import { Incoming } from './incoming.tsx';
import { JsonPicker } from './json-picker.tsx';
import type { Partly } from './parts-kept.ts';

const ReadCode = late('The reader of codes', () => import('../camera/read-code.tsx'));

/** A sheet from elsewhere: by file, code or link. It is looked at first. */
export default function OpenPage(props: { code: string | undefined }) {
  const [shop] = createResource(loadShop);
  const [trouble, setTrouble] = createSignal<string>();
  const [text, setText] = createSignal('');
  let picker!: HTMLInputElement;
  const [waits, setWaits] = createSignal<string>();
  let box: HTMLTextAreaElement | undefined;
  const take = (read: Arrival | Partly | string) => {
    setTrouble(typeof read === 'string' ? read : undefined);
    const partly = typeof read === 'object' && 'waits' in read ? read : undefined;
    setWaits(partly?.waits);
    setArrival(typeof read === 'string' || 'waits' in read ? undefined : read);
    if (!partly || !box) return;
    // Room for the next part.
    box.value = '';
    setText('');
  };
  createEffect(
    on(
      () => props.code,
      (code) => {
        if (code) void readPasted(code).then(take);
      },
    ),
  );
  onMount(() => {
    document.title = 'Open a sheet · Fitwright';
  });
  onCleanup(() => setArrival(undefined));
  const [leads, setLeads] = createSignal<string>();
  /** What a camera read: of a sheet, or the link that joins a shop's server. */
  const seen = (text: string) => {
    const link = hashOfJoinLink(text, location.href);
    setLeads(link?.elsewhere);
    if (link?.hash) go(link.hash);
    else if (!link) void readPasted(text).then(take);
  };
  const files = (list: FileList | null | undefined) => {
    const [first] = list ?? [];
    if (first) void readFile(first).then(take);
    picker.value = '';
  };
  return (
    <main
      class="paper"
      onDragOver={(event) => event.preventDefault()}
      onDrop={(event) => {
        event.preventDefault();
        files(event.dataTransfer?.files);
      }}
    >
      <div class="frame stacked gap-4 p-4">
        <div class="along justify-between gap-3">
          <h1 class="text-title">A sheet from elsewhere</h1>
          <a class="tall-link" href="#/">
            All jobs
          </a>
        </div>
        <Show when={trouble()}>
          {(words) => (
            <p class="trouble" role="alert">
              {words()}
            </p>
          )}
        </Show>
        <p class="empty:hidden" role="status">
          {waits()}
        </p>
        <Show
          when={arrival()}
          fallback={
            <div class="stacked gap-3">
              <p>
                It is read and shown first. Nothing runs in it, nothing is sent anywhere, and nothing is taken
                over before you say so.
              </p>
              <div>
                <button type="button" class="main" onClick={() => picker.click()}>
                  Choose a file
                </button>
                <JsonPicker ref={picker} label="Choose a file" onFiles={files} />
              </div>
              <Suspense>
                <ReadCode onText={seen} />
              </Suspense>
              <Show when={leads()}>{(address) => <LeadsElsewhere address={address()} />}</Show>
              <form
                class="stacked gap-3 justify-items-start"
                onSubmit={(event) => {
                  event.preventDefault();
                  void readPasted(text()).then(take);
                }}
              >
                <div class="field w-full">
                  <label for="pasted-code" class="caption">
                    Or paste a text or a link
                  </label>
                  <textarea
                    id="pasted-code"
                    ref={box}
                    rows={4}
                    spellcheck={false}
                    autocomplete="off"
                    // What was pasted into the empty box is meant to be read.
                    onPaste={(event) => {
                      const pasted = event.clipboardData?.getData('text') ?? '';
                      if (text().trim() === '' && pasted.trim() !== '') void readPasted(pasted).then(take);
                    }}
                    onInput={(event) => setText(event.currentTarget.value)}
                  />
                </div>
                <button type="submit" disabled={text().trim() === ''}>
                  Read the text
                </button>
              </form>
            </div>
          }
        >
          {(came) => (
            <Show when={shop()} fallback={<p>Opening the shop …</p>}>
              {(opened) => <Incoming arrival={came()} shop={opened()} onLeave={() => go('#/')} />}
            </Show>
          )}
        </Show>
      </div>
    </main>
  );
}
