import { describe, expect, it } from 'vitest';
import { inside, MM, mean, outside, UM, workOut } from './shelf.ts';

/** Recomputed by hand from the sizes and the handbook formulas. */
describe('reground journal with split shells', () => {
  const name = 'reground-journal-split-shells.json';
  const sheet = workOut(name);
  const shellBore = (mean(65.008, 65.009, 65.008, 65.009) - 2 * mean(2.6, 2.6, 2.6, 2.601)) * MM;

  it('grinds to the next undersize: 59.841 less 0.03 and 0.02 is 0.209 under, so 0.25', () => {
    expect(sheet.value('undersize', 'needed')).toBeCloseTo(0.209 * MM, 12);
    expect(sheet.value('journal')).toBeCloseTo(59.75 * MM, 12);
  });

  it('clearance: housing less two walls less journal', () => {
    expect(sheet.value('shell_bore')).toBeCloseTo(shellBore, 12);
    expect(sheet.value('running', 'clearance')).toBeCloseTo(shellBore - 59.75 * MM, 12);
  });

  it('crush: twice 45 um over pi, by the give of both rings', () => {
    const D = mean(65.008, 65.009, 65.008, 65.009) * MM;
    const i = (2 * 45 * UM) / Math.PI;
    const give = inside(D, shellBore, 0.29) / 207e9 + outside(100 * MM, D, 0.211) / 100e9;
    expect(sheet.value('shells', 'pressure') / (i / (D * give))).toBeCloseTo(1, 3);
  });

  it('a deeper score takes the next undersize', () => {
    const worn = workOut(name, { journal_found: '59.771; 59.746 | 59.768; 59.741 mm' });
    expect(worn.value('journal')).toBeCloseTo(59.5 * MM, 12);
    expect(worn.state('running', 'clearance')).toBe('misses');
  });
});
