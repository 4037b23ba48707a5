import { describe, expect, it } from 'vitest';
import { MM, workOut } from './shelf.ts';

/** Recomputed by hand from the sizes and the handbook formulas. */
describe('pump shaft and housing by ISO fits', () => {
  const sheet = workOut('pump-shaft-iso-fits.json');
  const limits = (cell: string) => {
    const { lower, upper } = sheet.output(cell).limits!;
    return [lower!.value / MM, upper!.value / MM].map((mm) => Number(mm.toFixed(4)));
  };

  // Limits of size as ISO 286-2:2010 prints the deviations: H7 at 24, 62; h6 at 24; k6 at 30; H8 and f7 at 28.
  it.each([
    ['impeller_bore', 24, 24.021],
    ['shaft_end', 23.987, 24],
    ['bearing_seat', 30.002, 30.015],
    ['housing_bore', 62, 62.03],
    ['neck_bore', 28, 28.033],
    ['neck_shaft', 27.959, 27.98],
  ])('%s stands between %d and %d mm', (cell, lower, upper) => {
    expect(limits(cell)).toEqual([lower, upper]);
  });

  it('passes what is within its class and tells the neck bush worn, not worn out', () => {
    for (const cell of [
      'impeller_bore',
      'shaft_end',
      'impeller_clearance',
      'bearing_seat',
      'housing_bore',
      'neck_shaft',
    ])
      expect(sheet.state(cell), cell).toMatch(/^proven in/);
    expect(sheet.state('neck_bore')).toBe('out of limits');
    expect(sheet.output('neck_clearance').check.words).toMatch(/out of limits as new.*; proven serviceable/);
  });

  it('loses the micrometer’s error between bore and shaft', () => {
    const together = sheet.figure('impeller_clearance');
    const apart = workOut('pump-shaft-iso-fits.json', { 'impeller_gauge.set_in': 'seat_mic' }).figure(
      'impeller_clearance',
    );
    expect(together.u).toBeLessThan(apart.u);
  });
});
