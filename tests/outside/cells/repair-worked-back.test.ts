import { expect, test } from 'vitest';
import { library } from '../../../cells/catalogue.ts';
import { writeEntry } from '../../../shared/quantities/figures.ts';
import { displayUnit } from '../../../shared/quantities/quantities.ts';
import type { CellRecord } from '../../../shared/sheet/format.ts';
import { libraryFor } from '../../../src/engine/book/example-library.ts';
import { exampleCells, unitsOfExample } from '../../../src/engine/book/worked-example.ts';
import { TrialSheet } from '../../../src/engine/trial/trial-sheet.ts';
import { Desk } from '../../../src/engine/workback/desk.ts';

/**
 * What each cell of a repair is for, by the input a shop would turn, and which of its examples (from 0). Recomputed: the
 * figure is asked for as the example gives it while the input stands elsewhere, and the example's input comes back.
 */
const MAIN: ReadonlyArray<[kind: string, figure: string, by: string, example: number]> = [
  ['tap-drill', 'hole', 'share', 0],
  ['thread-for-worn-hole', 'edge_wall', 'edge', 0],
  ['thread-engagement', 'least_engagement', 'hole_strength', 2],
  ['turned-head', 'bearing_pressure', 'load', 0],
  ['key-size', 'margin', 'torque', 2],
  ['drilled-screw', 'torsion_share', 'bored', 0],
  ['tap-lead', 'full_depth', 'tapped_depth', 0],
  ['pin-in-shear', 'torque_held', 'pin', 0],
  ['taper-pin', 'torque_held', 'large', 1],
  ['bush-held', 'margin', 'load', 0],
  ['bush-out', 'rise_wanted', 'interference', 0],
  ['oil-hole', 'wall_between', 'drill', 0],
  ['oil-flow', 'through_clearance', 'clearance', 0],
  ['arc-clocking', 'chord', 'outside', 0],
  ['relief-in-bore', 'chord', 'depth', 0],
  ['groove-in-bore', 'crown_depth', 'side_depth', 1],
  ['woodruff-key', 'margin', 'torque', 2],
  ['snap-ring-groove', 'margin', 'thrust', 2],
  ['broach-passes', 'force', 'rise', 0],
  ['broach-guide', 'shims_total', 'crown_depth', 0],
  ['push-mandrel', 'margin', 'force', 0],
  ['thread-insert', 'drill_depth', 'length_share', 0],
  ['from-original', 'unexplained', 'new', 1],
];

test.each(MAIN)('%s: %s by %s', (key, output, input, at) => {
  const kind = library.kinds.get(key)!;
  const example = kind.examples[at]!;
  const units = unitsOfExample(example.inputs);
  const cells = exampleCells(kind, example.inputs).map((cell, i): CellRecord => ({ id: `c${i}`, ...cell }));
  const file = (last: CellRecord) => ({
    format: 'fitwright-sheet' as const,
    version: 2 as const,
    title: { title: example.title },
    units,
    rule: 'worst-case' as const,
    cells: [...cells.slice(0, -1), last],
  });
  const it = cells.at(-1)!;
  const trial = new TrialSheet(libraryFor(library, kind, example.inputs), 'all');
  trial.load(file(it));
  const wanted = trial.result(it.id)?.outputs[output]?.planned?.value as number;
  const of = kind.outputs.find(({ name }) => name === output)!;
  const symbol = displayUnit(of.quantity, units, of.display?.[units.length]).symbol;
  const typed = it.inputs?.[input] as string;
  // A twentieth away, in the unit of the example.
  const moved = `= 1.05 * (${typed.replace(/^=/, '')})`;
  trial.load(file({ ...it, inputs: { ...it.inputs, [input]: moved } }));
  const answer = new Desk(trial).workBack({
    figure: { cell: it.id, output },
    want: writeEntry(wanted, symbol),
    change: { cell: it.id, field: `inputs.${input}` },
  });
  const found = answer.solutions.map(({ text }) => {
    trial.load(file({ ...it, inputs: { ...it.inputs, [input]: text } }));
    return trial.result(it.id)?.outputs[output]?.planned?.value as number;
  });
  expect(found.length, answer.reason ?? '').toBeGreaterThan(0);
  for (const figure of found) expect(Math.abs(figure / wanted - 1)).toBeLessThan(3e-5);
  trial.destroy();
});

test('a part beside its original: how far the worst is off, by the size of the new part', () => {
  const trial = new TrialSheet(library, 'all');
  trial.load({
    format: 'fitwright-sheet',
    version: 2,
    title: { title: 'Sleeve after its original' },
    units: { length: 'mm' },
    rule: 'worst-case',
    cells: [
      { id: 'a', name: 'was', role: 'measured', quantity: 'length', entry: '30.00 mm ± 0.01 mm' },
      { id: 'b', name: 'is', role: 'chosen', quantity: 'length', entry: '30.003 mm' },
      {
        id: 'c',
        name: 'same',
        role: 'cell',
        kind: 'from-original',
        edition: 1,
        inputs: { original: '= was', new: '= is' },
      },
      {
        id: 'd',
        name: 'beside',
        role: 'cell',
        kind: 'original-compared',
        edition: 1,
        inputs: { feature_1: 'same' },
      },
    ],
  });
  const answer = new Desk(trial).workBack({
    figure: { cell: 'd', output: 'others_off' },
    want: '-5 um',
    change: { cell: 'b', field: 'entry' },
  });
  // By hand: within 10 um, so 5 um off either way.
  const sizes = answer.solutions.map(({ text }) => Number(text.replace(/[^\d.]/g, '')));
  expect(sizes.sort(), answer.reason ?? '').toEqual([29.995, 30.005]);
  trial.destroy();
});
