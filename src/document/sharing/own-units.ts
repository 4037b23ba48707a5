import { CELL_FIELDS } from '../../../shared/sheet/cell-fields.ts';
import { fieldsIn, type ReadAs } from '../../../shared/sheet/field.ts';
import type { CellRecord, SheetFile, SheetUnits, TitleBlock } from '../../../shared/sheet/format.ts';
import {
  type EntryContext,
  type Handbook,
  NO_HANDBOOK,
  parseEntry,
  parseTolerance,
} from '../../language/parse.ts';
import { unitOfSize } from '../../language/values/tolerance-unit.ts';

export type LengthUnit = SheetUnits['length'];

/** What an output is shown in by its kind of cell, by the lengths of the sheet. */
type ShownByKind = Readonly<Partial<Record<LengthUnit, string>>>;

/** Kind of quantity of a text of a cell, where the cell itself does not say: an input or output of a library cell. */
export interface QuantityAt {
  (cell: CellRecord, field: string): string | undefined;
  shown?(cell: CellRecord, output: string): ShownByKind | undefined;
}

export interface Text {
  cell: CellRecord;
  field: string;
  text: string;
  quantity: string | undefined;
  role: ReadAs['role'];
  /** Unit that the value is shown in by its own wish: a bare figure may be in that one, and is asked about. */
  display?: string | undefined;
  /** The same, where its own wish says nothing. */
  byKind?: ShownByKind | undefined;
}

/** Every text of a cell that is read as an entry: what it means may depend on the units of its sheet. */
export function textsOf(cell: CellRecord, quantityAt: QuantityAt): Text[] {
  const ofLine = cell.quantity ?? quantityAt(cell, 'entry');
  const quantityOf = (path: string): string | undefined => {
    const [head, name] = path.split('.');
    if (head === 'outputs') return quantityAt(cell, `outputs.${name}`);
    return head === 'inputs' || head === 'examples' ? quantityAt(cell, `inputs.${name}`) : ofLine;
  };
  const displayOf = (path: string): string | undefined => {
    const [head, name = ''] = path.split('.');
    if (head === 'outputs') return cell.outputs?.[name]?.display;
    return head === 'inputs' || head === 'examples' ? undefined : cell.display;
  };
  return [...fieldsIn(cell, CELL_FIELDS)].flatMap(([path, { reads }, text]) => {
    if (!reads || typeof text !== 'string') return [];
    const own = reads.quantity === 'own';
    const quantity = own ? quantityOf(path) : reads.quantity;
    const [head, name = ''] = path.split('.');
    const byKind = own && head === 'outputs' ? quantityAt.shown?.(cell, name) : undefined;
    const display = own ? displayOf(path) : undefined;
    return [{ cell, field: path, text, quantity, role: reads.role, display, byKind }];
  });
}

export function readIn(
  { cell, field, text, quantity, role: as, display: wish, byKind }: Text,
  units: SheetUnits,
  handbook: Handbook,
) {
  // An input of a library cell may take a list of readings or a tolerance: its kind says which, and the units do not.
  const role = as !== 'own' ? as : cell.role === 'cell' ? undefined : cell.role;
  const display = wish ?? byKind?.[units.length];
  const context: EntryContext = {
    ...(quantity && { quantity }),
    ...(role && { role }),
    ...(display && { display }),
    units: { ...units },
    handbook,
  };
  if (field !== 'tolerance') return parseEntry(text, context);
  const sizeUnit = unitOfSize(parseEntry(cell.entry ?? '', context).entry);
  return parseTolerance(text, sizeUnit === undefined ? context : { ...context, sizeUnit });
}

/** Whether a text reads otherwise in a sheet of other units: it holds a number without one. */
function hangsOnUnits(text: Text, units: readonly SheetUnits[]): boolean {
  if (!text.text) return false;
  const readings = units.map((of) => {
    const read = readIn(text, of, NO_HANDBOOK);
    // What is shown beside an entry, and offered where it cannot be read, goes by the units of the sheet in any case.
    return JSON.stringify({ ...read, problems: undefined, echo: undefined });
  });
  return readings.some((reading) => reading !== readings[0]);
}

/** A text of a sheet with the unit that its numbers without one have there. */
export interface SettledText {
  cell: string;
  field: string;
  text: string;
}

/** The texts that would read otherwise in the other lengths, with their units written out: what a switch has to put in first. */
export function settledTexts(
  file: SheetFile,
  length: LengthUnit,
  quantityAt: QuantityAt,
  handbook: Handbook,
): SettledText[] {
  const other = { ...file.units, length };
  return file.cells.flatMap((cell) =>
    textsOf(cell, quantityAt).flatMap((text) => {
      const { field } = text;
      if (!text.text) return [];
      const here = readIn(text, file.units, handbook);
      if (here.problems.length > 0 || here.committed === text.text) return [];
      const there = readIn(text, other, handbook);
      return there.committed === here.committed ? [] : [{ cell: cell.id, field, text: here.committed }];
    }),
  );
}

