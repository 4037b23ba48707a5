import { describe, expect, it, test } from 'vitest';
import { library } from '../../../cells/catalogue.ts';
import type { CellKind } from '../../../cells/record/cell.ts';
import type { CellRecord, DecisionRule, SheetFile } from '../../../shared/sheet/format.ts';
import { libraryFor } from '../../../src/engine/book/example-library.ts';
import { exampleCells } from '../../../src/engine/book/worked-example.ts';
import { TrialSheet } from '../../../src/engine/trial/trial-sheet.ts';
import { gaugesFor } from '../../../src/engine/window/gauge.ts';
import { windowOf } from '../../../src/engine/window/window.ts';
import { rowById, titleOf } from '../tables/reference.ts';
import { checkRow, expectedOf } from './row-check.ts';

const fileOf = (cells: CellRecord[], rule: DecisionRule = 'worst-case'): SheetFile => ({
  format: 'fitwright-sheet',
  version: 2,
  title: { title: 'Window from outside' },
  units: { length: 'mm' },
  rule,
  cells,
});

describe('the greatest interference for a stress', () => {
  checkRow('R183', () => {
    const { a, b, c, L, Es, nus, Eh, nuh, sigma_max, f } = rowById('R183').inputs as Record<string, number>;
    const kind = library.kinds.get('interference-fit') as CellKind;
    const inputs = {
      contact_diameter: `${2 * b!} mm`,
      interference: '0.01 mm',
      inner_bore: `${2 * a!} mm`,
      outer_diameter: `${2 * c!} mm`,
      length: `${L} mm`,
      friction: `${f}`,
      inner_material: { E: `${Es} MPa`, nu: `${nus}`, yield: '350 MPa', brittle: '0' },
      outer_material: { E: `${Eh} MPa`, nu: `${nuh}`, yield: '350 MPa', brittle: '0' },
    };
    const cells = exampleCells(kind, inputs).map((line, i) => ({ id: `c${i}`, ...line }) as CellRecord);
    const hub: CellRecord = {
      id: 'hub',
      role: 'worked',
      name: 'hub',
      quantity: 'pressure',
      entry: '=it.hoop_outer_bore',
      limits: { upper: `${sigma_max} MPa` },
    };
    const trial = new TrialSheet(libraryFor(library, kind, inputs), 'all');
    trial.load(fileOf([...cells, hub]));
    const it = cells.find(({ name }) => name === 'it') as CellRecord;
    const found = windowOf(trial, { cell: it.id, field: 'inputs.interference' });
    if (found.is === 'none') throw new Error(found.why);
    const { high } = found.piece as NonNullable<typeof found.piece>;
    expect(high.closedBy.map(({ cell }) => cell)).toEqual(['hub']);
    // What the two rings press on each other with at that interference.
    const end = `${(high.at * 1e3).toFixed(found.places)} mm`;
    trial.put({ ...it, inputs: { ...it.inputs, interference: end } });
    const pressure = trial.result(it.id)?.outputs.pressure?.planned?.value ?? Number.NaN;
    // One step of the last place told is 0.15 % of it.
    return { got: pressure / 1e6, expected: expectedOf('R183'), within: 2.5e-3 };
  });
});

describe('ISO 14253-1', () => {
  const { inputs, expected } = rowById('R630') as {
    inputs: Record<string, number>;
    expected: { accept: [number, number] };
  };
  const { LSL, USL, U } = inputs as { LSL: number; USL: number; U: number };
  const bore = (more: Partial<CellRecord>): CellRecord => ({
    id: 'bore',
    role: 'chosen',
    name: 'bore',
    quantity: 'length',
    entry: '50.012 mm',
    limits: { lower: `${LSL} mm`, upper: `${USL} mm`, metalOn: 'low' },
    ...more,
  });

  test(`${titleOf(rowById('R630'))}: the window of a size as uncertain as that`, () => {
    const trial = new TrialSheet(library);
    trial.load(fileOf([bore({ tolerance: `± ${U} mm` })]));
    const found = windowOf(trial, { cell: 'bore', field: 'entry' });
    if (found.is === 'none') throw new Error(found.why);
    const { low, high } = found.piece as NonNullable<typeof found.piece>;
    expect([low.at, high.at].map((si) => si * 1e3)).toEqual(
      expected.accept.map((mm) => expect.closeTo(mm, 9)),
    );
    expect(found.metalOn).toBe('low');
  });

  const [first, last] = expected.accept;
  for (const rule of ['iso14253-2013', 'worst-case'] as const)
    test(`${titleOf(rowById('R630'))}: the doubt that still proves a size, ${rule}`, () => {
      for (const [size, doubt] of [
        [first, U],
        [last, U],
        [50.01, 0.01],
      ] as const) {
        const trial = new TrialSheet(library);
        trial.load(fileOf([bore({ role: 'measured', entry: `${size} mm` })], rule));
        const found = gaugesFor(trial, { cell: 'bore', output: 'value' });
        if (found.is === 'none') throw new Error(found.why);
        expect(found.needed * 1e3).toBeCloseTo(doubt, 6);
      }
    });

  it('2017: half of the guard band factor, 1.645 standard uncertainties (one-sided 95 % point, normal table)', () => {
    const trial = new TrialSheet(library);
    trial.load(fileOf([bore({ role: 'measured', entry: '50.002 mm' })], 'iso14253-2017'));
    const found = gaugesFor(trial, { cell: 'bore', output: 'value' });
    if (found.is === 'none') throw new Error(found.why);
    expect(found.needed * 1e3).toBeCloseTo((2 * 0.002) / 1.6448536, 6);
    expect(found.at).toBe('lower');
  });

  it('a gauge proves a size where its doubt is no more than that, and no other does', () => {
    const trial = new TrialSheet(library);
    const gauge = (name: string, certificate: string): CellRecord => ({
      id: name,
      role: 'cell',
      name,
      kind: 'gauge',
      inputs: {
        gauge: 'micrometer-50-75-mm',
        certificate,
        scatter: '0 um',
        division: '0.001 um',
        setting_doubt: '0 um',
        measures_from: '45 mm',
      },
    });
    const cells = [
      bore({ entry: `${first} mm`, note: 'not measured yet' }),
      gauge('fine', '3.9 um'),
      gauge('coarse', '4.1 um'),
    ];
    trial.load(fileOf(cells, 'iso14253-2013'));
    const found = gaugesFor(trial, { cell: 'bore', output: 'value' });
    if (found.is === 'none') throw new Error(found.why);
    expect(found.isRead).toBe(false);
    expect(found.gauges.map(({ cell, proves, isShort }) => [cell, proves, isShort])).toEqual([
      ['fine', true, false],
      ['coarse', false, false],
    ]);
    expect(found.gauges.map(({ doubt = Number.NaN }) => doubt * 1e6)).toEqual([
      expect.closeTo(3.9, 2),
      expect.closeTo(4.1, 2),
    ]);
  });
});
