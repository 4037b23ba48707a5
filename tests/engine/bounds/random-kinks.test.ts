import fc from 'fast-check';
import { expect, it } from 'vitest';
import { library } from '../../../cells/catalogue.ts';
import type { CellRecord } from '../../../shared/sheet/format.ts';
import { Engine } from '../../../src/engine/engine.ts';
import { sheetOf } from '../random-sheet.ts';
import { Draw } from '../slips/draw.ts';

/** A formula as it is typed, and the same in plain doubles: nothing of ours computes the second. */
interface Both {
  text: string;
  at: (values: readonly number[]) => number;
}

const LEAVES = 5;
const BEFORE = 3;
const named = (i: number): string => (i < LEAVES ? `x${i}` : `y${i - LEAVES}`);

/** Equal but for rounding, as the sheet has it. */
const apart = (a: number, b: number, scale: number): number =>
  Math.abs(a - b) <= 1e-12 * Math.max(scale, Math.abs(a), Math.abs(b)) ? 0 : a - b;
const whole = (q: number): number =>
  Math.abs(q - Math.round(q)) <= 1e-12 * Math.max(1, Math.abs(q)) ? Math.round(q) : q;
const median = (all: number[]): number => [...all].sort((a, b) => a - b)[1] as number;

/** Lengths throughout, about tens of millimetres: products and quotients by a unit length. */
const formula: fc.Arbitrary<Both> = fc.letrec<{ any: Both }>((tie) => {
  const pair = fc.tuple(tie('any'), tie('any'));
  const three = fc.tuple(tie('any'), tie('any'), tie('any'));
  const of = (arb: fc.Arbitrary<Both[]>, text: (...t: string[]) => string, at: (...v: number[]) => number) =>
    arb.map(
      (all): Both => ({
        text: text(...all.map((one) => one.text)),
        at: (values) => at(...all.map((one) => one.at(values))),
      }),
    );
  return {
    any: fc.oneof(
      { depthSize: 'small', withCrossShrink: true },
      fc.nat(LEAVES + BEFORE - 1).map((i): Both => ({ text: named(i), at: (values) => values[i] as number })),
      fc.integer({ min: 1, max: 60 }).map((n): Both => ({ text: `${n} mm`, at: () => n / 1000 })),
      of(
        pair as never,
        (a, b) => `(${a} + ${b})`,
        (a, b) => a + b,
      ),
      of(
        pair as never,
        (a, b) => `(${a} - ${b})`,
        (a, b) => a - b,
      ),
      of(
        pair as never,
        (a, b) => `(${a} * ${b} / 10 mm)`,
        (a, b) => (a * b) / 0.01,
      ),
      of(
        pair as never,
        (a, b) => `(${a} / (${b}) * 10 mm)`,
        (a, b) => (b === 0 ? Number.NaN : (a / b) * 0.01),
      ),
      of(
        pair as never,
        (a, b) => `MIN(${a}; ${b})`,
        (a, b) => Math.min(a, b),
      ),
      of(
        pair as never,
        (a, b) => `MAX(${a}; ${b})`,
        (a, b) => Math.max(a, b),
      ),
      of(
        three as never,
        (a, b, c) => `MEDIAN(${a}; ${b}; ${c})`,
        (a, b, c) => median([a, b, c]),
      ),
      of(
        fc.tuple(tie('any')) as never,
        (a) => `ABS(${a})`,
        (a) => Math.abs(a),
      ),
      of(
        fc.tuple(tie('any')) as never,
        (a) => `(SQRT(ABS(${a}) / 10 mm) * 10 mm)`,
        (a) => Math.sqrt(Math.abs(a) / 0.01) * 0.01,
      ),
      of(
        fc.tuple(tie('any')) as never,
        (a) => `((${a})^2 / 10 mm)`,
        (a) => (a * a) / 0.01,
      ),
      of(
        fc.tuple(tie('any')) as never,
        (a) => `(SIN(${a} / 10 mm * 1 rad) * 10 mm)`,
        (a) => Math.sin(a / 0.01) * 0.01,
      ),
      of(
        fc.tuple(tie('any')) as never,
        (a) => `FLOOR(${a}; 7 mm)`,
        (a) => Math.floor(whole(a / 0.007)) * 0.007,
      ),
      of(
        fc.tuple(tie('any')) as never,
        (a) => `MOD(${a}; 9 mm)`,
        (a) => {
          const q = whole(a / 0.009);
          return Number.isInteger(q) ? 0 : a - 0.009 * Math.floor(q);
        },
      ),
      of(
        fc.tuple(tie('any'), tie('any'), tie('any'), tie('any')) as never,
        (a, b, c, d) => `IF(${a} > ${b}; ${c}; ${d})`,
        (a, b, c, d) => (apart(a, b, 0) > 0 ? c : d),
      ),
    ),
  } as never;
}).any;

