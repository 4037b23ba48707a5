import { type JSX, Show } from 'solid-js';
import { commitTyped, type Typed } from '../entry/commit-typed.ts';
import { EntryEditor } from '../entry/entry-editor.tsx';
import type { EntrySpot } from '../entry/spot.ts';
import { inUsualUnits, writtenOut } from '../kit/decimal-mark.ts';
import { useSheet } from '../state/context.ts';
import { isLocked, sayLocked } from '../state/edit-entry.ts';
import { focusWork } from '../state/focus-work.ts';
import { listWords } from '../state/prompts.ts';
import type { RowKey } from '../state/row-key.ts';
import { backToCell } from './back-to-cell.ts';
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
  const context = useSheet();
  const { cursor, sheet } = context;
  const locked = () => isLocked(context, props.row);
  const text = () =>
    inUsualUnits(
      writtenOut(props.text ?? '', props.spot.kind === 'tolerance' ? 'Cut' : undefined),
      sheet.state.units.tenth,
    );
  const example = () => (props.text ? undefined : props.example);
  const description = () =>
    example() &&
    [`for example ${writtenOut(example()!)}`, listWords(example()!)].filter(Boolean).join('; write ');
  const commit = (typed: Omit<Typed, 'leave'>) => {
    const { spot } = props;
    const back = typed.byKey ? backToCell() : undefined;
    const leave = () => {
      back?.();
      cursor.leave(props.row);
    };
    const { text: changed } = typed;
    if (changed !== undefined && spot.kind === 'entry' && locked()) {
      leave();
      sayLocked(context, props.row, changed, () =>
        commitTyped(sheet, spot, { ...typed, byKey: false, leave: () => undefined }),
      );
      return;
    }
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
            <Show when={locked()}>
              <LockSign />
            </Show>
          </Show>
        }
      >
        <EntryEditor
          spot={props.spot}
          text={cursor.start() ?? text()}
          stands={text()}
          label={props.label}
          onCommit={commit}
          onLeave={() => {
            backToCell()();
            cursor.leave(props.row);
          }}
        />
      </Show>
      <LockedNote row={props.row} />
      <Show when={example()}>{(text) => <Example text={text()} />}</Show>
      {props.beside}
    </GridCell>
  );
};

/** What a locked line says where somebody began to type in it, with what unlocks it. */
const LockedNote = (props: { row: RowKey }) => {
  const context = useSheet();
  const { cursor, locked } = context;
  const said = () => {
    const one = locked.of(props.row);
    return one && (one.waits || cursor.isRow(props.row)) ? one : undefined;
  };
  const done = (then: () => void) => {
    then();
    // What was pressed has gone, and the focus with it.
    queueMicrotask(() => focusWork(context));
  };
  return (
    <div role="status">
      <Show when={said()}>
        {(one) => (
          <span class="remark-note block mt-1 pl-2 barred-doubt text-small">
            {one().text}
            <span class="flex flex-wrap gap-x-2 gap-y-1 pt-1 print:hidden">
              <button
                type="button"
                class="px-2 min-h-28px text-left touch:min-h-target"
                onClick={() => done(one().unlock)}
              >
                {one().label}
              </button>
              <Show when={one().waits}>
                <button
                  type="button"
                  class="px-2 min-h-28px text-left touch:min-h-target"
                  onClick={() => done(() => locked.leave(props.row))}
                >
                  Leave it as it is
                </button>
              </Show>
            </span>
          </span>
        )}
      </Show>
    </div>
  );
};

/** Beside an entry that its author locked. */
const LockSign = () => (
  <svg
    class="ml-1 inline-block text-soft"
    viewBox="0 0 12 14"
    width="10"
    height="12"
    role="img"
    aria-label="locked"
  >
    <path d="M3 6V4a3 3 0 0 1 6 0v2M1.5 6h9v7h-9z" fill="none" stroke="currentColor" stroke-width="1.4" />
  </svg>
);

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
