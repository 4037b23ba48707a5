import { createEffect, createSignal, For, type JSX, onCleanup, Show, untrack } from 'solid-js';
import { fieldWords, sheetFieldWords } from '../../../shared/sheet/field-words.ts';
import type { JoinedSheet, JoinedState } from '../../document/joined/joined-sheet.ts';
import { fieldOfKey } from '../../document/model/readings.ts';
import { isStorable } from '../../document/model/stored-fault.ts';
import { ReadOnlySheet } from '../../document/read-only.ts';
import { type Lost, MOST_EDITED, type Presence } from '../../document/sharing/wire.ts';
import type { OpenSheet } from '../../document/storage/open-sheet.ts';
import type { Shop } from '../../document/storage/shop.ts';
import { useSheet } from '../state/context.ts';
import type { Here } from '../state/elsewhere.ts';
import { cellOfRow } from '../state/row-key.ts';
import { createStorageState } from '../state/storage-state.ts';
import { CameKeeper } from './came.ts';
import { endedWords, refusedWords } from './ended-words.ts';
import { keepTitle } from './keep-title.ts';
import { deviceName, keepShared, keyOfShop, type SharedHere } from './keys.ts';
import { holdSheet, lineOf } from './lines.ts';
import { followLengths } from './own-lengths.ts';
import { saidName } from './said-name.ts';
import { createTypedIn } from './typed-in.ts';

export interface JoinedBarProps {
  opened: OpenSheet;
  shop: Shop;
  shared: SharedHere;
  /** Is given what draws where the sheet stands: among the lines, at the machine, beside the chain. */
  onStanding: (draw: (() => JSX.Element) | undefined) => void;
}

