import { libraryOnUse } from '../../../cells/on-use.ts';
import { kindsOf } from '../rows/kinds-of.ts';
import { notFetched } from '../rows/library.ts';
import { TrialSheet } from '../trial/trial-sheet.ts';
import { Desk } from '../workback/desk.ts';
import { gaugesFor } from './gauge.ts';
import { mapOf } from './map.ts';
import type { TrialReply, TrialRequest } from './messages.ts';
import { windowOf } from './window.ts';

const library = libraryOnUse();
let trial: TrialSheet | undefined;
let rev: string | undefined;

const say = (reply: TrialReply): void => self.postMessage(reply);

async function answer({ n, file, asked, rev: wanted }: TrialRequest): Promise<TrialReply> {
  const kinds = [...kindsOf(file.cells), 'gauge'];
  await library.fetch(kinds);
  const away = kinds.find((kind) => library.lacks(kind));
  if (away !== undefined) return { n, gives: 'failure', message: notFetched(away) };
  trial ??= new TrialSheet(library);
  if (rev !== wanted) trial.load(file);
  rev = wanted;
  switch (asked.ask) {
    case 'window':
      return { n, gives: 'window', answer: windowOf(trial, asked) };
    case 'gauges':
      return { n, gives: 'gauges', answer: gaugesFor(trial, asked) };
    case 'inputs':
      return { n, gives: 'inputs', answer: new Desk(trial).offers(asked.figure, asked.want) };
    case 'work-back':
      return { n, gives: 'work-back', answer: new Desk(trial).answer(asked) };
    case 'map':
      return {
        n,
        gives: 'map',
        answer: mapOf(trial, asked, (done, of) => say({ n, gives: 'progress', done, of })),
      };
  }
}

/** One after another: each leaves the sheet as it was. */
let last: Promise<unknown> = Promise.resolve();

self.onmessage = ({ data }: MessageEvent<TrialRequest>) => {
  last = last.then(async () => {
    try {
      say(await answer(data));
    } catch (thrown) {
      // What it was left in is not known: it is built anew.
      trial = undefined;
      rev = undefined;
      say({
        n: data.n,
        gives: 'failure',
        message: thrown instanceof Error ? thrown.message : String(thrown),
      });
    }
  });
};
