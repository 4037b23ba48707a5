import { type CautionFor, cautionText } from '../../../cells/record/caution.ts';
import type { ChoiceRow } from '../../../cells/record/cell.ts';
import type { CellRecord } from '../../../shared/sheet/format.ts';
import { choiceIn } from '../rows/choice-in.ts';
import { choiceText } from '../rows/choices.ts';
import type { Library } from '../rows/library.ts';
import { recordTaken } from '../rows/records-taken.ts';

/** The surroundings of a cell: the library it is of, and the cells its inputs name. */
export interface CareFrom {
  library: Pick<Library, 'kinds' | 'tables'>;
  named: (name: string) => CellRecord | undefined;
}

/** Rows of tables that a cell chooses, of gauges apart: what those tables note is how to read, not what can hurt. */
const rowsOf = (record: CellRecord, from: CareFrom): ChoiceRow[] => {
  const { library } = from;
  const kind = library.kinds.get(record.kind ?? '');
  return (kind?.inputs ?? []).flatMap((input) => {
    const text = input.choice && input.choice !== 'gauges' && choiceText(record, input, from);
    const table = input.choice && library.tables.get(input.choice);
    return (text && table && choiceIn(table, text)) || [];
  });
};

const noteOf = ({ name, note }: ChoiceRow): string[] => (note === undefined ? [] : [`${name}: ${note}`]);

/**
 * What to be careful of at a library cell as it is filled in: its own cautions, as far as they hold for the metals and the
 * method chosen, and what the tables note of the rows it chooses, here or in the materials it takes.
 */
export const careOf = (record: CellRecord, from: CareFrom): string[] => {
  const kind = from.library.kinds.get(record.kind ?? '');
  if (!kind) return [];
  const taken = kind.inputs.flatMap((input) => {
    const text = record.inputs?.[input.name];
    const found = input.record && text ? recordTaken(text, input.record, from) : undefined;
    return found && 'record' in found ? found.record : [];
  });
  const own = rowsOf(record, from);
  const materials = [...(kind.key === 'material' ? own : []), ...taken.flatMap((cell) => rowsOf(cell, from))];
  const holds = ({ given, chosen, material }: CautionFor): boolean =>
    ((!given && !chosen) ||
      given?.some((name) => Boolean(record.inputs?.[name])) ||
      own.some(({ name }) => chosen?.test(name))) &&
    (!material || materials.length === 0 || materials.some(({ name }) => material.test(name)));
  const cautions = kind.cautions.filter((one) => typeof one === 'string' || holds(one)).map(cautionText);
  return [...new Set([...cautions, ...own.flatMap(noteOf), ...materials.flatMap(noteOf)])];
};
