import type { Role } from '../../../shared/sheet/format.ts';

/** Which text of the sheet is being edited, as far as the editor must know to complete and check it. */
export interface EntrySpot {
  cell: string;
  /** Path of the field in the file form: `entry`, `limits.lower`, `inputs.housing` ... */
  field: string;
  /** What the text is: an entry or formula, a tolerance, or the name of a cell. */
  kind: 'entry' | 'tolerance';
  /** Kind of quantity wanted there, where known. */
  quantity?: string | undefined;
  /** How the value comes about, where the field and its cell do not say: an input of a library cell. */
  role?: Role | undefined;
}
