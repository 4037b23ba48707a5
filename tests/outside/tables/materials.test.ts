import { describe, expect, it } from 'vitest';
import type { Material } from '../../../cells/tables/materials/materials.ts';
import {
  materialByKey,
  materials,
  materialsLike,
  materialTable,
} from '../../../cells/tables/materials/materials.ts';
import type { Property } from '../../../cells/tables/table.ts';
import { rowById, rowsWhere, titleOf } from './reference.ts';

const material = (key: string): Material => {
  const found = materialByKey(key);
  if (found === undefined) throw new Error(`no material ${key}`);
  return found;
};

/** Printed word of the reference -> our row, where it is not the key, name or an alias as it stands. */
const renamed: Readonly<Record<string, string>> = {
  'steel AISI 4140': '4140-qt',
  'stainless steel (18-8)': '304',
  'cast iron, gray': 'gray-iron',
  'C36000 free-cutting brass': 'c36000',
  'C17200 beryllium copper': 'c17200',
  'AISI 1018 cold drawn': '1018',
  'AISI 1020 hot rolled': '1020',
  'C93200 continuous cast': 'c93200',
  'C36000 half hard': 'c36000',
  'acetal homopolymer': 'acetal',
};
const materialOf = (printed: unknown): Material => material(renamed[String(printed)] ?? String(printed));

/** A published figure must lie within the range we give; one unit in its last printed place is allowed for rounding. */
const covers = (
  property: Property | undefined,
  published: number | readonly number[],
  rounding: number,
): void => {
  expect(property).toBeDefined();
  for (const figure of typeof published === 'number' ? [published] : published) {
    expect(property!.low).toBeLessThanOrEqual(figure + rounding);
    expect(property!.high).toBeGreaterThanOrEqual(figure - rounding);
  }
};

type Figure = number | number[];
const scale = (figure: Figure, by: number): Figure =>
  typeof figure === 'number' ? figure * by : figure.map((x) => x * by);
const warm = (figure: Figure): Figure =>
  typeof figure === 'number' ? figure + 273.15 : figure.map((x) => x + 273.15);

/** How each printed column reads in the table. */
const read: Readonly<Record<string, (m: Material, figure: Figure) => void>> = {
  '1e-6/K': (m, f) => covers(m.alpha, scale(f, 1e-6), 1e-9),
  '1e-6/degF': (m, f) => covers(m.alpha, scale(f, 1.8e-6), 0.1e-6),
  cte_per_F: (m, f) => covers(m.alpha, scale(f, 1.8), 1e-9),
  E_GPa: (m, f) => covers(m.E, scale(f, 1e9), 1e6),
  E_Mpsi: (m, f) => covers(m.E, scale(f, 6.894757293168e9), 1e9),
  nu: (m, f) => covers(m.nu, f, 1e-6),
  yield_MPa: (m, f) => covers(m.yield, scale(f, 1e6), 1e3),
  yield_ksi: (m, f) => covers(m.yield, scale(f, 6.894757293168e6), 1e3),
  tensile_MPa: (m, f) => covers(m.tensile, scale(f, 1e6), 1e3),
  ult_ksi: (m, f) => covers(m.tensile, scale(f, 6.894757293168e6), 1e5),
  density: (m, f) => covers(m.density, f, 1e-6),
  unit_weight_lb_in3: (m, f) => covers(m.density, scale(f, 27679.904710203), 30),
  k: (m, f) => covers(m.conductivity, f, 1e-6),
  k_W_mK: (m, f) => covers(m.conductivity, f, 1e-6),
  max_temp_C: (m, f) => covers(m.maxTemperature, warm(f), 1e-6),
};
/** Guidance of order of magnitude only: a factor of two in degC either way. */
const guidance: Readonly<Record<string, (m: Material, figure: Figure) => void>> = {
  Tmax_C: (m, f) => {
    const ours = m.maxTemperature!.value - 273.15;
    expect(ours).toBeGreaterThan((f as number) / 2);
    expect(ours).toBeLessThan((f as number) * 2);
  },
};
/** Printed columns that belong to other tables. */
const elsewhere = new Set(['max_static_load_MPa', 'compressive_MPa']);

