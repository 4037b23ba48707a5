import { unit as mathUnit } from 'mathjs';
import { describe, expect, test } from 'vitest';
import { fromSI, isUnit, parseUnit, toSI, type Unit, unitsOfDimension } from '../../shared/units/units.ts';
import rows from './reference/values.json' with { type: 'json' };

const unit = (symbol: string): Unit => {
  const found = parseUnit(symbol);
  if (!isUnit(found)) throw new Error(found.message);
  return found;
};

const convert = (value: number, from: string, to: string): number =>
  fromSI(toSI(value, unit(from)), unit(to));

const relative = (found: number, expected: number): number => Math.abs(found / expected - 1);

describe('NIST SP 811 (2008) factors of the reference file', () => {
  /** What each row converts, in our symbols. */
  const conversions: Record<string, [from: string, to: string, input?: string]> = {
    R001: ['in', 'mm'],
    R003: ['uin', 'um'],
    R004: ['lb', 'kg'],
    R006: ['lbf', 'N'],
    R008: ['psi', 'Pa'],
    R009: ['ksi', 'MPa'],
    R011: ['lbf.in', 'N.m'],
    R012: ['lbf.ft', 'N.m'],
    R014: ['Btu', 'J'],
    R016: ['bar', 'psi'],
    R017: ['atm', 'psi'],
    R019: ['Btu/(h.ft.degF)', 'W/(m.K)'],
    R020: ['psi.ft/min', 'MPa.m/s'],
    R022: ['reyn', 'Pa.s'],
    R024: ['degF_diff', 'K'],
    R025: ['short_tonf', 'kN'],
    R027: ['degF', 'degC', 'degF'],
    R028: ['degF', 'degC', 'degF'],
    R030: ['degF', 'degC', 'degF'],
    R032: ['degF', 'degC', 'degF'],
    R033: ['degF_diff', 'K', 'interval_degF'],
    R036: ['mm', 'thou', 'mm'],
  };
  const topic = rows.filter((r) => r.topic === '1 units');

  test('every row of the topic is converted here', () => {
    expect(topic.map((r) => r.id).sort()).toEqual(Object.keys(conversions).sort());
  });

  test.each(topic.map((r) => [r.id, r.quantity, r] as const))('%s %s', (id, _, r) => {
    const [from, to, input = 'value'] = conversions[id]!;
    const value = (r.inputs as unknown as Record<string, number>)[input]!;
    const expected = r.expected as number;
    const found = convert(value, from, to);
    // Expected values are printed to 7 to 13 figures: compared to the last figure printed.
    const places =
      (String(expected).split(/[.e]/)[1] ?? '').length + Number(/e-(\d+)/.exec(String(expected))?.[1] ?? 0);
    if (r.tolerance.includes('relative')) expect(relative(found, expected)).toBeLessThan(1e-10);
    else
      expect(Math.abs(found - expected)).toBeLessThanOrEqual(
        Math.max(Number(r.tolerance), 0.51 * 10 ** -places),
      );
  });
});

