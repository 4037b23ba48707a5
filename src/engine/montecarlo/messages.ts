import type { SheetFile } from '../../../shared/sheet/format.ts';
import type { Simulation, SimulationOptions } from './types.ts';

/** Page to simulation worker: one job, then it is ended. */
export interface SimulationRequest {
  file: SheetFile;
  options: SimulationOptions;
}

/** Simulation worker to page. */
export type SimulationReply =
  | { gives: 'progress'; done: number; draws: number }
  | { gives: 'simulation'; simulation: Simulation }
  | { gives: 'failure'; message: string };
