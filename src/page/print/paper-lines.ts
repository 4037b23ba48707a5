import { bandOf } from '../../../shared/checks/band.ts';
import type { CheckVerdict } from '../../../shared/checks/check.ts';
import { roleWord } from '../../../shared/sheet/role-words.ts';
import type { Figure, LimitFigures, OutputResult } from '../../engine/rows/results.ts';
import { leading } from '../kit/check-words.ts';
import { say } from '../kit/words.ts';
import { standingFigure } from '../state/moves.ts';
import type { Sheet } from '../state/sheet.ts';
import type { Told } from '../state/show.ts';

/** What is set aside is neither cut nor checked, and is not printed. */
const lineOf = (sheet: Sheet, id: string) => {
  const line = sheet.line(id);
  return line && sheet.asideOf(line.record) === undefined ? line : undefined;
};

interface PaperLine {
  cell: string;
  output: string;
  number: string;
  title: string;
  figure: Figure | undefined;
  /** A reading: its spread is an expanded uncertainty. */
  read: boolean;
}

export interface CutLine extends PaperLine {
  measured: Figure | undefined;
  limits: LimitFigures | undefined;
  word: string;
}

/** Sizes that are decided here and cut: chosen ones of a length, in the order of the sheet. */
export const cutLines = (sheet: Sheet): CutLine[] =>
  sheet.state.order.flatMap((id) => {
    const line = lineOf(sheet, id);
    const output = line?.result?.outputs.value;
    if (line?.record.role !== 'chosen' || !output) return [];
    const length = (output.quantity ?? line.record.quantity) === 'length';
    if (!length || !(line.record.tolerance || line.record.issued || line.record.measured || output.limits))
      return [];
    return [
      {
        cell: id,
        output: 'value',
        number: String(sheet.numberOf(id) ?? ''),
        title: sheet.titleOf(id),
        figure: output.planned,
        measured: output.measured,
        limits: output.limits,
        read: false,
        word: roleWord(line.record),
      },
    ];
  });

export interface CheckedOutput extends PaperLine {
  /** Of the output alone, for a cell whose own title has just been said. */
  label: string;
  limits: LimitFigures;
  check: CheckVerdict;
  /** The band its verdict goes by. */
  band: Told;
}

/** Limits may stand there without a figure in them: a side on which metal is still on, a rule. */
const isChecked = (output: OutputResult | undefined): output is OutputResult & { limits: LimitFigures } =>
  output?.limits !== undefined && leading(output.check).state !== 'no limits';

/** Every output that has limits. */
export const checkedOutputs = (sheet: Sheet): CheckedOutput[] =>
  sheet.state.order.flatMap((id) => {
    const line = lineOf(sheet, id);
    return Object.entries(line?.result?.outputs ?? {}).flatMap(([name, output]) => {
      const figure = standingFigure(output);
      const read = output.stands === 'measured' || line!.record.role === 'measured';
      return isChecked(output) && !output.idle
        ? [
            {
              cell: id,
              output: name,
              number: String(sheet.numberOf(id) ?? ''),
              label: say(output.label ?? name),
              title:
                name === 'value' ? sheet.titleOf(id) : `${sheet.titleOf(id)}: ${say(output.label ?? name)}`,
              figure,
              read,
              band: figure ? bandOf(figure, output, read) : read,
              limits: output.limits,
              check: output.check,
            },
          ]
        : [];
    });
  });

export interface KnownLine extends PaperLine {
  word: string;
  entry: string | undefined;
}

/** What was given, read and worked out, as far as it stands in no other table. */
export const knownLines = (sheet: Sheet): KnownLine[] => {
  const cut = new Set(cutLines(sheet).map((line) => line.cell));
  return sheet.state.order.flatMap((id) => {
    const line = lineOf(sheet, id);
    const role = line?.record.role;
    if (!line || (role !== 'given' && role !== 'measured' && role !== 'worked' && role !== 'chosen'))
      return [];
    const outputs = line.result?.outputs ?? {};
    if (isChecked(outputs.value) || cut.has(id)) return [];
    const name = outputs.value ? 'value' : 'mean';
    return [
      {
        cell: id,
        output: name,
        number: String(sheet.numberOf(id) ?? ''),
        title: sheet.titleOf(id),
        word: roleWord(line.record),
        figure: standingFigure(outputs[name]),
        read: line.record.role === 'measured',
        entry: line.record.entry,
      },
    ];
  });
};
