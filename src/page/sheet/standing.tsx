import { createMemo, For, Show } from 'solid-js';
import { CheckSign } from '../kit/check-mark.tsx';
import { verdictClass } from '../kit/check-words.ts';
import { say } from '../kit/words.ts';
import { useSheet } from '../state/context.ts';
import { askedOf, readingsAsked, toNextEntry } from './next-entry.tsx';

/** What of the sheet is proven and what is open, the ways it may be gone, and the way to the first check that does not hold. */
export const Standing = () => {
  const context = useSheet();
  const { sheet, goTo } = context;
  const counts = () => sheet.counts();
  const asked = createMemo(() => askedOf(context));
  const must = () => asked().must.length;
  const may = () => asked().may.length;
  const toRead = createMemo(() => (must() > 0 ? 0 : readingsAsked(context).length));
  /** While entries are missing, what waits is waiting for them: nothing to look into yet. */
  const first = () =>
    must() > 0 && counts().of.misses + counts().of.doubt === 0 ? undefined : counts().first;
  const standing = () => sheet.standing();
  return (
    <section class="strip gap-x-4 gap-y-2 min-h-target py-2 lined-b" aria-label="How the checks stand">
      <Show when={sheet.state.rev > 0} fallback={<span class="caption">Working it out …</span>}>
        <Show when={must() + may() > 0}>
          <span>
            <Show
              when={must() > 0}
              fallback={
                <>
                  <strong class="text-figure">{may()}</strong> more to enter where known
                </>
              }
            >
              <strong class="text-figure">{must()}</strong> {must() === 1 ? 'entry' : 'entries'} to make
              <Show when={may() > 0}>
                <small class="caption">, {may()} more where known</small>
              </Show>
            </Show>
          </span>
          {/* While some must be made, the way to them stands at the foot of the window. */}
          <Show when={must() === 0}>
            <button type="button" onClick={() => toNextEntry(context, 'entry')}>
              Go to the next entry
            </button>
          </Show>
        </Show>
        <Show when={toRead() > 0}>
          <span>
            <strong class="text-figure">{toRead()}</strong> {toRead() === 1 ? 'size' : 'sizes'} to read, once
            cut
          </span>
          <button type="button" title="F8" onClick={() => toNextEntry(context, 'reading')}>
            Go to the next size
          </button>
        </Show>
        <span class={`head-line ${verdictClass(standing().state)}`}>
          <Show when={standing().total > 0}>
            <span class="tone">
              <CheckSign state={standing().state} />
            </span>
          </Show>
          <span class={standing().total > 0 ? '' : 'caption'}>{standing().words}</span>
        </span>
        <Show when={counts().total > 0}>
          <Show when={first()}>
            {(check) => (
              <button type="button" onClick={() => goTo(check().cell, check().output)}>
                Go to the first that does not hold
              </button>
            )}
          </Show>
        </Show>
        <For each={sheet.forks()}>
          {(fork) => (
            <label class="flex items-center gap-2 whitespace-nowrap">
              <span>{say(fork.to)}:</span>
              <select
                value={fork.taken ?? ''}
                onChange={(event) => sheet.document.setWay(fork.to, event.currentTarget.value || undefined)}
              >
                <option value="" selected={fork.taken === undefined}>
                  {fork.by.length === 2 ? 'two ways, each counts' : 'several ways, each counts'}
                </option>
                <For each={fork.by}>
                  {(by) => (
                    <option value={by} selected={by === fork.taken}>
                      {say(by)}
                    </option>
                  )}
                </For>
              </select>
            </label>
          )}
        </For>
      </Show>
    </section>
  );
};
