import { describe, expect, it } from 'vitest';
import type { CellRecord } from '../../shared/sheet/format.ts';
import { clearanceSheet, fitwright } from './shop.ts';

const INCH = 0.0254;
const bronze: CellRecord = {
  id: 'm1',
  role: 'cell',
  name: 'bronze',
  kind: 'material',
  inputs: { material: 'c93200', own_expansion: '18e-6 1/K' },
};
const files = { 'job.json': clearanceSheet([bronze]) };

const figures = async (...options: string[]) => {
  const run = await fitwright(['check', 'job.json', '--json', ...options], files);
  return { ...run, cells: run.out === '' ? {} : JSON.parse(run.out) };
};

describe('--set', () => {
  it('puts another entry in, a list of readings too', async () => {
    const { cells } = await figures('--set', 'journal=1.7470 in; 1.7472 in ± 0.0002 in');
    expect(cells.journal.value).toBeCloseTo(1.7471 * INCH, 12);
    expect(cells.clearance.value).toBeCloseTo(0.0039 * INCH, 12);
  });

  it('takes an input of a library cell', async () => {
    const { cells } = await figures('--set', 'bronze.own_expansion=20e-6 1/K');
    expect(cells['bronze.alpha'].value).toBeCloseTo(20e-6, 12);
    expect(cells['bronze.alpha'].unit).toBe('1/K');
  });

  it('takes a name whose marks come apart from their letters', async () => {
    const groesse: CellRecord = { id: 'g', role: 'given', name: 'größe', quantity: 'length', entry: '2 in' };
    const { out } = await fitwright(['check', 'j.json', '--json', '--set', 'gro\u0308ße=1 in'], {
      'j.json': clearanceSheet([groesse]),
    });
    expect(JSON.parse(out).größe.value).toBeCloseTo(INCH, 12);
  });

  it('takes an equals sign within the entry', async () => {
    const { cells } = await figures('--set', 'bush_outside==bore + 0.5 in');
    expect(cells.bush_outside.value).toBeCloseTo(2.251 * INCH, 12);
  });

  it('says which names there are when one is unknown', async () => {
    const { exit, err, cells } = await figures('--set', 'jurnal=1 in');
    expect(exit).toBe(2);
    expect(cells).toBeNull();
    expect(err).toContain(
      '--set jurnal: the sheet has no cell of that name. It has: bore, journal, clearance, bush_outside, bronze.',
    );
  });

  it.each([
    ['bronze=1', '"bronze" is a library cell: name one of its inputs (material, own_expansion'],
    ['bronze.alpha=1', '"bronze" has no input "alpha"'],
    ['journal.length=1 in', '"journal" is a plain cell and has no input "length"'],
  ])('refuses %s with what to do', async (assignment, words) => {
    const { exit, err } = await figures('--set', assignment);
    expect(exit).toBe(2);
    expect(err).toContain(words);
  });
});

describe('--measured', () => {
  it('gives the part its size, keeps the plan beside it and judges it as a part', async () => {
    const { cells } = await figures('--measured', 'bush_outside=2.2519 in ± 0.0001 in');
    expect(cells.bush_outside).toMatchObject({ stands: 'measured', check: 'proven in limits, where read' });
    expect(cells.bush_outside.value).toBeCloseTo(2.2519 * INCH, 12);
    expect(cells.bush_outside.planned.value).toBeCloseTo(2.2515 * INCH, 12);
    const { out } = await fitwright(
      ['check', 'job.json', '--measured', 'bush_outside=2.2519 in ± 0.0001 in'],
      files,
    );
    expect(out).toMatch(/bush_outside +as measured +2\.2519/);
    expect(out).toMatch(/planned +2\.2515/);
  });

  it('takes an output of a library cell', async () => {
    const { cells } = await figures('--measured', 'bronze.alpha=19e-6 1/K ± 1e-7 1/K');
    expect(cells['bronze.alpha']).toMatchObject({ stands: 'measured' });
    expect(cells['bronze.alpha'].value).toBeCloseTo(19e-6, 12);
  });

  it('goes before a new plan, and says so', async () => {
    const measured = clearanceSheet();
    const cells = measured.cells.map((cell) =>
      cell.name === 'bush_outside' ? { ...cell, measured: { entry: '2.2519 in ± 0.0001 in' } } : cell,
    );
    const run = await fitwright(['check', 'j.json', '--json', '--set', 'bush_outside=2.2512 in'], {
      'j.json': { ...measured, cells },
    });
    expect(run.err).toContain('"bush_outside" has been measured, and the measured value stands');
    expect(JSON.parse(run.out).bush_outside.value).toBeCloseTo(2.2519 * INCH, 12);
  });

  it.each([
    ['journal=1.748 in', '"journal" is a measured cell: its reading is its entry'],
    ['bronze=1', '"bronze" is a library cell: name one of its outputs ('],
    ['bronze.nosuch=1', '"bronze" has no output "nosuch"'],
  ])('refuses %s with what to do', async (assignment, words) => {
    const { exit, err } = await figures('--measured', assignment);
    expect(exit).toBe(2);
    expect(err).toContain(words);
  });
});
