import { createEffect, createMemo, createSignal, For, on, Show } from 'solid-js';
import { Dialog } from '../kit/dialog.tsx';
import type { Command } from '../state/command.ts';
import { useSheet } from '../state/context.ts';
import { useWholeLibrary } from '../state/library.ts';
import { findables } from './findables.ts';
import { type Findable, find } from './match.ts';

export interface FinderProps {
  commands: readonly Command[];
  onClose: () => void;
}

/** Finds a command, a line or a cell of the library by a word or two; a combobox after the WAI-ARIA pattern. */
export default function Finder(props: FinderProps) {
  const context = useSheet();
  const library = useWholeLibrary();
  const [query, setQuery] = createSignal('');
  /** Marked by arrows; without one it is the first. What comes in meanwhile does not put another in its place. */
  const [marked, setMarked] = createSignal<string>();
  const items = createMemo(() => findables(context, props.commands, library()));
  const found = createMemo(() => find(items(), query()));
  const at = () =>
    Math.max(
      0,
      found().findIndex(({ id }) => id === marked()),
    );
  const active = () => found()[at()];
  /** Enter came before the library was there to be looked through. */
  const [waits, setWaits] = createSignal(false);
  createEffect(
    on(query, () => {
      setMarked(undefined);
      setWaits(false);
    }),
  );
  createEffect(() => {
    const id = active()?.id;
    if (id) document.getElementById(`find-${id}`)?.scrollIntoView({ block: 'nearest' });
  });
  /** First closed, so that what it does can take the focus. */
  const take = (item: Findable) => {
    props.onClose();
    queueMicrotask(() => item.run());
  };
  createEffect(() => {
    const item = active();
    if (waits() && library() && item) take(item);
  });
  const keys = (event: KeyboardEvent) => {
    const last = found().length - 1;
    const moves: Record<string, number> = {
      ArrowDown: at() >= last ? 0 : at() + 1,
      ArrowUp: at() <= 0 ? last : at() - 1,
      PageDown: Math.min(at() + 8, last),
      PageUp: Math.max(at() - 8, 0),
    };
    const to = moves[event.key];
    if (to !== undefined) setMarked(found()[Math.max(0, to)]?.id);
    else if (event.key === 'Enter' && active()) take(active()!);
    else if (event.key === 'Enter' && !library()) setWaits(true);
    else return;
    event.preventDefault();
  };
  return (
    <Dialog title="Find a command or a line" class="finder mt-[8vh]" onClose={props.onClose}>
      <input
        type="text"
        role="combobox"
        aria-label="What to find"
        aria-expanded="true"
        aria-controls="find-list"
        aria-autocomplete="list"
        aria-activedescendant={active() ? `find-${active()!.id}` : undefined}
        placeholder="a command, a line by its name or number, a cell of the library"
        autocomplete="off"
        spellcheck={false}
        autofocus
        onInput={(event) => setQuery(event.currentTarget.value)}
        onKeyDown={keys}
      />
      <div
        id="find-list"
        role="listbox"
        class="max-h-[min(26rem,56dvh)] overflow-y-auto lined-rule"
        aria-label="Found"
      >
        <For each={found()}>
          {(item, i) => (
            <>
              <Show when={item.group !== found()[i() - 1]?.group}>
                <div class="sticky top-0 px-2 py-2px bg-tint caption" role="presentation">
                  {item.group}
                </div>
              </Show>
              {/* biome-ignore lint/a11y/useKeyWithClickEvents: the box above hears the keys */}
              {/* biome-ignore lint/a11y/useFocusableInteractive: the box above keeps the focus */}
              <div
                id={`find-${item.id}`}
                role="option"
                class="group option flex flex-wrap items-center justify-between gap-x-3 min-h-target px-2 py-1 lined-t-rule cursor-pointer [scroll-margin-top:1.5rem] aria-[selected=true]:(bg-ink text-paper)"
                aria-selected={item === active()}
                onClick={() => take(item)}
              >
                <span>{item.label}</span>
                <Show when={item.beside}>
                  <span class="caption group-aria-[selected=true]:text-paper">{item.beside}</span>
                </Show>
              </div>
            </>
          )}
        </For>
      </div>
      <p class="caption" role="status">
        {found().length === 0
          ? library() === undefined
            ? 'Opening the library …'
            : 'Nothing holds all of these words.'
          : query() === ''
            ? 'Type a word or two; Enter takes the marked one.'
            : `${found().length} found`}
      </p>
    </Dialog>
  );
}
