import { createMemo, Show } from 'solid-js';
import { isProven } from '../../../shared/checks/states.ts';
import { putTypedAside } from '../kit/typed-aside.ts';
import { isReadOffPart } from '../state/as-cut.ts';
import {
  type EntriesAsked,
  entriesAsked,
  isBlankLine,
  limitsWanted,
  nextAsked,
  nextBehind,
  waitedFor,
} from '../state/asked.ts';
import { type SheetContext, useSheet } from '../state/context.ts';
import { editEntry } from '../state/edit-entry.ts';
import { bringUp, rowElement } from '../state/in-place.ts';
import { useLibrary } from '../state/library.ts';
import { cellOfRow, isLineRow, lineRow, partsOfRow, type RowKey } from '../state/row-key.ts';
import { offerTyped } from './offer-typed.ts';

/** Entries that are still to be made. */
export const askedOf = ({ sheet }: SheetContext): EntriesAsked => {
  const lines = sheet.lines().filter(({ record }) => sheet.asideOf(record) === undefined);
  return entriesAsked(
    lines.map(({ record }) => record),
    useLibrary()(),
    waitedFor(lines.flatMap(({ result }) => result ?? [])),
  );
};

/** Sizes that are read off the part once it is cut, and that were not read yet. What follows from others need not be read. */
export const readingsAsked = ({ sheet }: SheetContext): RowKey[] =>
  sheet.lines().flatMap(({ record, result }) => {
    const { id, role, gauge, measured } = record;
    if (measured?.entry || (role !== 'chosen' && gauge === undefined)) return [];
    if (isBlankLine(record) || sheet.asideOf(record) !== undefined || !isReadOffPart(sheet, record))
      return [];
    const state = result?.outputs.value?.check.asNew.state;
    return state !== undefined && isProven(state) ? [] : [lineRow(id)];
  });

const limitsOf = ({ sheet }: SheetContext, row: RowKey) => {
  const record = sheet.line(cellOfRow(row))?.record;
  return record ? limitsWanted(record).filter((one) => one.row === row) : [];
};

/** The limit to fill in of a row whose entry is there. */
const limitToFill = (context: SheetContext, row: RowKey) => {
  const record = context.sheet.line(cellOfRow(row))?.record;
  return record && !isBlankLine(record) ? limitsOf(context, row)[0] : undefined;
};

/** How long the unfolded line may take to come, in frames. */
const FRAMES = 120;

/**
 * Opens a field of the unfolded line for typing, once it is there: what is typed until then goes into it, and is offered
 * where it never comes.
 */
const focusField = (context: SheetContext, cell: string, field: string): void => {
  let typed = '';
  const hold = (event: KeyboardEvent) => {
    if (event.key.length > 1 || event.ctrlKey || event.metaKey || event.altKey) return;
    event.preventDefault();
    event.stopImmediatePropagation();
    typed += event.key;
  };
  const look = (left: number): void => {
    const found = document.querySelector<HTMLElement>(`[data-field="${CSS.escape(field)}"] input`);
    const isThere = found?.checkVisibility();
    if (!isThere && left > 0) {
      requestAnimationFrame(() => look(left - 1));
      return;
    }
    removeEventListener('keydown', hold, true);
    if (isThere) found!.focus();
    if (!typed) return;
    if (!isThere) {
      putTypedAside(context.sheet.document.id, { cell, field }, typed);
      offerTyped(context);
    } else document.execCommand('insertText', false, typed);
  };
  addEventListener('keydown', hold, true);
  look(FRAMES);
};

/** Goes to a limit of a row in the unfolded line. */
const toLimit = (context: SheetContext, row: RowKey, field: string): void => {
  const cell = cellOfRow(row);
  context.goTo(cell, partsOfRow(row).output);
  context.cursor.setUnfolded(true);
  focusField(context, cell, field);
};

/** What stands in the editor that has the keyboard. */
const typedNow = (): string => document.activeElement?.shadowRoot?.activeElement?.textContent ?? '';

