/**
 * Verdicts by draws: 200,000 draws of a hundred quantities against a general library of arrays and against typed arrays by
 * hand; and twenty lines that draws decide on a sheet of 300 quantities, from an edit to the first figures, to the verdicts
 * that are clear and to the last. `npm run bench -- draws` runs it alone.
 */
import {
  addDependencies,
  create,
  divideDependencies,
  dotDivideDependencies,
  dotMultiplyDependencies,
  type MathJsInstance,
  matrixDependencies,
  subtractDependencies,
} from 'mathjs';
import { library } from '../../cells/catalogue.ts';
import type { CellRecord, SheetFile } from '../../shared/sheet/format.ts';
import { Engine } from '../../src/engine/engine.ts';
import { simulate } from '../../src/engine/montecarlo/simulate.ts';
import { type Chain, chain, chainSheet, leafEntry } from './chain.ts';

const DRAWS = 200_000;
/** Quantities behind the leaves that lines with a kink take in, two and two. */
const KINKED = Array.from({ length: 20 }, (_, i) => [7 * i, 7 * i + 3]).flat();
const round = (x: number, digits = 3): number => Number(x.toPrecision(digits));
const since = (start: number): number => performance.now() - start;

/** The same draws and steps by arrays of a general library, a whole column at a time. */
function byArrays({ leaves, steps }: Chain): number {
  const math = create({
    ...matrixDependencies,
    ...addDependencies,
    ...subtractDependencies,
    ...dotMultiplyDependencies,
    ...dotDivideDependencies,
    ...divideDependencies,
  }) as MathJsInstance;
  const start = performance.now();
  const columns: number[][] = leaves.map(({ micrometres, tolerance }) =>
    Array.from({ length: DRAWS }, () => (micrometres + (2 * Math.random() - 1) * tolerance) / 1e6),
  );
  for (const { kind, left, right } of steps) {
    const [a, b] = [columns[left] as number[], columns[right] as number[]];
    if (kind === 'mean') columns.push(math.divide(math.add(a, b), 2) as unknown as number[]);
    else if (kind === 'product')
      columns.push(math.divide(math.dotMultiply(a, b) as number[], 0.045) as unknown as number[]);
    else
      columns.push(
        math.add(math.subtract(a, math.divide(b, 2) as unknown as number[]), 0.02) as unknown as number[],
      );
  }
  return since(start);
}

/** The same by typed arrays and loops written out, the quickest there is without blocks. */
function byHand({ leaves, steps }: Chain): number {
  const start = performance.now();
  const columns = leaves.map(({ micrometres, tolerance }) => {
    const out = new Float64Array(DRAWS);
    for (let i = 0; i < DRAWS; i++) out[i] = (micrometres + (2 * Math.random() - 1) * tolerance) / 1e6;
    return out;
  });
  for (const { kind, left, right } of steps) {
    const [a, b, out] = [
      columns[left] as Float64Array,
      columns[right] as Float64Array,
      new Float64Array(DRAWS),
    ];
    for (let i = 0; i < DRAWS; i++) {
      const [x, y] = [a[i] as number, b[i] as number];
      out[i] = kind === 'mean' ? (x + y) / 2 : kind === 'product' ? (x * y) / 0.045 : x - y / 2 + 0.02;
    }
    columns.push(out);
  }
  return since(start);
}

/** Every quantity with its sources in the middle, metres. */
function middles({ leaves, steps }: Chain): number[] {
  const found = leaves.map(({ micrometres }) => micrometres / 1e6);
  for (const { kind, left, right } of steps) {
    const [x, y] = [found[left] as number, found[right] as number];
    found.push(kind === 'mean' ? (x + y) / 2 : kind === 'product' ? (x * y) / 0.045 : x - y / 2 + 0.02);
  }
  return found;
}

/** Lines with a kink where they stand, some near their limit and some far from it. */
function withKinks(of: Chain): SheetFile {
  const file = chainSheet(of);
  const at = middles(of);
  const kinks = Array.from({ length: KINKED.length / 2 }, (_, i): CellRecord => {
    const [a = 0, b = 0] = KINKED.slice(2 * i, 2 * i + 2).map((at) => of.leaves.length + at);
    const apart = ((at[a] as number) - (at[b] as number)) * 1e6;
    return {
      id: `kink${i}`,
      name: `kink${i}`,
      role: 'worked',
      quantity: 'length',
      entry: `= ABS(${file.cells[a]?.name} - ${file.cells[b]?.name} - ${apart.toFixed(3)} um)`,
      limits: { upper: `${i % 4 === 0 ? 30 : 1000} um` },
    };
  });
  return { ...file, rule: 'iso14253-2013', cells: [...file.cells, ...kinks] };
}

function settling(of: Chain): { values: number; clear: number; all: number; drawn: number } {
  const file = withKinks(of);
  // The leaf that most of them depend on.
  const users = of.leaves.map(
    (_, i) => KINKED.filter((at) => of.upstream[of.leaves.length + at]?.includes(i)).length,
  );
  const leaf = users.indexOf(Math.max(...users));
  const engine = new Engine(library);
  engine.load(file);
  while (engine.isSettling) engine.draw(true);
  const found: { values: number; clear: number; all: number; drawn: number }[] = [];
  for (let n = 1; n <= 8; n++) {
    const { micrometres, tolerance } = of.leaves[leaf] as Chain['leaves'][number];
    const cell = file.cells[leaf] as CellRecord;
    const changed = [{ ...cell, entry: leafEntry(micrometres + (n % 3), tolerance) }];
    const start = performance.now();
    engine.apply({ changed });
    const values = since(start);
    let clear = Number.NaN;
    const drawn = new Set<string>();
    while (engine.isSettling) {
      for (const { id } of engine.draw(true).cells) drawn.add(id);
      if (Number.isNaN(clear)) clear = since(start);
    }
    found.push({ values, clear, all: since(start), drawn: drawn.size });
  }
  engine.destroy();
  const middle = (of: (one: (typeof found)[number]) => number): number =>
    found.map(of).sort((a, b) => a - b)[found.length >> 1] as number;
  return {
    values: middle((one) => one.values),
    clear: middle((one) => one.clear),
    all: middle((one) => one.all),
    drawn: middle((one) => one.drawn),
  };
}

export function drawnVerdicts(): Record<string, number> {
  const of = chain(100, 30);
  const file = chainSheet(of);
  simulate(file, library, { draws: 20_000 });
  const start = performance.now();
  simulate(file, library, { draws: DRAWS });
  const ours = since(start);
  const [arrays, hand] = [byArrays(of), byHand(of)];
  const { values, clear, all, drawn } = settling(chain(300, 60));
  return {
    'ms, 200,000 draws of 100': round(ours),
    'by arrays of a library': round(arrays),
    'by hand': round(hand),
    'ours / arrays': round(ours / arrays),
    'ours / by hand': round(ours / hand),
    'lines drawn': drawn,
    'ms to values': round(values),
    'ms to clear verdicts': round(clear),
    'ms to all': round(all),
  };
}
