import { describe } from 'vitest';
import { library } from '../../../cells/catalogue.ts';
import { type ReferenceRow, rowById, rowsWhere } from '../tables/reference.ts';
import { type Compared, checkRow } from './row-check.ts';
import { cell, type Line, sheetOf, valueIn } from './sheet-of.ts';

/** Every row a cell of its own on one sheet: `build` gives its inputs. */
const sheetFor = (
  kind: string,
  rows: readonly ReferenceRow[],
  build: (row: ReferenceRow) => Record<string, string>,
) => {
  const lines: Record<string, Line> = {};
  for (const row of rows) lines[row.id] = cell(kind, build(row));
  const sheet = sheetOf(lines, { library });
  return (id: string, output: string, unit: string): number => valueIn(unit, sheet, id, output);
};

describe('limit deviations of ISO 286', () => {
  const rows = rowsWhere((row) => /limit deviations \(um\)$/.test(row.quantity));
  const isHole = (row: ReferenceRow): boolean => row.quantity.startsWith('hole');
  const read = sheetFor('iso-fit', rows, (row) => ({
    nominal: `${row.inputs.nominal_mm} mm`,
    hole_class: isHole(row) ? String(row.inputs.class) : 'H7',
    shaft_class: isHole(row) ? 'h6' : String(row.inputs.class),
  }));
  for (const row of rows)
    checkRow(row.id, () => {
      const of = isHole(row) ? 'hole' : 'shaft';
      const { upper, lower } = row.expected as { upper: number; lower: number };
      return [
        { got: read(row.id, `${of}_upper`, 'um'), expected: upper, near: 1e-6 },
        { got: read(row.id, `${of}_lower`, 'um'), expected: lower, near: 1e-6 },
      ];
    });
});

describe('standard tolerances of ISO 286 against their formula', () => {
  const MULTIPLES = { 5: 7, 6: 10, 7: 16, 8: 25, 9: 40, 10: 64, 11: 100 } as const;
  /** i = 0.45 D^(1/3) + 0.001 D, micrometres, D the geometric mean of the step, mm. */
  const unitOf = (over: number, to: number): number =>
    0.45 * Math.cbrt(Math.sqrt(over * to)) + 0.001 * Math.sqrt(over * to);
  const grade = (nominal: number, of: number): number =>
    valueIn(
      'um',
      sheetOf({ it: cell('iso-fit', { nominal: `${nominal} mm`, hole_class: `H${of}`, shaft_class: 'h6' }) }),
      'it',
      'hole_upper',
    );
  for (const id of ['R210', 'R212', 'R213'])
    checkRow(id, () => {
      const { D1, D2 } = rowById(id).inputs as { D1: number; D2: number };
      const printed = rowById(id).expected as { i_um: number; IT7_raw: number; IT7_table: number };
      return [
        { got: unitOf(D1, D2), expected: printed.i_um, near: 1e-3 },
        { got: 16 * unitOf(D1, D2), expected: printed.IT7_raw, near: 5e-3 },
        { got: grade(D2, 7), expected: printed.IT7_table, near: 1e-6 },
      ];
    });
  checkRow('R209', () =>
    (
      [
        [18, 30],
        [50, 80],
        [180, 250],
      ] as const
    ).flatMap(([over, to]) =>
      Object.entries(MULTIPLES).map(([of, times]) => ({
        got: grade(to, Number(of)),
        expected: times * unitOf(over, to),
        // The table is rounded, to a whole micrometre at the fine end.
        within: 0.025,
      })),
    ),
  );
});

describe('fits of ISO 286', () => {
  const rows = rowsWhere((row) => row.quantity.includes('clearance limits in um'));
  const read = sheetFor('iso-fit', rows, (row) => {
    const [hole = '', shaft = ''] = String(row.inputs.fit).split('/');
    return { nominal: `${row.inputs.nominal} mm`, hole_class: hole, shaft_class: shaft };
  });
  for (const row of rows)
    checkRow(row.id, () => {
      const { max_clearance, min_clearance } = row.expected as Record<string, number>;
      return [
        { got: read(row.id, 'greatest_clearance', 'um'), expected: max_clearance!, near: 1e-6 },
        { got: read(row.id, 'least_clearance', 'um'), expected: min_clearance!, near: 1e-6 },
      ];
    });

  const one = (nominal: string, hole_class: string, shaft_class: string) => {
    const sheet = sheetOf({ it: cell('iso-fit', { nominal, hole_class, shaft_class }) });
    return (output: string): number => valueIn('um', sheet, 'it', output);
  };
  checkRow('R348', () => {
    const { E8_80_120_upper, f9_250_315_lower } = rowById('R348').expected as Record<string, number>;
    return [
      { got: one('100 mm', 'E8', 'h6')('hole_upper'), expected: E8_80_120_upper!, near: 1e-6 },
      { got: one('280 mm', 'H7', 'f9')('shaft_lower'), expected: f9_250_315_lower!, near: 1e-6 },
    ];
  });
  for (const id of ['R349', 'R351'])
    checkRow(id, () => {
      const { nominal } = rowById(id).inputs as { nominal: number };
      return Object.entries(rowById(id).expected as Record<string, number>).map(
        ([letter, es]): Compared => ({
          got: one(`${nominal} mm`, 'H7', `${letter}8`)('shaft_upper'),
          expected: es,
          near: 1e-6,
        }),
      );
    });
  checkRow('R353', () =>
    Object.entries(rowById('R353').expected as Record<string, number>).map(
      ([nominal, upper]): Compared => ({
        got: one(`${nominal} mm`, 'H7', 'h6')('hole_upper'),
        expected: upper,
        near: 1e-6,
      }),
    ),
  );
});

describe('inch fits of B4.1', () => {
  const rows = rowsWhere((row) => row.quantity.startsWith('ANSI B4.1'));
  const read = sheetFor('inch-fit', rows, (row) => {
    const [over = 0, to = 0] = String(row.inputs.range_in).split('-').map(Number);
    return { basic_size: `${((over + to) / 2).toFixed(3)} in`, fit_class: String(row.inputs.class) };
  });
  for (const row of rows)
    checkRow(row.id, () => {
      const thou = (output: string): number => read(row.id, output, 'thou');
      const pair = (least: number, greatest: number): Compared[] => [
        { got: thou('least_clearance'), expected: least, near: 1e-6 },
        { got: thou('greatest_clearance'), expected: greatest, near: 1e-6 },
      ];
      if (Array.isArray(row.expected)) return pair(row.expected[0] as number, row.expected[1] as number);
      const { clearance, interference, hole, shaft } = row.expected as Record<string, [number, number]>;
      return [
        { got: thou('hole_upper'), expected: hole![0], near: 1e-6 },
        { got: thou('hole_lower'), expected: hole![1], near: 1e-6 },
        { got: thou('shaft_upper'), expected: shaft![0], near: 1e-6 },
        { got: thou('shaft_lower'), expected: shaft![1], near: 1e-6 },
        ...(clearance ? pair(clearance[0], clearance[1]) : []),
        ...(interference ? pair(-interference[1], -interference[0]) : []),
      ];
    });
});
