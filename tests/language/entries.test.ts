import { describe, expect, it } from 'vitest';
import type { SheetUnits } from '../../shared/sheet/format.ts';
import { toDecimalComma } from '../../src/language/decimal.ts';
import { parseEntry } from '../../src/language/parse.ts';
import { anywhere, at, read } from './context.ts';

const mm: SheetUnits = { length: 'mm' };

/** [text, SI, stored, echo]; inch sheet. 1 in = 25.4 mm: NIST SP 811 (2008) B.8. The ways of writing: common practice, no source. */
const lengths: [text: string, si: number, stored: string, echo?: string][] = [
  ['2.2515 in', 0.0571881, '2.2515 in'],
  ['2.2515"', 0.0571881, '2.2515"'],
  ['2.2515', 0.0571881, '2.2515 in'],
  ['  2.2515  ', 0.0571881, '2.2515 in'],
  ['.0015', 0.0000381, '.0015 in'],
  ['2 1/4 in', 0.05715, '2 1/4 in', '2.25 in'],
  ['2-1/4', 0.05715, '2-1/4 in', '2.25 in'],
  ['2-1/4 in', 0.05715, '2-1/4 in', '2.25 in'],
  ['11/8', 0.034925, '11/8 in', '1.375 in'],
  ['1 1/8', 0.028575, '1 1/8 in', '1.125 in'],
  ['27/64 in', 0.010715625, '27/64 in', '0.421875 in'],
  ['1 1/2 thou', 0.0000381, '1 1/2 thou', '0.0015 in'],
  ['38 mm', 0.038, '38 mm'],
  ['12 um', 0.000012, '12 um', '0.0004724 in'],
  ['5 ft 3 1/2 in', 1.6129, '5 ft 3 1/2 in', '5.2916667 ft'],
  [`5' 3 1/2"`, 1.6129, `5' 3 1/2"`, '5.2916667 ft'],
  ['-.002', -0.0000508, '-.002 in'],
  ['+.002', 0.0000508, '+.002 in'],
  ['2,25', 0.05715, '2.25 in'],
  ['1e-3', 0.0000254, '1e-3 in'],
  ['20 under', -0.000508, '20 thou under', '0.02 in under size'],
  ['.020 over', 0.000508, '.020 in over', '0.02 in over size'],
  ['0.25 mm under', -0.00025, '0.25 mm under', '0.0098425 in under size'],
  ['set 1.7500, +14 divisions of .0001', 0.04448556, 'set 1.7500, +14 divisions of .0001 in', '1.7514 in'],
  ['set 1.7500 in, -3 div of 0.01 mm', 0.04442, 'set 1.7500 in, -3 div of 0.01 mm', '1.7488189 in'],
];

describe('an entry is read the way a shop writes', () => {
  it.each(lengths)('%s', (text, si, stored, echo) => {
    const parsed = parseEntry(text, at());
    expect(parsed.problems).toEqual([]);
    expect(read(text)).toBe(si);
    expect(parsed.committed).toBe(stored);
    expect(parsed.echo).toBe(echo);
  });

  it('a drill is its size: ASME B94.11M-1993 table 1', () => {
    expect(read('#7')).toBeCloseTo(0.201 * 0.0254, 12);
    expect(read('No. 7 drill')).toBe(read('#7'));
    expect(read('F drill')).toBeCloseTo(0.257 * 0.0254, 12);
    expect(read('letter F')).toBe(read('F drill'));
    expect(read('27/64 drill')).toBe(0.010715625);
    expect(read('6.8 mm drill')).toBeCloseTo(0.0068, 12);
    expect(parseEntry('#7', at()).echo).toMatch(/0\.201 in$/);
  });

  it('a thread is its major diameter: ASME B1.1, ISO 261', () => {
    expect(read('3/8-16 UNC-2B')).toBeCloseTo(0.375 * 0.0254, 12);
    expect(read('1/4-20')).toBeCloseTo(0.25 * 0.0254, 12);
    expect(read('M8x1.25')).toBeCloseTo(0.008, 12);
    expect(read('M8 × 1,25')).toBeCloseTo(0.008, 12);
    expect(read('1 1/4-7 UNC')).toBeCloseTo(1.25 * 0.0254, 12);
    expect(read('#10-32 UNF')).toBeCloseTo(0.19 * 0.0254, 12);
    expect(read('M8x9.75')).toMatch(/9\.75/);
  });

  it('an ISO 286 class brings its limit deviations: ISO 286-1:2010, 50 mm H7 is +25 0, g6 is -9 -25', () => {
    const hole = parseEntry('Ø50 H7', at('length', mm)).entry;
    expect(hole).toMatchObject({ kind: 'value', spread: { form: 'class', designation: 'H7', low: 0 } });
    expect(hole.kind === 'value' && hole.spread?.high).toBeCloseTo(25e-6, 12);
    expect(parseEntry('50H7/g6', at('length', mm)).entry).toMatchObject({
      kind: 'fit',
      hole: 'H7',
      shaft: 'g6',
    });
    expect(parseEntry('50H7/g6', at('length', mm)).committed).toBe('50 mm H7/g6');
  });

  it('a class on an inch sheet is asked for its unit', () => {
    const { problems } = parseEntry('50H7/g6', at());
    expect(problems[0]?.kind).toBe('ask');
    expect(problems[0]?.choices?.map((c) => c.entry)).toEqual(['50 mm H7/g6', '50 in H7/g6']);
  });

  it('a shaft class before the hole class is refused with the right order', () => {
    expect(parseEntry('50 mm g6/H7', at()).problems[0]?.choices?.[0]?.entry).toBe('50 mm H7/g6');
  });
});