const leaf = fc.record({
  micrometres: fc.oneof(fc.integer({ min: 1000, max: 60_000 }), fc.constantFrom(0, 10_000, 14_000, 30_000)),
  below: fc.oneof(fc.constant(0), fc.integer({ min: 1, max: 3000 })),
  above: fc.oneof(fc.constant(0), fc.integer({ min: 1, max: 3000 })),
});

it('no sampled point of a random kinked sheet lies outside its worst case', () => {
  const draw = new Draw(5);
  let points = 0;
  let bounded = 0;
  let settled = 0;
  fc.assert(
    fc.property(
      fc.array(leaf, { minLength: LEAVES, maxLength: LEAVES }),
      fc.array(formula, { minLength: BEFORE + 1, maxLength: BEFORE + 1 }),
      (leaves, formulas) => {
        // The first steps refer to leaves alone, for a name is there before it is used.
        const steps = formulas.map((one, n) => ({
          text: one.text.replace(/y(\d)/g, (all, i: string) => (Number(i) < n ? all : `x${i}`)),
          at: (values: readonly number[]) =>
            one.at(values.map((value, i) => (i < LEAVES + n ? value : (values[i - LEAVES] as number)))),
        }));
        const cells: CellRecord[] = [
          ...leaves.map(
            ({ micrometres, below, above }, i): CellRecord => ({
              id: `x${i}`,
              name: `x${i}`,
              role: 'given',
              quantity: 'length',
              entry: `${micrometres} um +${above} -${below} um`,
            }),
          ),
          ...steps.map(
            (step, i): CellRecord => ({
              id: `y${i}`,
              name: `y${i}`,
              role: 'worked',
              quantity: 'length',
              entry: `=${step.text}`,
            }),
          ),
        ];
        const engine = new Engine(library);
        const results = new Map(engine.load(sheetOf(cells)).cells.map((cell) => [cell.id, cell]));
        engine.destroy();
        for (let n = 0; n < 40; n++) {
          const values = leaves.map(({ micrometres, below, above }) => {
            const share = n % 4 === 0 ? draw.of([0, 1]) : n % 4 === 1 ? draw.of([0, 0.5, 1]) : draw.next();
            return (micrometres - below + share * (below + above)) / 1e6;
          });
          steps.forEach((step, i) => {
            values[LEAVES + i] = step.at([...values, ...Array(BEFORE).fill(0)]);
          });
          steps.forEach((step, i) => {
            const value = values[LEAVES + i] as number;
            const figure = results.get(`y${i}`)?.outputs.value?.planned;
            if (!figure || !Number.isFinite(value)) return;
            points++;
            if (Number.isFinite(figure.high - figure.low)) bounded++;
            if (!figure.atMost) settled++;
            const hair = 1e-11 * Math.max(Math.abs(value), 0.1);
            const what = `${JSON.stringify(cells)}: y${i} = ${step.text} is ${value} at ${values}`;
            expect(value, what).toBeGreaterThanOrEqual(figure.low - hair);
            expect(value, what).toBeLessThanOrEqual(figure.high + hair);
          });
        }
      },
    ),
    { seed: 2611, numRuns: 250 },
  );
  expect(points).toBeGreaterThan(20_000);
  // An enclosure of everything would hold, too.
  expect(bounded / points).toBeGreaterThan(0.95);
  expect(settled / points).toBeGreaterThan(0.9);
}, 120_000);
