import type { SheetFile } from '../../../shared/sheet/format.ts';
import type { SimulationReply, SimulationRequest } from './messages.ts';
import type { Simulation, SimulationOptions } from './types.ts';

/** A simulation under way in a worker of its own. */
export interface RunningSimulation {
  /** The simulation; undefined when it was cancelled. Rejects where it could not be carried out: a fault of ours. */
  result: Promise<Simulation | undefined>;
  /** Ends the worker at once. */
  cancel(): void;
}

/** Simulates a sheet in a worker of its own, so that the sheet stays at hand meanwhile. */
export function createSimulation(
  file: SheetFile,
  options: SimulationOptions & { onProgress?: (done: number, draws: number) => void } = {},
): RunningSimulation {
  const { onProgress, ...plain } = options;
  const worker = new Worker(new URL('./worker.ts', import.meta.url), { type: 'module' });
  let finish: (simulation: Simulation | undefined) => void = () => {};
  const result = new Promise<Simulation | undefined>((resolve, reject) => {
    finish = (simulation) => {
      worker.terminate();
      resolve(simulation);
    };
    const fail = (message: string): void => {
      worker.terminate();
      reject(new Error(message));
    };
    worker.onmessage = ({ data }: MessageEvent<SimulationReply>) => {
      if (data.gives === 'progress') onProgress?.(data.done, data.draws);
      else if (data.gives === 'simulation') finish(data.simulation);
      else fail(data.message);
    };
    worker.onerror = (event) => fail(event.message || 'The simulation could not be started.');
  });
  worker.postMessage({ file, options: plain } satisfies SimulationRequest);
  return { result, cancel: () => finish(undefined) };
}
