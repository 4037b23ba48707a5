import { CELL_FIELDS } from '../../shared/sheet/cell-fields.ts';
import type { CellRecord, SheetFile } from '../../shared/sheet/format.ts';
import { SHEET_FIELDS } from '../../shared/sheet/sheet-fields.ts';
import { flatten, sameValue } from './model/fields.ts';
import { toStored } from './model/references.ts';
import { textKind } from './model/texts.ts';
import { mapVariants } from './model/variants.ts';

/** A field that says another thing: values as they stand in the two files, undefined where it is absent. */
export interface FieldDifference {
  field: string;
  before: unknown;
  after: unknown;
}

export interface CellDifference {
  id: string;
  what: 'added' | 'gone' | 'changed';
  /** The cell as it is after, or was before it went. */
  cell: CellRecord;
  fields: FieldDifference[];
}

export interface Differences {
  /** In the order of the later file; cells that went come last. */
  cells: CellDifference[];
  /** Title block, units, rule and other settings. */
  sheet: FieldDifference[];
  /** The cells that are in both stand in another order. */
  moved: boolean;
}

/**
 * What changed from one file to another, cells known by their ids. A formula in which only the name of a cell is another
 * has not changed: the renamed cell alone is reported.
 */
export function differences(before: SheetFile, after: SheetFile): Differences {
  const [old, now] = [byId(before), byId(after)];
  const [told, tnow] = [tied(before), tied(after)];
  const cells: CellDifference[] = [];
  for (const [id, cell] of now) {
    const was = old.get(id);
    if (!was) cells.push({ id, what: 'added', cell, fields: [] });
    else {
      const fields = compare(flatten(was, CELL_FIELDS), flatten(cell, CELL_FIELDS), told, tnow);
      if (fields.length > 0) cells.push({ id, what: 'changed', cell, fields });
    }
  }
  for (const [id, cell] of old) if (!now.has(id)) cells.push({ id, what: 'gone', cell, fields: [] });
  return {
    cells,
    sheet: compare(settings(before), settings(after), told, tnow),
    moved: !sameValue(common(old, now), common(now, old)),
  };
}

type Cells = Map<string, CellRecord>;

/** Rewrites the texts of a field that name cells. */
export type Tie = (path: string, value: unknown) => unknown;

const byId = (file: SheetFile): Cells => new Map(file.cells.map((cell) => [cell.id, cell]));

const common = (cells: Cells, others: Cells): string[] => [...cells.keys()].filter((id) => others.has(id));

/** Texts of a file with ids in place of names, as the document stores them. */
export function tied(file: SheetFile): Tie {
  const ids = new Map(file.cells.flatMap((cell) => (cell.name ? [[cell.name, cell.id] as const] : [])));
  const records = new Set(file.cells.flatMap((cell) => (cell.role === 'cell' ? [cell.id] : [])));
  return (path, value) => {
    if (path === 'variants' && Array.isArray(value)) {
      const tie = (kind: 'name' | 'formula') => (text: string) =>
        toStored(text, kind, (name) => ids.get(name));
      return mapVariants(value, tie('name'), tie('formula'));
    }
    const kind = textKind(path);
    if (!kind || typeof value !== 'string') return value;
    const bare = kind === 'input' && !value.trimStart().startsWith('=');
    return toStored(value, kind, (name) => {
      const id = ids.get(name);
      return bare && id !== undefined && !records.has(id) ? undefined : id;
    });
  };
}

function settings({
  format: _format,
  version: _version,
  cells: _cells,
  ...rest
}: SheetFile): Map<string, unknown> {
  return flatten(rest, SHEET_FIELDS);
}

function compare(
  was: Map<string, unknown>,
  is: Map<string, unknown>,
  tieWas: Tie,
  tieIs: Tie,
): FieldDifference[] {
  const found: FieldDifference[] = [];
  for (const field of new Set([...was.keys(), ...is.keys()])) {
    const [before, after] = [was.get(field), is.get(field)];
    if (!sameValue(before, after) && !sameValue(tieWas(field, before), tieIs(field, after)))
      found.push({ field, before, after });
  }
  return found;
}
