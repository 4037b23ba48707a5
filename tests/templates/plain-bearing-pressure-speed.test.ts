import { describe, expect, it } from 'vitest';
import { IN, LBF, mean, workOut } from './shelf.ts';

/** Recomputed by hand from the sizes and the handbook formulas. */
describe('pressure and speed of a plain bearing', () => {
  const sheet = workOut('plain-bearing-pressure-speed.json');
  const journal = mean(1.9372, 1.9371, 1.9372, 1.9372) * IN;
  const angle = (25 * Math.PI) / 180;
  const load = Math.hypot(480 * Math.cos(angle), 310 - 480 * Math.sin(angle)) * LBF;

  it('load, pressure, speed and their product', () => {
    expect(sheet.value('load')).toBeCloseTo(load, 8);
    const pressure = load / (journal * 3 * IN);
    const speed = (Math.PI * journal * 320) / 60;
    expect(sheet.value('pv', 'pressure') / pressure).toBeCloseTo(1, 10);
    expect(sheet.value('pv', 'speed') / speed).toBeCloseTo(1, 10);
    expect(sheet.value('pv', 'pv') / (pressure * speed)).toBeCloseTo(1, 10);
  });

  it('a sixth of the length at twice the speed is too much', () => {
    const short = workOut('plain-bearing-pressure-speed.json', {
      bearing_length: '0.5 in',
      speed: '640 rpm ± 20 rpm',
    });
    expect(sheet.state('pv', 'pv_share')).toMatch(/^(holds|proven in limits)/);
    expect(short.value('pv', 'pv') / sheet.value('pv', 'pv')).toBeCloseTo(12, 8);
    expect(short.state('pv', 'pv_share')).toMatch(/out|miss|not proven/);
  });
});
