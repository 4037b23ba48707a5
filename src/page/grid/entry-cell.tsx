import { type JSX, Show } from 'solid-js';
import { commitTyped, type Typed } from '../entry/commit-typed.ts';
import { EntryEditor } from '../entry/entry-editor.tsx';
import type { EntrySpot } from '../entry/spot.ts';
import { writtenOut } from '../kit/decimal-mark.ts';
import { useSheet } from '../state/context.ts';
import { listWords } from '../state/prompts.ts';
import type { RowKey } from '../state/row-key.ts';
import { GridCell } from './grid-cell.tsx';

export interface EntryCellProps {
  row: RowKey;
  spot: EntrySpot;
  text: string | undefined;
  label: string;
  /** Shown while there is no entry: what to type, or the library's default. */
  blank: JSX.Element;
  /** What an emptied line of a template might hold: shown as an example while there is no entry, never taken. */
  example?: string;
  /** Tolerance, gauge, decimal echo: what stands below the entry. */
  beside?: JSX.Element;
}

/** The entry as typed; while it is being edited, the editor in its place. */
export const EntryCell = (props: EntryCellProps) => {
  const { cursor, sheet } = useSheet();
  const text = () => writtenOut(props.text ?? '', props.spot.kind === 'tolerance' ? 'Cut' : undefined);
  const example = () => (props.text ? undefined : props.example);
  const description = () =>
    example() &&
    [`for example ${writtenOut(example()!)}`, listWords(example()!)].filter(Boolean).join('; write ');
  const commit = (typed: Pick<Typed, 'text' | 'meanwhile' | 'byKey'>) => {
    const { spot } = props;
    const { activeElement } = document;
    const leave = () => {
      // The focus first: to move it once the editor has gone would lay the page out for that alone.
      if (typed.byKey && document.activeElement === activeElement)
        activeElement?.closest<HTMLElement>('[data-column]')?.focus({ preventScroll: true });
      cursor.leave(props.row);
    };
    commitTyped(sheet, spot, { ...typed, leave });
  };
  return (
    <GridCell
      row={props.row}
      column="entry"
      class="can-type cursor-text"
      editable
      description={description()}
    >
      <Show
        when={cursor.isEdited(props.row)}
        fallback={
          <Show
            when={props.text}
            fallback={<span class="blank text-soft [font-style:oblique]">{props.blank}</span>}
          >
            <span class="typed whitespace-pre-wrap">{text()}</span>
          </Show>
        }
      >
        <EntryEditor
          spot={props.spot}
          text={cursor.start() ?? text()}
          stands={text()}
          label={props.label}
          onCommit={commit}
          onLeave={() => cursor.leave(props.row)}
        />
      </Show>
      <Show when={example()}>{(text) => <Example text={text()} />}</Show>
      {props.beside}
    </GridCell>
  );
};

/** Read out as the description of its cell, so that it is never taken for what stands there. */
export const Example = (props: { text: string }) => (
  <span class="example block caption italic" aria-hidden="true">
    e.g. {writtenOut(props.text)}
    {/* How a list is written is told where it is being written. */}
    <Show when={listWords(props.text)}>
      {(words) => <span class="hidden [.line.here_&]:block">{words()}</span>}
    </Show>
  </span>
);