/**
 * The texts that have no value for want of a unit, and would have one in the other lengths: 600, which in inches is asked
 * about, would be 600 mm, and nobody has said so.
 */
export function textsInDoubt(
  file: SheetFile,
  length: LengthUnit,
  quantityAt: QuantityAt,
  handbook: Handbook,
): Text[] {
  const other = { ...file.units, length };
  return file.cells.flatMap((cell) =>
    textsOf(cell, quantityAt).filter((text) => {
      if (!/\d/.test(text.text) || readIn(text, file.units, handbook).problems.length === 0) return false;
      const display = SHOWN_AS[length].get(text.display ?? '') ?? text.display;
      return readIn({ ...text, display }, other, handbook).problems.length === 0;
    }),
  );
}

/** Units of a sheet that is seen in other lengths: temperatures go with them. */
export const unitsSeen = (own: SheetUnits, length: LengthUnit): SheetUnits => {
  if (own.length === length) return own;
  const { temperature: _temperature, ...units } = own;
  return { ...units, length };
};

/** The temperature that sizes hold at with its unit written out, as the sheet reads it. */
export const settledReference = ({ title, units }: Pick<SheetFile, 'title' | 'units'>): TitleBlock => {
  const { referenceTemperature: text } = title;
  if (!text) return title;
  const { committed } = parseEntry(text, { quantity: 'temperature', units, handbook: NO_HANDBOOK });
  return { ...title, referenceTemperature: committed };
};

/** Cells with a number that gets its unit from the sheet, and would change its value with it. */
function withoutUnits(file: SheetFile, length: LengthUnit, quantityAt: QuantityAt): CellRecord[] {
  const other = unitsSeen(file.units, length);
  return file.cells.filter((cell) =>
    textsOf(cell, quantityAt).some((text) => hangsOnUnits(text, [file.units, other])),
  );
}

/** What a line of lengths is shown in where it was shown in a unit of the other system: sizes as sizes, steps as steps. */
const SHOWN_AS: Readonly<Record<LengthUnit, ReadonlyMap<string, string>>> = {
  mm: new Map([
    ['in', 'mm'],
    ['thou', 'um'],
    ['tenth_in', 'um'],
    ['uin', 'um'],
  ]),
  in: new Map([
    ['mm', 'in'],
    ['tenth_mm', 'thou'],
    ['um', 'thou'],
  ]),
};

const OTHER: Readonly<Record<LengthUnit, LengthUnit>> = { in: 'mm', mm: 'in' };

/**
 * Shown in the other lengths; a unit that the way back would not lead to (tenths, which are micrometres there, as
 * thousandths are) is kept for it, until another is chosen.
 */
const shownIn = <T extends { display?: string; displayOther?: string }>(of: T, length: LengthUnit): T => {
  const { display = '', displayOther: kept, ...rest } = of;
  const back = SHOWN_AS[OTHER[length]];
  if (kept !== undefined && back.get(kept) === display) return { ...rest, display: kept } as T;
  const other = SHOWN_AS[length].get(display);
  if (other === undefined) return of;
  return { ...rest, display: other, ...(back.get(other) !== display && { displayOther: display }) } as T;
};

export const cellShownIn = (cell: CellRecord, length: LengthUnit): CellRecord => {
  const own = shownIn(cell, length);
  if (!own.outputs) return own;
  const outputs = Object.entries(own.outputs).map(([name, output]) => [name, shownIn(output, length)]);
  return { ...own, outputs: Object.fromEntries(outputs) };
};

/** A unit that a line is shown in, or none. */
export interface ShownUnit {
  cell: string;
  field: string;
  text: string | undefined;
}

/** The units that lines and outputs of a sheet are shown in by their own wish, where other lengths ask for another. */
export function shownUnits(file: SheetFile, length: LengthUnit): ShownUnit[] {
  return file.cells.flatMap((cell) => {
    const at = (path: string, of: { display?: string; displayOther?: string }): ShownUnit[] => {
      const there = shownIn(of, length);
      return (['display', 'displayOther'] as const).flatMap((field) =>
        there[field] === of[field] ? [] : [{ cell: cell.id, field: path + field, text: there[field] }],
      );
    };
    return [
      ...at('', cell),
      ...Object.entries(cell.outputs ?? {}).flatMap(([name, output]) => at(`outputs.${name}.`, output)),
    ];
  });
}

/**
 * The sheet read in the units of this shop, down to the lines that are shown in thou or in micrometres. No entry is
 * touched and no value changes; a sheet with numbers that have no unit of their own stays in its units, and `kept` names
 * their cells.
 */
export function inOwnUnits(
  file: SheetFile,
  length: LengthUnit,
  quantityAt: QuantityAt,
): { file: SheetFile; kept: CellRecord[] } {
  if (file.units.length === length) return { file, kept: [] };
  const kept = withoutUnits(file, length, quantityAt);
  if (kept.length > 0) return { file, kept };
  const cells = file.cells.map((cell) => cellShownIn(cell, length));
  const [title, units] = [settledReference(file), unitsSeen(file.units, length)];
  return { file: { ...file, title, units, cells }, kept };
}
