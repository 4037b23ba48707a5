import type { Field } from '../../../shared/sheet/field.ts';
import type { TitleBlock } from '../../../shared/sheet/format.ts';
import { TITLE_FIELDS } from '../../../shared/sheet/sheet-fields.ts';

/** A box of the title block that holds free text. */
export interface TitleBox {
  field: Exclude<keyof TitleBlock, 'tags'>;
  label: string;
  /** A narrow screen shows it before it is asked for the rest. */
  first: boolean;
}

const capital = (label: string): string => label.charAt(0).toUpperCase() + label.slice(1);

/** Data fields of ISO 7200, in the words of a repair shop, in the order of their boxes on the page and on paper. */
export const titleBoxes = (): TitleBox[] =>
  (Object.entries(TITLE_FIELDS.fields) as Array<[TitleBox['field'], Field]>)
    .flatMap(([field, { label, box }]) => (box ? [{ field, label: capital(label), ...box }] : []))
    .sort((a, b) => a.place - b.place);
