import { describe, expect, it } from 'vitest';
import { MM, mean, workOut } from './shelf.ts';

/** Recomputed by hand: geometry by coordinates, strengths from the figures of the material table. */
describe('thrust bush of light alloy, held by a threaded pin', () => {
  const name = 'pump-thrust-bush.json';
  const sheet = workOut(name);
  const journal = mean(31.982, 31.981, 31.982, 31.983) * MM;
  const housing = mean(44.021, 44.02, 44.022, 44.021) * MM;
  const bore = journal + 0.09 * MM;
  const outside = housing + 0.025 * MM;

  it('the worn pin hole becomes M10, by its usual 8.5 mm drill', () => {
    expect(sheet.value('repair', 'major')).toBeCloseTo(10 * MM, 12);
    expect(sheet.value('repair', 'drill')).toBeCloseTo(8.5 * MM, 12);
    expect(workOut(name, { pin_hole: '9.2 mm' }).value('repair', 'major')).toBeCloseTo(12 * MM, 12);
  });

  it('bush to housing and journal, and its length to the cheeks', () => {
    expect(sheet.value('bush_outside')).toBeCloseTo(outside, 9);
    expect(sheet.value('bore')).toBeCloseTo(bore, 9);
    expect(sheet.value('ends', 'end_float')).toBeCloseTo(0.15 * MM, 9);
  });

  it('a housing longer than the bush closes it in more than Lame says', () => {
    expect(sheet.value('press', 'close_in_long_housing')).toBeGreaterThanOrEqual(
      sheet.value('press', 'close_in'),
    );
  });

  it('the relief bridges both holes; a shallow one does not (two circles by coordinates)', () => {
    const R = bore / 2;
    const apart = 2 * R * Math.sin(Math.PI / 12);
    expect(sheet.value('holes', 'spacing')).toBeCloseTo(apart, 9);
    const e = R + 0.8 * MM - 11 * MM;
    const x = (R * R - (11 * MM) ** 2 + e * e) / (2 * e);
    expect(sheet.value('relief', 'chord')).toBeCloseTo(2 * Math.sqrt(R * R - x * x), 9);
    expect(sheet.state('relief', 'chord')).toMatch(/^holds/);
    expect(workOut(name, { 'relief.depth': '0.3 mm' }).state('relief', 'chord')).toMatch(/miss|out/);
  });

  it('groove and pin: metal left between them, and none for a pin that reaches deeper', () => {
    const corner = Math.sqrt((bore / 2) ** 2 - (2 * MM) ** 2);
    const floor = corner + 1.5 * MM;
    expect(sheet.value('groove', 'over_pin')).toBeCloseTo(outside / 2 - floor - 3 * MM, 9);
    expect(workOut(name, { 'groove.pin_reach': '5 mm' }).state('groove', 'over_pin')).toMatch(/miss|out/);
  });

  it('the pin holds a seizure; a plain press of so soft a wall crushes before the pin shears', () => {
    const crush = sheet.value('bush_metal', 'yield') * sheet.value('pin_drilled', 'root') * 3 * MM;
    expect(sheet.value('pin', 'crush_force') / crush).toBeCloseTo(1, 9);
    expect(sheet.value('pin', 'torque_held') / ((crush * outside) / 2)).toBeCloseTo(1, 9);
    expect(sheet.value('held', 'seizure_torque')).toBeCloseTo((0.5 * 250 * journal) / 2, 9);
    expect(sheet.state('held', 'margin')).toMatch(/^holds/);
    expect(workOut(name, { 'held.load': '5 kN' }).state('held', 'margin')).toMatch(/miss|out/);
  });

  it('all but what is named agrees with the original, feature by feature and together', () => {
    for (const line of ['same_hole', 'same_groove', 'same_length', 'same_outside'])
      expect(sheet.state(line, 'unexplained'), line).toMatch(/^holds/);
    expect(sheet.value('beside', 'features')).toBe(4);
    expect(sheet.value('beside', 'differ')).toBe(2);
    expect(sheet.state('beside', 'others_off')).toMatch(/^holds/);
    expect(sheet.state('beside', 'named_off')).toMatch(/^holds/);
    const wide = workOut(name, { old_groove: '5 mm ± 0.1 mm' });
    expect(wide.state('same_groove', 'unexplained')).toMatch(/miss|out/);
    expect(wide.state('beside', 'others_off')).toMatch(/miss|out/);
    expect(wide.state('beside', 'named_off')).toMatch(/^holds/);
    const short = workOut(name, { old_length: '45.50; 45.51; 45.50 mm' });
    expect(short.state('beside', 'named_off')).toMatch(/miss|out/);
    expect(short.state('beside', 'others_off')).toMatch(/^holds/);
  });

  it('comes out again by the press, or by a housing that grows past its interference', () => {
    expect(sheet.value('out', 'push_out')).toBeCloseTo(1.5 * 4000, 6);
    const rise = (0.025 * MM) / (outside * sheet.value('housing_metal', 'alpha'));
    expect(sheet.value('out', 'rise_wanted') / rise).toBeCloseTo(1, 3);
    expect(workOut(name, { 'out.press_capacity': '5 kN' }).state('out', 'push_out')).toMatch(/miss|out/);
  });

  it('the mandrel bears the push; a hole clocked half over gives too little oil', () => {
    expect(sheet.state('mandrel', 'margin')).toMatch(/^holds/);
    expect(sheet.value('mandrel', 'width')).toBeCloseTo((3.98 + 0.05 - 0.1) * MM, 9);
    expect(sheet.state('clocking', 'open_share')).toMatch(/^holds/);
    expect(workOut(name, { 'clocking.arc': '1.5 mm ± 0.1 mm' }).state('clocking', 'open_share')).toMatch(
      /miss|out/,
    );
    const gap = (0.09 * MM) / 2;
    const flow = (Math.PI * journal * gap ** 3 * 150e3) / (12 * 0.06 * (sheet.value('length') / 2));
    expect(sheet.value('oil', 'flow') / flow).toBeCloseTo(1, 9);
  });

  it('dry: it spins free, with its float, and a tight place is told', () => {
    for (const line of ['spins', 'float_dry', 'contact']) expect(sheet.state(line)).toMatch(/^proven/);
    expect(workOut(name, { spins: '0.5 N.m ± 0.03 N.m' }).state('spins')).toMatch(/out/);
    expect(workOut(name, { float_dry: '0.02 mm ± 0.02 mm' }).state('float_dry')).toMatch(/not proven|out/);
  });
});
