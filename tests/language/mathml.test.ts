import { describe, expect, it } from 'vitest';
import { toMathML, toMathRow } from '../../src/language/display/mathml.ts';
import { exprOf } from './context.ts';

const set = (formula: string) => toMathRow(exprOf(formula));

describe('a formula set as mathematics (MathML Core)', () => {
  it.each([
    ['=a + b', '<mrow><mi>a</mi><mo>+</mo><mi>b</mi></mrow>'],
    ['=a - 2 * b', '<mrow><mi>a</mi><mo>−</mo><mrow><mn>2</mn><mo>·</mo><mi>b</mi></mrow></mrow>'],
    ['=(a + b) / 2', '<mfrac><mrow><mi>a</mi><mo>+</mo><mi>b</mi></mrow><mn>2</mn></mfrac>'],
    [
      '=(a + b) * c',
      '<mrow><mrow><mo>(</mo><mrow><mi>a</mi><mo>+</mo><mi>b</mi></mrow><mo>)</mo></mrow><mo>·</mo><mi>c</mi></mrow>',
    ],
    ['=a^2', '<msup><mi>a</mi><mn>2</mn></msup>'],
    [
      '=(a + b)^2',
      '<msup><mrow><mo>(</mo><mrow><mi>a</mi><mo>+</mo><mi>b</mi></mrow><mo>)</mo></mrow><mn>2</mn></msup>',
    ],
    ['=-2^2', '<mrow><mo form="prefix">−</mo><msup><mn>2</mn><mn>2</mn></msup></mrow>'],
    ['=SQRT(a)', '<msqrt><mi>a</mi></msqrt>'],
    ['=a^0.5', '<msqrt><mi>a</mi></msqrt>'],
    ['=PI()', '<mi>π</mi>'],
    ['=ABS(a)', '<mrow><mo>|</mo><mi>a</mi><mo>|</mo></mrow>'],
    ['=alpha_b', '<msub><mi>α</mi><mtext>b</mtext></msub>'],
    ['=bush_od', '<msub><mi mathvariant="normal">bush</mi><mtext>od</mtext></msub>'],
    [
      '=press.close_in',
      '<mrow><mi mathvariant="normal">press</mi><mo>.</mo><msub><mi mathvariant="normal">close</mi><mtext>in</mtext></msub></mrow>',
    ],
    [
      '=2 1/4 in',
      '<mrow><mn>2</mn><mfrac><mn>1</mn><mn>4</mn></mfrac><mspace width="0.17em"/><mtext>in</mtext></mrow>',
    ],
    ['=1.2e-5', '<mrow><mn>1.2</mn><mo>×</mo><msup><mn>10</mn><mn>−5</mn></msup></mrow>'],
    [
      '=MAX(a; b)',
      '<mrow><mi mathvariant="normal">max</mi><mo>(</mo><mi>a</mi><mo separator="true">;</mo><mi>b</mi><mo>)</mo></mrow>',
    ],
    ['=a <= b', '<mrow><mi>a</mi><mo>≤</mo><mi>b</mi></mrow>'],
  ])('%s', (formula, expected) => expect(set(formula)).toBe(expected));

  it('IF stands as two lines behind a brace', () => {
    expect(set('=IF(a > b; a; b)')).toMatch(/^<mrow><mo>{<\/mo><mtable.*<mtext>where <\/mtext>.*otherwise/);
  });

  it('with numbers put in, and those below zero fenced in', () => {
    const numbers = {
      number: ({ name }: { name: string }) =>
        name === 'a' ? '2.25 in' : name === 'b' ? '-0.5 in' : undefined,
    };
    expect(toMathRow(exprOf('=a + c'), numbers)).toContain(
      '<mn>2.25</mn><mspace width="0.17em"/><mtext>in</mtext>',
    );
    expect(toMathRow(exprOf('=2 * b'), numbers)).toContain(
      '<mo>(</mo><mrow><mo form="prefix">−</mo><mn>0.5</mn>',
    );
    expect(toMathRow(exprOf('=a^2'), numbers)).toMatch(/^<msup><mrow><mo>\(<\/mo>/);
  });

  it('labels take the place of names and nothing gets out of its element', () => {
    const hostile = '<img src=x onerror="alert(1)">&';
    const text = toMathML(exprOf('=a + IF(a = "</math><b>"; 1; b)'), {
      label: () => hostile,
      number: () => undefined,
    });
    expect(text).not.toMatch(/<(?!\/?m[a-z]+[ >/])/);
    expect(text).toContain('&lt;img src=x onerror=&quot;alert(1)&quot;&gt;&amp;');
    expect(toMathML(exprOf('=a'), { number: () => '<b>1</b>' })).not.toContain('<b>');
    expect(toMathML(exprOf('=a'), { number: () => '1 <b>' })).not.toContain('<b>');
  });
});
