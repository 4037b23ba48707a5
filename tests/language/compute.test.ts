import { HyperFormula } from 'hyperformula';
import { beforeAll, describe, expect, it } from 'vitest';
import { engineFunctions } from '../../src/engine/network/functions.ts';
import { registerFunctions } from '../../src/engine/network/plugin.ts';
import { compileClosure } from '../../src/language/compile/closure.ts';
import { toEngine } from '../../src/language/compile/compile.ts';
import { evaluate } from '../../src/language/compile/evaluate.ts';
import { catalogueOf } from '../../src/language/functions/functions.ts';
import type { Expr, Reference } from '../../src/language/syntax/syntax.ts';
import { exprOf } from './context.ts';

const functions = catalogueOf([]);
const values: Readonly<Record<string, number>> = { a: 0.0571881, b: -3.7, c: 12, d: 1e-9, z: 0 };
const names = Object.keys(values);
const lookup = ({ name }: Reference) => values[name] ?? Number.NaN;
const address = ({ name }: Reference) => `${String.fromCharCode(65 + names.indexOf(name))}1`;

let grid: HyperFormula;
beforeAll(() => {
  registerFunctions(engineFunctions([]));
  grid = HyperFormula.buildFromArray([Object.values(values)], {
    licenseKey: 'gpl-v3',
    smartRounding: false,
    caseSensitive: true,
    useWildcards: false,
  });
});

const byGrid = (expr: Expr): unknown => {
  const cell = { sheet: 0, row: 1, col: 0 };
  grid.setCellContents(cell, [[`=${toEngine(expr, address)}`]]);
  return grid.getCellValue(cell);
};
const byTree = (expr: Expr) => evaluate(expr, lookup, functions);
const byBlock = (expr: Expr) => {
  const blocks = names.map((name) => Float64Array.of(1, values[name]!, 2));
  return compileClosure(expr, ({ name }) => names.indexOf(name), functions)(blocks, 3)[1];
};

describe('grid, tree and blocks compute the same doubles', () => {
  it.each([
    ['=-2^2', -4],
    ['=2^3^2', 512],
    ['=(-2)^2', 4],
    ['=2^-1', 0.5],
    ['=-a^2', -(0.0571881 ** 2)],
    ['=a - b - c', 0.0571881 - -3.7 - 12],
    ['=a - (b - c)', 0.0571881 - (-3.7 - 12)],
    ['=c / 4 / 3', 1],
    ['=c / (4 / 3)', 12 / (4 / 3)],
    ['=c * 2 / 3 * 4', ((12 * 2) / 3) * 4],
    ['=a*-b', 0.0571881 * 3.7],
    ['=-(-b)', -3.7],
    ['=0.1 + 0.2 - 0.3', 0.1 + 0.2 - 0.3],
    ['=1e-7 * 1e21', 1e-7 * 1e21],
    ['=11.7e-6 * c', 11.7e-6 * 12],
    ['=PI()', Math.PI],
    ['=SQRT(a)', Math.sqrt(0.0571881)],
    ['=MAX(a; b; c; d)', 12],
    ['=MIN(a; -c)', -12],
    ['=SUM(0.1; 0.2; 0.3)', 0.1 + 0.2 + 0.3],
    ['=AVERAGE(a; b)', (0.0571881 - 3.7) / 2],
    ['=MEDIAN(3; 1; 2; 10)', 2.5],
    ['=IF(a < b; 1; 2)', 2],
    ['=IF(AND(a > b; NOT(c = 3)); c; a / z)', 12],
    ['=IF(OR(c > 1; b > 1); 1; 2)', 1],
    ['=z * -1', 0],
    ['=IF(0.1 + 0.2 = 0.3; 1; 2)', 1],
    ['=IF(c <> 12; 1; 2)', 2],
    ['=ATAN2(1; 2)', Math.atan2(2, 1)],
    ['=MOD(-7; 3)', 2],
    ['=MOD(7; -3)', -2],
    ['=27/64', 0.421875],
    ['=3*27/64 in', 3 * 0.010715625],
    ['=1 in = 25.4 mm', true],
    ['=20 degC - 68 degF', 0],
    ['=SIN(30 deg)', 0.5],
  ])('%s', (formula, expected) => {
    const expr = exprOf(formula);
    expect(byTree(expr)).toBe(expected);
    expect(byGrid(expr)).toBe(expected);
    expect(byBlock(expr)).toBe(Number(expected));
  });

  it('errors are values everywhere', () => {
    for (const formula of [
      '=IF(OR(c > 1; a / z > 1); 1; 2)',
      '=c / z',
      '=SQRT(b)',
      '=LN(z)',
      '=1e300 * 1e300',
      '=b ^ 0.5',
      '=z ^ -1',
      '=MOD(c; z)',
      '=ACOS(2)',
    ]) {
      const expr = exprOf(formula);
      expect(byTree(expr), formula).toMatchObject({ kind: 'arithmetic' });
      expect(byGrid(expr), formula).toBeTypeOf('object');
      expect(byBlock(expr), formula).toBeNaN();
    }
  });

  it('a division by zero names the divisor', () => {
    expect(byTree(exprOf('=c / (z * 2)'))).toMatchObject({
      message: 'Division by zero: `(z * 2)` is 0.',
      from: 1,
      to: 12,
    });
  });

  it('a problem of an input comes through, the first from the left', () => {
    const expr = exprOf('=IF(c > 1; x + y; 0)');
    const found = evaluate(
      expr,
      ({ name }) => (name === 'c' ? 2 : { kind: 'blank', message: name }),
      functions,
    );
    expect(found).toEqual({ kind: 'blank', message: 'x' });
  });

  it('an unknown input gives an unknown result, not a branch', () => {
    for (const formula of ['=IF(u > 1; 2; 3)', '=MAX(u; 1)', '=NOT(u > 1)', '=u / z', '=ROUND(u; 2)']) {
      expect(evaluate(exprOf(formula), lookup, functions), formula).toBeNaN();
    }
  });
});

