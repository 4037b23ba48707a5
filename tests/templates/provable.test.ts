import { describe, expect, it } from 'vitest';
import { library } from '../../cells/catalogue.ts';
import type { CellRecord } from '../../shared/sheet/format.ts';
import { withExamples } from '../../src/command/example.ts';
import { computeSheet } from '../../src/engine/compute.ts';
import { standingOf } from '../../src/engine/report/standing.ts';
import { sheetOf, templates } from './shelf.ts';

/** A size that the sheet has a box for, once it is cut. */
const isCut = ({ role, tolerance, limits, display, quantity }: CellRecord): boolean =>
  role === 'chosen'
    ? tolerance !== undefined || limits !== undefined
    : role === 'worked' && limits !== undefined && display === undefined && quantity === 'length';

/** A width of a cutter, typed in its cell: the groove it leaves is read in that cell alone. */
const TYPED = new Set(['pump-thrust-bush.json groove_differs']);

describe.each(templates)('%s, every size cut and read where its plan wants it', (name) => {
  const asked = withExamples(sheetOf(name));
  // Of several ways to the same end the first is taken.
  const ways = Object.fromEntries(
    asked.cells.toReversed().flatMap(({ way }) => (way ? [[way.to, way.by]] : [])),
  );
  const file = { ...asked, ways };
  const unit = file.units.length === 'in' ? 0.0254 : 1e-3;
  const planned = computeSheet(file, library);
  const read = {
    ...file,
    cells: file.cells.map((cell) => {
      const plan = planned.cells.find(({ id }) => id === cell.id)?.outputs.value?.planned;
      if (!plan || !isCut(cell) || !cell.gauge) return cell;
      const size = ((plan.low + plan.high) / 2 / unit).toFixed(file.units.length === 'in' ? 4 : 3);
      return { ...cell, measured: { entry: `${size}; ${size} ${file.units.length}` } };
    }),
  };
  // A length of a library cell that a check of a line follows from is read in the cell's own line.
  const followed = file.cells.flatMap(({ role, limits, entry }) =>
    role === 'worked' && limits ? [...(entry ?? '').matchAll(/(\w+)\.(\w+)/g)] : [],
  );
  for (const [, at, output] of followed) {
    const cell = read.cells.find((one) => one.name === at);
    const found = planned.cells.find(({ id }) => id === cell?.id)?.outputs[output!];
    if (!cell || found?.quantity !== 'length' || !found.planned) continue;
    const size = (found.planned.value / unit).toFixed(4);
    cell.outputs = {
      ...cell.outputs,
      [output!]: {
        ...cell.outputs?.[output!],
        measured: { entry: `${size} ${file.units.length} ± 0.0001 ${file.units.length}` },
      },
    };
  }
  const { cells } = computeSheet(read, library);
  const lines = read.cells.map((record) => ({ record, result: cells.find(({ id }) => id === record.id) }));

  it('has a gauge for each of them', () => {
    expect(
      file.cells
        .filter((cell) => isCut(cell) && cell.role === 'chosen' && cell.limits && !cell.gauge)
        .map((cell) => cell.name),
    ).toEqual([]);
  });

  it('leaves no line of its own open or only planned', () => {
    const open = lines.flatMap(({ record, result }) =>
      record.role === 'cell' || result?.aside !== undefined || TYPED.has(`${name} ${record.name}`)
        ? []
        : Object.values(result?.outputs ?? {}).flatMap(({ check: { asNew }, idle, limits }) =>
            !idle && limits && /^(not proven|holds$|holds, near|may miss|misses|waiting)/.test(asNew.state)
              ? [`${record.name}: ${asNew.state}`]
              : [],
          ),
    );
    expect(open, standingOf(lines, read.units).words).toEqual([]);
  });
});
