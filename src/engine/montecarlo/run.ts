import { type BlockFunction, compileClosure } from '../../language/closure.ts';
import type { EngineFunction } from '../functions.ts';
import { type Filler, fillerOf } from './distributions.ts';
import { compare } from './linear.ts';
import type { SimulationPlan, WantedOutput } from './plan.ts';
import { Random } from './random.ts';
import { sortFloats } from './sort.ts';
import { histogramOf, moments, shortest, symmetric } from './summary.ts';
import type { Conformance, SimulatedOutput, Simulation } from './types.ts';

/** Draws computed at a time: small enough for every block of a row to stay near the processor. */
const BLOCK = 1000;

/** What is kept of one output: deviations from its nominal, to seven figures of the deviation. */
interface Kept {
  wanted: WantedOutput;
  slot: number;
  margins: { slot: number; beyond: keyof Omit<Conformance, 'within'> }[];
  deviations: Float32Array;
  found: number;
  within: number;
  beyond: Required<Omit<Conformance, 'within'>>;
}

type Step = (blocks: Float64Array[], n: number, random: Random) => void;

/** Draws the sheet many times over and sums up what its outputs come to. `onBlock` is told how many draws are done. */
export function runPlan(
  plan: SimulationPlan,
  functions: ReadonlyMap<string, EngineFunction>,
  settings: { draws: number; seed: number; coverage: number },
  onBlock: (done: number) => void = () => {},
): Simulation {
  const slots = new Map(plan.rows.map((row, i) => [row.key, i]));
  const blocks = plan.rows.map(() => new Float64Array(BLOCK));
  // A name that is not there reads a block without values.
  blocks.push(new Float64Array(BLOCK).fill(Number.NaN));
  const steps = plan.rows.map((row, slot): Step | undefined => {
    const own = blocks[slot] as Float64Array;
    if (row.kind === 'constant') {
      own.fill(row.value);
      return undefined;
    }
    if (row.kind === 'source') {
      const fill: Filler = fillerOf(row.source);
      return (_, n, random) => fill(own, n, random);
    }
    const run: BlockFunction = compileClosure(
      row.expr,
      (ref) => slots.get(ref.name) ?? plan.rows.length,
      functions,
    );
    return (all, n) => {
      all[slot] = run(all, n);
    };
  });
  const busy = steps.filter((step) => step !== undefined);
  const random = new Random(settings.seed);
  const kept = plan.outputs.map((wanted) => keep(wanted, slots, settings.draws));
  for (let done = 0; done < settings.draws; ) {
    const n = Math.min(BLOCK, settings.draws - done);
    for (const step of busy) step(blocks, n, random);
    for (const one of kept) gather(one, blocks, n);
    done += n;
    onBlock(done);
  }
  return {
    ...settings,
    outputs: kept.map((one) => summarise(one, settings)),
    without: plan.without,
  };
}

function keep(wanted: WantedOutput, slots: ReadonlyMap<string, number>, draws: number): Kept {
  const margins: Kept['margins'] = [];
  const margin = (key: string | undefined, beyond: keyof Omit<Conformance, 'within'>): void => {
    const slot = key === undefined ? undefined : slots.get(key);
    if (slot !== undefined) margins.push({ slot, beyond });
  };
  margin(wanted.lowerMargin, 'belowLower');
  margin(wanted.upperMargin, 'aboveUpper');
  margin(wanted.wearMargin, 'beyondWear');
  return {
    wanted,
    slot: slots.get(wanted.key) as number,
    margins,
    deviations: new Float32Array(draws),
    found: 0,
    within: 0,
    beyond: { belowLower: 0, aboveUpper: 0, beyondWear: 0 },
  };
}

function gather(kept: Kept, blocks: readonly Float64Array[], n: number): void {
  const values = blocks[kept.slot] as Float64Array;
  const nominal = kept.wanted.figure.value;
  for (let i = 0; i < n; i++) {
    const value = values[i] as number;
    if (Number.isNaN(value)) continue;
    kept.deviations[kept.found++] = value - nominal;
  }
  if (kept.margins.length === 0) return;
  for (let i = 0; i < n; i++) {
    let within = !Number.isNaN(values[i]);
    for (const { slot, beyond } of kept.margins) {
      const margin = blocks[slot]?.[i] as number;
      if (margin < 0) kept.beyond[beyond]++;
      // The wear limit stands in place of the limit on its side: it is counted by itself.
      if (beyond !== 'beyondWear' && !(margin >= 0)) within = false;
    }
    if (within) kept.within++;
  }
}

function summarise(
  { wanted, margins, deviations, found, within, beyond }: Kept,
  { draws, coverage }: { draws: number; coverage: number },
): SimulatedOutput {
  const { cell, output, figure } = wanted;
  const sorted = sortFloats(deviations.subarray(0, found));
  const { mean, deviation } = moments(sorted);
  const interval = found > 0 ? shortest(sorted, coverage) : { low: Number.NaN, high: Number.NaN };
  const low = figure.value + interval.low;
  const high = figure.value + interval.high;
  const middle = found > 0 ? symmetric(sorted, coverage) : interval;
  const even = { low: figure.value + middle.low, high: figure.value + middle.high };
  const shares = Object.fromEntries(margins.map((one) => [one.beyond, beyond[one.beyond] / draws]));
  const judged = margins.some((one) => one.beyond !== 'beyondWear');
  return {
    cell,
    output,
    mean: figure.value + mean,
    deviation,
    low,
    high,
    histogram: histogramOf(sorted, figure.value),
    ...(margins.length > 0
      ? { conformance: { within: judged ? within / draws : 1 - beyond.beyondWear / draws, ...shares } }
      : {}),
    linear: compare(figure, { shortest: { low, high }, symmetric: even }, deviation, found, coverage),
    failed: draws - found,
  };
}
