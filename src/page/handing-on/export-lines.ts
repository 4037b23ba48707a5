import { displayUnit } from '../../../shared/quantities/quantities.ts';
import type { CellRecord, SheetUnits } from '../../../shared/sheet/format.ts';
import { numberLines } from '../../../shared/sheet/numbering.ts';
import { roleWord } from '../../../shared/sheet/role-words.ts';
import type { ExportLine } from '../../document/sharing/export-line.ts';
import type { CellResult, OutputResult } from '../../engine/rows/results.ts';

const figureOf = (output: OutputResult | undefined): ExportLine['figure'] => {
  const figure = output?.stands === 'measured' ? output.measured : output?.planned;
  return figure && !output?.logical ? { value: figure.value, low: figure.low, high: figure.high } : undefined;
};

/** Lines of a sheet in its order, one for each output of a library cell, with the figures that stand. */
export const exportLines = (
  cells: readonly CellRecord[],
  results: ReadonlyMap<string, CellResult>,
  units: SheetUnits,
): ExportLine[] => {
  const roles = new Map(cells.map(({ id, role }) => [id, role]));
  const numbers = numberLines([...roles.keys()], (id) => roles.get(id));
  return cells.flatMap((cell): ExportLine[] => {
    const outputs = Object.entries(results.get(cell.id)?.outputs ?? {});
    const number = String(numbers.get(cell.id) ?? '');
    const base = { cell, role: roleWord(cell), entry: cell.entry ?? '' };
    const line = (key: string, output: OutputResult | undefined): ExportLine => {
      const own = key === 'value' || cell.role !== 'cell' ? cell.display : undefined;
      const wish = cell.outputs?.[key]?.display ?? own ?? output?.display;
      const figure = figureOf(output);
      return {
        ...base,
        output: key,
        number,
        name: cell.name ? (key === 'value' ? cell.name : `${cell.name}.${key}`) : '',
        label: key === 'value' ? (cell.label ?? '') : (output?.label ?? key),
        unit: displayUnit(output?.quantity ?? cell.quantity, units, wish),
        planned: (output?.stands ?? 'planned') === 'planned',
        check: output && output.check.asNew.state !== 'no limits' ? output.check.words : '',
        ...(figure && { figure }),
      };
    };
    if (cell.role === 'section' || cell.role === 'remark') return [line('value', undefined)];
    if (cell.role !== 'cell') return [line('value', outputs.find(([key]) => key === 'value')?.[1])];
    const head = { ...line('value', undefined), entry: cell.kind ?? '' };
    return [head, ...outputs.map(([key, output]) => ({ ...line(key, output), number: '', entry: '' }))];
  });
};
