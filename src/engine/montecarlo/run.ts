import { type BlockFunction, compileClosure } from '../../language/compile/closure.ts';
import { type Filler, fillerOf } from '../draws/distributions.ts';
import { GROUP, Stream } from '../draws/stream.ts';
import type { EngineFunction } from '../network/functions.ts';
import { keyOf, type RowKey } from '../rows/key.ts';
import { compare } from './linear.ts';
import type { SimulationPlan, WantedOutput } from './plan.ts';
import { type Interval, type Summary, summaryOf } from './summary.ts';
import type { Conformance, SimulatedOutput, Simulation } from './types.ts';

/** Draws computed at a time, whole groups: few enough for every block of a row to stay near the processor. */
const BLOCK = 2 * GROUP;

/** Draws of one row, as deviations from its nominal: to seven figures of the deviation. */
interface Drawn {
  slot: number;
  nominal: number;
  deviations: Float32Array;
  found: number;
}

/** What is kept of one output. */
interface Kept {
  wanted: WantedOutput;
  /** Outputs that stand for the same row have the same one. */
  drawn: Drawn;
  margins: { slot: number; beyond: keyof Omit<Conformance, 'within'> }[];
  within: number;
  beyond: Required<Omit<Conformance, 'within'>>;
}

type Step = (blocks: Float64Array[], n: number, group: number) => void;

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
      const stream = new Stream(row.key, settings.seed);
      return (_, n, group) => {
        for (let from = 0; from < n; from += GROUP) {
          stream.begin(group + from / GROUP);
          fill(own.subarray(from), Math.min(GROUP, n - from), stream);
        }
      };
    }
    const run: BlockFunction = compileClosure(
      row.expr,
      (ref) => slots.get(keyOf(ref)) ?? plan.rows.length,
      functions,
    );
    return (all, n) => {
      all[slot] = run(all, n);
    };
  });
  const busy = steps.filter((step) => step !== undefined);
  const first = Math.min(BLOCK, settings.draws);
  for (const step of busy) step(blocks, first, 0);
  // A line that only passes on another one's figure has its block.
  const drawn = new Map<Float64Array, Drawn>();
  const drawnOf = ({ key, figure }: WantedOutput): Drawn => {
    const slot = slots.get(key) as number;
    const block = blocks[slot] as Float64Array;
    const found = drawn.get(block);
    if (found?.nominal === figure.value) return found;
    const deviations = new Float32Array(settings.draws);
    const one = { slot, nominal: figure.value, deviations, found: 0 };
    drawn.set(block, one);
    return one;
  };
  const kept = plan.outputs.map((wanted) => keep(wanted, drawnOf(wanted), slots));
  for (let done = 0; done < settings.draws; ) {
    const n = Math.min(BLOCK, settings.draws - done);
    if (done > 0) for (const step of busy) step(blocks, n, done / GROUP);
    for (const one of drawn.values()) gather(one, blocks, n);
    for (const one of kept) if (one.margins.length > 0) judge(one, blocks, n);
    done += n;
    onBlock(done);
  }
  const summaries = new Map<Drawn, Summary>();
  return {
    ...settings,
    outputs: kept.map((one) => summarise(one, settings, summaries)),
    without: plan.without,
  };
}

function keep(wanted: WantedOutput, drawn: Drawn, slots: ReadonlyMap<string, number>): Kept {
  const margins: Kept['margins'] = [];
  const margin = (key: RowKey | undefined, beyond: keyof Omit<Conformance, 'within'>): void => {
    const slot = key === undefined ? undefined : slots.get(key);
    if (slot !== undefined) margins.push({ slot, beyond });
  };
  margin(wanted.lowerMargin, 'belowLower');
  margin(wanted.upperMargin, 'aboveUpper');
  margin(wanted.wearMargin, 'beyondWear');
  return { wanted, drawn, margins, within: 0, beyond: { belowLower: 0, aboveUpper: 0, beyondWear: 0 } };
}

function gather(drawn: Drawn, blocks: readonly Float64Array[], n: number): void {
  const { slot, nominal, deviations } = drawn;
  const values = blocks[slot] as Float64Array;
  let { found } = drawn;
  for (let i = 0; i < n; i++) {
    const value = values[i] as number;
    if (Number.isNaN(value)) continue;
    deviations[found++] = value - nominal;
  }
  drawn.found = found;
}

function judge(kept: Kept, blocks: readonly Float64Array[], n: number): void {
  const values = blocks[kept.drawn.slot] as Float64Array;
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
  { wanted, drawn, margins, within, beyond }: Kept,
  { draws, coverage }: { draws: number; coverage: number },
  summaries: Map<Drawn, Summary>,
): SimulatedOutput {
  const { cell, output, figure } = wanted;
  const { found } = drawn;
  const summary = summaries.get(drawn) ?? summed(drawn, coverage);
  summaries.set(drawn, summary);
  const { mean, deviation, histogram, ...deviations } = summary;
  const from = ({ low, high }: Interval): Interval => ({
    low: figure.value + low,
    high: figure.value + high,
  });
  const shortest = from(deviations.shortest);
  const shares = Object.fromEntries(margins.map((one) => [one.beyond, beyond[one.beyond] / draws]));
  const judged = margins.some((one) => one.beyond !== 'beyondWear');
  return {
    cell,
    output,
    mean: figure.value + mean,
    deviation,
    ...shortest,
    histogram,
    ...(margins.length > 0
      ? { conformance: { within: judged ? within / draws : 1 - beyond.beyondWear / draws, ...shares } }
      : {}),
    linear: compare(figure, { shortest, symmetric: from(deviations.symmetric) }, deviation, found, coverage),
    failed: draws - found,
  };
}

function summed({ nominal, deviations, found }: Drawn, coverage: number): Summary {
  if (found > 0) return summaryOf(deviations.subarray(0, found), coverage, nominal);
  // No draw could be computed.
  const interval = { low: Number.NaN, high: Number.NaN };
  const histogram = { from: nominal, to: nominal, counts: [], below: 0, above: 0 };
  return { mean: 0, deviation: 0, shortest: interval, symmetric: interval, histogram };
}
