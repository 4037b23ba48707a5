import { describe, expect, it, test } from 'vitest';
import { library } from '../../../cells/catalogue.ts';
import type { CellRecord, DecisionRule, Limits } from '../../../shared/sheet/format.ts';
import { computeSheet } from '../../../src/engine/compute.ts';
import { Engine } from '../../../src/engine/engine.ts';
import { plain } from '../closed-form.ts';
import { sheetOf } from '../random-sheet.ts';

const readings = ['a', 'b', 'c', 'd'].map((name) => plain(name, 'measured', '50.000 mm ± 0.010 mm'));
const sheet = (
  formula: string,
  limits: Limits,
  rule: DecisionRule = 'iso14253-2013',
  others: CellRecord[] = readings,
) => ({
  ...sheetOf([...others, plain('y', 'worked', formula, { limits })]),
  rule,
});
const outputOf = (...args: Parameters<typeof sheet>) => {
  const found = computeSheet(sheet(...args), library).byName('y')?.outputs.value;
  if (!found) throw new Error('no y');
  return found;
};

describe('a spread of four equal readings', () => {
  const range = '= MAX(a; b; c; d) - MIN(a; b; c; d)';
  // Range of four normal draws: 95.45 % lie below 4.0 standard deviations and 5 % below 0.76 (tables of the studentised range with infinite degrees of freedom, from memory).
  test('is proven within a limit that its draws keep, and not by the nothing that the slopes at a tie tell', () => {
    const found = outputOf(range, { upper: '0.030 mm' });
    expect(found.check).toMatchObject({
      method: 'draws',
      asNew: { state: expect.stringMatching(/^proven in limits/) },
    });
    expect(found.check.conformance).toBeGreaterThan(0.99);
  });

  test('is not proven within one that a twentieth of them pass', () => {
    const found = outputOf(range, { upper: '0.018 mm' });
    expect(found.check.asNew.state).toBe('not proven');
    expect(found.drawn?.draws).toBe(200_000);
    expect(found.check.conformance).toBeCloseTo(0.95, 1);
  });

  test('is out of one that next to none of them keep', () => {
    expect(outputOf(range, { upper: '0.001 mm' }).check.asNew.state).toBe('out of limits');
  });

  test('has its mean and its deviation: 2.0588 and 0.8798 of a normal sample of four (control chart constants d2, d3; from memory)', () => {
    const { drawn } = outputOf(range, { upper: '0.018 mm' });
    expect((drawn?.centre as number) / 5e-6).toBeCloseTo(2.0588, 2);
    expect((drawn?.u as number) / 5e-6).toBeCloseTo(0.8798, 2);
  });
});

test('a difference without its sign follows from draws too: half-normal', () => {
  const found = outputOf('= ABS(a - b)', { upper: '0.016 mm' }, 'iso14253-2017');
  // u of the difference is 0.005 mm times root 2; 0.016 mm is 2.263 of it: 97.6 % lie within.
  expect(found.check).toMatchObject({
    method: 'draws',
    asNew: { state: expect.stringMatching(/^proven in limits/) },
  });
  expect(found.check.conformance).toBeCloseTo(0.9764, 2);
});

test.each([['= a - b'], ['= (a + b) / 2 - c'], ['= PI() * (a^2 - b^2) / 4 / 50 mm']])(
  '%s needs no draws: it is straight over its spread',
  (formula) => {
    const found = outputOf(formula, { upper: '200 mm' });
    expect(found.check.method).toBeUndefined();
    expect(found.drawn).toBeUndefined();
  },
);

describe('two sizes anywhere between their ends, each as wide: the sum is triangular', () => {
  // 1.6449 standard uncertainties from the middle leave 5.4 % of a triangle beyond, not the 5 % of a normal figure.
  const others = [plain('a', 'chosen', '50 mm ± 0.1 mm'), plain('b', 'chosen', '20 mm ± 0.1 mm')];
  const beyond = (share: number) =>
    outputOf('= a + b', { upper: `${70 + 0.2 - Math.sqrt(2 * share) * 0.2} mm` }, 'iso14253-2017', others);
  // Half the square of the distance to the end, over the square of the whole reach.
  test.each([
    [0.053, 'may miss'],
    [0.047, 'holds, near the edge'],
  ])('%d beyond its limit: %s', (share, state) => {
    expect(beyond(share).check).toMatchObject({ asNew: { state }, method: 'draws' });
  });

  test('and far from the edge nothing is drawn', () => {
    expect(beyond(0.01).check.method).toBeUndefined();
    expect(beyond(0.2).check.method).toBeUndefined();
  });
});

describe('by the rule of 2017 out mirrors in', () => {
  const ofWidth = (width: number) =>
    outputOf('= a - b', { lower: `${-width} um`, upper: `${width} um` }, 'iso14253-2017').check;
  // u of the difference is 7.07 um: 4 um each way hold 42.8 % of it, 0.4 um 4.5 %.
  test('where next to none of a spread lies between limits, whichever of them it misses', () => {
    expect(ofWidth(4).asNew.state).toBe('not proven');
    expect(ofWidth(0.4)).toMatchObject({
      asNew: { state: 'out of limits' },
      note: expect.stringMatching(/open/),
    });
    expect(ofWidth(0.4).asNew.at).toBeUndefined();
  });
});

it('under the worst case nothing is drawn', () => {
  expect(outputOf('= ABS(a - b)', { upper: '1 mm' }, 'worst-case').drawn).toBeUndefined();
});

describe('until the draws are made', () => {
  const file = sheet('= ABS(a - b)', { upper: '0.016 mm' });
  const y = (engine: Engine, toLook: boolean) =>
    engine.draw(toLook).cells.find(({ id }) => id === 'c_y')?.outputs.value;

  it('a verdict is being settled, and never the one before', () => {
    const engine = new Engine(library);
    const first = engine.load(file).cells.find(({ id }) => id === 'c_y')?.outputs.value;
    expect(first?.check.asNew.state).toBe('being settled');
    let settled = first;
    while (engine.isSettling) settled = y(engine, true) ?? settled;
    const stood = settled?.check.asNew.state;
    expect(stood).not.toBe('being settled');
    const again = engine.apply({ changed: [plain('a', 'measured', '50.001 mm ± 0.010 mm')] });
    expect(again.cells.find(({ id }) => id === 'c_y')?.outputs.value?.check.asNew.state).toBe(
      'being settled',
    );
    engine.destroy();
  });

  it('and by blocks or to each look, after other edits or afresh, among other lines or alone, they are the same', () => {
    const drawnBy = (engine: Engine, toLook: boolean) => {
      let last = undefined as ReturnType<typeof y>;
      while (engine.isSettling) last = y(engine, toLook) ?? last;
      engine.destroy();
      return last?.drawn;
    };
    const fresh = new Engine(library);
    fresh.load(file);
    const expected = drawnBy(fresh, true);
    const slow = new Engine(library);
    slow.load(file);
    expect(drawnBy(slow, false)).toEqual(expected);
    const edited = new Engine(library);
    edited.load(sheet('= ABS(a - c)', { upper: '0.016 mm' }));
    edited.draw(true);
    edited.apply({ changed: [file.cells.at(-1) as CellRecord] });
    expect(drawnBy(edited, true)).toEqual(expected);
    const among = new Engine(library);
    among.load({
      ...file,
      cells: [plain('z', 'worked', '= MAX(c; d) - MIN(a; d)', { limits: { upper: '1 mm' } }), ...file.cells],
    });
    expect(drawnBy(among, true)).toEqual(expected);
  });
});
