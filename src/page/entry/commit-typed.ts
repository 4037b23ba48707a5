import { mergedReadings } from '../../document/model/merged-readings.ts';
import type { Sheet } from '../state/sheet.ts';
import { awaitFigures, behindFigures } from '../state/with-figures.ts';
import { commitAtHand, loadCommit } from './load.ts';
import type { EntrySpot } from './spot.ts';

export interface Typed {
  /** Absent where the text is as it was when the editor was opened. */
  text: string | undefined;
  /** What stands there by now, where that is another text than the editor was opened on. */
  meanwhile?: string | undefined;
  /** What stood there when the editor was opened. */
  opened?: string | undefined;
  byKey: boolean;
  /** Takes the editor away. */
  leave: () => void;
}

/** What stands in the sheet at a place, as it is stored. */
const textAt = (sheet: Sheet, { cell, field }: EntrySpot): unknown =>
  field
    .split('.')
    .reduce<unknown>(
      (value, key) => (value as Record<string, unknown> | undefined)?.[key],
      sheet.document.cell(cell),
    ) ?? '';

/**
 * Writes what was typed and leaves the editor. By a key, entry and figures are drawn together, and leaving goes behind them.
 * @param way `commitStored` for a text with a decimal point whatever the user writes.
 */
export const commitTyped = (
  sheet: Sheet,
  spot: EntrySpot,
  { text: typed, meanwhile: other, opened, byKey, leave }: Typed,
  way: 'commitText' | 'commitStored' = 'commitText',
): void => {
  const { cell, field } = spot;
  if (sheet.document.refuse) {
    if (typed !== undefined) sheet.document.refuse();
    leave();
    return;
  }
  // Readings that both added all stay.
  const merged =
    typed !== undefined && other !== undefined && opened !== undefined && !typed.includes(',')
      ? mergedReadings(opened, typed, other)
      : undefined;
  const [text, meanwhile] = merged === undefined ? [typed, other] : [merged, undefined];
  const gone = sheet.document.cell(cell) === undefined;
  if (text !== undefined && (gone || (meanwhile !== undefined && meanwhile !== text))) {
    const write = () =>
      void loadCommit().then(
        (loaded) => loaded[way](sheet, spot, text),
        () => void sheet.document.setField(cell, field, text),
      );
    const back = () => {
      sheet.document.reviveCell(cell);
      write();
    };
    sheet.conflicts.add({
      cell,
      field,
      mine: text,
      theirs: gone ? undefined : (meanwhile ?? ''),
      enter: gone ? back : write,
    });
    leave();
    return;
  }
  const write = text === undefined ? undefined : commitAtHand();
  if (write && text !== undefined) {
    if (byKey) awaitFigures();
    write[way](sheet, spot, text);
    behindFigures(leave);
    return;
  }
  leave();
  if (text === undefined) return;
  // What reads entries is not here yet, and may never come: what was typed stands as it was typed, and is saved, until then.
  sheet.document.setField(cell, field, text);
  void loadCommit().then(
    (loaded) => {
      if (textAt(sheet, spot) === text) loaded[way](sheet, spot, text);
    },
    () => undefined,
  );
};
