import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { dimension } from '../../shared/dimension.ts';
import { digitsFor, formatNumber, formatQuantity, writeEntry } from '../../shared/quantities/figures.ts';
import { formatFigure } from '../../shared/quantities/printed-figure.ts';
import { NUMBER_UNIT } from '../../shared/quantities/quantities.ts';
import { roundedText } from '../../shared/rounding.ts';
import { findUnit, fromSI, parseUnit, toSI, type Unit } from '../../shared/units/units.ts';
import { walk } from '../walk.ts';
import { describeDimension, wordProblem } from './wording.ts';

const unit = (symbol: string): Unit => findUnit(symbol) as Unit;
const inches = (value: number): number => toSI(value, unit('in'));
const plain = (text: string): string => text.replaceAll('\u00a0', ' ');

describe('rounding', () => {
  test.each([
    [2.2255, 3, '2.226'],
    [1.005, 2, '1.01'],
    [-1.005, 2, '-1.01'],
    [0.0005, 3, '0.001'],
    [-0.00004, 4, '0.0000'],
    [0, 4, '0.0000'],
    [1234.5, 0, '1235'],
    [4836, -1, '4840'],
    [4, -2, '0'],
    [96, -2, '100'],
    [1e21, 0, '1000000000000000000000'],
    [0.1 + 0.2, 1, '0.3'],
    [123456789.12345678, 6, '123456789.123457'],
  ])('%d to %d places is %s', (x, places, text) => expect(roundedText(x, places)).toBe(text));

  test('of any number of up to ten digits is what integer arithmetic says', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -1e10, max: 1e10 }),
        fc.integer({ min: 0, max: 6 }),
        fc.integer({ min: 0, max: 6 }),
        (n, e, places) => {
          const size = BigInt(Math.abs(n));
          const drop = 10n ** BigInt(Math.max(e - places, 0));
          const units = (size + drop / 2n) / drop;
          const expected = Number(units) * (n < 0 ? -1 : 1);
          expect(Number(roundedText(Number(`${n}e-${e}`), places))).toBe(
            Number(`${expected}e-${Math.min(e, places)}`) + 0,
          );
        },
      ),
      { seed: 3, numRuns: 2000 },
    );
  });
});

describe('places', () => {
  test.each([
    ['in', undefined, 4],
    ['in', 0.0002, 4],
    ['in', 0.00012, 4],
    ['in', 0.00005, 5],
    ['in', 0.000001, 5],
    ['in', 0.003, 4],
    ['in', 0.01, 3],
    ['in', 0.5, 3],
    ['in', 50, 0],
    ['mm', undefined, 3],
    ['mm', 0.005, 3],
    ['mm', 0.0004, 4],
    ['mm', 0.2, 2],
    ['mm', 30, 0],
    ['psi', 120, -1],
    ['psi', 0.996, 1],
    ['degC_diff', 2, 1],
  ])('in %s with a spread of %s: %d', (symbol, spread, places) =>
    expect(digitsFor(spread === undefined ? undefined : toSI(spread, unit(symbol)), unit(symbol))).toBe(
      places,
    ),
  );
});

