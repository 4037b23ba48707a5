import { createResource, createSignal, onMount, Show, Suspense } from 'solid-js';
import type { Shop } from '../../document/storage/shop.ts';
import { LeadsElsewhere } from '../camera/leads-elsewhere.tsx';
import { late } from '../kit/late.tsx';
import { addressOfSheet, go, hashOfJoinLink } from '../kit/router.ts';
import { loadShop } from '../state/load-shop.ts';
import { endedWords } from './ended-words.ts';
import {
  type Asked,
  askedToJoin,
  deviceName,
  keepAsked,
  keepKeyOfShop,
  keepShared,
  nameDevice,
  sharedHere,
} from './keys.ts';
import { dropLine, lineOf } from './lines.ts';

const ReadCode = late('The reader of codes', () => import('../camera/read-code.tsx'));

/** Joins the shop's server by the key of a link: it goes into the database at once, and leaves the address. */
export default function JoinPage(props: { asked: Asked | undefined }) {
  const [trouble, setTrouble] = createSignal<string>();
  const [busy, setBusy] = createSignal(false);
  const [name, setName] = createSignal(deviceName());
  const [read, setRead] = createSignal('');
  const [leads, setLeads] = createSignal<string>();
  const seen = (text: string) => {
    const link = hashOfJoinLink(text, location.href);
    setLeads(link?.elsewhere);
    if (link?.hash) go(link.hash);
    setRead(link ? '' : 'This is not the code of a shop’s server.');
  };
  const came = props.asked;
  if (came) history.replaceState(null, '', `${location.pathname}#/join`);
  const [ready] = createResource(async () => {
    const shop = await loadShop();
    if (came) await keepAsked(shop, came);
    return { shop, asked: came ?? (await askedToJoin(shop)) };
  });
  onMount(() => {
    document.title = 'Join the shop · Fitwright';
  });
  const refuse = async (shop: Shop, { key }: Asked, why: string) => {
    dropLine(key);
    await keepAsked(shop, undefined);
    setTrouble(why);
    setBusy(false);
  };
  const join = async (shop: Shop, asked: Asked) => {
    setBusy(true);
    setTrouble(undefined);
    nameDevice(name());
    const line = await lineOf(asked.key);
    const { SharedList, fetchSheet } = await import('../../document/joined/shared-list.ts');
    if (asked.sheet !== undefined) {
      const came = await fetchSheet(line, asked.sheet);
      if (typeof came === 'string') return refuse(shop, asked, endedWords(came));
      await shop.adopt(asked.sheet, came);
      await keepShared(shop, asked.sheet, { ...(await sharedHere(shop, asked.sheet)), key: asked.key });
      await keepAsked(shop, undefined);
      go(addressOfSheet(asked.sheet));
      return undefined;
    }
    const list = SharedList.over(line);
    const { ended } = await list.answered();
    list.close();
    if (ended) return refuse(shop, asked, endedWords(ended));
    await keepKeyOfShop(shop, asked.key);
    await keepAsked(shop, undefined);
    go('#/');
    return undefined;
  };
  const begin = (shop: Shop, asked: Asked) =>
    void join(shop, asked).catch((error: unknown) => {
      setBusy(false);
      setTrouble(`It was not done: ${String(error)}`);
    });
  return (
    <main class="paper">
      <div class="frame stacked gap-4 p-4">
        <p>
          <a href="#/">All jobs</a>
        </p>
        <h1 class="text-title">Join the shop’s server</h1>
        <Show when={trouble()}>
          {(text) => (
            <p class="trouble" role="alert">
              {text()}
            </p>
          )}
        </Show>
        <Show when={ready()} fallback={<p>One moment …</p>}>
          {(now) => (
            <Show
              when={trouble() === undefined && now().asked}
              fallback={
                <div class="stacked gap-3">
                  <p>
                    Open the link, or read the code, that the shop’s server shows where it was started: it
                    ends in a key.
                  </p>
                  <Suspense>
                    <ReadCode onText={seen} />
                  </Suspense>
                  <p role="status" class="empty:hidden">
                    {read()}
                  </p>
                  <Show when={leads()}>{(address) => <LeadsElsewhere address={address()} />}</Show>
                </div>
              }
            >
              {(asked) => (
                <form
                  class="stacked gap-3 justify-items-start"
                  onSubmit={(event) => {
                    event.preventDefault();
                    begin(now().shop, asked());
                  }}
                >
                  <p>
                    {asked().sheet === undefined
                      ? 'This device then sees what the shop shares, and what is shared from here is seen by every device that has joined.'
                      : 'This device then has the one sheet that the link is for, as it goes on.'}{' '}
                    Sheets that are not shared stay here.
                  </p>
                  <Show when={!isSecureContext}>
                    <p class="caution">
                      This page came over plain HTTP: the key and what is shared cross the network in clear,
                      and whoever is on it can read them. Join on a network that you trust, or start the
                      server with a certificate.
                    </p>
                  </Show>
                  <div class="field w-full max-w-24rem">
                    <label for="device-name" class="caption">
                      What the others see this device called
                    </label>
                    <input
                      id="device-name"
                      maxLength={40}
                      autocomplete="off"
                      value={name()}
                      onInput={(event) => setName(event.currentTarget.value)}
                    />
                  </div>
                  <button type="submit" class="main" disabled={busy()}>
                    {busy() ? 'Asking the server …' : 'Join'}
                  </button>
                </form>
              )}
            </Show>
          )}
        </Show>
      </div>
    </main>
  );
}
