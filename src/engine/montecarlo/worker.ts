import { libraryOnUse } from '../../../cells/on-use.ts';
import { kindsOf } from '../rows/kinds-of.ts';
import { notFetched } from '../rows/library.ts';
import type { SimulationReply, SimulationRequest } from './messages.ts';
import { simulate } from './simulate.ts';

/** Draws between two words of progress. */
const EVERY = 10_000;

self.onmessage = async (event: MessageEvent<SimulationRequest>) => {
  const say = (reply: SimulationReply): void => self.postMessage(reply);
  const { file, options } = event.data;
  const library = libraryOnUse();
  const kinds = kindsOf(file.cells);
  await library.fetch(kinds);
  const away = kinds.find((kind) => library.lacks(kind));
  if (away !== undefined) {
    say({ gives: 'failure', message: notFetched(away) });
    return;
  }
  try {
    let said = 0;
    const simulation = simulate(file, library, {
      ...options,
      onProgress: (done, draws) => {
        if (done - said < EVERY && done < draws) return;
        said = done;
        say({ gives: 'progress', done, draws });
      },
    });
    say({ gives: 'simulation', simulation });
  } catch (thrown) {
    say({ gives: 'failure', message: thrown instanceof Error ? thrown.message : String(thrown) });
  }
};
