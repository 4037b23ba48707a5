import { describe, expect, it } from 'vitest';
import { handbook } from '../../cells/handbook.ts';
import type { Role } from '../../shared/sheet/format.ts';
import { type EntryContext, parseEntry, parseTolerance } from '../../src/language/parse.ts';

/** What a shop types that can be read in two ways, or cannot be read: asked, with what was probably meant; never guessed. */

const context = (length: 'in' | 'mm', role: Role = 'given', quantity = 'length') => ({
  quantity,
  role,
  units: { length },
  handbook,
});
const offered = (text: string, of: EntryContext): (string | undefined)[] => {
  const { entry, problems } = parseEntry(text, of);
  expect(problems, text).not.toEqual([]);
  expect(entry.kind, text).toBe('blank');
  return problems[0]?.choices?.map((choice) => choice.entry) ?? [];
};
const read = (text: string, of: EntryContext) => {
  const { entry, problems } = parseEntry(text, of);
  expect(problems, text).toEqual([]);
  return entry.kind === 'value' ? entry.value.value : Number.NaN;
};

describe('in a sheet of inches', () => {
  it.each([
    ['½', ['1/2']],
    ['2¼', ['2 1/4']],
    ['¾"', ['3/4"']],
    ['2 5/4', ['13/4']],
    ['1,234.5 mm', ['1234.5 mm']],
    ['2.2515/2.2510', ['2.2510..2.2515', '=2.2515/2.2510']],
    ['10-32', ['#10-32', '10..32', '=10-32']],
    ['1.7500 -.0005', ['1.7500 +0 -.0005', '=1.7500 -.0005']],
    ['2.25 dia', ['dia 2.25']],
    ['2.250 max', ['2.250']],
    ['2.250 min', ['2.250']],
    ['0.25 under', ['0.25 in under', '0.25 mm under']],
    ['2.23 under', ['2.23 thou under', '2.23 in under', '2.23 mm under']],
    ['22505', ['22505 thou', '22505 in']],
    ['2250.5', ['2250.5 thou', '2250.5 in']],
    ['2 - 1/16', ['2 1/16', '=2 - 1/16']],
    ['2–1/16"', ['2 1/16"', '=2–1/16"']],
    ['2+1/16', ['2 1/16', '=2+1/16']],
    ['1⁄2', ['1/2']],
    ['２.２５', ['2.25']],
    ["5'3", [`5' 3"`]],
    ['5ft 3-1/2in', [`5' 3 1/2"`]],
    ['5 ft 14 in', ['74 in']],
    ['12 345', ['12345']],
    ['No. 8', ['#8']],
    ['7 drill', ['#7']],
    ['2.25 OD', ['dia 2.25']],
    ['2..25', ['2.25', '2 .. 25']],
    ['29,000,000', ['29000000']],
    ['1.234,5', ['1234.5']],
    ['2.250 ± 5', ['2.250 ± 5 thou', '2.250 ± 5 in']],
    ['2 1/4 +2 -0', ['2 1/4 +2 -0 thou', '2 1/4 +2 -0 in']],
  ])('%s', (text, choices) => {
    expect(offered(text, context('in'))).toEqual(choices);
    for (const choice of choices.filter((one) => !one.startsWith('='))) {
      const again = parseEntry(choice, context('in')).problems.filter(({ kind }) => kind !== 'ask');
      expect(again, choice).toEqual([]);
    }
  });

  it('feet and inches: 2\'-3"', () => expect(offered('2\'-3"', context('in'))[0]).toBe('2\' 3"'));
  it('a point behind the unit, and thousandths in full', () => {
    expect(read('1 1/8 in.', context('in'))).toBeCloseTo(0.028575, 12);
    expect(read('3 thousandths', context('in'))).toBeCloseTo(0.0000762, 12);
  });
});

describe('in a sheet of millimetres', () => {
  it.each([
    ['27/64', ['27/64 in', '27/64 mm']],
    ['2 1/4', ['2 1/4 in', '2 1/4 mm']],
    ['.020 under', ['.020 in under', '.020 mm under']],
    ['2 mil', ['2 thou', '2 mm']],
    ['50 +25 -0', ['50 +25 -0 um', '50 +25 -0 mm']],
    ['50 +0.025 0', ['50 +0.025 -0']],
    ['50 0 -0.016', ['50 +0 -0.016']],
  ])('%s', (text, choices) => expect(offered(text, context('mm'))).toEqual(choices));
});

