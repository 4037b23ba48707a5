/**
 * From a committed entry to results ready, against closures written by hand, a general library with units, and
 * HyperFormula at nominal alone; memory; cost against size; a simulation; verdicts by draws. `npm run bench`. Prints, and writes tests/bench/results.json.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { cpus } from 'node:os';
import { library } from '../../cells/catalogue.ts';
import type { SheetFile } from '../../shared/sheet/format.ts';
import { Engine } from '../../src/engine/engine.ts';
import { simulate } from '../../src/engine/montecarlo/simulate.ts';
import { type Chain, chain, chainSheet, edits, leafEntry } from './chain.ts';
import { type Contender, closures, sparseClosures } from './contenders.ts';
import { drawnVerdicts } from './drawn-verdicts.ts';
import { nominal } from './nominal.ts';
import { windows } from './windows.ts';
import { withUnits } from './with-units.ts';

const OUT = 'tests/bench/results.json';
const SIZES = [
  [100, 30],
  [300, 60],
  [1000, 100],
] as const;
const GROWTH = [
  [100, 30],
  [300, 60],
  [1000, 100],
  [2000, 150],
  [3000, 200],
] as const;

/** Simulated with the usual number of draws, every quantity an output. */
const SIMULATED = [
  [100, 30],
  [300, 60],
] as const;

const quantile = (sorted: readonly number[], q: number): number =>
  sorted[Math.min(sorted.length - 1, Math.floor(q * sorted.length))] as number;

interface Times {
  median: number;
  p95: number;
}

/** Milliseconds an edit, after some to warm up. */
function time(of: Chain, contender: Contender, count: number, warm: number): Times {
  const all = edits(of, count + warm);
  const taken: number[] = [];
  all.forEach(({ leaf, micrometres }, i) => {
    const start = performance.now();
    contender(leaf, micrometres);
    if (i >= warm) taken.push(performance.now() - start);
  });
  taken.sort((a, b) => a - b);
  return { median: quantile(taken, 0.5), p95: quantile(taken, 0.95) };
}

interface Loaded {
  engine: Engine;
  edit: Contender;
  build: number;
  file: SheetFile;
}

function loaded(of: Chain): Loaded {
  const file = chainSheet(of);
  const start = performance.now();
  const engine = new Engine(library);
  engine.load(file);
  const build = performance.now() - start;
  const edit: Contender = (leaf, micrometres) => {
    const cell = file.cells[leaf];
    if (!cell) throw new Error(`no leaf ${leaf}`);
    engine.apply({
      changed: [{ ...cell, entry: leafEntry(micrometres, of.leaves[leaf]?.tolerance as number) }],
    });
  };
  return { engine, edit, build, file };
}

const heap = (): number => {
  (globalThis as { gc?: () => void }).gc?.();
  return process.memoryUsage().heapUsed / 1e6;
};

/** Megabytes an engine holds with this sheet loaded and edited a few times. */
function memory(of: Chain): number {
  const warm = loaded(chain(20, 5));
  warm.engine.destroy();
  const before = heap();
  const { engine, edit } = loaded(of);
  for (const { leaf, micrometres } of edits(of, 20)) edit(leaf, micrometres);
  const after = heap();
  engine.destroy();
  return after - before;
}

const round = (x: number, digits = 3): number => Number(x.toPrecision(digits));

const only = process.argv[2];
const table = SIZES.filter(([q]) => !only || only === String(q)).map(([quantities, sources]) => {
  const of = chain(quantities, sources);
  const { engine, edit, build } = loaded(of);
  const ours = time(of, edit, 400, 200);
  const cornerColumns = engine.size().cornerColumns;
  const pairs = engine.size();
  engine.destroy();
  const hand = time(of, closures(of, { cornerColumns }).edit, 400, 200);
  const least = time(of, sparseClosures(of).edit, 400, 200);
  const general = time(of, withUnits(of, { cornerColumns }), quantities > 500 ? 3 : 10, 2);
  const bare = time(of, nominal(of), 400, 200);
  return {
    quantities,
    sources,
    medianUpstream: of.median,
    gridCells: pairs.cells,
    cornerColumns,
    buildMs: round(build),
    engineMs: round(ours.median),
    engineP95Ms: round(ours.p95),
    closuresMs: round(hand.median),
    leastMs: round(least.median),
    unitsMs: round(general.median),
    nominalMs: round(bare.median),
    'engine / closures': round(ours.median / hand.median),
    'engine / least': round(ours.median / least.median),
    'units / engine': round(general.median / ours.median),
    'engine / nominal': round(ours.median / bare.median),
  };
});
for (const row of table) console.table(row);

if (only === 'draws') console.table(drawnVerdicts());
if (only === 'windows') console.table(windows(300, 60));

if (!only) {
  const growth = GROWTH.map(([quantities, sources]) => {
    const of = chain(quantities, sources);
    const { engine, edit, build } = loaded(of);
    const ours = time(of, edit, 100, 60);
    engine.destroy();
    return {
      quantities,
      sources,
      buildMs: round(build),
      editMs: round(ours.median),
      p95Ms: round(ours.p95),
      memoryMB: round(memory(of)),
    };
  });
  console.table(growth);
  const drawn = SIMULATED.map(([quantities, sources]) => {
    const file = chainSheet(chain(quantities, sources));
    const start = performance.now();
    const { draws, outputs } = simulate(file, library);
    return {
      quantities,
      sources,
      draws,
      outputs: outputs.length,
      seconds: round((performance.now() - start) / 1000),
    };
  });
  console.table(drawn);
  const verdicts = drawnVerdicts();
  console.table(verdicts);
  const window = windows(300, 60);
  console.table(window);
  const before = JSON.parse(readFileSync(OUT, 'utf8')) as Record<string, unknown>;
  const results = {
    ...before,
    engine: {
      node: process.version,
      processor: cpus()[0]?.model ?? '',
      edits: table,
      growth,
      drawn,
      verdicts,
      window,
    },
  };
  writeFileSync(OUT, `${JSON.stringify(results, null, 2)}\n`);
}
