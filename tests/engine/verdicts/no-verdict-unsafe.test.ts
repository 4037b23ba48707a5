import { expect, it } from 'vitest';
import { walk } from '../../walk.ts';
import { Dice, sampleOf } from './oracle.ts';
import { hunt, type Tally } from './unsafe.ts';

it('no verdict on a random kinked sheet says more than plain draws, or points of the worst case, bear out', () => {
  const tally: Tally = { lines: 0, judged: {}, unsafe: [] };
  for (let i = 0; i < walk(25, 2000); i++) {
    const dice = new Dice(20_261_130 + i);
    hunt(sampleOf(dice), walk(40_000, 200_000), dice, tally);
  }
  const told = tally.unsafe.map(({ line, rule, state, why, file }) => {
    const cells = file.cells.map((one) => `${one.id}: ${one.entry} ${JSON.stringify(one.limits ?? '')}`);
    return [`${line} ${rule} ${state}: ${why}`, ...cells].join('\n   ');
  });
  expect(told.join('\n')).toBe('');
  // Nothing would be unsafe that says nothing.
  const share = (words: RegExp): number =>
    Object.entries(tally.judged).reduce((sum, [name, n]) => sum + (words.test(name) ? n : 0), 0) /
    tally.lines;
  expect(share(/holds|proven in/)).toBeGreaterThan(0.2);
  expect(share(/misses|out of/)).toBeGreaterThan(0.05);
  expect(share(/draws/)).toBeGreaterThan(0.1);
});
