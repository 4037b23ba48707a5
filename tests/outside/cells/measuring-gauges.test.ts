import { describe, expect, test } from 'vitest';
import { cell, figure, inUnit, measured, one, remarksOf, sheetOf, worked } from './sheet-of.ts';

const um = (si: number) => inUnit('um', si);

/** JCGM 100:2008, 5.2: an error common to two readings drops out of their difference, and only then. */
describe('one gauge, one error (JCGM 100:2008, 5.2 and F.1.2.3)', () => {
  const sheet = sheetOf({
    micrometer: cell('gauge', {
      gauge: 'micrometer-50-75-mm',
      certificate: '4 um',
      scatter: '1 um',
      division: '1 um',
    }),
    other_micrometer: cell('gauge', {
      gauge: 'micrometer-50-75-mm',
      certificate: '4 um',
      scatter: '1 um',
      division: '1 um',
    }),
    bore_gauge: cell('gauge', {
      gauge: 'dial-bore-gauge-mm',
      set_in: 'micrometer',
      certificate: '2 um',
      setting_doubt: '1 um',
      scatter: '1.5 um',
      division: '1 um',
    }),
    journal: measured('length', '56.985 mm', { gauge: 'micrometer' }),
    journal_elsewhere: measured('length', '56.985 mm', { gauge: 'other_micrometer' }),
    bore: measured('length', '57.035 mm', { gauge: 'bore_gauge' }),
    clearance: worked('length', '= bore - journal'),
    clearance_elsewhere: worked('length', '= bore - journal_elsewhere'),
  });
  const shareOf = (line: string, gauge: string) =>
    Math.hypot(
      ...sheet
        .budget(sheet.byName(line)?.id as string, 'value')
        .filter((one) => one.cell === sheet.byName(gauge)?.id)
        .map((one) => um(one.u)),
    );

  test('the setting micrometer stands in the bore and in the journal', () => {
    // Certificate U = 4 um: 2 um; setting of the micrometer by the table: 2 um either way, rectangular.
    const own = Math.hypot(2, 2 / Math.sqrt(3));
    expect(shareOf('bore', 'micrometer')).toBeCloseTo(own, 6);
    expect(shareOf('journal', 'micrometer')).toBeCloseTo(own, 6);
  });
  test('and drops out of the clearance', () => {
    expect(shareOf('clearance', 'micrometer')).toBeLessThan(1e-6);
    expect(shareOf('clearance', 'bore_gauge')).toBeCloseTo(Math.hypot(1, 1 / Math.sqrt(3)), 6);
  });
  test('but not out of a clearance from a journal read with another', () => {
    expect(shareOf('clearance_elsewhere', 'micrometer')).toBeCloseTo(Math.hypot(2, 2 / Math.sqrt(3)), 6);
    expect(figure(sheet, 'clearance_elsewhere').u).toBeGreaterThan(figure(sheet, 'clearance').u * 1.5);
  });
});

describe('a gauge cell', () => {
  const micrometer = { gauge: 'micrometer-50-75-mm' };
  test('takes the usual error as a limit, u = a / root 3 (JCGM 100:2008, 4.3.7)', () => {
    const sheet = sheetOf({ it: cell('gauge', { ...micrometer, setting_doubt: '0 um' }) });
    // Usual permissible error 5 um, from memory of ISO 3611:1978.
    expect(um(figure(sheet, 'it', 'error').u)).toBeCloseTo(5 / Math.sqrt(3), 6);
    expect(um(figure(sheet, 'it', 'error').high)).toBeCloseTo(5, 6);
  });
  test('takes a certificate as normal, k = 2, with its correction (JCGM 100:2008, 4.3.3)', () => {
    const sheet = sheetOf({
      it: cell('gauge', { ...micrometer, setting_doubt: '0 um', certificate: '3 um', correction: '-1 um' }),
    });
    expect(um(figure(sheet, 'it', 'error').value)).toBeCloseTo(-1, 9);
    expect(um(figure(sheet, 'it', 'error').u)).toBeCloseTo(1.5, 9);
  });
  test('says that it goes by usual data until a certificate is entered', () => {
    expect(remarksOf('gauge', micrometer).join(' ')).toContain('not your certificate');
    expect(remarksOf('gauge', { ...micrometer, certificate: '3 um' }).join(' ')).not.toContain(
      'not your certificate',
    );
  });
});

describe('a gauge set to a known size', () => {
  test('design of a bore gauge entry: set 1.7500, +14 of .0001 (by hand)', () => {
    const it = one('gauge-setting', { set_to: '1.75 in', divisions: '14', division: '0.0001 in' });
    expect(it('size', 'in')).toBeCloseTo(1.7514, 12);
  });
  test('two sizes from one setting gauge lose its error in their difference (JCGM 100:2008, 5.2)', () => {
    const sheet = sheetOf({
      comparator: cell('gauge', {
        gauge: 'dial-bore-gauge-mm',
        certificate: '4 um',
        setting_doubt: '3 um',
        scatter: '1 um',
      }),
      one_end: cell('gauge-setting', {
        set_to: '50 mm',
        divisions: '3',
        division: '1 um',
        gauge: 'comparator',
      }),
      other_end: cell('gauge-setting', {
        set_to: '50 mm',
        divisions: '8',
        division: '1 um',
        gauge: 'comparator',
      }),
      taper: worked('length', '= other_end.size - one_end.size'),
    });
    expect(um(figure(sheet, 'taper').value)).toBeCloseTo(5, 6);
    expect(um(figure(sheet, 'taper').u)).toBeCloseTo(Math.SQRT2, 6);
  });
  test('a sense that is neither 1 nor -1 is refused', () => {
    expect(() =>
      one('gauge-setting', { set_to: '50 mm', divisions: '3', division: '1 um', sense: '2' })('size', 'mm'),
    ).toThrow(/sense is 1/);
  });
});

test('proud height: one gauge for both depths, its error drops out (JCGM 100:2008, F.1.2.3)', () => {
  const sheet = sheetOf({
    depth_gauge: cell('gauge', { gauge: 'calliper-digital-mm', certificate: '20 um', scatter: '5 um' }),
    face: measured('length', '14.30 mm ± 0 mm (k=2)'),
    it: cell('depth-by-difference', {
      to_face: '14.30 mm ± 0 mm',
      to_part: '14.21 mm ± 0 mm',
      gauge: 'depth_gauge',
    }),
  });
  expect(um(figure(sheet, 'it', 'proud').value)).toBeCloseTo(90, 6);
  expect(um(figure(sheet, 'it', 'proud').u)).toBeCloseTo(5 * Math.SQRT2, 6);
});

test('micrometer 0.2 thou out where 0.1 is permitted: its own limits say so', () => {
  const sheet = sheetOf({
    it: cell('micrometer-check', { block: '1 in', reading: '1.0002 in ± .00005 in', permitted: '0.0001 in' }),
  });
  expect(sheet.byName('it')?.outputs.error?.check.asNew?.state).toMatch(/out|misses/);
});
