import { expect, it } from 'vitest';
import { library } from '../../cells/catalogue.ts';
import type { CellRecord } from '../../shared/sheet/format.ts';
import { computeSheet } from '../../src/engine/compute.ts';
import { sheetOf } from './random-sheet.ts';

const cell = (name: string, entry: string, more: Partial<CellRecord> = {}): CellRecord => ({
  id: name,
  name,
  role: entry.startsWith('=') ? 'worked' : 'given',
  entry,
  ...more,
});

const AROUND = [
  cell('a', '10 mm ± 0.1 mm', { quantity: 'length' }),
  cell('b', '9 mm ± 0.1 mm', { quantity: 'length' }),
  cell('tilt', '30 deg', { quantity: 'angle' }),
  cell('share', '0.5', { quantity: 'number' }),
  cell('push', '5 N', { quantity: 'force' }),
  cell('warm', '20 degC', { quantity: 'temperature' }),
];

const told = (entry: string, more: Partial<CellRecord>): string => {
  const found = computeSheet(sheetOf([...AROUND, cell('x', entry, more)]), library).byName('x');
  const { problem } = found?.outputs.value ?? {};
  return [...(found?.problems ?? []), ...(problem ? [problem] : [])].map(({ message }) => message).join('\n');
};

it.each<[entry: string, says: RegExp, more?: Partial<CellRecord>]>([
  // A spread of another dimension than what it stands behind.
  ['= a ± 2 K', /gives a length, and its spread is a temperature difference \(K\)/],
  ['= a ± 2 deg', /gives a length, and its spread is an angle/],
  ['= push ± 5 thou', /gives a force, and its spread is a length/],
  ['= tilt ± 0.1 mm', /gives an angle, and its spread is a length/],
  ['= share ± 1 deg', /gives a plain number, and its spread is an angle/],
  ['= a', /gives a length, and its spread is a temperature difference/, { tolerance: '± 2 K' }],
  ['= push', /gives a force, and its spread is a length/, { limits: { lower: '= push ± 5 thou' } }],
  ['= a', /spread ± 2 K is a temperature difference/, { limits: { lower: '1 mm ± 2 K' } }],
  ['= a', /spread ± 2 deg is an angle/, { limits: { upper: '11 mm ± 2 deg' } }],
  ['= 5 N.m', /spread ± 1 J is an energy/, { quantity: 'torque', limits: { lower: '4 N.m ± 1 J' } }],
  [
    '= 1000 rpm',
    /spread ± 1 rad\/s is an angle in a time/,
    { quantity: 'rotational speed', limits: { lower: '900 rpm ± 1 rad/s' } },
  ],
  // Degrees or radians.
  ['= 5', /degrees or radians\?/, { quantity: 'angle' }],
  ['= 2 * 5', /degrees or radians\?/, { quantity: 'angle' }],
  ['= tilt + 5', /`5` beside `tilt`.*degrees or radians\?/],
  ['= MAX(tilt; 5)', /degrees or radians\?/],
  ['= IF(tilt > 5; 1 mm; 2 mm)', /degrees or radians\?/],
  ['= share', /is an angle, but the formula gives a plain number/, { quantity: 'angle' }],
  ['= tilt + share', /`tilt` is an angle, `share` is a plain number: they cannot be added/],
  ['= 30 deg - 5 %', /one cannot be taken from the other/],
  ['= IF(share > 0; 5; 10)', /`5` has no unit.*degrees or radians\?/, { quantity: 'angle' }],
  ['= MAX(5; 10)', /degrees or radians\?/, { quantity: 'angle' }],
  ['= SIN(share)', /SIN needs an angle; `share` is a plain number/, { quantity: 'number' }],
  ['= COS(share * 2 + 1)', /COS needs an angle/, { quantity: 'number' }],
  ['= TAN(5 %)', /TAN needs an angle/, { quantity: 'number' }],
  ['= DEGREES(5)', /DEGREES needs an angle; .5. has no unit/, { quantity: 'number' }],
  ['= RADIANS(tilt)', /is an angle already/, { quantity: 'angle' }],
  ['5 %', /5 % is a plain number, and an angle is wanted here/, { quantity: 'angle' }],
  ['= tilt', /5 % is a plain number, and an angle/, { quantity: 'angle', limits: { upper: '5 %' } }],
  // Joule and newton metre.
  ['5 J', /is 5 N\.m meant\?/, { quantity: 'torque' }],
  ['5 N.m', /is 5 J meant\?/, { quantity: 'energy' }],
  ['= 5 J', /is a torque, but the formula gives an energy/, { quantity: 'torque' }],
  ['= 5 J + 5 N.m', /they cannot be added; write a torque in N\.m and an energy in J/],
  // Turns and angles.
  ['= 1000 rpm + 5 rad/s', /counts turns/],
  // A share of what has none.
  ['20 degC ± 10 %', /temperature on a scale says nothing/, { quantity: 'temperature' }],
  ['20 degC', /temperature on a scale says nothing/, { quantity: 'temperature', tolerance: '± 10 %' }],
  ['= warm ± 10 %', /temperature on a scale says nothing/],
  ['0 ± 10 %', /A share of 0 is nothing/, { quantity: 'number' }],
  ['0 mm ± 10 %', /A share of 0 is nothing/, { quantity: 'length', role: 'measured' }],
  ['= a - a ± 10 %', /A share of 0 is nothing/],
  // A quotient that reads as a power.
  ['= (a-b)^2/1 mm', /write \^2 \/ \(1 mm\)/],
])('%s is refused or asked about: %s', (entry, says, more = {}) => {
  expect(told(entry, more)).toMatch(says);
});

it.each<[entry: string, more?: Partial<CellRecord>]>([
  ['= a ± 5 thou'],
  ['= a ± 5 %'],
  ['= tilt ± 1 deg'],
  ['= tilt * 2', { quantity: 'angle' }],
  ['= ATAN(0.5) + 1 deg', { quantity: 'angle' }],
  ['= TAN(tilt) - tilt'],
  ['= SIN(a / (b + a))'],
  ['= SIN(share * 1 deg)'],
  ['= RADIANS(30)', { quantity: 'angle' }],
  ['= DEGREES(tilt)', { quantity: 'number' }],
  ['= share * 1 rad + tilt'],
  ['= share + 5 %'],
  ['= PI() / 2 - tilt'],
  ['= push * a', { quantity: 'torque' }],
  ['= push * a', { quantity: 'energy' }],
  ['= 1000 rpm + 5 Hz'],
  ['= 5 rad/s / (2 * PI())', { quantity: 'rotational speed' }],
  ['= warm ± 2 K'],
  ['20 K ± 10 %', { quantity: 'temperature difference' }],
  ['= (a-b)^2 / (1 mm)'],
  ['= a^2/3'],
])('%s is taken as it is', (entry, more = {}) => {
  expect(told(entry, more)).toBe('');
});

it('a unit is no name, and one name is no two cells', () => {
  const named = computeSheet(sheetOf([cell('mm', '5 mm'), cell('s', '5 mm')]), library);
  expect(named.byName('mm')?.problems[0]?.message).toMatch(/is a unit, so it cannot be a name/);
  expect(named.byName('s')?.problems[0]?.message).toMatch(/is a unit, so it cannot be a name/);
  const twice = [cell('q', '5 mm'), { ...cell('r', '6 mm'), name: 'q' }, cell('z', '= q + 1 mm')];
  const found = computeSheet(sheetOf(twice), library).byName('z');
  expect(found?.outputs.value?.planned).toBeUndefined();
  expect(found?.problems[0]?.message).toMatch(/2 cells are called `q`: which is meant\?/);
});