/** Joins a shared sheet while it is open, and says where it stands: saved here, at the shop's server, and who else is on it. */
export default function JoinedBar(props: JoinedBarProps) {
  const { sheet, cursor, notices } = useSheet();
  const { opened, shop } = untrack(() => props);
  const storage = createStorageState(opened);
  const [state, setState] = createSignal<JoinedState>();
  const [others, setOthers] = createSignal<readonly Presence[]>([]);
  const [failure, setFailure] = createSignal<string>();
  const [joined, setJoined] = createSignal<JoinedSheet>();
  let shared: SharedHere = untrack(() => props.shared);
  let gone = false;

  const keep = (part: Partial<SharedHere>) => {
    shared = { ...shared, ...part };
    void keepShared(shop, opened.id, shared);
  };
  const readsOnly = (readOnly: boolean) => {
    sheet.document.refuse = readOnly
      ? () => notices.say('This sheet is shared with you to be read: nothing is changed here.')
      : undefined;
    if ((shared.readOnly === true) !== readOnly) keep({ readOnly });
  };
  if (shared.readOnly) readsOnly(true);
  // An edit that is refused has been told of.
  const quiet = (event: ErrorEvent | PromiseRejectionEvent) => {
    const error = 'reason' in event ? event.reason : event.error;
    if (error instanceof ReadOnlySheet) event.preventDefault();
  };
  addEventListener('error', quiet);
  addEventListener('unhandledrejection', quiet);

  const tellLost = (lost: Lost) => {
    const { n, cell, key, lost: mine, kept: theirs } = lost;
    if (n <= (shared.told ?? 0)) return;
    keep({ told: n });
    const map = cell === undefined ? 'sheet' : 'cell';
    if (mine === undefined || !isStorable(map, key, mine) || !isStorable(map, key, theirs)) return;
    if (cell !== undefined && !sheet.document.cell(cell)) return;
    const shown = (value: unknown) => {
      const text = sheet.document.shown(value, cell, key);
      return text === undefined ? '' : typeof text === 'string' ? text : JSON.stringify(text);
    };
    const field = fieldOfKey(key);
    const told = { cell, field, mine: shown(mine), theirs: shown(theirs) };
    const { conflicts } = sheet;
    // Told already by this page itself.
    if (conflicts.list().some((one) => one.cell === cell && one.field === field && one.mine === told.mine))
      return;
    conflicts.add({
      ...told,
      another: true,
      enter: () => sheet.document.enterAgain({ cell, key, mine, theirs }),
    });
  };

  const own = opened.document.clientId;
  const before = (shared.numbers ?? []).filter((number) => number !== own);
  keep({ numbers: [own, ...before].slice(0, 1 + MOST_EDITED) });
  const came = new CameKeeper(shop, opened.id);
  const giveBack = holdSheet(opened.id, () => joined()?.close());
  const begin = async () => {
    const key = shared.key ?? (await keyOfShop(shop));
    if (key === undefined) {
      setFailure('This device has left the shop’s server: the sheet is here alone.');
      return;
    }
    const [line, { JoinedSheet }] = await Promise.all([
      lineOf(key),
      import('../../document/joined/joined-sheet.ts'),
    ]);
    if (gone) return;
    const one = new JoinedSheet(line, opened.document, (update) => opened.receive(update));
    setState(one.state.get());
    one.state.observe((now) => {
      setState(now);
      if (now.line === 'open') readsOnly(now.readOnly);
      const off = now.ended === 'sharing-ended';
      if ((off || now.line === 'open') && (shared.off === true) !== off) keep({ off });
    });
    one.others.observe((now) => {
      setOthers(now);
      void came.meet(now);
    });
    one.onCame((what) => void came.note(what));
    one.onLost(tellLost);
    setJoined(one);
  };
  const join = () =>
    void begin().catch((error: unknown) => setFailure(`The server cannot be reached: ${String(error)}`));
  join();
  const leaveLengths = followLengths(sheet, shared.length, {
    keep: (length) => {
      keep({ length });
      const words = length === 'in' ? 'inches' : 'millimetres';
      notices.say(`Shown in ${words} on this device; the others keep their own.`);
    },
    say: (word) => notices.say(word),
  });
  onCleanup(() => {
    gone = true;
    leaveLengths();
    giveBack();
    came.close();
    joined()?.close();
    sheet.document.refuse = undefined;
    sheet.elsewhere.set(new Map());
    removeEventListener('error', quiet);
    removeEventListener('unhandledrejection', quiet);
  });

  const typedIn = createTypedIn();
  const here = (): Here => {
    const place = cursor.place();
    const line = place && cellOfRow(place.row);
    const typing = cursor.editing();
    return (
      sheet.elsewhere.here() ??
      typedIn() ?? {
        ...(line !== undefined && { line }),
        ...(typing && { typing: typing.asCut ? 'measured.entry' : 'entry' }),
      }
    );
  };
  createEffect(() => {
    const now = here();
    const one = joined();
    const edited = shared.numbers?.slice(1) ?? [];
    if (state()?.line === 'open') one?.tell({ device: deviceName(), ...now, edited });
  });
  createEffect(() => {
    const words = new Map<string, string>();
    for (const { device, line, typing } of others())
      if (line !== undefined && typing !== undefined) words.set(line, `${saidName(device)} is typing here`);
    sheet.elsewhere.set(words);
  });

  /** The title that the list was given from here. */
  let listed: string | undefined;
  createEffect(() => {
    const now = state();
    const { title } = sheet.state.title;
    // What a key of this sheet alone opens, it opens without the list.
    if (!now?.atServer || now.readOnly || shared.key !== undefined || title === listed) return;
    listed = title;
    void keyOfShop(shop)
      .then((key) => (key === undefined ? undefined : keepTitle(key, opened.id, title)))
      .catch(() => undefined);
  });

  const there = () => {
    const now = state();
    if (now?.trouble === 'full') return 'not at the shop’s server: its disk is full';
    if (now?.trouble) return 'not at the shop’s server: it cannot store just now';
    if (!now || now.line === 'joining') return 'asking the shop’s server …';
    if (now.line === 'ended') return 'not at the shop’s server';
    if (now.line === 'away') return 'not at the shop’s server: it is not reached';
    return now.atServer ? 'at the shop’s server' : 'on its way to the shop’s server …';
  };
  /** Which field the server refused, as its line and its form call it. */
  const refusedAt = (): string | undefined => {
    const { cell, key } = state()?.refused ?? {};
    const field = key === undefined || key.startsWith('#') ? undefined : fieldOfKey(key);
    if (cell === undefined) return field && sheetFieldWords(field);
    const line = sheet.line(cell) ? sheet.titleOf(cell) : 'a line that is gone';
    return field === undefined ? line : `${line}, ${fieldWords(field)}`;
  };
  const isRefused = () => failure() === undefined && state()?.ended === 'update-refused';
  const ended = () => {
    const why = state()?.ended;
    if (failure() !== undefined || why === undefined) return failure();
    return (isRefused() ? refusedWords(refusedAt()) : undefined) ?? endedWords(why);
  };
  const sendAgain = () => {
    joined()?.close();
    setJoined(undefined);
    setState(undefined);
    join();
  };
  const where = ({ line, typing }: Presence) => {
    if (line === undefined) return typing === undefined ? '' : ' types in the title block';
    return sheet.line(line) ? `${typing === undefined ? ' is on ' : ' types in '}${sheet.titleOf(line)}` : '';
  };
  const draw = () => (
    <>
      <section
        class="joined strip gap-x-4 gap-y-1 py-1 lined-b-rule text-small"
        aria-label="Shared with the shop"
      >
        <span class="saved-here">{storage().state === 'saved' ? 'saved here' : 'not saved here yet'}</span>
        <span class="at-server" classList={{ 'font-bold': state()?.atServer !== true }} role="status">
          {there()}
        </span>
        <Show when={state()?.readOnly}>
          <span>shared with you to be read</span>
        </Show>
        <For each={others()}>
          {(other) => (
            <span class="other">
              <strong>{saidName(other.device)}</strong>
              {where(other)}
            </span>
          )}
        </For>
      </section>
      <Show when={ended()}>
        {(text) => (
          <div class="trouble" role="alert">
            <p>{text()}</p>
            <Show when={isRefused()}>
              <button type="button" onClick={sendAgain}>
                Send it again
              </button>
            </Show>
          </div>
        )}
      </Show>
    </>
  );
  props.onStanding(draw);
  onCleanup(() => props.onStanding(undefined));
  return null;
}
