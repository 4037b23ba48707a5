import { describe, expect, it } from 'vitest';
import { DEG_F, IN, inside, mean, outside, THOU, workOut } from './shelf.ts';

/** Recomputed by hand from the sizes and the handbook formulas. */
describe('ring shrunk on a hub', () => {
  const name = 'ring-shrunk-on-hub.json';
  const sheet = workOut(name);
  const hub = mean(5.5003, 5.5001, 5.5002, 5.5003) * IN;

  it('fit, torque and heat', () => {
    const give = inside(hub, 2.25 * IN, 0.211) / 100e9 + outside(6.5 * IN, hub, 0.29) / 205e9;
    const pressure = (5 * THOU) / (hub * give);
    expect(sheet.value('fit', 'pressure') / pressure).toBeCloseTo(1, 6);
    const force = sheet.value('fit', 'friction_taken') * Math.PI * hub * 1.75 * IN * pressure;
    expect(sheet.value('fit', 'torque_held') / ((force * hub) / 2)).toBeCloseTo(1, 6);
    const rise = (9 * THOU) / ((hub - 5 * THOU) * 11.6e-6);
    expect(sheet.value('heat', 'rise')).toBeCloseTo(rise, 4);
  });

  it('a ring hotter than its hub loses grip', () => {
    const warm = hub * (11.4e-6 * 52 - 11.6e-6 * 82) * DEG_F;
    expect(sheet.value('warm', 'interference_running')).toBeCloseTo(5 * THOU + warm, 10);
    const braked = workOut(name, { 'warm.outer_running': '330 degF ± 15 degF' });
    expect(braked.state('warm', 'interference_running')).toBe('misses');
  });
});
