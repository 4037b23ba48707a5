import { read, utils } from '@e965/xlsx';
import { HyperFormula } from 'hyperformula';
import { beforeAll, describe, expect, it } from 'vitest';
import { library } from '../../../cells/catalogue.ts';
import type { SheetFile } from '../../../shared/sheet/format.ts';
import { toSI } from '../../../shared/units/unit.ts';
import { csvField, csvOf } from '../../../src/document/sharing/csv.ts';
import type { ExportLine } from '../../../src/document/sharing/export-line.ts';
import { workbookOf } from '../../../src/document/sharing/workbook.ts';
import { Engine } from '../../../src/engine/engine.ts';
import { exportLines } from '../../../src/page/handing-on/export-lines.ts';

const job: SheetFile = {
  format: 'fitwright-sheet',
  version: 2,
  title: { title: 'Countershaft bush', drawnBy: '=cmd()' },
  units: { length: 'in' },
  rule: 'worst-case',
  cells: [
    { id: 's', role: 'section', label: 'The housing' },
    {
      id: 'a',
      role: 'given',
      name: 'bore',
      label: 'Bore, "as found"',
      quantity: 'length',
      entry: '2.2513 in ± 0.0002 in',
    },
    {
      id: 'b',
      role: 'chosen',
      name: 'od',
      label: '=HYPERLINK("x")',
      entry: '=bore + 3 thou',
      tolerance: '+0.0005 -0 in',
      limits: { lower: '=bore + 2 thou', upper: '=bore + 4 thou' },
    },
    { id: 'c', role: 'worked', name: 'excess', entry: '=od - bore', display: 'thou' },
    { id: 'd', role: 'worked', name: 'wall', entry: '=-(bore - od)^2 / 2 in' },
    { id: 'e', role: 'measured', name: 'pin', quantity: 'length', entry: '2.0010; 2.0014 in' },
    { id: 'f', role: 'given', name: 'warm', quantity: 'temperature', entry: '86 degF' },
    { id: 'g', role: 'worked', name: 'rise', entry: '=warm - 68 degF' },
    { id: 'h', role: 'cell', name: 'steel', label: 'Pin', kind: 'material', inputs: { material: 'steel' } },
    { id: 'i', role: 'worked', name: 'longer', entry: '=pin * (1 + steel.alpha * rise)' },
    { id: 'j', role: 'worked', name: 'bigger', entry: '=IF(pin > od; pin; od)' },
    { id: 'k', role: 'chosen', name: 'cut', entry: '=od', measured: { entry: '2.2541 in' } },
    { id: 'l', role: 'worked', name: 'after', entry: '=cut - bore' },
    { id: 'm', role: 'remark', label: '@sum of it' },
  ],
};

const linesOf = (file: SheetFile): ExportLine[] => {
  const results = new Engine(library).load(file).cells;
  return exportLines(file.cells, new Map(results.map((cell) => [cell.id, cell])), file.units);
};

describe('comma-separated values', () => {
  const rows = () => {
    const book = read(new TextEncoder().encode(csvOf(linesOf(job))), { raw: true });
    return utils.sheet_to_json<string[]>(book.Sheets[book.SheetNames[0]!]!, {
      header: 1,
      raw: false,
      defval: '',
    });
  };

  it('are read by another program as the columns that were asked for', () => {
    expect(rows()[0]).toEqual([
      'number',
      'name',
      'label',
      'role',
      'entry',
      'value',
      'unit',
      'low',
      'high',
      'check',
    ]);
    expect(rows()[2]).toEqual([
      '1',
      'bore',
      'Bore, "as found"',
      'given',
      '2.2513 in ± 0.0002 in',
      '2.2513',
      'in',
      '2.2511',
      '2.2515',
      '',
    ]);
    expect(rows().find((row) => row[1] === 'od')).toEqual([
      '2',
      'od',
      `'=HYPERLINK("x")`,
      'chosen',
      `'=bore + 3 thou`,
      '2.2543',
      'in',
      '2.2543',
      '2.2548',
      expect.stringMatching(/may miss|holds/),
    ]);
  });

  it.each(['=1+1', '+1 in', '-bore', '@x', ' =1', '\t=1', '\u00a0=1', '＝1', '－1', '|x', '%x', '-1+1'])(
    'put an apostrophe before what a spreadsheet would compute: %j',
    (text) => expect(csvField(text)).toBe(`"'${text}"`),
  );

  // Read with another separator, or without its invisible beginning, a field begins with the sign.
  it.each([
    'Bore, =1+1',
    'Bore;=1+1',
    'Bore;"=cmd()',
    'a\t@x',
    'a\n+1',
    '\u200b=1',
    '\u3164=1',
    '\ufeff=1',
    '\u202e=1',
    'a;\u2060=1',
    'a,\u3000＋1',
  ])('and before a label that hides such a beginning behind a separator or what nobody sees: %j', (text) =>
    expect(csvField(text)).toBe(`"'${text.replaceAll('"', '""')}"`),
  );

  it.each(['-0.0005', '2.2513', '1e-7', 'bore = 2', 'x-1', ''])('leave alone what is harmless: %j', (text) =>
    expect(csvField(text)).toBe(`"${text}"`),
  );
});

