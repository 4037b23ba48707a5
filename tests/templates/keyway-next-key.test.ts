import { describe, expect, it } from 'vitest';
import { IN, mean, workOut } from './shelf.ts';

/** Recomputed by hand from the sizes and the handbook formulas. */
describe('keyway repaired to the next key', () => {
  const name = 'keyway-next-key.json';
  // The key bought, a little under its size.
  const sheet = workOut(name, {}, { key: '0.4994 | 0.4994 | 0.4994 in', key_thick: '0.3745 | 0.3744 in' });
  const shaft = mean(1.4995, 1.4994, 1.4995, 1.4995);
  const key = 0.4994;

  it('the key it had is that of the table: 3/8 in square for 1 3/8 to 1 3/4 in (B17.1)', () => {
    expect(sheet.value('old_key', 'width')).toBeCloseTo(0.375 * IN, 12);
  });

  it('depths: chord of the new width, half the key each side of it', () => {
    const chord = Math.sqrt(shaft ** 2 - key ** 2);
    const thick = mean(0.3745, 0.3744);
    expect(sheet.value('over_seat')).toBeCloseTo(((shaft - thick + chord) / 2) * IN, 10);
    expect(sheet.value('over_way')).toBeCloseTo(((shaft + thick + chord) / 2 + 0.005) * IN, 10);
    // The floors come nearest when the shaft touches the hub on the side of the key: its play comes off.
    const play = mean(1.5003, 1.5004, 1.5002, 1.5004) - shaft;
    expect(sheet.value('top')).toBeCloseTo((0.005 - play) * IN, 10);
  });

  it('the key carries the torque: 63 025 x 10 hp / 320 rpm, two and a half times', () => {
    const force = (2 * 2.5 * 63025 * 10) / 320 / shaft;
    expect(sheet.value('key_force') / 4.4482216152605 / force).toBeCloseTo(1, 4);
    const shear = force / (key * 2.5);
    expect(sheet.value('shear_margin') * shear).toBeCloseTo(
      (0.577 * sheet.value('key_steel', 'yield')) / 6894.757293168361,
      0,
    );
  });

  it('a seat worn past the next key, and a loose hub, are found out', () => {
    expect(workOut(name, { seat_found: '0.4950 | 0.4952 in' }).state('key')).toBe('misses');
    expect(workOut(name, { hub_bore: '1.5060; 1.5062 in' }).state('hub_play')).toBe('out of limits');
  });
});
