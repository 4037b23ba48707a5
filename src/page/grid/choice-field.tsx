import { createSignal, createUniqueId, For, onMount, Show } from 'solid-js';
import type { Equipment } from '../../document/sharing/own-equipment.ts';
import { choiceIn } from '../../engine/rows/choice-in.ts';
import { choicesOf } from '../../engine/rows/choices.ts';
import { loadCommit } from '../entry/load.ts';
import type { EntrySpot } from '../entry/spot.ts';
import { createKept } from '../kit/keep-equal.ts';
import { pastedOnOneLine } from '../kit/one-line.ts';
import { asPageGoes, onResume, putTypedAside, typeInto } from '../kit/typed-aside.ts';
import { say } from '../kit/words.ts';
import { useSheet } from '../state/context.ts';
import { useLibrary } from '../state/library.ts';
import { useTools } from '../state/tools.ts';
import { blankWords, emptyWords, type FieldProps } from './input-words.ts';

/** Lines that make the same kind of choice, as this one can take it from them. */
const useTaken = (props: FieldProps & { table: string }) => {
  const { sheet } = useSheet();
  const library = useLibrary();
  return createKept<Array<{ entry: string; title: string }>>(() => {
    const all = library();
    if (!all) return [];
    const records = () => sheet.state.order.flatMap((id) => sheet.line(id)?.record ?? []);
    const from = { library: all, named: () => undefined, all: records };
    return choicesOf(props.table, from, props.cell).map(({ record, input, entry }) => {
      const several = library()!
        .kinds.get(record.kind ?? '')!
        .inputs.filter(({ choice }) => choice === props.table);
      return {
        entry,
        title: sheet.titleOf(record.id) + (several.length > 1 ? `: ${say(input!.label)}` : ''),
      };
    });
  }, []);
};

const ALIKE = { equals: (a: unknown, b: unknown) => JSON.stringify(a) === JSON.stringify(b) };

/** What this shop keeps of such, to be chosen first; looked up again whenever the list is gone to. */
const useOwn = (props: FieldProps) => {
  const { shop } = useTools();
  const { sheet } = useSheet();
  const kind = () => sheet.line(props.cell)?.record?.kind ?? '';
  const [kept, setKept] = createSignal<Equipment[]>([], ALIKE);
  const look = async () => {
    if (!props.input.ofShop || (await shop.setting('equipment')) === undefined) return;
    const { offersOf } = await import('./own-offers.ts');
    setKept(await offersOf(shop, kind(), props.input.name));
  };
  const again = () => void look().catch(() => undefined);
  onMount(again);
  const library = useLibrary();
  const take = async (one: Equipment) => {
    const { takeOwn } = await import('./own-offers.ts');
    takeOwn(sheet, props.cell, library()!.kinds.get(kind())!, one);
  };
  return { kept, again, take };
};

/** Of the choice that takes one of the shop's own, by its place: no table has such a key. */
const OWN = '+ own ';

