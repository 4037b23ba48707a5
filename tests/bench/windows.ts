import { library } from '../../cells/catalogue.ts';
import type { DecisionRule, SheetFile } from '../../shared/sheet/format.ts';
import { TrialSheet } from '../../src/engine/trial/trial-sheet.ts';
import { mapOf } from '../../src/engine/window/map.ts';
import { windowOf } from '../../src/engine/window/window.ts';
import { type Chain, chain, chainSheet } from './chain.ts';

const WARM = 3;
const TIMES = 9;

/** The chain with every eighth quantity judged, half a millimetre either way, and where draws are wanted a kink below the last. */
function judged(of: Chain, rule: DecisionRule, kink: boolean): SheetFile {
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

/** Milliseconds of a window and of a map of 40 by 40, on a copy of the sheet that is there. */
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
  let at = 0;
  const row = {
    quantities,
    sources,
    checks: window(plain),
    copyMs: round(load),
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
