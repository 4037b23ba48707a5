import { createEffect, createMemo, createSignal, For, onMount, Show } from 'solid-js';
import type { CellKind } from '../../../cells/record/cell.ts';
import { quantityKinds } from '../../../shared/quantities/quantities.ts';
import type { CellRecord, Role } from '../../../shared/sheet/format.ts';
import { ROLE_MEANING } from '../../../shared/sheet/role-words.ts';
import { SelectField } from '../kit/select-field.tsx';
import { asPageGoes, NEW_LINE, onResume, putTypedAside, typeInto } from '../kit/typed-aside.ts';
import { useSheet } from '../state/context.ts';
import { hasRoom } from '../state/has-room.ts';
import { useWholeLibrary } from '../state/library.ts';
import { putKind } from '../state/put-kind.ts';
import { lineRow } from '../state/row-key.ts';
import { findKinds } from './find-kinds.ts';

export interface AddLineProps {
  /** Id of the line above, `null` for the top of the sheet. */
  after: string | null;
  onDone: () => void;
}

type Way = Exclude<Role, 'cell'> | 'library';

const WAYS: ReadonlyArray<[Way, string]> = [
  ['given', 'Given'],
  ['measured', 'Measured'],
  ['chosen', 'Chosen'],
  ['worked', 'Worked out'],
  ['library', 'From the library'],
  ['section', 'Heading'],
  ['remark', 'Remark'],
];

/** Puts a line in: by how its value comes about, or a cell of the library found by what it is for. */
export default function AddLine(props: AddLineProps) {
  const context = useSheet();
  const { sheet, cursor, notices } = context;
  const [way, setWay] = createSignal<Way>('given');
  const [quantity, setQuantity] = createSignal('length');
  let label!: HTMLInputElement;
  let form!: HTMLElement;
  onMount(() => {
    label?.focus({ preventScroll: true });
    form.scrollIntoView({ block: 'nearest' });
  });

  const place = () => ({ cell: props.after ?? '', field: NEW_LINE });
  const aside = () => {
    const text = label?.value.trim();
    if (text && way() !== 'library') putTypedAside(sheet.document.id, place(), text);
  };
  asPageGoes(aside);
  onResume(place, (text) => typeInto(label, text));
  const put = (fields: Partial<CellRecord>, edit: boolean) => {
    if (!hasRoom({ sheet, notices }, 1)) return;
    const id = sheet.document.addCell(props.after, fields, { nameFromLabel: true });
    props.onDone();
    cursor.setUnfolded(true);
    if (edit) cursor.edit(lineRow(id));
    else cursor.move({ row: lineRow(id), column: 'name' });
  };
  const addPlain = () => {
    const role = way() as Exclude<Way, 'library'>;
    const text = label.value.trim();
    if (text === '') {
      label.focus();
      return;
    }
    if (role === 'remark') put({ role, note: text }, false);
    else if (role === 'section') put({ role, label: text }, false);
    else {
      // A formula says itself what it gives.
      const kind = role === 'worked' ? undefined : quantity();
      put({ role, label: text, ...(kind && { quantity: kind }) }, true);
    }
  };
  const text = () => way() === 'section' || way() === 'remark';
  return (
    <section
      ref={form}
      class="add-line grid gap-3 p-3 lined-wide-pencil bg-paper"
      aria-label="New line"
      onKeyDown={(event) => event.key === 'Escape' && props.onDone()}
    >
      <fieldset class="buttons">
        <legend class="unseen">How its value comes about</legend>
        <For each={WAYS}>
          {([value, word]) => (
            <button type="button" aria-pressed={way() === value} onClick={() => setWay(value)}>
              {word}
            </button>
          )}
        </For>
      </fieldset>
      <Show
        when={way() !== 'library'}
        fallback={<Kinds onChoose={(kind) => putKind(context, props.after, kind, props.onDone)} />}
      >
        <Show when={!text()}>
          <p class="caption">{ROLE_MEANING[way() as 'given']}</p>
        </Show>
        <form
          class="grid grid-cols-[repeat(auto-fit,minmax(11rem,1fr))] gap-2 items-end"
          onSubmit={(event) => {
            event.preventDefault();
            addPlain();
          }}
        >
          <div class="field">
            <label for="new-line-label" class="caption">
              {text() ? 'Text' : 'What it is'}
            </label>
            <input
              id="new-line-label"
              ref={label}
              autocomplete="off"
              placeholder={text() ? '' : 'such as: Journal diameter'}
            />
          </div>
          <Show when={!text() && way() !== 'worked'}>
            <SelectField
              label="Kind of quantity"
              value={quantity()}
              options={[
                ...quantityKinds.map((k) => ({ value: k.name, label: k.label })),
                { value: '', label: 'from the entry' },
              ]}
              onCommit={setQuantity}
            />
          </Show>
          <button type="submit" class="main">
            Put it in
          </button>
          <button type="button" onClick={() => props.onDone()}>
            Leave it
          </button>
        </form>
      </Show>
    </section>
  );
}

const Kinds = (props: { onChoose: (kind: CellKind) => void }) => {
  const library = useWholeLibrary();
  const [query, setQuery] = createSignal('');
  const groups = createMemo(() => {
    const found = findKinds(library()?.kinds.values() ?? [], query());
    return [...new Set(found.map((kind) => kind.group))].map((group) => ({
      group,
      kinds: found.filter((kind) => kind.group === group),
    }));
  });
  let box!: HTMLInputElement;
  let list!: HTMLDivElement;
  onMount(() => box.focus({ preventScroll: true }));
  /** Enter came before the library was there to be looked through. */
  const [waits, setWaits] = createSignal(false);
  createEffect(() => {
    const [first] = groups();
    if (waits() && library() && first) props.onChoose(first.kinds[0]!);
  });
  const offers = () => [...list.querySelectorAll<HTMLButtonElement>('button')];
  /** Arrows go through box and offers as one list. */
  const arrows = (event: KeyboardEvent) => {
    const way = event.key === 'ArrowDown' ? 1 : event.key === 'ArrowUp' ? -1 : 0;
    if (way === 0) return;
    event.preventDefault();
    const stops = [box, ...offers()];
    stops[stops.indexOf(document.activeElement as HTMLButtonElement) + way]?.focus();
  };
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: its box and buttons are what has the focus
    <div onKeyDown={arrows}>
      <div class="field">
        <label for="kind-search" class="caption">
          What is it for?
        </label>
        <input
          id="kind-search"
          ref={box}
          autocomplete="off"
          placeholder="press, clearance, heat …"
          onInput={(event) => {
            setWaits(false);
            setQuery(event.currentTarget.value);
          }}
          onKeyDown={(event) => {
            if (event.key !== 'Enter') return;
            event.preventDefault();
            if (library()) offers()[0]?.click();
            else setWaits(true);
          }}
        />
      </div>
      <div class="max-h-22rem overflow-y-auto lined-rule" ref={list}>
        <For
          each={groups()}
          fallback={
            <p class="caption">{library() ? 'Nothing in the library for that.' : 'Fetching the library …'}</p>
          }
        >
          {({ group, kinds }) => (
            <>
              <h4 class="px-2 py-1 bg-tint text-small">{group}</h4>
              <For each={kinds}>
                {(kind) => (
                  <button
                    type="button"
                    class="block w-full px-2 py-1 lined-none lined-b-rule text-left"
                    onClick={() => props.onChoose(kind)}
                  >
                    <b class="block">{kind.title}</b>
                    <span class="caption">{kind.purpose}</span>
                  </button>
                )}
              </For>
            </>
          )}
        </For>
      </div>
    </div>
  );
};