describe('spreads', () => {
  const spread = (text: string, quantity = 'length') => {
    const { entry, problems } = parseEntry(text, at(quantity));
    expect(problems).toEqual([]);
    return 'spread' in entry ? entry.spread : undefined;
  };
  it.each([
    ['2.2510 in +.0005 -.0000', { low: 0, high: 0.0000127, form: 'deviations', percent: false }],
    ['2.2510 +.0005/-.0000', { low: 0, high: 0.0000127, form: 'deviations', percent: false }],
    ['2.25 in -0.0002 -0.0007', { low: -0.00001778, high: -0.00000508, form: 'deviations', percent: false }],
    ['2.25 ± 0.0002 in', { low: -0.00000508, high: 0.00000508, form: 'within', percent: false }],
    ['2.25 in +/- 2 thou', { low: -0.0000508, high: 0.0000508, form: 'within', percent: false }],
    ['2.25 in ± .0002 (k=2)', { low: -0.00000508, high: 0.00000508, form: 'within', percent: false, k: 2 }],
    ['2.25 in ± 5 %', { low: -0.05, high: 0.05, form: 'within', percent: true }],
  ])('%s', (text, expected) => expect(spread(text)).toEqual(expected));

  it('a temperature is spread by degrees, not by points on the scale', () => {
    expect(spread('20 °C ± 2 °C', 'temperature')).toMatchObject({ low: -2, high: 2 });
    expect(spread('20 degC ± 2', 'temperature')).toMatchObject({ low: -2, high: 2 });
    for (const text of ['130 degF ± 9 degF', '130F ± 9F', '130 degF ± 9', '130 degF ± 9 F°'])
      expect(spread(text, 'temperature'), text).toMatchObject({ low: -5, high: 5 });
  });

  it('a bare size with a spread in thou is inches on an inch sheet and asked on a millimetre one', () => {
    expect(parseEntry('2.25 ± 2 thou', at()).committed).toBe('2.25 in ± 2 thou');
    expect(parseEntry('57 ± 2 thou', at('length', mm)).problems[0]?.kind).toBe('ask');
  });

  it('of another dimension is refused with both named', () => {
    expect(parseEntry('2.25 in ± 2 K', at()).problems[0]?.message).toBe(
      'The value is a length, its spread ± 2 K is a temperature difference.',
    );
  });

  it('deviations the wrong way round are asked about', () => {
    expect(parseEntry('2 in -.0007 -.0002', at()).problems[0]?.choices?.[0]?.entry).toBe(
      '2 in -.0002 -.0007',
    );
  });
});

