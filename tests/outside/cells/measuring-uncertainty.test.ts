import { describe, expect, test } from 'vitest';
import { catalogueOf, folders } from '../../../cells/catalogue.ts';
import { type CellKind, defineCell } from '../../../cells/record/cell.ts';
import { cell, figure, given, measured, sheetOf, valueIn, worked } from './sheet-of.ts';

const nm = 1e-9;

describe('JCGM 100:2008, H.1: end gauge by comparison with a standard', () => {
  const inputs = {
    standard: measured('length', '50.000623 mm ± 50 nm (k=2)'),
    observed: measured('length', '215 nm ± 11.6 nm (k=2)'),
    random: measured('length', '0 nm ± 7.8 nm (k=2)'),
    systematic: measured('length', '0 nm ± 13.4 nm (k=2)'),
    expansion: given('expansion coefficient', '11.5e-6 1/K ± 2e-6 1/K'),
    expansion_difference: given('expansion coefficient', '0 1/K ± 1e-6 1/K'),
    warmth: measured('temperature difference', '-0.1 K ± 0.4 K (k=2)'),
    warmth_cycle: given('temperature difference', '0 K ± 0.5 K'),
    warmth_difference: given('temperature difference', '0 K ± 0.05 K'),
    difference: worked('length', '= observed + random + systematic'),
  };
  const byGuide = sheetOf({
    ...inputs,
    gauge_length: worked(
      'length',
      '= standard + difference - standard * (expansion_difference * (warmth + warmth_cycle) + expansion * warmth_difference)',
    ),
  });
  // The same through the library's cell: the standard is what reads, the end gauge is the part.
  const byCell = sheetOf({
    ...inputs,
    corrected: cell('part-temperature', {
      reading: '= standard + difference',
      part_temperature: '= 20 degC + warmth + warmth_cycle',
      gauge_temperature: '= 20 degC + warmth + warmth_cycle - warmth_difference',
      part_expansion: '= expansion + expansion_difference',
      gauge_expansion: '= expansion',
    }),
  });
  const both = [
    ['the model of the guide', byGuide, 'gauge_length', 'value'],
    ['the cell of a reading brought to 20 degC', byCell, 'corrected', 'at_20'],
  ] as const;

  describe.each(both)('by %s', (_, sheet, name, output) => {
    const share = (of: string): number => {
      const budget = sheet.budget(sheet.byName(name)?.id as string, output);
      const id = sheet.byName(of)?.id;
      return Math.hypot(...budget.filter((one) => one.cell === id).map((one) => one.u)) / nm;
    };
    test('R091 length 50.000838 mm (seen)', () => {
      expect(Math.abs(figure(sheet, name, output).value - 50000838 * nm) / nm).toBeLessThan(0.5);
    });
    test('R093 the standard contributes 25 nm (seen)', () => {
      expect(share('standard')).toBeCloseTo(25, 2);
    });
    test('R094 the observed difference contributes 9.7 nm (seen)', () => {
      expect(figure(sheet, 'difference').u / nm).toBeCloseTo(9.682, 1);
      expect(Math.hypot(share('observed'), share('random'), share('systematic'))).toBeCloseTo(9.682, 1);
    });
    test('R096 expansion and mean warmth contribute nothing at the estimates (seen)', () => {
      expect(share('expansion')).toBeLessThan(1e-3);
      expect(share('warmth')).toBeLessThan(1e-3);
      expect(share('warmth_cycle')).toBeLessThan(1e-3);
    });
    test('R098 the difference of temperature contributes 16.6 nm (seen)', () => {
      expect(Math.abs(share('warmth_difference') - 16.6)).toBeLessThan(0.1);
    });
    test('standard uncertainty 32 nm, as Table H.1 prints it', () => {
      expect(Math.abs(figure(sheet, name, output).u / nm - 32)).toBeLessThan(0.5);
    });
  });
});

