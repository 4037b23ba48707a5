import writeXlsxFile, { type Cell, type Feature, type SheetData } from 'write-excel-file/universal';
import type { SheetFile } from '../../../shared/sheet/format.ts';
import { fromSI, type Unit } from '../../../shared/units/unit.ts';
import { COLUMNS, type ExportLine, placesOf } from './export-line.ts';
import { type Address, liveFormula } from './live-formula.ts';

/** Column letters: `value` is in the line's unit, `SI` holds the same in SI for the formulas of other lines. */
const VALUE = 'F';
const SI = 'K';
const WIDTHS = [8, 20, 32, 14, 28, 12, 8, 12, 12, 34, 16];

/** Signs no XML file may hold. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is taken out
const UNFIT = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]|\p{Surrogate}/gu;

const text = (value: string, more: Partial<Exclude<Cell, null>> = {}): Cell =>
  value === ''
    ? null
    : { type: String, value: value.replace(UNFIT, '\ufffd').slice(0, 32_767), ...(more as object) };

const format = (places: number): string => (places > 0 ? `0.${'0'.repeat(places)}` : '0');

/** SI from the unit of a line, and back, as spreadsheets write it. */
const toSIText = (address: string, { factor, offset }: Unit): string =>
  offset ? `(${address}+${offset})*${factor}` : `${address}*${factor}`;
const fromSIText = (address: string, { factor, offset }: Unit): string =>
  offset ? `${address}/${factor}-${offset}` : `${address}/${factor}`;

/**
 * The sheet as a workbook. Typed numbers are numbers; a line whose formula is plain arithmetic is a live formula, so a
 * changed number is followed; what a library cell or a trade function gives is a value. Low, high and check are as
 * worked out here.
 */
export async function workbookOf(file: SheetFile, lines: readonly ExportLine[]): Promise<Blob> {
  const heading = 5;
  const rowOf = new Map(lines.map((line, k) => [line.name, heading + 1 + k]));
  const numeric = new Set(lines.filter((line) => line.figure && line.name).map((line) => line.name));
  const address: Address = ({ name, output }) => {
    const called = output && output !== 'value' ? `${name}.${output}` : name;
    return numeric.has(called) ? `${SI}${rowOf.get(called)}` : undefined;
  };
  /** What formulas give as the sheet stands, by address. */
  const given = new Map<string, number>();
  const rows = lines.map((line, k) => rowCells(line, heading + 1 + k, address, given));
  const { title } = file;
  const data: SheetData = [
    [text(title.title, { fontWeight: 'bold', fontSize: 14 } as object)],
    [text([title.part, title.machine, title.customer].filter(Boolean).join(', '))],
    [text([title.drawnBy, title.revision, title.date].filter(Boolean).join(', '))],
    [text('Values follow the formulas. Low, high and check are as worked out when this was written.')],
    [...COLUMNS, 'value, SI'].map((name) => text(name, { fontWeight: 'bold' } as object)),
    ...rows,
  ];
  return writeXlsxFile(
    data,
    { sheet: 'Job sheet', columns: WIDTHS.map((width) => ({ width })), stickyRowsCount: heading },
    { features: [withValues(given)] },
  ).toBlob();
}

/** Writes beside each formula what it gives: programs that only show a workbook do not compute it. */
const withValues = (given: ReadonlyMap<string, number>): Feature<Blob> => ({
  files: {
    transform: {
      'xl/worksheets/sheet{id}.xml': {
        transform: (xml) =>
          xml.replace(/(<c r="([A-Z]+\d+)"[^>]*><f>[^<]*<\/f>)(<\/c>)/g, (whole, formula, at, end) =>
            given.has(at) ? `${formula}<v>${given.get(at)}</v>${end}` : whole,
          ),
      },
    },
  },
});

function rowCells(line: ExportLine, row: number, address: Address, given: Map<string, number>): Cell[] {
  const { figure, unit } = line;
  const bold = line.cell.role === 'section' ? ({ fontWeight: 'bold' } as object) : {};
  const texts = [line.number, line.name, line.label, line.role, line.entry].map((one) => text(one, bold));
  if (!figure) return [...texts, null, null, null, null, text(line.check), null];
  const shown = { format: format(placesOf(figure, unit)) };
  const number = (si: number): Cell => {
    const value = fromSI(si, unit);
    return Number.isFinite(value) ? { type: Number, value, ...shown } : null;
  };
  const isFormula = line.planned && line.output === 'value' && line.entry.trimStart().startsWith('=');
  const live = isFormula ? liveFormula(line.entry, address) : undefined;
  const value: Cell = live
    ? { type: 'Formula', value: fromSIText(`${SI}${row}`, unit), ...shown }
    : number(figure.value);
  const si: Cell = { type: 'Formula', value: live ?? toSIText(`${VALUE}${row}`, unit) };
  if (value) given.set(`${SI}${row}`, figure.value);
  if (live) given.set(`${VALUE}${row}`, fromSI(figure.value, unit));
  const [low, high] = [number(figure.low), number(figure.high)];
  return [...texts, value, text(unit.label), low, high, text(line.check), value && si];
}
