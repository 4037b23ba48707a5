import { describe, expect, test } from 'vitest';
import { escapeTex, texSymbol, toTex } from '../../src/language/display/tex.ts';
import { exprOf } from './context.ts';

const set = (formula: string): string => toTex(exprOf(formula));

describe('a formula set as TeX', () => {
  test.each([
    ['=a + b', 'a + b'],
    ['=a - (b - c)', 'a - \\left(b - c\\right)'],
    ['=(a + b) / 2', '\\frac{a + b}{2}'],
    ['=a / b / c', '\\frac{\\frac{a}{b}}{c}'],
    ['=2 * (a + b)', '2 \\cdot \\left(a + b\\right)'],
    ['=-2 * a', '-2 \\cdot a'],
    ['=bush_od^2', '{\\mathrm{bush}_{\\text{od}}}^{2}'],
    ['=(a + b)^2', '{\\left(a + b\\right)}^{2}'],
    ['=a^0.5', '\\sqrt{a}'],
    ['=SQRT(a / b)', '\\sqrt{\\frac{a}{b}}'],
    ['=ABS(a)', '\\left|a\\right|'],
    ['=PI() * alpha_b', '\\pi \\cdot \\alpha_{\\text{b}}'],
    ['=close_in_per_side', '\\mathrm{close}_{\\text{in per side}}'],
    ['=press.close_in', '\\mathrm{press}.\\mathrm{close}_{\\text{in}}'],
    ['=2 1/4 in', '2\\frac{1}{4}\\,\\text{in}'],
    ['=1.2e-5', '1.2 \\times 10^{-5}'],
    ['=MAX(a; 0 m)', '\\max\\left(a;\\ 0\\,\\text{m}\\right)'],
    ['=ASIN(a / b)', '\\arcsin\\left(\\frac{a}{b}\\right)'],
    ['=a <> b', 'a \\ne b'],
  ])('%s', (formula, expected) => expect(set(formula)).toBe(expected));

  test('branches stand in one list, and words join what is asked', () => {
    expect(set('=IF(AND(a > b; OR(ISBLANK(c); NOT(a > c))); a; IF(a < c; b; c))')).toBe(
      '\\begin{cases} a & \\text{where } a > b \\text{ and } \\left(c\\text{ is blank} \\text{ or } ' +
        '\\text{not }\\left(a > c\\right)\\right) \\\\ b & \\text{where } a < c \\\\ c & \\text{otherwise} \\end{cases}',
    );
  });

  test('nothing gets out of its text', () => {
    expect(escapeTex('50% of a_b {x} \\end #1 & $5')).toBe(
      '50\\% of a\\_b \\{x\\} \\backslash end \\#1 \\& \\$5',
    );
    expect(texSymbol({ name: '{c_1}' })).toBe('c_{\\text{1}}');
  });
});