describe('a number', () => {
  test.each([
    [2.2515, 'in', '2.2515 in'],
    [2.25125, 'in', '2.25125 in'],
    [1 / 3, 'in', '0.3333 in'],
    [12, 'um', '12 µm'],
    [68, 'degF', '68 °F'],
    [30, 'deg', '30°'],
    [1234.567, 'psi', '1234.6 psi'],
    [123456, 'lbf', '123456 lbf'],
    [6.5e-6, '1/degF', '6.5×10⁻⁶ 1/°F'],
    [1e300, 'in', '1×10³⁰⁰ in'],
  ])('%d %s is shown as %s', (value, symbol, text) =>
    expect(plain(formatQuantity(toSI(value, unit(symbol)), unit(symbol)))).toBe(text),
  );

  test('is the same text however near a half the figure lies', () => {
    const units = ['in', 'mm', 'um', 'thou', 'kN', 'psi'].map(unit);
    const shown = fc.tuple(
      fc.constantFrom(...units),
      fc.integer({ min: 0, max: 7 }),
      fc.oneof(
        fc.double({ min: -2e4, max: 2e4, noNaN: true }),
        // A half of the last place and its neighbours, as typed.
        fc
          .tuple(
            fc.integer({ min: -99_999, max: 99_999 }),
            fc.constantFrom('5', '49999999999', '50000000001'),
          )
          .map(([whole, rest]) => Number(`${whole}${rest}e-${rest.length + 3}`)),
      ),
    );
    fc.assert(
      fc.property(shown, ([u, decimals, x]) => {
        const si = toSI(x, u);
        expect(formatNumber(si, u, { decimals })).toBe(roundedText(fromSI(si, u), decimals));
      }),
      { numRuns: walk(5000, 200_000), seed: 20 },
    );
  });
  test('has the places of two digits of its spread, however near a power of ten that lies', () => {
    const spread = fc.oneof(
      fc.double({ min: 1e-12, max: 1e12, noNaN: true }),
      fc
        .tuple(fc.constantFrom(0.99, 0.9949999, 0.995, 0.9999, 1, 1.0000001), fc.integer({ min: -9, max: 9 }))
        .map(([lead, power]) => lead * 10 ** power),
    );
    fc.assert(
      fc.property(spread, (x) => {
        const [, power] = Number(x.toPrecision(2)).toExponential().split('e');
        expect(digitsFor(x, NUMBER_UNIT)).toBe(1 - Number(power));
      }),
      { numRuns: walk(2000, 50_000), seed: 21 },
    );
  });
  test('carries its sign, its comma and no minus before zero', () => {
    expect(formatNumber(inches(0.0005), unit('in'), { sign: true })).toBe('+0.0005');
    expect(formatNumber(inches(-0.00001), unit('in'), { decimals: 4 })).toBe('0.0000');
    expect(formatNumber(inches(0), unit('in'), { sign: true })).toBe('0.0000');
    expect(formatNumber(inches(2.2515), unit('in'), { comma: true })).toBe('2,2515');
    expect(formatNumber(Number.NaN, unit('in'))).toBe('—');
    expect(formatNumber(Number.NEGATIVE_INFINITY, unit('in'))).toBe('-∞');
    expect(formatNumber(9.99999999e-9, unit('1/K'))).toBe('1×10⁻⁸');
    expect(formatNumber(0.25, NUMBER_UNIT)).toBe('0.25');
  });
});

describe('a figure', () => {
  const figure = (value: number, below: number, above: number, u = 0) => ({
    value: inches(value),
    low: inches(value + below),
    high: inches(value + above),
    centre: inches(value),
    u: inches(u),
  });
  const shown = (...args: Parameters<typeof formatFigure>) => plain(formatFigure(...args).text);

  test('shows equal ends as one and unequal ends as two', () => {
    expect(shown(figure(2.2515, -0.0003, 0.0003), unit('in'))).toBe('2.2515 in ± 0.0003 in');
    expect(shown(figure(2.2515, 0, 0.0005), unit('in'))).toBe('2.2515 in +0.0005 -0.0000 in');
    expect(formatFigure(figure(2.2515, -0.0003, 0.0003), unit('in'))).toMatchObject({
      value: '2.2515',
      spread: '± 0.0003',
      unit: 'in',
    });
  });

  test('shows another band in place of the worst case', () => {
    const band = (low: number, high: number) => ({ band: { low: inches(low), high: inches(high) } });
    expect(shown(figure(2.25, 0, 0), unit('in'), band(2.2498, 2.2502))).toBe('2.2500 in ± 0.0002 in');
    expect(shown(figure(2.25, 0, 0), unit('in'), band(2.2499, 2.2503))).toBe('2.2500 in +0.0003 -0.0001 in');
  });

  test('never shows a spread as nothing, nor one where there is none', () => {
    expect(shown(figure(2.25, -1e-6, 1e-6), unit('in'))).toBe('2.25000 in ± 0.00001 in');
    expect(shown(figure(2.25, 0, 0), unit('in'))).toBe('2.2500 in');
    expect(shown({ ...figure(2.25, 0, 0), low: Number.NaN }, unit('in'))).toBe('2.2500 in');
  });

  test('gives the spread of a temperature as a difference', () =>
    expect(shown({ value: 293.15, low: 292.15, high: 294.15, centre: 293.15, u: 0.5 }, unit('degF'))).toBe(
      '68.0 °F ± 1.8 °F',
    ));
});

