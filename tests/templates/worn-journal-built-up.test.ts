import { describe, expect, it } from 'vitest';
import { DEG_F, IN, mean, THOU, workOut } from './shelf.ts';

/** Recomputed by hand from the sizes: sums and halves; growth by D alpha dT. */
describe('worn journal built up and ground', () => {
  const name = 'worn-journal-built-up.json';
  const bush = mean(1.9397, 1.9398, 1.9398, 1.9398);
  const sheet = workOut(name, { journal: '1.9368 in' });

  it('by itself the journal comes to the middle of its clearance', () => {
    expect(workOut(name).value('journal')).toBeCloseTo((bush - 0.003) * IN, 10);
  });

  it('undercut: room for the least deposit goes deeper than the wear does', () => {
    const forDeposit = 1.9368 - 2 * 0.02;
    const forWear = 1.9238 - 0.0055 - 0.005;
    expect(forDeposit).toBeLessThan(forWear);
    expect(sheet.value('build', 'undercut')).toBeCloseTo(forDeposit * IN, 10);
    // Half as much again as its tolerance deeper: js10 from 30 to 50 mm is ± 50 µm (ISO 286-1:2010).
    const deeper = (1.5 * 0.05) / 25.4;
    expect(sheet.value('undercut')).toBeCloseTo((forDeposit - deeper) * IN, 10);
    expect(sheet.value('built_up')).toBeCloseTo((1.9368 + 0.02) * IN, 10);
    expect(sheet.value('deposit')).toBeCloseTo((0.04 / 2 + deeper / 2) * IN, 10);
    expect(sheet.value('laid_on')).toBeCloseTo(((1.9568 - 1.8968 + deeper) / 2) * IN, 10);
  });

  it('where the wear goes deeper, it sets the undercut', () => {
    const worn = workOut(name, { journal_found: '1.9012; 1.8996 in' });
    expect(worn.value('build', 'undercut')).toBeCloseTo((1.8996 - 0.0055 - 0.005) * IN, 10);
  });

  it('strength left in bending and torsion goes with the cube of the diameter', () => {
    expect(sheet.value('build', 'strength_left')).toBeCloseTo(((1.9368 - 0.04) / 1.9368) ** 3, 9);
    expect(workOut(name, { journal_found: '1.8012; 1.7896 in' }).state('build', 'strength_left')).toBe(
      'misses',
    );
  });

  it('clearance: bush as it is less the journal, and less still with only the shaft warm', () => {
    expect(sheet.value('running', 'clearance')).toBeCloseTo((bush - 1.9368) * IN, 10);
    const warm = 1.9368 * IN * 11.6e-6 * (105 - 68) * DEG_F;
    expect(sheet.value('running', 'start_clearance')).toBeCloseTo((1.9397 - 1.9368) * IN - warm, 9);
  });

  it('an undercut turned too deep by 6 thou a side still holds, one too shallow does not', () => {
    expect(
      workOut(name, { journal: '1.9368 in' }, { undercut: '1.8818 in ± 0.0002 in' }).value('deposit'),
    ).toBeCloseTo(27.5 * THOU, 9);
    const shallow = workOut(name, {}, { undercut: '1.9050 in ± 0.0002 in' });
    expect(shallow.state('deposit')).toBe('misses');
    expect(shallow.state('undercut')).toBe('out of limits');
  });
});
