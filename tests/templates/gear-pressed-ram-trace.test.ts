import { describe, expect, it } from 'vitest';
import { inside, MM, mean, outside, UM, workOut } from './shelf.ts';

/**
 * Recomputed by hand: the fit by Lame (Budynas & Nisbett, Shigley's Mechanical Engineering Design, 9e, Eq. 3-56) from
 * the figures of the material table, the trace by least squares through the origin.
 */
describe('gear pressed on, proven by its ram trace', () => {
  const name = 'gear-pressed-ram-trace.json';
  const sheet = workOut(name);
  const bore = mean(55.008, 55.009, 55.008, 55.01) * MM;
  const seat = bore + 55 * UM;
  const perInterference = seat * (inside(seat, 0, 0.29) / 205e9 + outside(96 * MM, seat, 0.29) / 205e9);
  const depths = [10, 20, 30, 40, 45];
  const forces = [10.9, 21.5, 32.6, 43.1, 48.9];
  const sum = (of: (depth: number, at: number) => number) => depths.reduce((all, d, i) => all + of(d, i), 0);
  /** N/m, from kN/mm. */
  const slope = (sum((d, i) => d * forces[i]!) / sum((d) => d * d)) * 1e6;

  it('torque needed: 2.5 times 4 kW at 120 rpm', () => {
    expect(sheet.value('torque_needed')).toBeCloseTo((2.5 * 4000) / (2 * Math.PI * 2), 8);
  });

  it('fit by sizes, press and gauge', () => {
    const pressure = (55 * UM) / perInterference;
    expect(sheet.value('fit', 'pressure') / pressure).toBeCloseTo(1, 6);
    const force = 0.09 * Math.PI * seat * 45 * MM * pressure;
    expect(sheet.value('press', 'force') / force).toBeCloseTo(1, 6);
    const area = (Math.PI / 4) * (80 * MM) ** 2;
    expect(sheet.value('press', 'gauge_pressure') / (force / area)).toBeCloseTo(1, 6);
    expect(sheet.value('each_10_bar')).toBeCloseTo(area * 1e6, 6);
    expect(sheet.value('chamfer', 'entry')).toBeCloseTo(
      2 * 4 * MM * Math.tan((5 * Math.PI) / 180) - 55 * UM,
      9,
    );
  });

  it('trace: slope to contact pressure to interference; torque by the force alone', () => {
    const pressure = slope / (Math.PI * seat * 0.09);
    expect(sheet.value('trace', 'interference')).toBeCloseTo(pressure * perInterference, 9);
    expect(sheet.value('agrees')).toBeCloseTo(pressure * perInterference - 55 * UM, 9);
    expect(sheet.value('torque_shown')).toBeCloseTo((slope * 45 * MM * seat) / 2, 6);
  });

  it('half the force: the torque shown falls below what is needed, whatever the sizes say', () => {
    const trace = { 'trace.trace': '10 mm: 4.0 kN; 30 mm: 12.1 kN; 45 mm: 18.0 kN' };
    const loose = workOut(name, trace, { seat: '55.064 mm ± 0.001 mm' });
    expect(loose.state('torque_shown')).toBe('misses');
    expect(loose.state('trace', 'interference')).toBe('misses');
    expect(loose.state('fit', 'torque_held')).toMatch(/^holds by calculation/);
  });

  it('another friction moves the interference by the ram, not the torque shown', () => {
    const oiled = workOut(name, { friction: '0.12 ± 0.015' });
    const by = (of: typeof sheet) => of.value('trace', 'interference');
    expect(by(oiled) / by(sheet)).toBeCloseTo(0.09 / 0.12, 6);
    expect(oiled.value('torque_shown')).toBeCloseTo(sheet.value('torque_shown'), 9);
  });
});