describe('an uncertainty in few places', () => {
  test.each([
    // JCGM 100:2008, 7.2.6 would have 28.05 as 28; beside a verdict no spread may read smaller than it is.
    [28.05, 'um', '± 29'],
    [10.47, 'um', '± 11'],
    [28, 'um', '± 28'],
    [10.53, 'um', '± 11'],
    [1.41, 'tenth_in', '± 1.5'],
    [0.21, 'um', '± 0.3'],
  ])('%d %s is shown as %s', (expanded, symbol, text) => {
    const of = unit(symbol);
    const u = (expanded / 2) * of.factor;
    const reading = { value: 0.05, low: 0.05 - 2 * u, high: 0.05 + 2 * u, centre: 0.05, u };
    expect(formatFigure(reading, of).spread).toBe(text);
  });
});

describe('an entry written from a value', () => {
  test.each([
    [0.0571881, 'in', '2.2515 in'],
    [293.15, 'degF', '68 degF'],
    [0.25, '', '0.25'],
    [Number.NaN, 'in', ''],
    [0, 'mm', '0 mm'],
    [-0.00000254, 'thou', '-0.1 thou'],
  ])('%d in %s is %s', (si, symbol, text) => expect(writeEntry(si, symbol)).toBe(text));

  test('a share that no percentage reaches is not written as an angle', () => {
    const text = writeEntry(0.9307872703593136, '%');
    expect(text).not.toMatch(/rad|deg|arc/);
    expect(Number.parseFloat(text)).toBeGreaterThan(0.93);
    expect(writeEntry(Math.PI / 7, 'deg')).toMatch(/rad|deg/);
  });

  test('reads back as the same double, whatever the double', () => {
    const symbols = [
      'in',
      'mm',
      'thou',
      'um',
      'degF',
      'degC',
      'psi',
      'lbf',
      'deg',
      'rpm',
      'lbf.ft',
      'um/(m.K)',
    ];
    fc.assert(
      fc.property(
        fc.double({ min: -1e6, max: 1e6, noNaN: true }),
        fc.constantFrom(...symbols),
        (si, symbol) => {
          const [number, back] = writeEntry(si, symbol).split(' ') as [string, string];
          expect(toSI(Number(number), parseUnit(back, { point: unit(symbol).point }) as Unit)).toBe(si + 0);
        },
      ),
      { seed: 4, numRuns: 3000 },
    );
  });
});

describe('wording', () => {
  test.each([
    [dimension(1), false, 'a length'],
    [dimension(0, 0, 0, 1), true, 'a temperature'],
    [dimension(0, 0, 0, 1), false, 'a temperature difference'],
    [dimension(2, 1, -2), false, 'a torque or an energy'],
    [dimension(), false, 'a plain number'],
    [dimension(4, 0, -1), false, 'length^4/time'],
    [dimension(0.5), false, 'length^(1/2)'],
    [dimension(-1, 0, -2), false, '1/(length·time^2)'],
  ])('%j is %s', (dim, point, text) => expect(describeDimension(dim, point)).toBe(text));

  test('a problem from elsewhere says where it began', () => {
    const problem = { kind: 'blank', message: 'no value yet', origin: 'bore' } as const;
    expect(wordProblem(problem, 'clearance')).toBe('bore: no value yet');
    expect(wordProblem(problem, 'bore')).toBe('no value yet');
  });
});
