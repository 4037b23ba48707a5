import { createUniqueId, For, Match, Show, Switch, untrack } from 'solid-js';
import type { CellInput } from '../../../cells/record/cell.ts';
import type { CellRecord } from '../../../shared/sheet/format.ts';
import { choiceIn } from '../../engine/rows/choice-in.ts';
import { recordsNamed } from '../../engine/rows/records-taken.ts';
import { ProblemNote } from '../entry/problem-note.tsx';
import { writtenOut } from '../kit/decimal-mark.ts';
import { createKept } from '../kit/keep-equal.ts';
import { say } from '../kit/words.ts';
import { isLeftOpen } from '../state/asked.ts';
import { useSheet } from '../state/context.ts';
import { useLibrary } from '../state/library.ts';
import { putAbove } from '../state/put-above.ts';
import { inputRow } from '../state/row-key.ts';
import { ChoiceField } from './choice-field.tsx';
import { EntryCell, Example } from './entry-cell.tsx';
import { GridCell } from './grid-cell.tsx';
import { GridRow, StillCell } from './grid-row.tsx';
import { blankWords, emptyWords, type FieldProps, type InputLineProps } from './input-words.ts';

/** One input: typed, chosen from a table, or one of the sheet's cells of a kind. */
export const InputLine = (props: InputLineProps) => {
  const { sheet } = useSheet();
  const row = () => inputRow(props.cell, props.input.name);
  // Kept: what is typed in a line is committed as the line goes, deleted by somebody else.
  const own = untrack(() => sheet.line(props.cell)!);
  const line = () => sheet.line(props.cell) ?? own;
  let kept = untrack(() => own.record);
  const record = (): CellRecord => {
    kept = line().record ?? kept;
    return kept;
  };
  const text = () => record().inputs?.[props.input.name];
  const field = () => `inputs.${props.input.name}`;
  const problem = () => line().shape?.problems.find((p) => p.field === field());
  const commit = (entry: string) => void sheet.document.setField(props.cell, field(), entry);
  const label = () => `${props.input.label}, ${sheet.titleOf(props.cell)}`;
  const leftOpen = () => isLeftOpen(record(), props.input);
  const library = useLibrary();
  const rowOf = (table: string, text: string) => {
    const found = library()?.tables.get(table);
    return found && choiceIn(found, text);
  };
  const rowName = (table: string, key: string) => rowOf(table, key)?.name ?? key;
  const example = () => record().examples?.[props.input.name];
  return (
    <GridRow row={row()} cell={props.cell} class="part input">
      <StillCell class="number" />
      <GridCell row={row()} column="name">
        <span class="label">{props.input.label}</span>
        <Show when={props.input.hint}>
          {/* What an input is for is said while it is being looked at. */}
          <span class="caption hint block [.line.input:not(.here)_&]:hidden">{props.input.hint}</span>
        </Show>
      </GridCell>
      <Switch
        fallback={
          <EntryCell
            row={row()}
            spot={{
              cell: props.cell,
              field: field(),
              kind: 'entry',
              quantity: props.input.quantity,
              role: props.input.role,
            }}
            text={text()}
            label={label()}
            blank={<Blank input={props.input} leftOpen={leftOpen()} />}
            example={example()}
            beside={
              <Show when={line().shape?.echoes[field()]}>
                {(echo) => <span class="beside block caption">= {writtenOut(echo())}</span>}
              </Show>
            }
          />
        }
      >
        <Match when={props.input.choice}>
          {(table) => (
            <GridCell row={row()} column="entry">
              <ChoiceField
                {...props}
                table={table()}
                text={text()}
                label={label()}
                leftOpen={leftOpen()}
                example={example()}
                onCommit={commit}
              />
              <Show when={line().shape?.echoes[field()]}>
                {(echo) => <span class="beside block caption">= {say(echo())}</span>}
              </Show>
              <Show when={rowOf(table(), text() || props.input.default || '')?.note}>
                {(note) => <span class="block caption">{say(note())}</span>}
              </Show>
              <Show when={!text() && example()}>{(key) => <Example text={rowName(table(), key())} />}</Show>
            </GridCell>
          )}
        </Match>
        <Match when={props.input.record}>
          {(kind) => (
            <GridCell row={row()} column="entry">
              <RecordField
                {...props}
                kind={kind()}
                text={text()}
                label={label()}
                leftOpen={leftOpen()}
                example={undefined}
                onCommit={commit}
              />
              <Show when={line().shape?.echoes[field()]}>
                {(echo) => <span class="beside block caption">= {say(echo())}</span>}
              </Show>
            </GridCell>
          )}
        </Match>
      </Switch>
      <GridCell row={row()} column="value" class="wide">
        <Show when={problem()}>{(p) => <ProblemNote problem={p()} cell={props.cell} brief />}</Show>
      </GridCell>
    </GridRow>
  );
};

