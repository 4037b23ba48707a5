import type { SheetFile } from '../../../shared/sheet/format.ts';
import type { WindowAnswer } from './answer.ts';
import type { GaugeAsked, GaugeFound, NoGauge } from './gauge.ts';
import type { MapAnswer, MapAsked } from './map.ts';
import type { WindowAsked } from './window.ts';

/** What is asked of a sheet, to be tried on one of its own. */
export type Asked =
  | ({ ask: 'window' } & WindowAsked)
  | ({ ask: 'map' } & MapAsked)
  | ({ ask: 'gauges' } & GaugeAsked);

/** What each asking is answered with. */
export interface Answers {
  window: WindowAnswer;
  map: MapAnswer;
  gauges: GaugeFound | NoGauge;
}

/** Page to the worker that tries. `rev`: revision of the sheet; an equal one is the same sheet. */
export interface TrialRequest {
  n: number;
  file: SheetFile;
  rev: string;
  asked: Asked;
}

/** Back. */
export type TrialReply = { n: number } & (
  | { gives: 'progress'; done: number; of: number }
  | { gives: 'window'; answer: WindowAnswer }
  | { gives: 'map'; answer: MapAnswer }
  | { gives: 'gauges'; answer: GaugeFound | NoGauge }
  | { gives: 'failure'; message: string }
);
