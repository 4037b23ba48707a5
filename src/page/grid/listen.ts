import { readingsFrom, readTable, writeTable } from '../entry/table.ts';
import { copyText } from '../kit/copy-text.ts';
import type { SheetContext } from '../state/context.ts';
import { askAndDelete, namesOf } from '../state/lines-commands.ts';
import { standingFigure } from '../state/moves.ts';
import { cellOfRow, outputOfRow } from '../state/row-key.ts';
import type { Selection } from '../state/selection.ts';
import { asHtml, linesAsFile, linesAsTable } from './copied.ts';

/** By where the focus is: the browser aims these events at the text selection, which may lie anywhere. */
const inGrid = (): boolean =>
  document.activeElement?.matches('[role="grid"] [data-column]') === true &&
  !document.querySelector('dialog[open]');

/** Lines a command on lines is about: the chosen ones, else the one under the cursor. */
export const wantedLines = ({ cursor }: Pick<SheetContext, 'cursor'>, selection: Selection): string[] => {
  const place = cursor.place();
  return selection.any() ? selection.ids() : place ? [cellOfRow(place.row)] : [];
};

/** The one figure or entry under the cursor as text, where the cursor stands on one. */
const textAt = ({ sheet, cursor, show }: SheetContext): string | undefined => {
  const place = cursor.place();
  if (!place || (place.column !== 'entry' && place.column !== 'value')) return undefined;
  if (place.column === 'entry')
    return (
      document.querySelector(`[data-row="${CSS.escape(place.row)}"] [data-column="entry"] .typed`)
        ?.textContent ?? undefined
    );
  const cell = cellOfRow(place.row);
  const outputs = sheet.line(cell)?.result?.outputs;
  const output = outputOfRow(place.row) === 'value' && !outputs?.value ? 'mean' : outputOfRow(place.row);
  const figure = output && standingFigure(outputs?.[output]);
  return figure ? show.output(cell, output).value(figure).replaceAll('\u00a0', ' ') : undefined;
};

/** Puts chosen lines, or the text under the cursor, on the clipboard of a copy or cut. @returns the lines taken. */
const fill = (event: ClipboardEvent, context: SheetContext, selection: Selection): string[] | undefined => {
  if (!event.clipboardData || !inGrid() || !(getSelection()?.isCollapsed ?? true)) return undefined;
  const text = selection.any() ? undefined : textAt(context);
  event.preventDefault();
  if (text !== undefined) {
    event.clipboardData.setData('text/plain', text);
    context.notices.say(`Copied ${text}.`);
    return undefined;
  }
  const ids = wantedLines(context, selection);
  if (ids.length === 0) return undefined;
  event.clipboardData.setData('text/plain', linesAsFile(context, ids));
  event.clipboardData.setData('text/html', asHtml(linesAsTable(context, ids)));
  return ids;
};

/** Pastes at the cursor. Where what reads it does not come, the text is kept to be tried again. */
const pasteAt = (context: SheetContext, selection: Selection, text: string): void => {
  void import('./paste.ts').then(
    ({ pasteText }) => pasteText(context, selection, text),
    () =>
      context.notices.say('What reads a pasted text could not be fetched. Nothing was pasted.', {
        label: 'Try again',
        run: () => pasteAt(context, selection, text),
      }),
  );
};

/** Copy, cut and paste by the browser's own keys and menus, on the grid. @returns the way to let go. */
export const listenToClipboard = (context: SheetContext, selection: Selection): (() => void) => {
  const { notices } = context;
  const copy = (event: ClipboardEvent) => {
    const ids = fill(event, context, selection);
    if (ids) notices.say(`Copied ${namesOf(context, ids)}.`);
  };
  const cut = (event: ClipboardEvent) => {
    const ids = fill(event, context, selection);
    if (ids) askAndDelete(context, selection, ids, 'Cut');
  };
  const paste = (event: ClipboardEvent) => {
    const text = event.clipboardData?.getData('text/plain') ?? '';
    const target = event.composedPath()[0];
    // The plain field that stands in for the editor would lose the line breaks.
    if (target instanceof HTMLInputElement && target.closest('.editor')) {
      const readings = text.includes('\n') ? readingsFrom(readTable(text)) : undefined;
      if (!readings) return;
      event.preventDefault();
      target.setRangeText(readings.text, target.selectionStart ?? 0, target.selectionEnd ?? 0, 'end');
      return;
    }
    if (!inGrid()) return;
    event.preventDefault();
    pasteAt(context, selection, text);
  };
  document.addEventListener('copy', copy);
  document.addEventListener('cut', cut);
  document.addEventListener('paste', paste, true);
  return () => {
    document.removeEventListener('copy', copy);
    document.removeEventListener('cut', cut);
    document.removeEventListener('paste', paste, true);
  };
};

/** Copies by a button: lines as a sheet file, or as a table for a spreadsheet. */
export const copyLines = async (
  context: SheetContext,
  ids: readonly string[],
  as: 'lines' | 'table',
): Promise<void> => {
  const text = as === 'table' ? writeTable(linesAsTable(context, ids)) : linesAsFile(context, ids);
  context.notices.say(
    (await copyText(text))
      ? `Copied ${namesOf(context, ids)}${as === 'table' ? ' as a table' : ''}.`
      : 'The browser does not let the page write to the clipboard: use Ctrl+C on the lines.',
  );
};

/** Pastes by a button, where the browser lets the page read the clipboard. */
export const pasteByButton = async (context: SheetContext, selection: Selection): Promise<void> => {
  const text = await navigator.clipboard.readText().catch(() => undefined);
  if (text === undefined)
    context.notices.say('The browser does not let the page read the clipboard: use Ctrl+V on a line.');
  else pasteAt(context, selection, text);
};
