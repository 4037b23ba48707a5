import { createRoot, createSignal } from 'solid-js';
import type { Simulation } from '../../engine/montecarlo/types.ts';
import type { Sheet } from '../state/sheet.ts';

/** The progress of a simulation of the whole sheet. */
export type DrawsState =
  | { is: 'none' }
  | { is: 'running'; done: number; of: number; cancel: () => void }
  | { is: 'there'; simulation: Simulation; rev: number }
  | { is: 'failed'; message: string };

const DRAWS = 200_000;
/** Fixed, so that the same sheet gives the same figures to everybody. */
const SEED = 1;

const create = (sheet: Sheet) =>
  createRoot(() => {
    const [state, setState] = createSignal<DrawsState>({ is: 'none' });
    const run = async (): Promise<void> => {
      const rev = sheet.state.rev;
      const { createSimulation } = await import('../../engine/montecarlo/client.ts');
      const running = createSimulation(sheet.file(), {
        draws: DRAWS,
        seed: SEED,
        onProgress: (done, of) => setState({ is: 'running', done, of, cancel: running.cancel }),
      });
      setState({ is: 'running', done: 0, of: DRAWS, cancel: running.cancel });
      try {
        const simulation = await running.result;
        setState(simulation ? { is: 'there', simulation, rev } : { is: 'none' });
      } catch (error) {
        setState({ is: 'failed', message: error instanceof Error ? error.message : String(error) });
      }
    };
    return { state, run };
  });

export type Draws = ReturnType<typeof create>;

const bySheet = new WeakMap<Sheet, Draws>();

/** The simulation of a sheet; one run serves all its lines. */
export const drawsOf = (sheet: Sheet): Draws => {
  const found = bySheet.get(sheet) ?? create(sheet);
  bySheet.set(sheet, found);
  return found;
};
