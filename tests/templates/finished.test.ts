import { describe, expect, it } from 'vitest';
import { library } from '../../cells/catalogue.ts';
import type { CellRecord, Limits, SheetFile } from '../../shared/sheet/format.ts';
import { forksOf, takenInstead } from '../../shared/sheet/ways.ts';
import { computeSheet } from '../../src/engine/compute.ts';
import { entriesAsked, waitedFor, wantedLimits } from '../../src/page/state/asked.ts';
import { cellOfRow, partsOfRow, type RowKey } from '../../src/page/state/row-key.ts';
import { walk } from '../walk.ts';
import { sheetOf, templates } from './shelf.ts';

/** Which of the ways a line is to follow is entered there: the example names the first. */
const BY_THE_OTHER: ReadonlyMap<string, string> = new Map([
  ['= arbor_by_bar', '= arbor_by_two'],
  ['= bore.taper', '= collar_by_blue'],
]);

/** The sheet by every way there is to each end. */
const byEachWay = (file: SheetFile): SheetFile[] => {
  const forks = forksOf(file.cells, undefined);
  const most = Math.max(1, ...forks.map(({ by }) => by.length));
  return Array.from({ length: most }, (_, k) => ({
    ...file,
    cells: file.cells.map((cell) =>
      k > 0 && cell.example !== undefined
        ? { ...cell, example: BY_THE_OTHER.get(cell.example) ?? cell.example }
        : cell,
    ),
    ways: Object.fromEntries(forks.map(({ to, by }) => [to, by[k % by.length] as string])),
  }));
};

const filledLimits = (limits: Limits): Limits => ({
  ...limits,
  ...Object.fromEntries(wantedLimits(limits).map((which) => [which, limits[`${which}Example`]])),
});

/** The line with what is asked of one of its rows, as its example gives it. */
const filled = (cell: CellRecord, row: RowKey): CellRecord => {
  const { input, output } = partsOfRow(row);
  if (input !== undefined) {
    const example = cell.examples?.[input];
    return example === undefined ? cell : { ...cell, inputs: { ...cell.inputs, [input]: example } };
  }
  if (output !== undefined) {
    const own = cell.outputs![output]!;
    const limits = filledLimits(own.limits!);
    return { ...cell, outputs: { ...cell.outputs, [output]: { ...own, limits } } };
  }
  return {
    ...cell,
    ...(!cell.entry && cell.example !== undefined && { entry: cell.example }),
    ...(cell.limits && { limits: filledLimits(cell.limits) }),
  };
};

/** Whole by `npm run prove`. */
const WALKED = walk(0, 1) === 1 ? templates : templates.filter((name) => /^(stripped|worn-seat)/.test(name));

describe.each(WALKED)('%s, by each of its ways', (name) => {
  it('comes to a verdict of every check by what the next entry asks for, and for all of it has an example', () => {
    for (const way of byEachWay(sheetOf(name))) {
      let file = way;
      const forks = forksOf(file.cells, file.ways);
      const counts = (cell: CellRecord) => takenInstead(cell, forks) === undefined;
      const noExample: string[] = [];
      for (let round = 0; round < 12; round += 1) {
        const { cells } = computeSheet(file, library);
        const counted = new Set(file.cells.filter(counts).map(({ id }) => id));
        const { must } = entriesAsked(
          file.cells.filter(counts),
          library,
          waitedFor(cells.filter(({ id }) => counted.has(id))),
        );
        if (must.length === 0) break;
        for (const row of new Set(must)) {
          const before = file.cells.find(({ id }) => id === cellOfRow(row))!;
          const after = filled(before, row);
          if (JSON.stringify(after) === JSON.stringify(before)) noExample.push(row);
          file = { ...file, cells: file.cells.map((cell) => (cell === before ? after : cell)) };
        }
        if (noExample.length > 0) break;
      }
      const waiting = computeSheet(file, library)
        .cells.filter(({ aside }) => aside === undefined)
        .flatMap(({ id, outputs }) =>
          Object.entries(outputs)
            .filter(([, { check, limits, idle }]) => limits && !idle && check.asNew.state === 'waiting')
            .map(([output, { problem }]) => `${id}.${output}: ${problem?.message}`),
        );
      expect({ ways: file.ways, noExample, waiting }).toEqual({
        ways: file.ways,
        noExample: [],
        waiting: [],
      });
    }
  });
});
