import { type JSX, Show } from 'solid-js';
import { EntryEditor } from '../editor/entry-editor.tsx';
import { loadCommit } from '../editor/load.ts';
import type { EntrySpot } from '../editor/spot.ts';
import { writtenOut } from '../preferences/decimal-mark.ts';
import type { RowKey } from '../state/cursor.ts';
import { useSheet } from './context.ts';
import { GridCell } from './grid-cell.tsx';

export interface EntryCellProps {
  row: RowKey;
  spot: EntrySpot;
  text: string | undefined;
  label: string;
  /** Shown while there is no entry: what to type, or the library's default. */
  blank: JSX.Element;
  /** Tolerance, gauge, decimal echo: what stands below the entry. */
  beside?: JSX.Element;
}

/** The entry as typed; while it is being edited, the editor in its place. */
export const EntryCell = (props: EntryCellProps) => {
  const { cursor, sheet } = useSheet();
  const text = () => writtenOut(props.text ?? '', props.spot.kind === 'tolerance' ? 'Cut' : undefined);
  return (
    <GridCell row={props.row} column="entry" class="can-type" editable>
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
          onCommit={(typed) => {
            cursor.leave(props.row);
            const { spot } = props;
            if (typed !== text()) void loadCommit().then(({ commitText }) => commitText(sheet, spot, typed));
          }}
          onLeave={() => cursor.leave(props.row)}
        />
      </Show>
      {props.beside}
    </GridCell>
  );
};
