import type { CellRecord } from '../../../shared/sheet/format.ts';
import { choiceIn } from '../../engine/rows/choice-in.ts';
import { choiceText } from '../../engine/rows/choices.ts';
import type { Library } from '../../engine/rows/library.ts';
import type { Figure } from '../../engine/rows/results.ts';
import { writtenOut } from '../kit/decimal-mark.ts';
import { say } from '../kit/words.ts';
import { standingFigure } from '../state/moves.ts';
import type { Sheet } from '../state/sheet.ts';
import { titled } from '../state/titled.ts';

interface BenchLine {
  number: string;
  title: string;
}

export interface ReadingLine extends BenchLine {
  /** One by one, as they were read. */
  readings: string;
  gauge: string | undefined;
}

/** What was read off the parts, reading by reading, and with what. */
export const readingLines = (sheet: Sheet): ReadingLine[] =>
  sheet.state.order.flatMap((id) => {
    const record = sheet.line(id)?.record;
    if (!record || sheet.asideOf(record) !== undefined) return [];
    const number = String(sheet.numberOf(id) ?? '');
    const line = (title: string, entry: string | undefined, gauge: string | undefined): ReadingLine[] =>
      entry ? [{ number, title, readings: writtenOut(entry), gauge: gauge && titled(sheet, gauge) }] : [];
    return [
      ...(record.role === 'measured' ? line(sheet.titleOf(id), record.entry, record.gauge) : []),
      ...line(sheet.titleOf(id), record.measured?.entry, record.measured?.gauge ?? record.gauge),
      ...Object.entries(record.outputs ?? {}).flatMap(([name, { measured }]) => {
        const label = say(sheet.line(id)?.result?.outputs[name]?.label ?? name);
        return line(`${sheet.titleOf(id)}: ${label}`, measured?.entry, measured?.gauge);
      }),
    ];
  });

/** Kinds of cell that stand for a thing in the shop: their row of the table says which. */
const THINGS: Readonly<Record<string, string>> = { material: 'material', gauge: 'gauge' };

const isThing = (record: CellRecord): boolean => (record.kind ?? '') in THINGS;

/** Which metal each part is of, and what each gauge is. */
export const thingLines = (sheet: Sheet, library: Library | undefined): Array<BenchLine & { is: string }> =>
  sheet.state.order.flatMap((id) => {
    const record = sheet.line(id)?.record;
    const name = record?.kind === undefined ? undefined : THINGS[record.kind];
    const input = library?.kinds.get(record?.kind ?? '')?.inputs.find((one) => one.name === name);
    const table = input?.choice ? library?.tables.get(input.choice) : undefined;
    const named = (of: string) => sheet.line(sheet.idOf(of) ?? of)?.record;
    const text = library && record && input && choiceText(record, input, { library, named });
    const row = table && choiceIn(table, text || '');
    if (!row) return [];
    return [{ number: String(sheet.numberOf(id) ?? ''), title: sheet.titleOf(id), is: say(row.name) }];
  });

export interface WorkedLine extends BenchLine {
  cell: string;
  outputs: Array<{ output: string; label: string; figure: Figure }>;
}

/** The figures on the face of the cells: the force of the press and its gauge, what a bush closes in, how hot to heat. */
export const workedLines = (sheet: Sheet, library: Library | undefined): WorkedLine[] =>
  sheet.state.order.flatMap((id) => {
    const line = sheet.line(id);
    const kind = line && !isThing(line.record) && library?.kinds.get(line.record.kind ?? '');
    const outputs = (kind ? kind.outputs : []).flatMap(({ name, label, face }) => {
      const figure = face && standingFigure(line?.result?.outputs[name]);
      return figure ? [{ output: name, label, figure }] : [];
    });
    if (outputs.length === 0) return [];
    return [{ cell: id, number: String(sheet.numberOf(id) ?? ''), title: sheet.titleOf(id), outputs }];
  });
