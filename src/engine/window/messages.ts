import type { SheetFile } from '../../../shared/sheet/format.ts';
import type { FigurePlace } from '../trial/place.ts';
import type { Answer, AskedQuestion, Offers } from '../workback/question.ts';
import type { WindowAnswer } from './answer.ts';
import type { GaugeAsked, GaugeFound, NoGauge } from './gauge.ts';
import type { MapAnswer, MapAsked } from './map.ts';
import type { WindowAsked } from './window.ts';

/** What is asked of a sheet, to be tried on one of its own. */
export type Asked =
  | ({ ask: 'window' } & WindowAsked)
  | ({ ask: 'map' } & MapAsked)
  | ({ ask: 'gauges' } & GaugeAsked)
  | { ask: 'inputs'; figure: FigurePlace; want: string }
  | ({ ask: 'work-back' } & AskedQuestion);

/** What each asking is answered with. */
export interface Answers {
  window: WindowAnswer;
  map: MapAnswer;
  gauges: GaugeFound | NoGauge;
  /** What may move a figure. */
  inputs: Offers;
  'work-back': Answer;
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
  | { gives: 'inputs'; answer: Offers }
  | { gives: 'work-back'; answer: Answer }
  | { gives: 'failure'; message: string }
);