describe('a workbook', () => {
  let cells: Record<string, { t: string; v?: unknown; f?: string }>;
  let lines: ExportLine[];
  const FIRST = 6;
  const row = (name: string) => FIRST + lines.findIndex((line) => line.name === name);

  beforeAll(async () => {
    lines = linesOf(job);
    const blob = await workbookOf(job, lines);
    const book = read(new Uint8Array(await blob.arrayBuffer()), { cellFormula: true });
    expect(book.SheetNames).toEqual(['Job sheet']);
    cells = book.Sheets['Job sheet'] as never;
  });

  it('holds texts as texts, whatever they begin with', () => {
    expect(cells[`C${row('od')}`]).toMatchObject({ t: 's', v: '=HYPERLINK("x")' });
    expect(cells[`E${row('od')}`]).toMatchObject({ t: 's', v: '=bore + 3 thou' });
    expect(cells.A3).toMatchObject({ t: 's', v: '=cmd()' });
    expect([cells[`C${row('od')}`]!.f, cells.A3!.f]).toEqual([undefined, undefined]);
  });

  it('has live formulas where the sheet has plain arithmetic, and values elsewhere', () => {
    const live = lines.filter((line) => cells[`F${FIRST + lines.indexOf(line)}`]?.f !== undefined);
    expect(live.map((line) => line.name)).toEqual(['od', 'excess', 'wall', 'rise', 'longer', 'after']);
  });

  /** Computes the workbook as read back, by an engine that knows nothing of the sheet. */
  const computed = (change: Record<string, number> = {}) => {
    const grid = Array.from({ length: FIRST + lines.length }, (_, r) =>
      'ABCDEFGHIJK'.split('').map((column) => {
        const cell = cells[`${column}${r + 1}`];
        const changed = change[`${column}${r + 1}`];
        if (changed !== undefined) return changed;
        return cell?.f !== undefined ? `=${cell.f}` : cell?.t === 'n' ? (cell.v as number) : null;
      }),
    );
    const book = HyperFormula.buildFromArray(grid, { licenseKey: 'gpl-v3', precisionRounding: 15 });
    return (name: string) => book.getCellValue({ sheet: 0, row: row(name) - 1, col: 5 });
  };

  it('computes to the values of the sheet', () => {
    const value = computed();
    for (const { name, figure, unit } of lines) {
      if (!figure) continue;
      const si = toSI(value(name) as number, unit);
      expect(Math.abs(si - figure.value), name).toBeLessThanOrEqual(1e-9 * Math.abs(figure.value) + 1e-15);
    }
  });

  it('holds beside each formula what it gives, for programs that only show', () => {
    for (const { name, figure, unit } of lines) {
      if (figure) expect(toSI(cells[`F${row(name)}`]!.v as number, unit), name).toBeCloseTo(figure.value, 12);
    }
  });

  it('follows a changed number', () => {
    const value = computed({ [`F${row('bore')}`]: 2.25 });
    expect(value('od')).toBeCloseTo(2.253, 12);
    expect(value('excess')).toBeCloseTo(3, 9);
    expect(value('after')).toBeCloseTo(2.2541 - 2.25, 12);
  });
});