describe('materials against print', () => {
  const rows = rowsWhere(
    (row) =>
      row.topic.startsWith('2 ') &&
      typeof row.inputs.material === 'string' &&
      typeof row.expected === 'object',
  );
  for (const row of rows)
    it(titleOf(row), () => {
      const ours = materialOf(row.inputs.material);
      for (const [column, figure] of Object.entries(row.expected as Record<string, Figure>)) {
        if (elsewhere.has(column)) continue;
        const check = read[column] ?? guidance[column];
        if (check === undefined) throw new Error(`${row.id}: no reading for ${column}`);
        check(ours, figure);
      }
    });

  it(titleOf(rowById('R069')), () => {
    expect(material('1020').density.value).toBe(7850);
    for (const key of ['4140-annealed', '4140-prehard', '4140-qt'])
      expect(material(key).density.value).toBe(7850);
    expect(material('304').density.value).toBe(8000);
  });

  /** Where a printed figure was seen and no second printed figure contradicts it, it is the one we follow. */
  const followed: readonly [string, string, keyof Material, number][] = [
    ['R039', '4140-annealed', 'alpha', 12.3e-6],
    ['R040', '304', 'alpha', 17.2e-6],
    ['R042', 'ductile-60-40-18', 'alpha', 11.2e-6],
    ['R044', '6061-t6', 'alpha', 23.6e-6],
    ['R045', 'c36000', 'alpha', 20.5e-6],
    ['R047', 'c17200', 'alpha', 16.7e-6],
    ['R048', 'nylon-66', 'alpha', 144e-6],
    ['R050', 'acetal', 'alpha', 106.5e-6],
    ['R058', 'c93200', 'nu', 0.35],
    ['R060', 'steel', 'E', 207e9],
    ['R061', 'gray-iron-30', 'E', 100e9],
    ['R061', 'gray-iron-30', 'nu', 0.211],
    ['R064', '304', 'E', 190e9],
    ['R066', 'c17200', 'E', 124e9],
    ['R068', '6061-t6', 'nu', 0.33],
  ];
  for (const [id, key, column, figure] of followed)
    it(`${id} is the figure followed for ${key}.${column} [${rowById(id).source}] ${rowById(id).grade}`, () => {
      expect((material(key)[column] as Property).value).toBeCloseTo(
        figure,
        12 - Math.round(Math.log10(figure)),
      );
      expect((material(key)[column] as Property).grade).toBe('seen');
    });

  it('R087 change of interference of a 6061 bush in gray iron, 2.3000 in, +132 degF, lies in what the table allows', () => {
    const change = (a: number, b: number): number => 2.3 * (a - b) * (132 / 1.8);
    const al = material('6061').alpha;
    const iron = material('gray-iron-30').alpha;
    const expected = rowById('R087').expected as number;
    expect(change(al.low, iron.high)).toBeLessThan(expected);
    expect(change(al.high, iron.low)).toBeGreaterThan(expected);
    expect(Math.abs(change(al.value, iron.value) / expected - 1)).toBeLessThan(0.01);
  });

  it(titleOf(rowById('R088')), () => {
    const growth = 50 * (material('c93200').alpha.value - material('gray-iron-30').alpha.value) * 70;
    expect(growth).toBeCloseTo(rowById('R088').expected as number, 6);
  });
});

describe('the table itself', () => {
  it('has at least 28 materials, each key and alias of one material only', () => {
    expect(materials.length).toBeGreaterThanOrEqual(28);
    const words = materials.flatMap((m) => [
      ...new Set([m.key, ...m.aliases].map((w) => w.toLowerCase().replace(/[\s\-_]+/g, ''))),
    ]);
    expect(words.filter((word, i) => words.indexOf(word) !== i)).toEqual([]);
  });

  it('gives every figure a range around it, a source and a grade', () => {
    for (const row of materialTable.rows)
      for (const [column, p] of Object.entries(row.columns)) {
        if (p === undefined) continue;
        const where = `${row.key}.${column}`;
        expect(p.low, where).toBeLessThanOrEqual(p.value);
        expect(p.high, where).toBeGreaterThanOrEqual(p.value);
        expect(p.low, where).toBeGreaterThan(0);
        expect(p.source.length, where).toBeGreaterThan(10);
        expect(p.grade === 'memory', where).toBe(p.source.startsWith('from memory'));
      }
  });

  it('keeps to what physics allows', () => {
    for (const m of materials) {
      expect(m.nu.high, m.key).toBeLessThan(0.5);
      if (m.tensile) expect(m.tensile.value, m.key).toBeGreaterThanOrEqual(m.yield.value);
    }
  });

  it('finds a material by its trade names whatever the case or hyphens, and none for a word of many', () => {
    for (const word of ['SAE 660', 'sae-660', 'C93200', 'Rg7'])
      expect(materialByKey(word)?.key).toBe('c93200');
    for (const word of ['bronze', 'aluminium', '4140', '', 'babbitt'])
      expect(materialByKey(word)).toBeUndefined();
    expect(materialsLike('bronze').map((m) => m.key)).toEqual(
      expect.arrayContaining(['c93200', 'c95400', 'c51000']),
    );
    expect(materialsLike('')).toEqual([]);
  });
});
