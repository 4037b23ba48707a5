import { appendFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { walk } from '../../walk.ts';
import { Dice, sampleOf } from './oracle.ts';
import { hunt, type Tally } from './unsafe.ts';

it('no verdict on a random kinked sheet says more than plain draws, or points of the worst case, bear out', () => {
  const tally: Tally = { lines: 0, judged: {}, unsafe: [] };
  const first = Number(process.env.SEED ?? 1);
  const n = Number(process.env.RUNS ?? walk(20, 1500));
  for (let i = 0; i < n; i++) {
    const dice = new Dice(first * 1e6 + i);
    const before = tally.unsafe.length;
    hunt(sampleOf(dice), Number(process.env.DRAWS ?? walk(50_000, 200_000)), dice, tally);
    if (process.env.RUNS)
      for (const u of tally.unsafe.slice(before))
        appendFileSync(`/tmp/unsafe-${first}.txt`, `#${i} ${u.line} ${u.rule} ${u.state}: ${u.why}\n   ${u.file.cells.map((c) => `${c.id} ${c.role} ${c.entry} ${JSON.stringify(c.limits ?? '')}`).join('\n   ')}\n`);
    if (process.env.RUNS && i % 50 === 0) appendFileSync(`/tmp/unsafe-${first}.txt`, `at ${i} ${tally.lines}\n`);
  }
  const told = tally.unsafe.map(({ line, rule, state, why, file }) => {
    const cells = file.cells.map((c) => `${c.id} ${c.role} ${c.entry} ${JSON.stringify(c.limits ?? '')}`);
    return [`${line} ${rule} ${state}: ${why}`, ...cells].join('\n   ');
  });
  if (process.env.RUNS) console.log(told.join('\n'), JSON.stringify(tally.judged, null, 1), tally.lines);
  expect(told.join('\n')).toBe('');
}, 3600_000);