/** Chosen from a table, taken from a line that chooses from the same one, or in words where there is no table. */
export const ChoiceField = (props: FieldProps & { table: string }) => {
  const { sheet } = useSheet();
  let box: HTMLInputElement | undefined;
  let openedOn = '';
  const list = createUniqueId();
  /** What comes from elsewhere does not wipe out what is being typed. */
  const standing = () => {
    const text = props.text ?? '';
    return box && document.activeElement === box && box.value !== openedOn ? box.value : text;
  };
  const field = () => `inputs.${props.input.name}`;
  const place = () => ({ cell: props.cell, field: field() });
  const aside = () => {
    if (box && document.activeElement === box && box.value !== openedOn)
      putTypedAside(sheet.document.id, place(), box.value.trim());
  };
  asPageGoes(aside);
  onResume(place, (text) => box && typeInto(box, text));
  const settle = (mine: string) => {
    const [theirs, before] = [props.text ?? '', openedOn];
    openedOn = mine;
    const enter = () => props.onCommit(mine);
    if (theirs === before || theirs === mine) enter();
    else if (mine !== before) sheet.conflicts.add({ cell: props.cell, field: field(), mine, theirs, enter });
  };
  const take = (element: HTMLInputElement) => {
    const typed = element.value.trim();
    const { pairs } = props.input;
    if (!pairs) settle(typed);
    // What reads them may never come: then it stands as it was typed.
    else
      void Promise.all([import('../entry/pairs.ts'), loadCommit()]).then(
        ([{ pairsTyped }, { entryContext }]) => {
          const spot: EntrySpot = { cell: props.cell, field: field(), kind: 'entry' };
          const read = pairsTyped(typed, pairs, entryContext(sheet, spot));
          // Seen as it is stored, unless somebody goes on typing.
          if (element.value.trim() === typed) element.value = read;
          settle(read);
        },
        () => settle(typed),
      );
  };
  /** A field of one line would run the lines of a pasted table together. */
  const paste = (event: ClipboardEvent) => {
    const text = event.clipboardData?.getData('text/plain') ?? '';
    if (!/[\n\t]/.test(text.trim())) return;
    event.preventDefault();
    // As if typed: the field's own undo takes it back, and leaving the field is a change.
    document.execCommand('insertText', false, pastedOnOneLine(text));
  };
  const library = useLibrary();
  const table = () => library()?.tables.get(props.table);
  const rows = () => table()?.rows ?? [];
  const taken = useTaken(props);
  const own = useOwn(props);
  /** By what it is, as the table has it, so that the same letters lead to it; behind that what the shop calls it. */
  const ownName = ({ label, inputs }: Equipment) => {
    const text = inputs[props.input.name] ?? '';
    const name = (table() && choiceIn(table()!, text)?.name) ?? text;
    return label && label !== name ? `${name}: ${label}` : name;
  };
  const chosen = () => (table() && props.text ? choiceIn(table()!, props.text)?.key : undefined);
  const known = () =>
    !props.text || chosen() !== undefined || taken().some(({ entry }) => entry === props.text);
  return (
    <Show
      when={library() && !table()}
      fallback={
        <select
          aria-label={props.label}
          value={chosen() ?? props.text ?? ''}
          onFocus={own.again}
          onChange={({ currentTarget }) => {
            const { value } = currentTarget;
            if (!value.startsWith(OWN)) {
              props.onCommit(value);
              return;
            }
            void own.take(own.kept()[Number(value.slice(OWN.length))]!);
            currentTarget.value = chosen() ?? props.text ?? '';
          }}
        >
          <option value="">{emptyWords(props.input, props.leftOpen)}</option>
          <Show when={own.kept().length > 0}>
            <optgroup label="this shop’s own">
              <For each={own.kept()}>
                {(one, n) => <option value={`${OWN}${n()}`}>{ownName(one)}</option>}
              </For>
            </optgroup>
          </Show>
          <Show when={!known()}>
            <option value={props.text}>
              {props.text}
              {props.text?.startsWith('=') ? '' : ': not in the table'}
            </option>
          </Show>
          <For each={rows()}>
            {(r) => (
              <option value={r.key} selected={r.key === chosen()}>
                {r.name}
              </option>
            )}
          </For>
          <Show when={taken().length > 0}>
            <optgroup label="the same as in">
              <For each={taken()}>
                {({ entry, title }) => (
                  <option value={entry} selected={entry === props.text}>
                    {title}
                  </option>
                )}
              </For>
            </optgroup>
          </Show>
        </select>
      }
    >
      {/* No table to choose from: the kind reads the words itself. */}
      <input
        type="text"
        aria-label={props.label}
        autocomplete="off"
        list={taken().length > 0 ? list : undefined}
        value={standing()}
        ref={(element) => {
          box = element;
        }}
        placeholder={blankWords(props.input, props.leftOpen)}
        onFocus={() => {
          openedOn = props.text ?? '';
        }}
        onChange={(event) => take(event.currentTarget)}
        onPaste={paste}
        onKeyDown={(event) => !/^(Escape|F8)$/.test(event.key) && event.stopPropagation()}
      />
      <datalist id={list}>
        <For each={taken()}>{({ entry, title }) => <option value={entry}>{title}</option>}</For>
      </datalist>
    </Show>
  );
};
