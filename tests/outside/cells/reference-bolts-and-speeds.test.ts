import { describe, expect, test } from 'vitest';
import { rowById } from '../tables/reference.ts';
import { checkRow } from './row-check.ts';
import { cell, figure, inUnit, one, remarksOf, sheetOf } from './sheet-of.ts';

/** Strengths of a grade as the cell takes them: proof from the cell; yield and tensile stand in the table beside it. */
const proof = (thread: string, grade: string, unit: string): number =>
  one('bolt-preload', { thread, grade })('proof_strength', unit);

describe('bolt strengths the cell takes', () => {
  const grades = [
    ['R654', '1/2-13 UNC', '2', 'ksi'],
    ['R656', '1/2-13 UNC', '5', 'ksi'],
    ['R657', '1-1/4-7 UNC', '5-large', 'ksi'],
    ['R659', 'M10', '4.6', 'MPa'],
    ['R661', 'M10', '8.8', 'MPa'],
    ['R662', 'M20', '8.8-large', 'MPa'],
    ['R664', 'M10', '12.9', 'MPa'],
  ] as const;
  for (const [id, thread, grade, unit] of grades)
    checkRow(id, () => ({
      got: proof(thread, grade, unit),
      expected: (rowById(id).expected as { proof: number }).proof,
      within: 1e-9,
    }));
});

describe('torque and clamp force', () => {
  for (const [id, thread] of [
    ['R665', '1/4-20 UNC'],
    ['R667', '1/2-13 UNC'],
    ['R669', '3/4-10 UNC'],
  ] as const)
    checkRow(id, () => {
      const printed = rowById(id).expected as { F_lbf: number; T_ft_lbf: number };
      const it = one('bolt-preload', { thread, grade: '2' });
      return [
        { got: it('clamp_force', 'lbf'), expected: printed.F_lbf, within: 0.015 },
        { got: it('torque', 'lbf.ft'), expected: printed.T_ft_lbf, within: 0.015 },
      ];
    });
  checkRow('R670', () => {
    const printed = rowById('R670').expected as { F_N: number; T_Nm: number };
    const it = one('bolt-preload', { thread: 'M10', grade: '8.8' });
    return [
      { got: it('preload_wanted', 'N'), expected: printed.F_N, within: 1e-3 },
      { got: it('torque', 'N.m'), expected: printed.T_Nm, within: 1e-3 },
    ];
  });

  test('the torque is one figure to set; what it gives is not, and three quarters of proof stays below proof', () => {
    const sheet = sheetOf({ it: cell('bolt-preload', { thread: 'M10', grade: '8.8' }) });
    const torque = figure(sheet, 'it', 'torque');
    expect(torque.high).toBe(torque.low);
    const clamp = figure(sheet, 'it', 'clamp_force');
    expect(clamp.low / clamp.value).toBeCloseTo(0.7, 9);
    expect(clamp.high / clamp.value).toBeCloseTo(1.3, 9);
    expect(sheet.byName('it')?.outputs.clamp_force?.check.asNew?.state).toMatch(/^holds/);
  });
  test('a dry figure on an oiled bolt is caught by what it stretches', () => {
    const remarks = remarksOf('bolt-preload', {
      thread: 'M10',
      grade: '8.8',
      oiling: 'anti-seize',
      torque_applied: '60 N.m',
    });
    expect(remarks.join(' ')).toContain('past its proof load');
  });
  test('a proof strength of one’s own comes before the grade, and needs none', () => {
    expect(proof('M10', '8.8', 'MPa')).toBeCloseTo(580, 9);
    const own = one('bolt-preload', { thread: 'M10', own_proof: '700 MPa' });
    expect(own('proof_strength', 'MPa')).toBeCloseTo(700, 9);
    expect(own('torque', 'N.m')).toBeCloseTo((50.46 * 700) / 580, 1);
    expect(remarksOf('bolt-preload', { thread: 'M10' }).join(' ')).toContain('Neither grade nor proof');
  });
  test('a grade has its sizes', () => {
    expect(remarksOf('bolt-preload', { thread: 'M20', grade: '8.8' }).join(' ')).toContain('choose the row');
    expect(remarksOf('bolt-preload', { thread: 'M16', grade: '8.8' }).join(' ')).not.toContain(
      'choose the row',
    );
  });
});

describe('spindle speed', () => {
  for (const [id, diameter, surface_speed] of [
    ['R680', '2 in', '90 ft/min'],
    ['R681', '0.5 in', '300 ft/min'],
  ] as const)
    checkRow(id, () => {
      const printed = rowById(id).expected as { exact_12V_piD: number; shop_4V_D: number };
      const it = one('spindle-speed', { diameter, surface_speed });
      return [
        { got: it('spindle_speed', 'rpm'), expected: printed.exact_12V_piD, within: 1e-3 },
        { got: it('shop_rule', 'rpm'), expected: printed.shop_4V_D, within: 1e-9 },
      ];
    });
  checkRow('R683', () => ({
    got: one('spindle-speed', { diameter: '50 mm', surface_speed: '30 m/min' })('spindle_speed', 'rpm'),
    expected: rowById('R683').expected as number,
    within: 1e-3,
  }));
  test('the highest speed allowed is a limit of the speed taken', () => {
    const sheet = sheetOf({
      it: cell('spindle-speed', {
        diameter: '200 mm',
        surface_speed: '60 m/min',
        speed_set: '125 rpm',
        top_speed: '100 rpm',
      }),
    });
    expect(sheet.byName('it')?.outputs.speed_taken?.check.asNew?.state).toBe('misses');
    expect(inUnit('m/min', figure(sheet, 'it', 'surface_speed_there').value)).toBeCloseTo(25 * Math.PI, 9);
  });
});