describe('lists of readings', () => {
  const stations = (text: string) => {
    const { entry, problems } = parseEntry(text, at());
    expect(problems).toEqual([]);
    return entry.kind === 'readings' ? entry.stations.map((s) => s.map((l) => l.value)) : undefined;
  };
  const expected = [
    [0.04440682, 0.04440174],
    [0.0443992, 0.04439666],
  ];
  it.each([
    '1.7483; 1.7481 | 1.7480; 1.7479 in',
    '1.7483; 1.7481 | 1.7480; 1.7479',
    '1.7483, 1.7481 | 1.7480, 1.7479',
    '1.7483\t1.7481\r\n1.7480\t1.7479\r\n',
    '1.7483 in; 1.7481 in\n1.7480; 1.7479;',
  ])('%j', (text) => expect(stations(text)).toEqual(expected));

  it('one unit at the end is stored for all', () => {
    expect(parseEntry('1.7483; 1.7481\n1.7480 ± .0002', at()).committed).toBe(
      '1.7483; 1.7481 | 1.7480 in ± .0002',
    );
  });
  it('in divisions of a set gauge', () => {
    const { entry, echo } = parseEntry('set 1.7500, +14; +13 | -2 div of .0001', at());
    expect(echo).toBe('1.7514 in; 1.7513 in | 1.7498 in');
    expect(entry.kind === 'readings' && entry.set?.divisions).toEqual([14, 13, -2]);
    expect(entry.kind === 'readings' && entry.stations.map((s) => s.length)).toEqual([2, 1]);
  });
  it('belong in a measured cell', () => {
    expect(
      parseEntry('1.1; 1.2 in', at('length', undefined, { role: 'given' })).problems[0]?.message,
    ).toMatch(/measured/);
    expect(parseEntry('1.1; 1.2 in', at('length', undefined, { role: 'measured' })).problems).toEqual([]);
  });
  it('indicator readings and limits keep what they are', () => {
    expect(parseEntry('.003 TIR', at()).entry).toMatchObject({ kind: 'value', tir: true });
    expect(parseEntry('2.2510..2.2515 in', at()).entry).toMatchObject({
      kind: 'range',
      low: { value: 0.0571754 },
      high: { value: 0.0571881 },
    });
    expect(parseEntry('2.2515..2.2510 in', at()).problems[0]?.choices?.[0]?.entry).toBe('2.2510..2.2515 in');
  });
});

describe('what is ambiguous is asked, never guessed', () => {
  const choices = (text: string, context = at()) =>
    parseEntry(text, context).problems[0]?.choices?.map((c) => c.entry ?? c.setting?.value);
  it.each([
    ['2.2510-2.2515 in', ['2.2510..2.2515 in', '=2.2510-2.2515 in']],
    ['1,234', ['1.234', '1234']],
    ['2.25 in + 0.004 in', ['2.25 in +0.004 in -0', '=2.25 in + 0.004 in']],
    ['15 tenths', ['tenth_in', 'tenth_mm']],
    ['2.25 in * 3', ['=2.25 in * 3']],
    ['bore', ['=bore']],
    ['4 in^2', ['4 in2']],
    ['=2 in^2', ['=2 in2', '=(2 in)^2']],
    ['=2-1/4 in', ['=2 1/4 in', '=2 in - 1/4 in']],
    ['=x/2/3 in', ['=x/(2/3 in)', '=x/2/(3 in)']],
    ['=MAX(1,5)', ['=MAX(1.5)', '=MAX(1; 5)']],
    ['=SIN(30)', ['=SIN(30 deg)', '=SIN(30 rad)']],
    ['=SQRT(2', ['=SQRT(2)']],
    ['=2 bush', ['=2 * bush']],
  ])('%s', (text, expected) => expect(choices(text)).toEqual(expected));

  it('a ton, until the sheet has settled it; what it was is stored', () => {
    expect(choices('4 tons', at('force'))).toEqual(['short_ton', 'long_ton', 'tonne']);
    const parsed = parseEntry('4 tons', at('force', { length: 'in', ton: 'long_ton' }));
    expect(parsed.committed).toBe('4 long_tonf');
    // 1 ton-force (long) = 9964.016 N: from the long ton of NIST SP 811 (2008) B.8 and standard gravity
    expect('value' in parsed.entry && parsed.entry.value.value / 4).toBeCloseTo(9964.016, 3);
  });
  it('a bare number of unknown quantity', () => {
    expect(choices('2.25', anywhere)).toEqual(['2.25 in', '2.25 mm', '2.25']);
    expect(choices('2.25', { ...anywhere, units: mm })).toEqual(['2.25 mm', '2.25 in', '2.25']);
  });
  it('a bare force', () =>
    expect(choices('4', at('force', mm))).toEqual(['4 N', '4 kN', '4 kgf', '4 lbf', '4 kip']));
  it('twenty under on a millimetre sheet', () =>
    expect(choices('20 under', at('length', mm))).toEqual(['20 thou under', '0.2 mm under', '20 mm under']));
  it('every choice that is an entry can be read', () => {
    for (const text of [
      '2.2510-2.2515 in',
      '1,234 mm',
      '2.25 in * 3',
      '=2 in^2',
      '=SIN(30)',
      '=x/2/3 in',
      '2.25 in +.004',
    ]) {
      for (const entry of choices(text) ?? [])
        expect(parseEntry(String(entry), at()).problems, String(entry)).toEqual([]);
    }
  });
});