/** Takes what is being typed, as a click elsewhere does. */
const takeTyped = (): void => {
  if (document.activeElement instanceof HTMLElement) document.activeElement.blur();
};

/** Goes to the next size to read and opens its box; where what is typed is the last of them, takes it. */
const toNextReading = (context: SheetContext): void => {
  const { sheet, cursor, goTo } = context;
  const rows = readingsAsked(context);
  const typed = cursor.editing()?.row;
  const row = nextAsked(
    rows.filter((one) => one !== typed),
    sheet.state.order,
    cursor.place()?.row,
  );
  if (!row) {
    if (typed !== undefined || typedNow() !== '') takeTyped();
    return;
  }
  goTo(cellOfRow(row));
  cursor.setUnfolded(false);
  cursor.editAsCut(row);
  bringUp(row);
};

/**
 * Goes to the next entry to make and opens it for typing; past the last, to the first. Where none is left to make, on
 * through those that may be entered where known, once: past the last of them, to the next size to read.
 */
export const toNextEntry = (context: SheetContext, only?: 'entry' | 'reading'): void => {
  const { sheet, cursor, goTo } = context;
  const { must, may } = askedOf(context);
  const from = cursor.place()?.row;
  // What is being typed there may not be in yet: it is left behind as if it were.
  const isTyping = from !== undefined && cursor.editing()?.row === from;
  const isTyped = typedNow() !== '';
  const limits = from ? limitsOf(context, from) : [];
  const field = document.activeElement?.closest<HTMLElement>('[data-field]')?.dataset.field;
  const at = limits.findIndex((one) => one.field === field);
  // The limits to fill in of a line come behind its entry, one after the other.
  if (from && ((isTyping && isTyped) || limitToFill(context, from))) {
    const next = limits[at + 1];
    if (next) {
      toLimit(context, from, next.field);
      return;
    }
  }
  const { order } = sheet.state;
  const around = (rows: readonly RowKey[]) => {
    const next = nextAsked(rows, order, from);
    return (isTyping || (at >= 0 && isTyped)) && next === from ? undefined : next;
  };
  const known = () => {
    if (only === 'entry') return around(may);
    const isRead = from !== undefined && cursor.isEditedAsCut(from);
    const behind = isRead ? undefined : nextBehind(may, order, from);
    return behind ?? (readingsAsked(context).length > 0 ? undefined : around(may));
  };
  const row = around(must) ?? (only === 'reading' ? undefined : known());
  if (!row) {
    toNextReading(context);
    return;
  }
  goTo(cellOfRow(row));
  // A plain line says under its label what is wanted: unfolded, all that can be set about it would be in the way.
  if (isLineRow(row)) cursor.setUnfolded(false);
  const limit = limitToFill(context, row);
  if (limit) {
    toLimit(context, row, limit.field);
    return;
  }
  // A list to choose from, and a choice in words, take the keys themselves.
  const list = isLineRow(row)
    ? undefined
    : rowElement(row)?.querySelector<HTMLElement>('[data-column="entry"] :is(select, input)');
  if (list) {
    cursor.move({ row, column: 'entry' });
    list.focus({ preventScroll: true });
  } else editEntry(context, row);
  bringUp(row);
};

/** At hand while somebody works down a sheet: the way to the next entry. */
export const NextEntry = () => {
  const context = useSheet();
  const left = createMemo(() => askedOf(context).must.length);
  return (
    <Show when={left() > 0}>
      <div class="next-entry sticky bottom-0 z-3 flex items-center justify-end gap-3 px-3 py-1 bg-paper lined-t phone:bottom-[var(--notice,0)]">
        <span class="caption">
          {left()} to make<span class="touch:hidden">; F8 goes on</span>
        </span>
        <button type="button" class="main" title="F8" onClick={() => toNextEntry(context)}>
          Next entry
        </button>
      </div>
    </Show>
  );
};
