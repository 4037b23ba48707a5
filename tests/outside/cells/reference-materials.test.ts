import { describe, expect, test } from 'vitest';
import { rowById, rowsWhere, titleOf } from '../tables/reference.ts';
import { cell, figure, sheetOf } from './sheet-of.ts';

/** Printed word of the reference -> row of the table, where it is not one of its names as it stands. */
const keys: Readonly<Record<string, string>> = {
  'steel AISI 4140': '4140-qt',
  'AISI 4140 annealed': '4140-annealed',
  'AISI 4140 Q&T 425 C': '4140-qt',
  'stainless 304': '304',
  '304 annealed': '304',
  '416 annealed': '416',
  'stainless steel (18-8)': '304',
  'ductile iron 60-40-18': 'ductile-60-40-18',
  'ductile iron 65-45-12': 'ductile-65-45-12',
  'aluminium 6061': '6061-t6',
  '6061-T6': '6061-t6',
  'C36000 free-cutting brass': 'c36000',
  'C36000 half hard': 'c36000',
  'C17200 beryllium copper': 'c17200',
  'beryllium copper': 'c17200',
  'nylon 6,6': 'nylon-66',
  'nylon 6,6 dry': 'nylon-66',
  acetal: 'acetal',
  'acetal homopolymer': 'acetal',
  'PTFE + glass/bronze/mica/carbon fillers': 'filled-ptfe',
  'PTFE unfilled': 'ptfe',
  'porous bronze/PTFE/Pb': 'bronze-ptfe-lead',
  'tin babbitt': 'tin-babbitt',
  'tin babbitt ASTM B23 gr 2': 'tin-babbitt',
  'lead babbitt': 'lead-babbitt',
  'lead babbitt ASTM B23 gr 13': 'lead-babbitt',
  C93200: 'c93200',
  'C93200 continuous cast': 'c93200',
  'carbon steel': 'steel',
  'cast iron, gray': 'gray-iron',
  'gray iron class 30': 'gray-iron-30',
  brass: 'brass',
  'AISI 1018 cold drawn': '1018',
  'AISI 1020 hot rolled': '1020',
};

/** Printed column: output of the material cell, SI of one printed unit, and half the last printed place. */
const columns: Readonly<Record<string, readonly [output: string, unit: number, rounding: number]>> = {
  '1e-6/K': ['alpha', 1e-6, 1e-9],
  E_GPa: ['E', 1e9, 1e6],
  nu: ['nu', 1, 1e-6],
  yield_MPa: ['yield', 1e6, 1e3],
  density: ['density', 1, 1e-6],
  unit_weight_lb_in3: ['density', 27679.904710203, 30],
};

/** Where the printed figures differ the cell's range must take them all in: the spread is then what the sources differ by. */
describe('material cell', () => {
  const rows = rowsWhere(
    (row) =>
      row.topic.startsWith('2 ') &&
      typeof row.inputs.material === 'string' &&
      typeof row.expected === 'object' &&
      Object.keys(row.expected as object).some((column) => column in columns),
  );
  test(titleOf(rowById('R069')), () => {
    const printed = rowById('R069').expected as Record<string, number>;
    for (const [material, column] of [
      ['1020', '1020_g_cm3'],
      ['4140-qt', '4140_g_cm3'],
      ['304', '304_g_cm3'],
    ] as const) {
      const ours = figure(sheetOf({ it: cell('material', { material }) }), 'it', 'density').value;
      expect(Math.abs(ours / 1000 / (printed[column] as number) - 1), material).toBeLessThanOrEqual(0.01);
    }
  });
  for (const row of rows)
    test(titleOf(row), () => {
      const key = keys[String(row.inputs.material)];
      if (key === undefined) throw new Error(`no material for ${row.inputs.material}`);
      const sheet = sheetOf({ it: cell('material', { material: key }) });
      for (const [column, printed] of Object.entries(row.expected as Record<string, number | number[]>)) {
        const [output, unit, rounding] = columns[column] ?? [];
        if (output === undefined || unit === undefined || rounding === undefined) continue;
        const ours = figure(sheet, 'it', output);
        for (const one of [printed].flat()) {
          expect(ours.low, column).toBeLessThanOrEqual(one * unit + rounding);
          expect(ours.high, column).toBeGreaterThanOrEqual(one * unit - rounding);
        }
      }
    });
});
