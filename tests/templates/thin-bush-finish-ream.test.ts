import { describe, expect, it } from 'vitest';
import { IN, inside, mean, outside, workOut } from './shelf.ts';

/** Recomputed by hand from the sizes and the handbook formulas. */
describe('thin bush with finish ream', () => {
  const name = 'thin-bush-finish-ream.json';
  const sheet = workOut(name);
  const D = mean(0.8766, 0.8765, 0.8765, 0.8766) * IN;
  const d = mean(0.7478, 0.7476, 0.7477) * IN;

  it('close-in, bore when pressed and stock for the reamer', () => {
    const i = D - 0.875 * IN;
    const E = sheet.value('bronze', 'E');
    const give = inside(D, d, sheet.value('bronze', 'nu')) / E + outside(2 * IN, D, 0.211) / 100e9;
    const closeIn = (2 * i * D * d) / ((D ** 2 - d ** 2) * give) / E;
    expect(sheet.value('pressed_bore')).toBeCloseTo(d - closeIn, 10);
    expect(sheet.value('ream_stock')).toBeCloseTo(0.7505 * IN - d + closeIn, 10);
    expect(closeIn / i).toBeGreaterThan(0.75);
  });

  it('clearance: reamed bore less pin', () => {
    const pin = mean(0.7493, 0.7492, 0.7493, 0.7493) * IN;
    expect(sheet.value('running', 'clearance')).toBeCloseTo(0.7505 * IN - pin, 10);
    const worn = workOut(name, { pin: '0.7480; 0.7479 in' });
    expect(worn.value('running', 'clearance') - sheet.value('running', 'clearance')).toBeCloseTo(
      pin - 0.74795 * IN,
      10,
    );
    expect(worn.state('pin')).not.toBe('proven in limits');
  });
});
