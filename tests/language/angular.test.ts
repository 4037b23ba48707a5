import { describe, expect, test } from 'vitest';
import { sheetWith } from '../outside/cells/example-sheet.ts';

/** 10 kW at 1000 turns a minute: 95.493 N m, P / (2 pi n), ISO 80000-3 (rotational frequency, angular velocity). */
const torque = (speed: string) =>
  sheetWith('shaft-torque', { power: '10 kW', speed }).byName('it')?.outputs.torque;

describe('a rotational speed is counted in turns', () => {
  test.each(['1000 rpm', '1000 1/min', '= 104.71975512 rad/s / (2 * PI())'])('%s is turns', (speed) => {
    expect(torque(speed)?.planned?.value).toBeCloseTo(95.493, 3);
  });

  test.each(['104.72 rad/s', '6000 deg/s', '104720 mrad/s'])('%s is an angle in a time: refused', (speed) => {
    expect(torque(speed)?.planned).toBeUndefined();
    expect(torque(speed)?.problem?.message).toContain('counted in turns');
  });

  test.each(['= 104.72 rad/s', '= 2 * (52.36 rad/s)', '= 6000 deg / 1 s'])(
    '%s is none in a formula either',
    (speed) => {
      expect(torque(speed)?.planned).toBeUndefined();
      expect(torque(speed)?.problem?.message).toContain('counted in turns');
    },
  );

  test('the remedy gives the same torque', () => {
    const entry = torque('104.72 rad/s')?.problem?.choices?.[0]?.entry;
    expect(torque(String(entry))?.planned?.value).toBeCloseTo(95.493, 2);
  });
});

test('a taper is no angle: included, or to the centreline?', () => {
  const metal = { E: '200 GPa', nu: '0.3', yield: '300 MPa', brittle: '0' };
  const drawn = (taper: string) =>
    sheetWith('taper-draw-up', {
      taper,
      mean_diameter: '50 mm',
      length: '50 mm',
      interference_wanted: '0.05 mm',
      inner_bore: '0 mm',
      outer_diameter: '90 mm',
      inner_material: metal,
      outer_material: metal,
    }).byName('it')?.outputs.draw_up;
  expect(drawn('4.76 deg')?.planned).toBeUndefined();
  expect(drawn('4.76 deg')?.problem?.message).toContain('angle');
  for (const taper of ['= 2 * TAN(4.76364 deg / 2)', '8.3188 %', '0.083188'])
    expect(drawn(taper)?.planned?.value).toBeCloseTo(0.05e-3 / 0.083188, 6);
});
