import type { SheetFile } from '../../../shared/sheet/format.ts';
import { Engine } from '../engine.ts';
import type { Library } from '../rows/library.ts';
import { planOf, type SimulationPlan } from './plan.ts';
import { runPlan } from './run.ts';
import type { Simulation, SimulationOptions } from './types.ts';

const DRAWS = 200_000;
const SEED = 101;
const COVERAGE = 0.95;

/**
 * Simulates a sheet (JCGM 101): every source of spread is drawn from its distribution, and every output is computed
 * from the draws by the same formulas. In Node or a worker; it does not return before it is done.
 */
export function simulate(
  file: SheetFile,
  library: Library,
  options: SimulationOptions & { onProgress?: (done: number, draws: number) => void } = {},
): Simulation {
  const { draws = DRAWS, seed = SEED, coverage = COVERAGE, onProgress } = options;
  const engine = new Engine(library);
  try {
    if (options.measured === false) engine.apply({ measured: false });
    const results = engine.load(file);
    const computed = engine.computed();
    const plan: SimulationPlan = planOf(computed);
    const problems = new Map(results.cells.map((cell) => [cell.id, cell.outputs]));
    for (const one of plan.without) {
      const problem = problems.get(one.cell)?.[one.output]?.problem;
      if (problem) one.problem = problem;
    }
    return runPlan(plan, computed.functions, { draws, seed, coverage }, (done) => onProgress?.(done, draws));
  } finally {
    engine.destroy();
  }
}
