import { library } from '../../cells/catalogue.ts';
import type { DecisionRule, SheetFile } from '../../shared/sheet/format.ts';
import type { Row } from '../../src/engine/network/layout.ts';
import { cellRow } from '../../src/engine/rows/key.ts';
import { nominalOf } from '../../src/engine/trial/path.ts';
import { TrialSheet } from '../../src/engine/trial/trial-sheet.ts';
import { mapOf } from '../../src/engine/window/map.ts';
import { windowOf } from '../../src/engine/window/window.ts';
import { Desk } from '../../src/engine/workback/desk.ts';
import { type Chain, chain, chainSheet } from './chain.ts';
import { sparseClosures } from './contenders.ts';

const WARM = 3;
const TIMES = 9;

/**
 * The chain with every eighth quantity judged, half a millimetre either way, and where draws are wanted a kink below the last;
 * below it a line that a thread moves, which is chosen out of a table.
 */
export function judged(of: Chain, rule: DecisionRule, kink: boolean): SheetFile {
  const trial = new TrialSheet(library, 'all');
  const plain = chainSheet(of);
  trial.load(plain);
  const cells = plain.cells.map((cell, i) => {
    const value = trial.result(cell.id)?.outputs.value?.planned?.value ?? Number.NaN;
    if (i < of.leaves.length || i % 8 !== 0 || !Number.isFinite(value)) return cell;
    return {
      ...cell,
      limits: {
        lower: `${(value * 1e3 - 0.5).toFixed(6)} mm`,
        upper: `${(value * 1e3 + 0.5).toFixed(6)} mm`,
      },
    };
  });
  const [a, b] = [0, 1].map((i) => of.leaves[i]?.micrometres as number);
  if (kink)
    cells.push({
      id: 'kink',
      role: 'worked',
      name: 'kink',
      quantity: 'length',
      entry: `= ABS(q0 - q1 - ${(((a as number) - (b as number)) / 1000).toFixed(3)} mm)`,
      limits: { upper: '0.2 mm' },
    });
  trial.destroy();
  cells.push(
    { id: 'tap', role: 'cell', name: 'tap', kind: 'tap-drill', inputs: { thread: 'M8' } },
    {
      id: 'tapped',
      role: 'worked',
      name: 'tapped',
      quantity: 'length',
      entry: `= q${of.quantities - 1} + tap.hole`,
    },
  );
  return { ...plain, rule, cells };
}

const round = (x: number): number => Number(x.toPrecision(3));

const median = (of: () => void): number => {
  const taken: number[] = [];
  for (let i = 0; i < WARM + TIMES; i++) {
    const start = performance.now();
    of();
    if (i >= WARM) taken.push(performance.now() - start);
  }
  return taken.sort((x, y) => x - y)[TIMES >> 1] as number;
};

/**
 * The leaf with which a quantity comes to what is wanted, by a plain secant over closures written by hand for this one
 * sheet: no range, no second answer, no word of what else turns.
 */
function secant(
  of: Chain,
  { edit, figures }: ReturnType<typeof sparseClosures>,
  leaf: number,
  at: number,
  wanted: number,
): number {
  const off = (micrometres: number): number => {
    edit(leaf, micrometres);
    return (figures.value[at] as number) - wanted;
  };
  let [a, b] = [of.leaves[leaf]?.micrometres as number, (of.leaves[leaf]?.micrometres as number) + 1];
  let [fa, fb] = [off(a), off(b)];
  for (let i = 0; i < 50 && Math.abs(fb) > 1e-12 && fa !== fb; i++) {
    const next = b - (fb * (b - a)) / (fb - fa);
    [a, fa, b] = [b, fb, next];
    fb = off(b);
  }
  return b * 1e-6;
}

/** A quantity far down the chain that the first leaf moves, and a value for it that another size of that leaf gives, mm. */
export function goalOf(of: Chain, trial: TrialSheet): { deep: number; goal: number } {
  const deep = of.upstream.findLastIndex((all, i) => i % 8 === 0 && all.includes(0));
  const row = trial.computed().network.rows.get(cellRow(`c${deep}`)) as Row;
  return { deep, goal: nominalOf(trial.computed(), row) + 2e-5 };
}

/** Milliseconds of the offers, of an answer and of a choice of work back, of a window and of a map of 40 by 40, on a copy of the sheet that is there. */
export function windows(quantities: number, sources: number) {
  const of = chain(quantities, sources);
  const copy = (rule: DecisionRule, kink: boolean): TrialSheet => {
    const trial = new TrialSheet(library);
    trial.load(judged(of, rule, kink));
    trial.settle();
    return trial;
  };
  const window = (trial: TrialSheet): number => {
    const found = windowOf(trial, { cell: 'c0', field: 'entry' });
    if (found.is === 'none') throw new Error(found.why);
    return found.checks.length;
  };
  const [plain, drawn] = [copy('worst-case', false), copy('iso14253-2013', true)];
  const begin = performance.now();
  copy('worst-case', false);
  const load = performance.now() - begin;
  const { deep, goal } = goalOf(of, plain);
  const desk = new Desk(plain);
  const figure = { cell: `c${deep}`, output: 'value' };
  const want = `${(goal * 1e3).toFixed(6)} mm`;
  const back = (): number => {
    const { solutions, reason } = desk.workBack({ figure, want, change: { cell: 'c0', field: 'entry' } });
    const [one] = solutions;
    if (one?.value === undefined) throw new Error(reason);
    return one.value;
  };
  const tapped = nominalOf(plain.computed(), plain.computed().network.rows.get(cellRow('tapped')) as Row);
  const choose = (): number => {
    const { solutions, reason } = desk.answer({
      figure: { cell: 'tapped', output: 'value' },
      want: `${((tapped + 3e-3) * 1e3).toFixed(6)} mm`,
      change: { cell: 'tap', field: 'inputs.thread' },
    });
    if (solutions.length === 0) throw new Error(reason);
    return solutions.length;
  };
  const byHand = sparseClosures(of);
  const plainly = secant(of, byHand, 0, deep, goal);
  // What is told is rounded to what a shop writes.
  if (Math.abs(back() - plainly) > 1e-6)
    throw new Error(`Worked back to ${back()}, by a secant to ${plainly}.`);
  let at = 0;
  const row = {
    quantities,
    sources,
    checks: window(plain),
    copyMs: round(load),
    offersMs: round(median(() => desk.offers(figure, want))),
    workBackMs: round(median(back)),
    choiceMs: round(median(choose)),
    secantMs: round(median(() => secant(of, byHand, 0, deep, goal))),
    windowMs: round(median(() => window(plain))),
    windowByDrawsMs: round(median(() => window(drawn))),
    mapMs: median(() => {
      const map = mapOf(plain, {
        across: { cell: 'c0', field: 'entry' },
        up: { cell: 'c1', field: 'entry' },
      });
      if (map.is === 'none') throw new Error(map.why);
      at += map.cells.length;
    }),
  };
  plain.destroy();
  drawn.destroy();
  if (at === 0) throw new Error('No map was worked out.');
  return row;
}
