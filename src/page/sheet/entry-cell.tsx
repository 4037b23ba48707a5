import { batch, type JSX, Show } from 'solid-js';
import { EntryEditor } from '../editor/entry-editor.tsx';
import { withCommit } from '../editor/load.ts';
import type { EntrySpot } from '../editor/spot.ts';
import { writtenOut } from '../preferences/decimal-mark.ts';
import type { RowKey } from '../state/cursor.ts';
import { useSheet } from './context.ts';
import './example.css';
import { GridCell } from './grid-cell.tsx';
import { listWords } from './prompts.ts';

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

/** Moves the focus from the editor to the cell of the grid that it stands in. */
const focusAround = (): void =>
  document.activeElement?.closest<HTMLElement>('[data-column]')?.focus({ preventScroll: true });

/** The entry as typed; while it is being edited, the editor in its place. */
export const EntryCell = (props: EntryCellProps) => {
  const { cursor, sheet } = useSheet();
  const text = () => writtenOut(props.text ?? '', props.spot.kind === 'tolerance' ? 'Cut' : undefined);
  const example = () => (props.text ? undefined : props.example);
  const description = () =>
    example() &&
    [`for example ${writtenOut(example()!)}`, listWords(example()!)].filter(Boolean).join('; write ');
  return (
    <GridCell row={props.row} column="entry" class="can-type" editable description={description()}>
      <Show
        when={cursor.isEdited(props.row)}
        fallback={
          <Show when={props.text} fallback={<span class="blank">{props.blank}</span>}>
            <span class="typed">{text()}</span>
          </Show>
        }
      >
        <EntryEditor
          spot={props.spot}
          text={cursor.start() ?? text()}
          label={props.label}
          onCommit={(typed, byKey) => {
            const { spot } = props;
            // The engine hears of it first; then the focus goes, while the page is laid out and need not be for it alone.
            batch(() => {
              if (typed !== text()) withCommit(({ commitText }) => commitText(sheet, spot, typed));
              if (byKey) focusAround();
              cursor.leave(props.row);
            });
          }}
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
  <span class="example" aria-hidden="true">
    e.g. {writtenOut(props.text)}
    <Show when={listWords(props.text)}>{(words) => <span class="lists">{words()}</span>}</Show>
  </span>
);
