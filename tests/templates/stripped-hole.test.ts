import { describe, expect, it } from 'vitest';
import { IN, LBF, PSI, workOut } from './shelf.ts';

/** Recomputed by hand from the sizes and the handbook formulas. */
describe('stripped hole: next thread, or an insert', () => {
  const name = 'stripped-hole.json';
  const sheet = workOut(name);

  it('next thread: 27/64 in drill over a torn hole of 0.379 in, and the wall to the edge', () => {
    expect(sheet.value('next_clean')).toBeCloseTo((27 / 64 - 0.379) * IN, 10);
    expect(sheet.value('next_wall')).toBeCloseTo((0.72 - 0.25) * IN, 10);
  });

  it('bolts at 0.65 of proof: 55 ksi on the stress areas of the tables', () => {
    expect(sheet.value('old_bolt', 'clamp_force') / LBF / (0.75 * 55000 * 0.0775)).toBeCloseTo(1, 3);
    expect(sheet.value('next_bolt', 'clamp_force') / LBF / (0.75 * 55000 * 0.1419)).toBeCloseTo(1, 3);
  });

  it('an insert is pulled out at half its cylinder', () => {
    const iron = sheet.value('iron', 'yield') / PSI;
    // The thread of a wire insert: 1.5 H each way over 3/8-16, H = 0.866025 / 16 in.
    const insert = 0.375 + (1.5 * 0.866025404) / 16;
    expect(sheet.value('insert', 'drill')).toBeCloseTo((25 / 64) * IN, 10);
    expect(sheet.state('insert', 'drill_depth')).toMatch(/^holds/);
    expect(sheet.value('insert_holds') / LBF).toBeCloseTo(0.5 * Math.PI * insert * 0.5625 * 0.6 * iron, 3);
  });

  it('one size up alone leaves grooves; a short insert, a shallow thread and a near edge are found out', () => {
    expect(workOut(name, { torn: '0.425 in ± 0.003 in' }).state('next_clean')).not.toBe('holds');
    expect(workOut(name, { insert_length: '0.30 in' }).state('insert_length')).toBe('misses');
    expect(workOut(name, { next_engaged: '0.4 in' }).state('next_strips', 'engagement')).toBe('misses');
    expect(workOut(name, { edge: '0.40 in ± 0.02 in' }).state('next_wall')).toBe('misses');
  });
});
