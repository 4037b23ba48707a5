import { describe, expect, it } from 'vitest';
import { handbook } from '../../cells/handbook.ts';
import type { Role } from '../../shared/sheet/format.ts';
import { parseEntry, parseTolerance } from '../../src/language/parse.ts';

/** What a shop types that can be read in two ways, or cannot be read: asked, with what was probably meant; never guessed. */

const context = (length: 'in' | 'mm', role: Role = 'given', quantity = 'length') => ({
  quantity,
  role,
  units: { length },
  handbook,
});
const offered = (text: string, of: ReturnType<typeof context>): (string | undefined)[] => {
  const { entry, problems } = parseEntry(text, of);
  expect(problems, text).not.toEqual([]);
  expect(entry.kind, text).toBe('blank');
  return problems[0]?.choices?.map((choice) => choice.entry) ?? [];
};
const read = (text: string, of: ReturnType<typeof context>) => {
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
  ])('%s', (text, choices) => expect(offered(text, context('mm'))).toEqual(choices));
});

describe('where a reading is wanted', () => {
  it.each([
    ['1.7500 1.7502 1.7498', ['1.7500; 1.7502; 1.7498']],
    ['1.7500 +.0001 -.0002', ['1.7500 ± .0002', '1.7500']],
    ['50 mm H7', ['50 mm']],
    ['2.2510..2.2515', ['2.2510; 2.2515']],
  ])('%s', (text, choices) => expect(offered(text, context('in', 'measured'))).toEqual(choices));
});

describe('of other kinds', () => {
  it.each([
    ['torque', '120 ft lbs', '120 ft-lb'],
    ['torque', '160 N-m', '160 N.m'],
    ['expansion coefficient', '6.4e-6/F', '6.4e-6 1/degF'],
    ['temperature', '70°', '70degF'],
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
