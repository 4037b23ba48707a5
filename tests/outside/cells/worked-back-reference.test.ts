import { describe } from 'vitest';
import { library } from '../../../cells/catalogue.ts';
import type { CellKind, WorkedExample } from '../../../cells/record/cell.ts';
import type { CellRecord } from '../../../shared/sheet/format.ts';
import { libraryFor } from '../../../src/engine/book/example-library.ts';
import { exampleCells } from '../../../src/engine/book/worked-example.ts';
import { TrialSheet } from '../../../src/engine/trial/trial-sheet.ts';
import { Desk } from '../../../src/engine/workback/desk.ts';
import { rowById } from '../tables/reference.ts';
import { checkRow, expectedOf } from './row-check.ts';

/** What was asked the other way round in print: the figure is given, and what it was worked out from is looked for. */
const numbers = (id: string) => rowById(id).inputs as Record<string, number>;

/** Lines of a sheet, asked for the input with which a figure comes to what is wanted; SI. */
function back(
  cells: CellRecord[],
  of: { figure: [string, string]; want: string; by: [string, string] },
  from = library as TrialSheet['library'],
): number {
  const trial = new TrialSheet(from, 'all');
  try {
    trial.load({
      format: 'fitwright-sheet',
      version: 2,
      title: { title: 'Worked back' },
      units: { length: 'mm' },
      rule: 'worst-case',
      cells,
    });
    const { solutions, reason } = new Desk(trial).workBack({
      figure: { cell: of.figure[0], output: of.figure[1] },
      want: of.want,
      change: { cell: of.by[0], field: of.by[1] },
    });
    const [one] = solutions;
    if (solutions.length !== 1 || one?.value === undefined)
      throw new Error(reason ?? `${solutions.length} answers`);
    return one.value;
  } finally {
    trial.destroy();
  }
}

/** The same of a library cell. */
function backOf(
  key: string,
  inputs: WorkedExample['inputs'],
  output: string,
  want: string,
  by: string,
): number {
  const kind = library.kinds.get(key) as CellKind;
  const cells = exampleCells(kind, inputs).map((line, i) => ({ id: `c${i}`, ...line }) as CellRecord);
  const it = cells.find(({ name }) => name === 'it') as CellRecord;
  return back(
    cells,
    { figure: [it.id, output], want, by: [it.id, `inputs.${by}`] },
    libraryFor(library, kind, inputs),
  );
}

const line = (name: string, entry: string, more: Partial<CellRecord> = {}): CellRecord => ({
  id: name,
  role: entry.startsWith('=') ? 'worked' : 'chosen',
  name,
  quantity: 'length',
  entry,
  ...more,
});

describe('a printed figure worked back', () => {
  checkRow('R201', () => {
    const i = numbers('R201');
    const clearance = backOf(
      'shrink-fit',
      {
        outer_bore: `${i.hole_min} in`,
        interference: `${(i.shaft_max! - i.hole_min!).toFixed(4)} in`,
        assembly_clearance: '0.001 in',
        room_temperature: `${i.ambient_F} degF`,
        inner_temperature: `${i.shaft_T_F} degF`,
        outer_material: { alpha: `${i.alpha_bronze_F} 1/degF`, max_temperature: '500 degF' },
        inner_material: { alpha: `${i.alpha_shaft_F} 1/degF`, max_temperature: '500 degF' },
      },
      'heat_to',
      `${expectedOf('R201')} degF`,
      'assembly_clearance',
    );
    // One degree of the printed temperature is a hundredth of a thou.
    return { got: clearance / 0.0254, expected: i.clearance!, near: 1e-5 };
  });

  checkRow('R169', () => {
    const i = numbers('R169');
    const metal = { E: `${i.E} psi`, nu: `${i.nu}`, yield: '50000 psi', brittle: '0' };
    const interference = backOf(
      'interference-fit',
      {
        contact_diameter: `${2 * i.R!} in`,
        interference: '0.0005 in',
        inner_bore: '0 in',
        outer_diameter: `${2 * i.ro!} in`,
        length: `${2 * i.R!} in`,
        friction: '0.15',
        inner_material: metal,
        outer_material: metal,
      },
      'pressure',
      `${expectedOf('R169')} psi`,
      'interference',
    );
    return { got: interference / 0.0254, expected: 2 * i.radial_interference!, within: 3e-3 };
  });

  checkRow('R183', () => {
    const { a, b, c, L, Es, nus, Eh, nuh, sigma_max, f } = numbers('R183');
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
    const by = (output: string, want: string): number =>
      backOf('interference-fit', inputs, output, want, 'interference');
    // The same interference gives the greatest stress and the printed pressure.
    return {
      got: by('hoop_outer_bore', `${sigma_max} MPa`),
      expected: by('pressure', `${expectedOf('R183')} MPa`),
      within: 1e-3,
    };
  });

  for (const id of ['R500', 'R503', 'R504'])
    checkRow(id, () => {
      const i = numbers(id);
      const thread = `${{ 0.25: '1/4', 0.4375: '7/16', 0.5: '1/2' }[i.D!]}-${i.tpi} UNC`;
      const drill = back(
        [
          line('drill', `${(0.9 * i.D!).toFixed(3)} in`),
          line('share', `= THREADSHARE("${thread}"; drill)`, { quantity: 'number' }),
        ],
        { figure: ['share', 'value'], want: `${expectedOf(id) / 100}`, by: ['drill', 'entry'] },
      );
      // A tenth of a percentage point, as the row says.
      return { got: drill / 0.0254, expected: i.drill!, near: (0.001 * 1.299) / i.tpi! };
    });

  checkRow('R644', () => {
    const size = rowById('R644').inputs as Record<'a' | 'b' | 'c' | 'd', [number, number]>;
    const stack = (want: string, limits?: CellRecord['limits']): number =>
      back(
        [
          ...(['a', 'b', 'c', 'd'] as const).map((name) =>
            line(name, `${size[name][0] + (name === 'a' ? 0.02 : 0)} in`, {
              tolerance: `± ${size[name][1]} in`,
            }),
          ),
          line('gap', '= a - b - c - d', limits ? { limits } : {}),
        ],
        { figure: ['gap', 'value'], want, by: ['a', 'entry'] },
      ) / 0.0254;
    // The printed mean gap, and the least gap of it: 0.005 in less the sum of the tolerances, 0.010 in (the same example).
    return [
      { got: stack(`${expectedOf('R644')} in`), expected: size.a[0], near: 1e-9 },
      { got: stack('lower limit', { lower: '-0.005 in' }), expected: size.a[0], near: 1e-6 },
    ];
  });
});
