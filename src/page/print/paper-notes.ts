import { CELL_FIELDS } from '../../../shared/sheet/cell-fields.ts';
import { type Field, fieldsIn } from '../../../shared/sheet/field.ts';
import { fieldWords } from '../../../shared/sheet/field-words.ts';
import { TITLE_FIELDS } from '../../../shared/sheet/sheet-fields.ts';
import { say } from '../kit/words.ts';
import type { Sheet } from '../state/sheet.ts';

type Lines = Pick<Sheet, 'line' | 'numberOf' | 'titleOf'> & {
  state: Pick<Sheet['state'], 'title' | 'order'>;
};

const isNote = ([, field, text]: readonly [string, Field, unknown]): boolean =>
  field.noted === true && typeof text === 'string' && text !== '';

/** What the sheet and its lines say in words, each line by its number and label. */
export const paperNotes = (sheet: Lines): string[] => [
  ...[...fieldsIn(sheet.state.title, TITLE_FIELDS)].filter(isNote).map(([, , text]) => say(text as string)),
  ...sheet.state.order.flatMap((id) =>
    [...fieldsIn(sheet.line(id)?.record ?? {}, CELL_FIELDS)].filter(isNote).map(([path, , text]) => {
      const number = sheet.numberOf(id);
      const what = path === 'note' ? '' : `, ${fieldWords(path)}`;
      const where = number ? `${number} ${sheet.titleOf(id)}${what}: ` : '';
      return `${where}${say(text as string)}`;
    }),
  ),
];
