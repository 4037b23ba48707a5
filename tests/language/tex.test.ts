import { describe, expect, test } from 'vitest';
import { escapeTex, texName, toTex } from '../../src/language/display/tex.ts';
import { exprOf } from './context.ts';

const set = (formula: string): string => toTex(exprOf(formula));

describe('a formula set as TeX', () => {
  test.each([
    ['=a + b', '\\mathrm{a} + \\mathrm{b}'],
    ['=a - (b - c)', '\\mathrm{a} - \\left(\\mathrm{b} - \\mathrm{c}\\right)'],
    ['=(a + b) / 2', '\\frac{\\mathrm{a} + \\mathrm{b}}{2}'],
    ['=a / b / c', '\\frac{\\frac{\\mathrm{a}}{\\mathrm{b}}}{\\mathrm{c}}'],
    ['=2 * (a + b)', '2 \\cdot \\left(\\mathrm{a} + \\mathrm{b}\\right)'],
    ['=-2 * a', '-2 \\cdot \\mathrm{a}'],
    ['=bush_od^2', '{\\mathrm{bush\\_od}}^{2}'],
    ['=(a + b)^2', '{\\left(\\mathrm{a} + \\mathrm{b}\\right)}^{2}'],
    ['=a^0.5', '\\sqrt{\\mathrm{a}}'],
    ['=SQRT(a / b)', '\\sqrt{\\frac{\\mathrm{a}}{\\mathrm{b}}}'],
    ['=ABS(a)', '\\left|\\mathrm{a}\\right|'],
    ['=PI() * alpha_b', '\\pi \\cdot \\mathrm{alpha\\_b}'],
    ['=close_in_per_side', '\\mathrm{close\\_in\\_per\\_side}'],
    ['=press.close_in', '\\mathrm{press.close\\_in}'],
    ['=2 1/4 in', '2\\frac{1}{4}\\,\\text{in}'],
    ['=1.2e-5', '1.2 \\times 10^{-5}'],
    ['=MAX(a; 0 m)', '\\max\\left(\\mathrm{a};\\ 0\\,\\text{m}\\right)'],
    ['=ASIN(a / b)', '\\arcsin\\left(\\frac{\\mathrm{a}}{\\mathrm{b}}\\right)'],
    ['=a <> b', '\\mathrm{a} \\ne \\mathrm{b}'],
  ])('%s', (formula, expected) => expect(set(formula)).toBe(expected));

  test('branches stand in one table, when and then, and words join what is asked', () => {
    expect(set('=IF(AND(a > b; OR(ISBLANK(c); NOT(a > c))); a; IF(a < c; b; c))')).toBe(
      '\\begin{array}{l|l} \\text{when} & \\text{then} \\\\ \\hline ' +
        '\\mathrm{a} > \\mathrm{b} \\text{ and } \\left(\\mathrm{c}\\text{ is blank} \\text{ or } ' +
        '\\text{not }\\left(\\mathrm{a} > \\mathrm{c}\\right)\\right) & \\mathrm{a} \\\\ ' +
        '\\mathrm{a} < \\mathrm{c} & \\mathrm{b} \\\\ \\text{in any other case} & \\mathrm{c} \\end{array}',
    );
  });

  test('nothing gets out of its text', () => {
    expect(escapeTex('50% of a_b {x} \\end #1 & $5')).toBe(
      '50\\% of a\\_b \\{x\\} \\backslash end \\#1 \\& \\$5',
    );
    expect(texName({ name: '{c_1}' })).toBe('\\mathrm{c\\_1}');
  });
});
