import { describe, expect, it } from 'vitest';
import type { TradeFunction } from '../../cells/record/cell.ts';
import { dimension } from '../../shared/dimension.ts';
import { problem } from '../../shared/problem.ts';
import { quantityKind } from '../../shared/quantities/quantities.ts';
import { checkExpr, describeType } from '../../src/language/compile/check.ts';
import type { Scope } from '../../src/language/syntax/syntax.ts';
import { exprOf } from './context.ts';

const KINDS: Readonly<Record<string, string>> = {
  bore: 'length',
  shaft: 'length',
  room: 'temperature',
  hot: 'temperature',
  rise: 'temperature difference',
  alpha: 'expansion coefficient',
  force: 'force',
  n: 'number',
  lean: 'angle',
};

const scope: Scope = {
  typeOf: ({ name, output, from, to }) => {
    if (name === 'new') return { kind: 'quantity' };
    if (name === 'material') return { kind: 'text' };
    const kind = quantityKind(KINDS[name] ?? '');
    if (!kind || output) return problem('unknown-name', `There is no cell named \`${name}\`.`, { from, to });
    return { kind: 'quantity', dimension: kind.dimension, ...(kind.point ? { point: true } : {}) };
  },
  isBlank: (name) => (name === 'empty' ? true : name === 'full' ? false : undefined),
};

const trade: TradeFunction[] = [
  {
    name: 'YIELD_AT',
    purpose: 'yield stress of a material at a temperature',
    takes: [
      { name: 'material', text: true },
      { name: 'temperature', quantity: 'temperature' },
    ],
    gives: 'pressure',
    compute: () => 1,
    source: 'made up for this test',
  },
];

const check = (formula: string) => checkExpr(exprOf(formula), scope, trade);
const typeOf = (formula: string) => {
  const { type, problems } = check(formula);
  expect(problems).toEqual([]);
  return describeType(type);
};
const faultOf = (formula: string) => check(formula).problems.map((p) => p.message);

describe('what a formula is', () => {
  it.each([
    ['=bore - shaft', 'a length'],
    ['=bore * shaft', 'an area'],
    ['=bore / shaft', 'a plain number'],
    ['=force / (bore * shaft)', 'a pressure'],
    ['=alpha * rise * bore', 'a length'],
    ['=alpha * (hot - room) * bore', 'a length'],
    ['=hot - room', 'a temperature difference'],
    ['=room + rise', 'a temperature'],
    ['=rise + room', 'a temperature'],
    ['=room - rise', 'a temperature'],
    ['=room - 20 degC', 'a temperature difference'],
    ['=MAX(room; hot)', 'a temperature'],
    ['=AVERAGE(room; hot)', 'a temperature'],
    ['=IF(hot > room; hot; room)', 'a temperature'],
    ['=bore > shaft', 'true or false'],
    ['=AND(bore > shaft; n > 1)', 'true or false'],
    ['=SQRT(bore^2 - shaft^2)', 'a length'],
    ['=bore^(1/2) * shaft^0.5', 'a length'],
    ['=SUMSQ(bore; shaft)', 'an area'],
    ['=MAX(0; bore - shaft)', 'a length'],
    ['=bore > 0', 'true or false'],
    ['=-bore + 0', 'a length'],
    ['=SIN(lean) + COS(30 deg)', 'a plain number'],
    ['=ATAN2(bore; shaft)', 'an angle'],
    ['=MROUND(bore; 0.0005 in)', 'a length'],
    ['=2^n', 'a plain number'],
    ['=new', 'not known yet'],
    ['=new + bore', 'a length'],
    ['=new * bore', 'not known yet'],
    ['=new + room', 'not known yet'],
    ['=YIELD_AT(material; 100 degC)', 'a pressure'],
    ['=YIELD_AT("bronze"; room)', 'a pressure'],
  ])('%s is %s', (formula, type) => expect(typeOf(formula)).toBe(type));
});

