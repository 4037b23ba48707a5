import { expect, it } from 'vitest';
import { walk } from '../../walk.ts';
import { Dice } from './oracle.ts';
import { huntProof, type ProofTally } from './proof-influence.ts';
import { proofSampleOf } from './proof-oracle.ts';

it('a part is said of what moves with readings alone, by geometry, whatever its formulas name', () => {
  const tally: ProofTally = { lines: 0, parts: 0, unsafe: [], timid: [] };
  for (let i = 0; i < walk(60, 6000); i++) {
    const dice = new Dice(1000 + i);
    huntProof(proofSampleOf(dice), dice, tally);
  }
  expect(tally.unsafe.join('\n')).toBe('');
  // Nothing would be unsafe that is never said; enclosures know a little less than is true.
  expect(tally.parts).toBeGreaterThan(tally.lines / 4);
  expect(tally.timid.length).toBeLessThan(tally.parts / 10);
});
