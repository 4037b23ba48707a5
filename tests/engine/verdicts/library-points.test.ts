import { describe, expect, it } from 'vitest';
import { library } from '../../../cells/catalogue.ts';
import type { CellKind, WorkedExample } from '../../../cells/record/cell.ts';
import type { CellRecord } from '../../../shared/sheet/format.ts';
import { libraryFor } from '../../../src/engine/book/example-library.ts';
import { exampleCells, unitsOfExample } from '../../../src/engine/book/worked-example.ts';
import { Engine } from '../../../src/engine/engine.ts';
import type { CellResult } from '../../../src/engine/rows/results.ts';
import { walk } from '../../walk.ts';
import { Dice } from './oracle.ts';

/** A figure with its unit; a temperature moves by degrees, anything else by a share of itself. */
const FIGURE = /^(-?\d+(?:\.\d+)?(?:e-?\d+)?) ?([a-zA-Z%°µ"][^±+]*)?$/;
const STEPS: Readonly<Record<string, string>> = { degC: 'K', degF: 'degF_diff', K: 'K' };

interface Moved {
  cell: number;
  input: string;
  value: number;
  unit: string;
  by: number;
}

/** The inputs of an example that can move, each with how far. */
function movedOf(
  cells: readonly Omit<CellRecord, 'id'>[],
  dice: Dice,
  library: { kinds: ReadonlyMap<string, CellKind> },
): Moved[] {
  const found: Moved[] = [];
  cells.forEach((cell, i) => {
    const kind = library.kinds.get(cell.kind ?? '');
    for (const [input, text] of Object.entries(cell.inputs ?? {})) {
      const [, figure, unit = ''] = FIGURE.exec(text) ?? [];
      const known = kind?.inputs.find(({ name }) => name === input);
      if (figure === undefined || !known?.quantity) continue;
      // A count does not move.
      if (known.quantity === 'number' && /^\d+$/.test(figure)) continue;
      const value = Number(figure);
      const share = dice.of([0.0003, 0.003, 0.03]);
      const by = STEPS[unit.trim()] ? dice.of([0.5, 5, 20]) : Math.abs(value) * share;
      if (by > 0) found.push({ cell: i, input, value, unit: unit.trim(), by });
    }
  });
  return found;
}

const entered = (
  cells: readonly Omit<CellRecord, 'id'>[],
  moved: readonly Moved[],
  text: (one: Moved, i: number) => string,
): CellRecord[] => {
  const made = cells.map(
    (cell, i): CellRecord => ({
      ...cell,
      id: `c${i}`,
      ...(cell.inputs ? { inputs: { ...cell.inputs } } : {}),
    }),
  );
  moved.forEach((one, i) => {
    (made[one.cell]?.inputs as Record<string, string>)[one.input] = text(one, i);
  });
  return made;
};

const written = (x: number): string => Number(x.toPrecision(15)).toString();

/** A sample of them with the other tests. */
const STEP = walk(9, 1);
const examples = [...library.kinds.values()]
  .flatMap((kind) =>
    kind.outputs.some(({ held }) => held)
      ? []
      : kind.examples.map((example, n): [string, CellKind, WorkedExample] => [
          `${kind.key} ${n}`,
          kind,
          example,
        ]),
  )
  .filter((_, i) => i % STEP === 0);

let [compared, moves, bounded] = [0, 0, 0];

describe('no point of a library cell lies outside its worst case', () => {
  it.each(examples)(
    '%s',
    (name, kind, example) => {
      const dice = new Dice(name.length * 31 + name.charCodeAt(0));
      const cells = exampleCells(kind, example.inputs);
      const own = libraryFor(library, kind, example.inputs);
      const file = {
        format: 'fitwright-sheet',
        version: 2,
        title: { title: 'points' },
        units: unitsOfExample(example.inputs),
        rule: 'worst-case',
      } as const;
      for (let round = 0; round < walk(1, 4); round++) {
        const moved = movedOf(cells, dice, own);
        const box = new Engine(own);
        const last = `c${cells.length - 1}`;
        const whole = box
          .load({
            ...file,
            cells: entered(
              cells,
              moved,
              ({ value, unit, by }) => `${written(value)} ${unit} ± ${written(by)} ${STEPS[unit] ?? unit}`,
            ),
          })
          .cells.find(({ id }) => id === last) as CellResult;
        box.destroy();
        const point = new Engine(own);
        for (let n = 0; n < walk(12, 150); n++) {
          const at = moved.map(() => (n % 3 ? dice.to(2) * 2 - 1 : 2 * dice.next() - 1));
          const cellsAt = entered(
            cells,
            moved,
            ({ value, unit, by }, i) => `${written(value + by * (at[i] as number))} ${unit}`,
          );
          const found = (
            n === 0 ? point.load({ ...file, cells: cellsAt }) : point.apply({ changed: cellsAt })
          ).cells.find(({ id }) => id === last);
          for (const [output, { planned }] of Object.entries(found?.outputs ?? {})) {
            const figure = whole.outputs[output]?.planned;
            if (!planned || !figure || !Number.isFinite(planned.value)) continue;
            compared++;
            if (figure.high > figure.low) moves++;
            if (Number.isFinite(figure.high - figure.low)) bounded++;
            const hair = 1e-9 * Math.max(Math.abs(planned.value), Math.abs(figure.value), 1e-9);
            const what = `${output} at ${JSON.stringify(moved.map((one, i) => [one.input, one.value + one.by * (at[i] as number), one.unit]))}: ${planned.value} in ${figure.low} .. ${figure.high}`;
            expect(planned.value, what).toBeGreaterThanOrEqual(figure.low - hair);
            expect(planned.value, what).toBeLessThanOrEqual(figure.high + hair);
          }
        }
        point.destroy();
      }
    },
    600_000,
  );

  it('and these are bounds of something', () => {
    expect(moves / compared).toBeGreaterThan(0.5);
    expect(bounded / compared).toBeGreaterThan(0.9);
  });
});
