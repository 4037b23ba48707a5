import { FORMAT, type SheetFile, VERSION } from '../../../shared/sheet/format.ts';
import { writeSheet } from '../../../shared/sheet/write.ts';
import { leading } from '../kit/check-words.ts';
import type { SheetContext } from '../state/context.ts';
import { standingFigure } from '../state/moves.ts';

type Seen = Pick<SheetContext, 'sheet' | 'show'>;

/** Lines as a sheet of our own file format, so that they can be put into any sheet, or a message, and read back. */
export const linesAsFile = ({ sheet }: Seen, ids: readonly string[]): string => {
  const wanted = new Set(ids);
  const whole = sheet.document.toFile();
  const file: SheetFile = {
    format: FORMAT,
    version: VERSION,
    title: { title: whole.title.title },
    units: whole.units,
    rule: whole.rule,
    cells: whole.cells.filter(({ id }) => wanted.has(id)),
  };
  return writeSheet(file);
};

const HEAD = ['No.', 'Dimension', 'Name', 'Value', 'Unit', 'Least', 'Greatest', 'Check'];

/** The figures of lines as a table, one output a row, to be worked on in a spreadsheet. */
export const linesAsTable = ({ sheet, show }: Seen, ids: readonly string[]): string[][] => {
  const rows = ids.flatMap((id) => {
    const line = sheet.line(id);
    if (!line) return [];
    const number = String(sheet.numberOf(id) ?? '');
    const name = line.record.name ?? '';
    const outputs = Object.entries(line.result?.outputs ?? {}).filter(([, output]) => standingFigure(output));
    if (outputs.length === 0)
      return [[number, sheet.titleOf(id), name, line.record.entry ?? '', '', '', '', '']];
    return outputs.map(([output, result]) => {
      const at = show.output(id, output);
      const figure = standingFigure(result)!;
      const { state } = leading(result.check);
      return [
        number,
        output === 'value' ? sheet.titleOf(id) : `${sheet.titleOf(id)}: ${result.label ?? output}`,
        output === 'value' ? name : `${name}.${output}`,
        at.number(figure.value, figure),
        at.unit.label,
        at.number(figure.low, figure),
        at.number(figure.high, figure),
        state === 'no limits' ? '' : state,
      ];
    });
  });
  return [HEAD, ...rows];
};

const escaped = (text: string): string =>
  text.replace(/[&<>]/g, (c) => ({ '&': '&amp;', '<': '&lt;', '>': '&gt;' })[c] ?? c);

/** The table as spreadsheets best take it. */
export const asHtml = (rows: ReadonlyArray<readonly string[]>): string =>
  `<table>${rows.map((row) => `<tr>${row.map((cell) => `<td>${escaped(cell)}</td>`).join('')}</tr>`).join('')}</table>`;
