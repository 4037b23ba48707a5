import { CELL_FIELDS } from '../../../shared/sheet/cell-fields.ts';
import { fieldAtPath, type TextKind } from '../../../shared/sheet/field.ts';

/** How the names in a field of a cell are tied to cells, by stored path; undefined where no cell is named. */
export const textKind = (path: string): TextKind | undefined => fieldAtPath(CELL_FIELDS, path)?.refers;