describe('where a reading is wanted', () => {
  it.each([
    ['1.7500 1.7502 1.7498', ['1.7500; 1.7502; 1.7498']],
    ['1.7500 +.0001 -.0002', ['1.7500 ± .0002', '1.7500']],
    ['50 mm H7', ['50 mm']],
    ['2.2510..2.2515', ['2.2510; 2.2515']],
    ['1.7483 +.0002', ['1.7483 ± .0002', '=1.7483 +.0002']],
    ['1.7483; 1.7481 ± 2', ['1.7483; 1.7481 ± 2 thou', '1.7483; 1.7481 ± 2 in']],
    ['1.234,5', ['1234.5', '1.234; 5']],
    ['1,234,567', ['1234567', '1; 234; 567']],
    ['1.75,2,3', ['1.75; 2; 3']],
  ])('%s', (text, choices) => expect(offered(text, context('in', 'measured'))).toEqual(choices));
});

it('whole readings with commas between them are not taken for decimals', () => {
  const of = context('in', 'measured', 'temperature');
  expect(offered('72,73', of)).toEqual(['72.73', '72; 73']);
  expect(offered('72,73,74', of)).toEqual(['72; 73; 74']);
  expect(offered('72,73,74,75', of)).toEqual(['72; 73; 74; 75', '72.73; 74.75']);
  // A decimal comma of sizes is no list: nobody measures whole millimetres.
  expect(read('44,45', context('mm', 'measured'))).toBeCloseTo(0.04445, 12);
});

it('a fit on a size to be cut is asked for its part, on a reading for its doubt, and says its nominal elsewhere', () => {
  expect(offered('50H7/g6', context('mm', 'chosen'))).toEqual(['50 H7', '50 g6']);
  expect(offered('50 mm H7/g6', context('in', 'measured'))).toEqual(['50 mm']);
  expect(parseEntry('50H7/g6', context('mm')).echo).toBe('nominal 50 mm');
});

it('a whole spread behind a formula is asked about too', () => {
  const choices = parseEntry('=2.25 in ± 5', context('in', 'worked')).problems[0]?.choices;
  expect(choices?.map((choice) => choice.entry)).toEqual(['=2.25 in ± 5 thou', '=2.25 in ± 5 in']);
});

it('a bare figure of what is shown in a small unit is asked about, unless only the sheet’s own is written so', () => {
  const thou = { ...context('in'), display: 'thou' };
  const um = { ...context('mm'), display: 'um' };
  expect(offered('4', thou)).toEqual(['4 thou', '4 in']);
  expect(offered('2.5', thou)).toEqual(['2.5 thou', '2.5 in']);
  expect(offered('25', um)).toEqual(['25 um', '25 mm']);
  expect(read('.004', thou)).toBeCloseTo(0.0001016, 12);
  expect(read('1/64', thou)).toBeCloseTo(0.0254 / 64, 12);
  expect(read('0.025', um)).toBeCloseTo(0.000025, 12);
  expect(read('0', thou)).toBe(0);
  // Shown in the other system, a bare figure is the sheet's.
  expect(read('4', { ...context('in'), display: 'mm' })).toBeCloseTo(0.1016, 12);
});

it('a spread takes the small unit its size is in', () => {
  const { entry, problems } = parseEntry('15 thou ± 1', context('in'));
  expect(problems).toEqual([]);
  expect(entry).toMatchObject({ spread: { low: -0.0000254, high: 0.0000254 } });
});

it('no temperature lies below absolute zero: -273.15 °C, NIST SP 811 (2008) B.9', () => {
  const of = context('in', 'given', 'temperature');
  for (const text of ['-300 C', '-500', '-459.68 F', '-1 K'])
    expect(parseEntry(text, of).problems[0]).toMatchObject({ kind: 'range' });
  expect(read('-459.67 F', of)).toBeCloseTo(0, 9);
});

it('a gauge read from its setting, written otherwise: says how', () => {
  for (const text of ['set 1.7500 +14', 'set 1.75, +1.5 thou'])
    expect(parseEntry(text, context('in', 'measured')).problems[0]?.message).toMatch(
      /as in set 1\.7500, \+14 divisions of \.0001/,
    );
});

