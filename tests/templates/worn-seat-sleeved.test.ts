import { describe, expect, it } from 'vitest';
import { MM, outside, UM, workOut } from './shelf.ts';

/** Recomputed by hand from the sizes and the handbook formulas. */
describe('worn shaft seat sleeved', () => {
  const name = 'worn-seat-sleeved.json';
  const sheet = workOut(name);

  it('grip: solid shaft in a ring by Lame, torque with the friction taken', () => {
    const D = 46 * MM;
    const give = (1 - 0.29) / 205e9 + outside(50.01 * MM, D, 0.29) / 205e9;
    const pressure = (46 * UM) / (D * give);
    expect(sheet.value('fit', 'pressure') / pressure).toBeCloseTo(1, 3);
    const torque =
      (sheet.value('fit', 'friction_taken') * Math.PI * D ** 2 * 32 * MM * sheet.value('fit', 'pressure')) /
      2;
    expect(sheet.value('fit', 'torque_held')).toBeCloseTo(torque, 6);
  });

  it('heat: interference and clearance over bore and expansion', () => {
    const rise = (92 * UM) / (45.954 * MM * sheet.value('sleeve_steel', 'alpha'));
    expect(sheet.value('heat', 'rise')).toBeCloseTo(rise, 6);
    expect(sheet.value('heat', 'furnace_temperature')).toBeCloseTo(293.15 + rise + 20, 6);
  });

  it('seat 50 k6 ground to js5 about its middle, the bearing 5 um under: 8.5 to 21.5 um tight, and the doubt of its bore', () => {
    // js5 from 50 to 80 mm: ± 6.5 um (ISO 286-1:2010).
    const { low, high, value } = sheet.figure('seat_fit');
    expect(value).toBeCloseTo(15.25 * UM, 9);
    expect(low).toBeLessThan(8.75 * UM);
    expect(low).toBeGreaterThan(2 * UM);
    expect(high).toBeGreaterThan(21.75 * UM);
    expect(high).toBeLessThan(30 * UM);
  });

  it('finished on a 45 mm seat: the class sets size and limits, the bearing ring its own', () => {
    const smaller = workOut(name, {
      seat_size: '45.000 mm',
      bearing_bore: '44.995; 44.994 | 44.995; 44.995 mm',
      seat_found: '44.912; 44.871 | 44.903; 44.854 mm',
      turned: '41.000 mm',
    });
    // 45 k6: +18 +2 um (ISO 286-2:2010).
    const { limits } = smaller.output('seat');
    expect(limits?.lower?.value).toBeCloseTo(45.002 * MM, 12);
    expect(limits?.upper?.value).toBeCloseTo(45.018 * MM, 12);
    expect(smaller.value('seat')).toBeCloseTo(45.01 * MM, 12);
    for (const line of ['seat', 'seat_fit', 'sleeve_bore', 'strength_left'])
      expect(smaller.state(line), line).toMatch(/^holds/);
  });

  it('turned too far down, the shaft is too weak', () => {
    expect(workOut(name, { turned: '45.2 mm' }).state('strength_left')).toBe('misses');
  });
});