test('R104 divisors: rectangular root 3, triangular root 6, arcsine root 2, normal k = 2 (computed; JCGM 100 4.3.7, 4.3.9)', () => {
  const shapes = ['rectangular', 'triangular', 'arcsine', 'normal'] as const;
  const kind: CellKind = defineCell({
    key: 'divisors',
    edition: 1,
    title: 'Divisors',
    purpose: 'One of each distribution.',
    group: 'measuring',
    inputs: [],
    outputs: shapes.map((distribution) => ({
      name: distribution,
      label: distribution,
      quantity: 'number',
      basis: 'geometry',
      formula: '=0',
      spread: { low: '=-1', high: '=1', distribution, label: distribution },
    })),
    assumptions: [],
    sources: [],
    cautions: [],
    examples: [],
  });
  const library = catalogueOf({ ...folders, kinds: { ...folders.kinds, divisors: kind } });
  const sheet = sheetOf({ it: { role: 'cell', kind: 'divisors', edition: 1, inputs: {} } }, { library });
  const divisor = (name: string) => 1 / figure(sheet, 'it', name).u;
  expect(divisor('rectangular')).toBeCloseTo(1.7320508, 6);
  expect(divisor('triangular')).toBeCloseTo(2.4494897, 6);
  expect(divisor('arcsine')).toBeCloseTo(Math.SQRT2, 6);
  expect(divisor('normal')).toBeCloseTo(2, 9);
});

test('R106 four inputs of unit standard uncertainty add to 2.0 (seen; JCGM 101:2008 9.2)', () => {
  const unit = measured('number', '0 ± 2 (k=2)');
  const sheet = sheetOf({ a: unit, b: unit, c: unit, d: unit, sum: worked('number', '= a + b + c + d') });
  expect(figure(sheet, 'sum').u).toBeCloseTo(2, 9);
});

describe('EA-4/02 S10: calliper against a gauge block (from memory)', () => {
  const sheet = sheetOf({
    reading: given('length', '150.10 mm'),
    block: given('length', '150.00 mm ± 0.8 um'),
    warmth_difference: given('temperature difference', '0 K ± 2 K'),
    rounding: given('length', '0 um ± 25 um'),
    mechanical: given('length', '0 um ± 50 um'),
    error: worked(
      'length',
      '= reading - block + block * 11.5e-6 1/K * warmth_difference + rounding + mechanical',
    ),
  });
  const budget = sheet.budget(sheet.byName('error')?.id as string, 'value');
  const share = (name: string) => (budget.find((one) => one.cell === sheet.byName(name)?.id)?.u ?? 0) / 1e-6;
  test('R109 contributions', () => {
    const expected = { block: 0.462, warmth_difference: 1.99, rounding: 14.4, mechanical: 28.9 };
    for (const [name, u] of Object.entries(expected))
      expect(Math.abs(share(name) / u - 1), name).toBeLessThan(0.03);
  });
  test('R110 standard uncertainty 33 um as printed', () => {
    expect(Math.abs(figure(sheet, 'error').u / 1e-6 - 32.3)).toBeLessThan(1);
  });
  test('R112 expanded uncertainty 0.06 mm', () => {
    expect(Math.abs((2 * figure(sheet, 'error').u) / 1e-3 - 0.06)).toBeLessThan(0.005);
  });
});

test('R090 aluminium part of 100.000 mm at 30 degC is 99.9764 mm at 20 degC (computed; ISO 1)', () => {
  const sheet = sheetOf({
    it: cell('part-temperature', {
      reading: '100 mm',
      part_temperature: '30 degC',
      gauge_temperature: '20 degC',
      part_expansion: '23.6e-6 1/K',
    }),
  });
  expect(Math.abs(valueIn('mm', sheet, 'it', 'at_20') - 99.9764056)).toBeLessThan(1e-5);
});

test('three readings of a micrometer against a block of 21.500 mm: error 1.7 um, u 0.51 um [published guide to uncertainty of micrometers: 0.00058 / sqrt 3, 0.001 / sqrt 12, 0.0005 / 2] seen', () => {
  const sheet = sheetOf({
    block: cell('gauge', {
      gauge: 'micrometer-0-25-mm',
      certificate: '0.5 um',
      setting_doubt: '0 um',
      scatter: '0 um',
    }),
    read: measured('length', '21.501; 21.502; 21.502 mm', { gauge: 'block' }),
    check: cell('micrometer-check', { block: '21.5 mm', reading: '= read', permitted: '3 um' }),
  });
  const error = figure(sheet, 'check', 'error');
  expect(error.value * 1e6).toBeCloseTo(1.7, 1);
  expect(error.u * 1e6).toBeCloseTo(0.51, 2);
});