describe('against a general-purpose units library', () => {
  /** Every unit of the dimension, said in the library's own units. */
  const said = {
    length: {
      m: '1 m',
      mm: '1 mm',
      in: '1 inch',
      thou: '1 mil',
      um: '1 um',
      tenth_in: '0.1 mil',
      tenth_mm: '0.1 mm',
      uin: '1e-6 inch',
      nm: '1 nm',
      cm: '1 cm',
      dm: '1 dm',
      km: '1 km',
      ft: '1 foot',
      yd: '1 yard',
      mi: '1 mile',
    },
    force: {
      N: '1 N',
      kN: '1 kN',
      MN: '1 MN',
      mN: '1 mN',
      lbf: '1 lbf',
      kip: '1 kip',
      kgf: '9.80665 kg m / s^2',
      ozf: '0.0625 lbf',
      short_tonf: '2000 lbf',
      long_tonf: '2240 lbf',
      tonnef: '9806.65 kg m / s^2',
    },
    pressure: {
      Pa: '1 Pa',
      kPa: '1 kPa',
      MPa: '1 MPa',
      GPa: '1 GPa',
      psi: '1 psi',
      ksi: '1000 psi',
      Mpsi: '1e6 psi',
      bar: '1 bar',
      mbar: '1 mbar',
      hPa: '1 hPa',
      atm: '1 atm',
      'kgf/cm2': '98066.5 Pa',
      psf: '1 lbf / foot^2',
    },
    torque: {
      'N.m': '1 N m',
      'lbf.ft': '1 lbf foot',
      'lbf.in': '1 lbf inch',
      'kgf.m': '9.80665 N m',
      'ozf.in': '0.0625 lbf inch',
      'N.mm': '1 N mm',
      'kN.m': '1 kN m',
      J: '1 J',
      kJ: '1 kJ',
      MJ: '1 MJ',
      Btu: '1 BTU',
      'ft.lbf': '1 foot lbf',
      kWh: '1 kWh',
    },
  };
  const SI = { length: 'm', force: 'N', pressure: 'Pa', torque: 'N m' } as const;
  /** Lengths are exact on both sides; the library keeps psi, lbf and kip to about nine figures. */
  const AGREE = { length: 1e-14, force: 5e-9, pressure: 1e-9, torque: 1e-9 } as const;

  for (const kind of ['length', 'force', 'pressure', 'torque'] as const) {
    const table: Record<string, string> = said[kind];
    test(`every ${kind} unit is compared`, () => {
      const dim = unit(SI[kind].replace(' ', '.')).dimension;
      expect(Object.keys(table).sort()).toEqual(
        unitsOfDimension(dim)
          .map((u) => u.symbol)
          .sort(),
      );
    });
    test.each(Object.entries(table))(`${kind}: %s is %s`, (symbol, text) => {
      expect(relative(unit(symbol).factor, mathUnit(text).toNumber(SI[kind]))).toBeLessThan(AGREE[kind]);
    });
  }

  test.each([
    ['hp', '1 hp', 'W'],
    ['lb', '1 lbm', 'kg'],
    ['oz', '1 oz', 'kg'],
    ['short_ton', '1 ton', 'kg'],
    ['tonne', '1 tonne', 'kg'],
    ['gr', '1 grain', 'kg'],
    ['L', '1 L', 'm^3'],
    ['gal_us', '1 gallon', 'm^3'],
    ['qt_us', '1 quart', 'm^3'],
    ['deg', '1 deg', 'rad'],
    ['arcmin', '1 arcmin', 'rad'],
    ['arcsec', '1 arcsec', 'rad'],
    ['mph', '1 mile / hour', 'm/s'],
    ['ft/min', '1 foot / minute', 'm/s'],
    ['cfm', '1 foot^3 / minute', 'm^3/s'],
  ])('others: %s is %s', (symbol, text, si) => {
    // The library keeps a US gallon to 3.785 L, a quart to 0.9464 L and a horsepower to seven figures.
    const digits = /gallon|quart/.test(text) ? 1e-3 : 1e-6;
    expect(relative(unit(symbol).factor, mathUnit(text).toNumber(si))).toBeLessThan(digits);
  });

  test.each([
    [68, 'degF', 'degC'],
    [-40, 'degF', 'degC'],
    [20, 'degC', 'degF'],
    [527.67, 'degR', 'degF'],
  ])('temperature points: %d %s in %s', (value, from, to) => {
    const point = (symbol: string) => parseUnit(symbol, { point: true }) as Unit;
    expect(fromSI(toSI(value, point(from)), point(to))).toBeCloseTo(mathUnit(value, from).toNumber(to), 9);
  });
});

describe('factors as printed, from memory', () => {
  // NIST SP 811 (2008) appendix B.8; long ton-force from its definition.
  test.each([
    ['gal_imp', 'L', 4.54609],
    ['gal_us', 'L', 3.785412],
    ['hp', 'W', 745.6999],
    ['hp_metric', 'W', 735.4988],
    ['slug', 'kg', 14.5939],
    ['long_ton', 'kg', 1016.047],
    ['long_tonf', 'kN', 9.964016],
    ['kgf', 'N', 9.80665],
    ['mph', 'm/s', 0.44704],
    ['cfm', 'L/s', 0.4719474],
    ['gpm_us', 'L/s', 0.0630902],
    ['lb/in3', 'kg/m3', 27679.9],
    ['uin/(in.degF)', 'um/(m.K)', 1.8],
    ['lbf/in', 'N/m', 175.1268],
    ['floz_us', 'mL', 29.57353],
  ])('1 %s is %s %d', (from, to, printed) => {
    // To half a unit of the last figure printed (seven at most).
    expect(relative(convert(1, from, to), printed)).toBeLessThan(5e-6);
  });
});