describe('temperatures: points and differences', () => {
  it('a point is read on its scale', () => {
    // 68 degF = 20 degC = 293.15 K exactly: NIST SP 811 (2008) B.9
    expect(read('68F', at('temperature'))).toBe(293.15);
    expect(read('20 °C', at('temperature'))).toBe(293.15);
    expect(read('20', at('temperature', mm))).toBe(293.15);
  });
  it('a rise typed as a temperature is caught, and the other way about', () => {
    const rise = parseEntry('40 degF', at('temperature difference')).problems[0];
    expect(rise?.message).toMatch(
      /^a temperature difference is wanted here, 40 degF is a point on the scale/,
    );
    expect(rise?.choices?.[0]?.entry).toBe('40 degF_diff');
    expect(parseEntry('40 degF_diff', at('temperature')).problems[0]?.choices?.[0]?.entry).toBe('40 degF');
  });
});

describe('wrong or unreadable entries say what is wrong and where', () => {
  it.each([
    ['20 degC', 'dimension', 'a length is wanted here, 20 degC is a temperature.'],
    ['4 lbf', 'dimension', 'a length is wanted here, 4 lbf is a force.'],
    ['2.5 furlong', 'unknown-unit', 'There is no unit "furlong".'],
    ['1/0', 'arithmetic', '"1/0" divides by zero: a fraction needs a number other than 0 below the stroke.'],
    ['1e999', 'range', '1e999 is beyond what can be computed with: exponents go from -320 to 308.'],
    ['=', 'syntax', 'A formula is missing after "=".'],
    ['=a +', 'syntax', 'The formula stops after "+": something is missing there.'],
    ['=(a))', 'syntax', 'There is a closing parenthesis without an opening one.'],
  ])('%s', (text, kind, message) => {
    const { problems, entry, committed } = parseEntry(text, at());
    expect(problems[0]).toMatchObject({ kind, message });
    expect(entry.kind).toBe('blank');
    expect(committed).toBe(text);
  });
  it('the span is that of the piece concerned', () => {
    expect(parseEntry('2.5 furlong', at()).problems[0]).toMatchObject({ from: 4, to: 11 });
    expect(parseEntry('= bore + 2 bsuh', at()).problems[0]).toMatchObject({ from: 11, to: 15 });
  });
});

describe('a decimal comma', () => {
  const comma = at('length', mm, { decimal: ',' });
  it('is read, and stored as a point', () => {
    expect(read('57,25', comma)).toBe(0.05725);
    expect(parseEntry('57,25', comma).committed).toBe('57.25 mm');
    expect(parseEntry('1,5; 1,6', comma).committed).toBe('1.5; 1.6 mm');
    expect(parseEntry('=MAX(1,5 mm; 2 mm)', comma).committed).toBe('=MAX(1.5 mm; 2 mm)');
  });
  it('is shown and read back to the same stored text', () => {
    for (const stored of [
      '57.25 mm',
      '1.5; 1.6 | .25 mm ± .0002 mm',
      '=MAX(1.5 mm; press.od) * 2',
      '27/64 in',
      '=2.25 in + x',
    ]) {
      expect(parseEntry(toDecimalComma(stored), comma).committed, stored).toBe(stored);
    }
    expect(toDecimalComma('+0.0005 -0 in', 'Cut')).toBe('+0,0005 -0 in');
    expect(toDecimalComma('=MAX(1.5 mm; press.od)')).toBe('=MAX(1,5 mm; press.od)');
  });
  it('asks about a point that could group thousands', () => {
    expect(parseEntry('1.234', comma).problems[0]?.choices?.map((c) => c.entry)).toEqual(['1,234', '1234']);
  });
});

it('a plus before one of several readings says nothing, and loses none of them', () => {
  const parsed = parseEntry('2.25 in; +2.26 in | + 2.27 in', { ...at(), role: 'measured' });
  expect(parsed.problems).toEqual([]);
  expect(parsed.entry).toMatchObject({
    kind: 'readings',
    stations: [[{ text: '2.25 in' }, { text: '+2.26 in' }], [{ text: '+ 2.27 in' }]],
  });
});