const Blank = (props: { input: CellInput; leftOpen: boolean }) => (
  <Show when={props.input.default} fallback={blankWords(props.input, props.leftOpen)}>
    {(text) => (
      <>
        {props.leftOpen ? 'to be filled in; until then ' : ''}
        <span class="default text-soft">{writtenOut(text())}</span>
      </>
    )}
  </Show>
);

/** Of the choice that puts a new line in: no cell can have this name. */
const NEW_LINE = '+ new';

/** Takes the name of a cell of that kind; the sheet's own are offered, and a new one can be put in above. */
const RecordField = (props: FieldProps & { kind: string }) => {
  const context = useSheet();
  const { sheet, goTo } = context;
  const library = useLibrary();
  const list = createUniqueId();
  const offered = createKept<Array<{ id: string; name: string; label: string | undefined }>>(
    () =>
      sheet.state.order.flatMap((id) => {
        const record = sheet.line(id)?.record;
        return record?.role === 'cell' && record.kind === props.kind && record.name && id !== props.cell
          ? [{ id, name: record.name, label: record.label && say(record.label) }]
          : [];
      }),
    [],
  );
  const title = () => library()?.kinds.get(props.kind)?.title ?? props.kind;
  /** What other lines name for themselves, as this one can take it from them. */
  const taken = createKept<Array<{ entry: string; words: string }>>(() => {
    const all = library();
    const records = sheet.state.order.flatMap((id) => sheet.line(id)?.record ?? []);
    const named = all ? recordsNamed(props.kind, all.kinds, records, props.cell) : [];
    return named.map(({ entry, record, input }) => ({
      entry,
      words: `${sheet.titleOf(record.id)}: ${say(input.label)}`,
    }));
  }, []);
  const known = () =>
    !props.text ||
    offered().some((o) => o.name === props.text) ||
    taken().some(({ entry }) => entry === props.text);
  const add = () => {
    // Named by what it is there, `Bush material`, where that says it and no line is called so yet.
    const own = props.input.label.charAt(0).toUpperCase() + props.input.label.slice(1);
    const says = own.toLowerCase().includes(title().toLowerCase());
    const isFree = sheet.state.order.every((id) => sheet.line(id)?.record.label !== own);
    const label = says && isFree ? own : `${title()} for ${sheet.titleOf(props.cell)}`;
    putAbove(context, props.cell, { kind: props.kind, label }, (name) => props.onCommit(name ?? ''));
  };
  return (
    <>
      <select
        id={list}
        aria-label={props.label}
        value={props.text ?? ''}
        onChange={(event) => {
          if (event.currentTarget.value === NEW_LINE) {
            add();
            event.currentTarget.value = props.text ?? '';
          } else props.onCommit(event.currentTarget.value);
        }}
      >
        <option value="">{emptyWords(props.input, props.leftOpen)}</option>
        <Show when={!known()}>
          <option value={props.text}>{props.text}</option>
        </Show>
        <For each={offered()}>
          {(o) => (
            <option value={o.name} selected={o.name === props.text}>
              {o.label || o.name}
            </option>
          )}
        </For>
        <option value={NEW_LINE}>new line: {title()}</option>
        <Show when={taken().length > 0}>
          <optgroup label="the same as in">
            <For each={taken()}>
              {({ entry, words }) => (
                <option value={entry} selected={entry === props.text}>
                  {words}
                </option>
              )}
            </For>
          </optgroup>
        </Show>
      </select>
      <Show when={offered().find((o) => o.name === props.text)}>
        {(o) => (
          <button type="button" class="go" onClick={() => goTo(o().id)}>
            go to {o().label || o().name}
          </button>
        )}
      </Show>
    </>
  );
};
