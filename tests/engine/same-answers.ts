import fc from 'fast-check';
import { expect } from 'vitest';
import type { Engine } from '../../src/engine/engine.ts';
import type { SheetResults } from '../../src/engine/rows/results.ts';
import { edited, fileOf, job, jobEdit } from './random-job.ts';

/** Two engines give the same results over random sheets of every kind of cell, right and wrong, and every edit of them. */
export const expectSameAnswers = (
  both: () => readonly [Engine, Engine],
  { seed, numRuns }: { seed: number; numRuns: number },
): void =>
  fc.assert(
    fc.property(job, fc.array(jobEdit, { minLength: 1, maxLength: 6 }), (first, edits) => {
      const engines = both();
      const same = (ask: (engine: Engine) => SheetResults) => {
        const [expected, got] = engines.map(ask);
        expect(got).toEqual(expected);
      };
      same((engine) => engine.load(fileOf(first)));
      let now = first;
      for (const edit of edits) {
        const { after, change } = edited(now, edit);
        now = after;
        same((engine) => engine.apply(change));
      }
      for (const engine of engines) engine.destroy();
    }),
    { seed, numRuns },
  );
