import { describe, expect, it } from 'vitest';
import { IN, MM, mean, workOut } from './shelf.ts';

/** Recomputed by hand from the sizes, the tables of keys and rings, and the figures of the material table. */
describe('pulley held again: Woodruff key or taper pin', () => {
  const name = 'pulley-key-or-taper-pin.json';
  const sheet = workOut(name);
  const torque = (2 * 500) / ((2 * Math.PI * 180) / 60);
  const shaft = mean(24.985, 24.984, 24.985, 24.984) * MM;

  it('the torque of power and speed, with its shocks', () => {
    expect(sheet.value('torque_needed')).toBeCloseTo(torque, 9);
  });

  it('No. 608: 3/16 in wide, sunk by the standard, and what the seat leaves of the shaft', () => {
    const width = (3 / 16) * IN;
    const crown = (shaft - Math.sqrt(shaft ** 2 - width ** 2)) / 2;
    expect(sheet.value('key', 'sink')).toBeCloseTo(0.33925 * IN + crown, 9);
    expect(sheet.value('key', 'over_key')).toBeCloseTo(shaft - 0.33925 * IN - crown + 0.438 * IN, 9);
    const sheared = width * 2 * Math.sqrt(0.33925 * (1 - 0.33925)) * IN;
    expect(sheet.value('key', 'sheared') / sheared).toBeCloseTo(1, 9);
    expect(sheet.state('key', 'margin')).toMatch(/^holds/);
    expect(workOut(name, { power: '3 kW' }).state('key', 'margin')).toMatch(/miss/);
  });

  it('a pin of 6 x 60, 1 in 50, through 56 mm: still to ream, and sheared at both faces of the shaft', () => {
    expect(sheet.value('pin', 'still_to_ream')).toBeCloseTo(((12 - 2) / 50) * MM, 9);
    const at = (x: number) => ((Math.PI / 4) * (7.2 * MM - x / 50) ** 2) as number;
    const half = shaft / 2;
    const area = at(30 * MM - half) + at(30 * MM + half);
    const held = 0.577 * sheet.value('pin_steel', 'yield') * area * half;
    expect(sheet.value('pin', 'torque_held') / held).toBeCloseTo(1, 9);
    expect(sheet.value('pin', 'margin') / (held / torque)).toBeCloseTo(1, 9);
    expect(workOut(name, { 'pin.stands_out': '1 mm ± 0.5 mm' }).state('pin', 'still_to_ream')).toMatch(
      /miss/,
    );
  });

  it('ring of a 25 mm shaft: 23.9 x 1.3 mm, and its groove against the push', () => {
    expect(sheet.value('ring', 'groove')).toBeCloseTo(23.9 * MM, 12);
    const side = (Math.PI / 4) * ((25 * MM) ** 2 - (23.9 * MM) ** 2);
    const holds = (sheet.value('shaft_steel', 'yield') * side) / 1.2;
    expect(sheet.value('ring', 'margin') / (holds / 400)).toBeCloseTo(1, 9);
    expect(workOut(name, { 'ring.shoulder': '1 mm' }).state('ring', 'shoulder_over')).toMatch(/miss/);
  });
});
