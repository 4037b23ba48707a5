import { For, Match, Show, Suspense, Switch } from 'solid-js';
import type { Role } from '../../../shared/sheet/format.ts';
import { late } from '../kit/late.tsx';
import { bandHead, bandWords, DEFERS } from '../state/care.ts';
import { useSheet } from '../state/context.ts';
import type { Column, Place } from '../state/cursor.ts';
import { editEntry, emptyEntry } from '../state/edit-entry.ts';
import { bringIntoView, keepInPlace, rowElement } from '../state/in-place.ts';
import { askAndDelete, moveLines } from '../state/lines-commands.ts';
import { cellOfRow, isLineRow, lineRow, rowOf } from '../state/row-key.ts';
import { useTools } from '../state/tools.ts';
import { gridAction, type GridRow as KeyRow } from './grid-keys.ts';
import { GridRow, StillCell } from './grid-row.tsx';
import { LibraryLine } from './library-line.tsx';
import './lines.css';
import { PlainLine } from './plain-line.tsx';
import { TextLine } from './text-line.tsx';

const AddLine = late('The form for a new line', () => import('../entry/add-line.tsx'));

const HEADS: ReadonlyArray<[Column, string]> = [
  ['number', 'No.'],
  ['name', 'Dimension'],
  ['entry', 'Entry'],
  ['value', 'Value and spread'],
  ['limits', 'Limits'],
  ['check', 'Check'],
];

/** Cells from which on the browser draws only the lines in view: below, it costs nothing that can be felt. */
const LONG = 120;

/**
 * Rows as they stand on the page, top to bottom; some columns are not there on a narrow one. They are looked at of the
 * rows alone that a key can lead to: of thousands that takes seconds.
 */
const rowsOnPage = (grid: HTMLElement): KeyRow[] =>
  [...grid.querySelectorAll<HTMLElement>('[data-row]')].map((row) => ({
    row: rowOf(row),
    get columns() {
      return [...row.querySelectorAll<HTMLElement>(':scope > [data-column]')]
        .filter((cell) => cell.checkVisibility())
        .map((cell) => cell.dataset.column as Column);
    },
  }));

/** The lines of the sheet as a grid. */
export const Lines = () => {
  const context = useSheet();
  const { sheet, cursor, adding } = context;
  const { selection } = useTools();
  const role = (id: string): Role | undefined => sheet.line(id)?.record.role;

  const moveTo = (place: Place) => {
    keepInPlace(place.row, () => cursor.move(place));
    bringIntoView(place.row);
  };
  const keys = (event: KeyboardEvent & { currentTarget: HTMLDivElement }) => {
    const place = cursor.place();
    // Only keys of the grid's own cells: a field inside one has its own.
    const focused = document.activeElement;
    if (!place || !focused?.matches('[data-column]') || !event.currentTarget.contains(focused)) return;
    const action = gridAction(rowsOnPage(event.currentTarget), place, event);
    if (!action) return;
    event.preventDefault();
    // Struck right behind an entry, the key was on its way to the editor, which is gone by now.
    if (event.target !== focused) event.stopPropagation();
    const cell = cellOfRow(place.row);
    switch (action.do) {
      case 'move':
        moveTo(action.to);
        break;
      case 'edit':
        edit(place, action.start);
        break;
      case 'unfold':
        cursor.setUnfolded(!cursor.unfolded());
        break;
      case 'fold':
        // An input or output folds away with its cell: the cursor stays with what is left.
        keepInPlace(lineRow(cell), () => cursor.setUnfolded(false));
        if (!rowElement(place.row)) moveTo({ row: lineRow(cell), column: 'name' });
        break;
      case 'delete':
        if (isLineRow(place.row)) askAndDelete(context, selection, [cell]);
        break;
      case 'empty':
        emptyEntry(context, place.row);
        break;
      case 'add':
        adding.begin(cell);
        break;
      case 'carry':
        moveLines(context, [cell], action.way);
        break;
    }
  };
  const edit = (place: Place, start: string | undefined) => {
    const inside = rowElement(place.row)?.querySelector<HTMLElement>('[data-column="entry"] select');
    if (inside) inside.focus();
    else editEntry(context, place.row, start);
  };

  return (
    <section aria-label="Lines">
      {/* biome-ignore lint/a11y/useSemanticElements: a table has no rows that unfold or stack on a phone */}
      <div
        class="lines"
        classList={{ long: sheet.state.order.length > LONG }}
        role="grid"
        aria-label="Lines of the sheet"
        aria-colcount={6}
        aria-multiselectable="true"
        // On the way down: by then the focus is where the entry before left it.
        on:keydown={{ capture: true, handleEvent: keys }}
      >
        <GridRow class="heads">
          <For each={HEADS}>
            {([column, word]) => (
              <ColumnHead
                column={column}
                word={word}
                beside={column === 'value' ? bandHead(sheet.state.rule) : undefined}
              />
            )}
          </For>
        </GridRow>
        <For each={sheet.state.order}>
          {(id) => (
            <>
              <Switch fallback={<PlainLine cell={id} />}>
                <Match when={role(id) === undefined}>{null}</Match>
                <Match when={role(id) === 'section' || role(id) === 'remark'}>
                  <TextLine cell={id} />
                </Match>
                <Match when={role(id) === 'cell'}>
                  <LibraryLine cell={id} />
                </Match>
              </Switch>
              <Show when={adding.after() === id}>
                <GridRow class="adding">
                  <StillCell span={6}>
                    <Suspense>
                      <AddLine after={id} onDone={adding.end} />
                    </Suspense>
                  </StillCell>
                </GridRow>
              </Show>
            </>
          )}
        </For>
      </div>
      <div class="p-3 lined-t-rule">
        <Show when={sheet.state.order.length === 0 && adding.after() !== null}>
          <p class="mb-3">
            Nothing stands here yet. Begin with what is known: a size the maker gives, or readings off the
            part. What is to be cut is worked out from those.
          </p>
        </Show>
        <Show
          when={adding.after() === null}
          fallback={
            <button type="button" onClick={() => adding.begin(null)}>
              Add a line
            </button>
          }
        >
          <Suspense>
            <AddLine after={sheet.state.order.at(-1) ?? null} onDone={adding.end} />
          </Suspense>
        </Show>
        <p class="caption mt-3 mb-0">{bandWords(sheet.state.rule)}</p>
        <p class="caption mb-0">{DEFERS}</p>
      </div>
    </section>
  );
};

const ColumnHead = (props: { column: Column; word: string; beside: string | undefined }) => (
  // biome-ignore lint/a11y/useFocusableInteractive: a head only names its column
  // biome-ignore lint/a11y/useSemanticElements: a table has no rows that unfold or stack on a phone
  <span role="columnheader" class={`head-${props.column}`}>
    {props.word}
    <Show when={props.beside}>
      , <small>{props.beside}</small>
    </Show>
  </span>
);