describe('rounding, after OASIS OpenFormula 1.3 part 4, 6.17', () => {
  const value = (formula: string) => byTree(exprOf(formula));
  it.each([
    ['=ROUND(2.675; 2)', 2.68],
    ['=ROUND(1.005; 2)', 1.01],
    ['=ROUND(-2.5; 0)', -3],
    ['=ROUND(1234.5; -2)', 1200],
    ['=ROUND(1e-9; 3)', 0],
    ['=ROUNDUP(2.001; 2)', 2.01],
    ['=ROUNDUP(-2.001; 2)', -2.01],
    ['=ROUNDDOWN(-2.009; 2)', -2],
    ['=INT(-2.5)', -3],
    ['=FLOOR(0.3; 0.1)', 3 * 0.1],
    ['=FLOOR(-2.5; 1)', -3],
    ['=CEILING(2.1; 0.5)', 2.5],
    ['=CEILING(2)', 2],
    ['=MROUND(7; 2)', 8],
    ['=FLOOR(57.1881 mm; 0.0005 in) = 2.2515 in', true],
  ])('%s', (formula, expected) => expect(value(formula)).toBe(expected));
});

it('what the grid gets is in our precedence, not its own', () => {
  const text = (formula: string) =>
    toEngine(exprOf(formula), ({ name, output }) => (output ? `${name}!${output}` : name));
  expect(text('=-2^2')).toBe('-(FW_POWER(2,2))');
  expect(text('=a - b + c * d')).toBe('a-b+(c*d)');
  expect(text('=a - (b - c)')).toBe('a-(b-c)');
  expect(text('=MAX(a; b) >= 1e21')).toBe('FW_COMPARE(">=",FW_MAX(a,b),1e+21,0)');
  expect(text('=press.close_in / 2 in')).toBe('press!close_in/0.0508');
});

it('blank inputs are settled before the grid', () => {
  const text = (formula: string, blank: boolean) =>
    toEngine(
      exprOf(formula),
      ({ name }) => name,
      () => blank,
    );
  const formula = '=IF(AND(ISBLANK(x); TRUE()); a; x * 2)';
  expect(text(formula, true)).toBe('a');
  expect(text(formula, false)).toBe('x*2');
  expect(text('=ISBLANK(x)', true)).toBe('TRUE()');
});

it('blocks of another length reuse the closure', () => {
  const run = compileClosure(exprOf('=a * 2 + 1'), () => 0, functions);
  expect([...run([Float64Array.of(1, 2, 3)], 3)]).toEqual([3, 5, 7]);
  expect([...run([Float64Array.of(4)], 1).subarray(0, 1)]).toEqual([9]);
  expect([...run([Float64Array.of(1, 2, 3, 4)], 4)]).toEqual([3, 5, 7, 9]);
});

it('a chain of 500 terms and 64 levels of parentheses go through the grid', () => {
  expect(byGrid(exprOf(`=${Array(500).fill('c').join('+')}`))).toBe(6000);
  expect(byGrid(exprOf(`=${'('.repeat(63)}c${')'.repeat(63)}`))).toBe(12);
  expect(byGrid(exprOf(`=${'(1+'.repeat(63)}c${')'.repeat(63)}`))).toBe(75);
  expect(byGrid(exprOf(`=${'SQRT('.repeat(63)}c${')'.repeat(63)}`))).toBeGreaterThan(0);
});

describe('what differs by rounding alone is equal, in grid, tree and blocks', () => {
  it.each([
    ['=IF(10 mm - 9.9 mm >= 0.1 mm; 1; 2)', 1],
    ['=IF(10 mm - 9.9 mm > 0.1 mm; 1; 2)', 2],
    ['=IF(10 mm - 9.9 mm <> 0.1 mm; 1; 2)', 2],
    ['=IF(0.1 mm <= 10 mm - 9.9 mm; 1; 2)', 1],
    ['=INT((10 mm - 9.9 mm) / 0.1 mm)', 1],
    ['=MOD(10 mm - 9.7 mm; 0.1 mm)', 0],
    ['=MOD(0.3; 0.1)', 0],
    ['=ROUNDUP(0.07 * 100; 0)', 7],
    ['=ROUNDDOWN(0.29 * 100; 0)', 29],
    ['=ROUND((1000.5 - 1000) * 1; 0)', 1],
    ['=CEILING((10 mm - 9.9 mm); 0.1 mm) / 0.1 mm', 1],
    ['=FLOOR((10 mm - 9.9 mm) * 3; 0.1 mm) / 0.1 mm', (0.0001 * 3) / 0.0001],
    ['=INT(0.999999)', 0],
    ['=IF(1 < 1.000001; 1; 2)', 1],
    ['=IF((10 - 9.9) * 2 = 0.2; 1; 2)', 1],
    ['=IF((10 - 9.9) / (5 - 4.9) = 1; 1; 2)', 1],
  ])('%s', (formula, expected) => {
    const expr = exprOf(formula);
    expect(byTree(expr)).toBeCloseTo(expected, 12);
    expect(byGrid(expr)).toBe(byTree(expr));
    expect(byBlock(expr)).toBe(Number(byTree(expr)));
  });
});