describe('of other kinds', () => {
  it.each([
    ['torque', '120 ft lbs', '120 ft-lb'],
    ['torque', '160 N-m', '160 N.m'],
    ['expansion coefficient', '6.4e-6/F', '6.4e-6 1/degF'],
    ['temperature', '70°', '70degF'],
    ['temperature', '72º F', '72°F'],
    ['temperature', '72 degrees F', '72 degF'],
    ['angle', "15'", "0 deg 15'"],
    ['angle', "1° 75'", '135 arcmin'],
    ['area', '2 sq. in.', '2 in2'],
    ['pressure', '2000 lbs/sq in', '2000 lbs/in2'],
    ['force', '2 long tons', '2 long_ton'],
    ['interference per diameter', '.0005', '.0005 thou/in'],
  ])('%s: %s', (quantity, text, choice) => {
    expect(offered(text, context('in', 'given', quantity))[0]).toBe(choice);
  });

  it('20 deg C is a temperature', () => {
    expect(read('20 deg C', context('in', 'given', 'temperature'))).toBeCloseTo(293.15, 9);
  });

  it('the plain ratio is among what an interference per diameter may be', () => {
    expect(offered('.0005', context('in', 'given', 'interference per diameter'))).toContain('.0005 in/in');
  });
});

describe('as a tolerance', () => {
  const asked = (text: string, length: 'in' | 'mm') =>
    parseTolerance(text, context(length, 'chosen')).problems[0]?.choices?.map((choice) => choice.entry);

  it.each([
    ['-9/-25', 'mm', ['-9/-25 um', '-9/-25 mm']],
    ['± 5', 'mm', ['± 5 um', '± 5 mm']],
    ['+5 -0', 'in', ['+5 -0 thou', '+5 -0 in']],
    ['+0.025 0', 'mm', ['+0.025 -0']],
    ['0/-0.016', 'mm', ['+0 -0.016']],
  ] as const)('%s in %s', (text, length, choices) => expect(asked(text, length)).toEqual(choices));

  it.each([
    ['± 0.05', 'mm', 'in', ['± 0.05 mm', '± 0.05 in']],
    ['± 0.2', 'thou', 'in', ['± 0.2 thou', '± 0.2 in']],
    ['+0.0005 -0', 'in', 'mm', ['+0.0005 -0 in', '+0.0005 -0 mm']],
    ['± 0.05', 'mm', 'mm', undefined],
    ['± 0.05 in', 'mm', 'in', undefined],
    ['+0 -0', 'mm', 'in', undefined],
  ] as const)('%s beside a size in %s, on a sheet of %s', (text, sizeUnit, length, choices) => {
    const { problems } = parseTolerance(text, { ...context(length, 'chosen'), sizeUnit });
    expect(problems[0]?.choices?.map((choice) => choice.entry)).toEqual(choices);
  });

  it('with decimals or a unit it is read', () => {
    for (const text of ['± 0.02', '+25 um -0', '+0 -0', '± 1/64 in'])
      expect(parseTolerance(text, context('mm', 'chosen')).problems, text).toEqual([]);
  });

  it('a share of what a formula gives is a share, whatever the cell holds', () => {
    const { spread } = parseTolerance('± 5 %', { units: { length: 'mm' }, handbook, role: 'chosen' });
    expect(spread).toMatchObject({ percent: true, high: 0.05 });
    const { entry } = parseEntry('=load * 2 ± 10 %', context('mm', 'worked', 'force'));
    expect(entry.kind === 'formula' && entry.spread).toMatchObject({ percent: true, high: 0.1 });
  });
});

describe('a list of which only some readings have a unit', () => {
  it.each([
    ['in', '57.15; 57.16; 2.2505 in', ['57.15 mm; 57.16 mm; 2.2505 in', '57.15 in; 57.16 in; 2.2505 in']],
    ['mm', '2.2505; 57.15 mm', ['2.2505 in; 57.15 mm', '2.2505 mm; 57.15 mm']],
    ['in', '57.15 mm | 2.2505', ['57.15 mm | 2.2505 in', '57.15 mm | 2.2505 mm']],
  ] as const)('on a sheet in %s: %s', (length, text, expected) => {
    const of = context(length, 'measured');
    expect(offered(text, of)).toEqual(expected);
    for (const entry of expected) expect(parseEntry(entry, of).problems).toEqual([]);
  });
  it.each(['2.2505; 2.2507; 2.2510 in', '2.2505 in; 57.16 mm', '.5; 2.25 in', '57.15; 57.16'])(
    '%s is taken as it stands',
    (text) => expect(parseEntry(text, context('in', 'measured')).problems).toEqual([]),
  );
});