describe('two sides that do not go together are both named', () => {
  it.each([
    ['=bore + 20 degC', '`bore` is a length, `20 degC` is a temperature: they cannot be added.'],
    ['=bore - 0.002', '`bore` is a length, `0.002` is a plain number: one cannot be taken from the other.'],
    ['=bore > force', '`bore` is a length, `force` is a force: they cannot be compared.'],
    ['=MAX(bore; n)', '`bore` is a length, `n` is a plain number: they cannot be taken together.'],
    [
      '=room + hot',
      '`room` is a temperature, `hot` is a temperature: two temperatures on a scale cannot be added, only a difference to one of them.',
    ],
    [
      '=rise - room',
      '`rise` is a temperature difference, `room` is a temperature: a temperature on a scale cannot be taken from a difference.',
    ],
    ['=room > rise', '`room` is a temperature, `rise` is a temperature difference: they cannot be compared.'],
    [
      '=2 * room',
      '"*" cannot take `room`, a temperature on a scale: take a difference first, such as room - 20 degC.',
    ],
    [
      '=SUM(room; hot)',
      'SUM cannot take `room`, a temperature on a scale: take a difference first, such as room - 20 degC.',
    ],
    [
      '=MAX(room; 0)',
      '`room` is a temperature, `0` is a plain number: they cannot be taken together; write the scale, such as 0 degC.',
    ],
    ['=IF(bore; 1; 2)', 'IF needs a comparison, such as a > b; `bore` is a length.'],
    [
      '=IF(n > 1; bore; room)',
      '`bore` is a length, `room` is a temperature: IF must give one kind of value either way.',
    ],
    ['=(bore > shaft) + 1', '"+" needs a number; `(bore > shaft)` is true or false.'],
    ['=bore^n', '`bore` is a length: its power must be a number written out, not `n`.'],
    [
      '=bore^0.123',
      '`bore` is a length: it can be raised to whole powers, halves, thirds, quarters and fifths, not to `0.123`.',
    ],
    [
      '=2^bore',
      'A power needs a plain number; `bore` is a length: divide it by a quantity of its kind first.',
    ],
    [
      '=EXP(bore)',
      'EXP needs a plain number; `bore` is a length: divide it by a quantity of its kind first.',
    ],
    [
      '=ROUND(bore; 3)',
      'ROUND counts decimal places, and `bore` is a length, which has none without a unit: give a step instead, such as MROUND(bore; 0.001 in).',
    ],
    ['=FLOOR(bore)', '`bore` is a length: give FLOOR a step, such as FLOOR(bore; 0.001 in).'],
    [
      '=SIN(bore)',
      'SIN needs a plain number; `bore` is a length: divide it by a quantity of its kind first.',
    ],
    [
      '=YIELD_AT(material; rise)',
      'YIELD_AT, argument temperature, needs a temperature; `rise` is a temperature difference.',
    ],
    [
      '=YIELD_AT(bore; room)',
      'YIELD_AT, argument material, needs a text in quotes or a choice; `bore` is a length.',
    ],
    ['=ABS()', 'ABS(value) takes 1 argument; here it has 0.'],
    ['=IF(n > 1; 2)', 'IF(comparison; then; otherwise) takes 3 arguments; here it has 2.'],
    ['=ROOT(2)', 'There is no function ROOT.'],
    ['=SQR(2)', 'There is no function SQR. Is SQRT meant?'],
    ['=gone + 1', 'There is no cell named `gone`.'],
  ])('%s', (formula, message) => expect(faultOf(formula)).toEqual([message]));

  it('each fault is said once, with its span', () => {
    const { problems } = check('=(bore + room) * (gone - 2)');
    expect(problems.map(({ kind, from, to }) => [kind, from, to])).toEqual([
      ['dimension', 2, 13],
      ['unknown-name', 18, 22],
    ]);
  });
});

describe('a blank input settles its branch', () => {
  it('the branch not needed is not looked at', () => {
    expect(typeOf('=IF(ISBLANK(empty); bore; gone)')).toBe('a length');
    expect(typeOf('=IF(NOT(ISBLANK(full)); bore; gone + room)')).toBe('a length');
    expect(typeOf('=IF(OR(ISBLANK(full); ISBLANK(empty)); bore; gone)')).toBe('a length');
    expect(faultOf('=IF(ISBLANK(other); bore; gone)')).toEqual(['There is no cell named `gone`.']);
  });
  it('needs a name', () =>
    expect(faultOf('=ISBLANK(1 + 2)')).toEqual([
      'ISBLANK asks whether an input was left blank: it needs a name, not 1 + 2.',
    ]));
});

it('a dimension keeps rational exponents exactly', () => {
  const { type } = check('=(bore^(1/3))^3 * (force^0.25)^4');
  expect(type).toEqual({ kind: 'quantity', dimension: dimension(2, 1, -2) });
});
