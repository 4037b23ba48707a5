import { NEW_LINE, resumeTyped, type TypedAside, takeTypedAside } from '../kit/typed-aside.ts';
import type { SheetContext } from '../state/context.ts';
import { inputRow, lineRow, outputRow, type RowKey } from '../state/row-key.ts';
import { titleBoxes } from '../state/title-boxes.ts';

/** Row of the grid in which a field is typed; nothing for those of the unfolded line. */
const rowOf = (cell: string, field: string): RowKey | undefined => {
  const [part, name] = field.split('.');
  if (part === 'entry') return lineRow(cell);
  if (part === 'inputs' && name) return inputRow(cell, name);
  return part === 'outputs' && name && field.endsWith('.measured.entry') ? outputRow(cell, name) : undefined;
};

type Context = Omit<SheetContext, 'chain' | 'show'>;

/** What it was typed for, in words. */
const placeWords = ({ sheet }: Context, { cell, field }: TypedAside): string => {
  if (field === NEW_LINE) return 'a new line';
  if (cell !== '') return sheet.titleOf(cell);
  return `the title block${titleBoxes()
    .filter((box) => box.field === field)
    .map(({ label }) => `, ${label}`)
    .join('')}`;
};

/** Offers to go on with what was typed and not entered as this sheet's page, or the view at the machine, went. */
export const offerTyped = (context: Context): void => {
  const { sheet, cursor, notices, goTo, adding } = context;
  const typed = takeTypedAside(sheet.document.id);
  if (!typed) return;
  const { cell, field, text } = typed;
  const isGone = cell !== '' && !sheet.line(cell);
  if (isGone && field === NEW_LINE) return;
  const row = rowOf(cell, field);
  const goOn = () => {
    if (isGone) sheet.document.reviveCell(cell);
    if (field === NEW_LINE) adding.begin(cell === sheet.state.order.at(-1) ? null : cell || null);
    else if (cell !== '') goTo(cell);
    if (row) cursor.edit(row, text);
    else if (field === 'measured.entry') cursor.editAsCut(lineRow(cell), text);
    // A field that is no entry of the grid; some inputs of library cells too.
    resumeTyped(typed);
  };
  notices.say(
    isGone
      ? `“${text}” was typed in a line that has been deleted since.`
      : `“${text}” was typed for ${placeWords(context, typed)} and is not entered yet.`,
    { label: isGone ? 'Bring the line back and go on' : 'Go on with it', run: goOn },
  );
};
