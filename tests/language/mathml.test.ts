import { describe, expect, it } from 'vitest';
import { toMathML, toMathRow } from '../../src/language/display/mathml.ts';
import { exprOf } from './context.ts';

const set = (formula: string) => toMathRow(exprOf(formula));

describe('a formula set as mathematics (MathML Core)', () => {
  it.each([
    ['=a + b', '<mrow><mi mathvariant="normal">a</mi><mo>+</mo><mi mathvariant="normal">b</mi></mrow>'],
    [
      '=a - 2 * b',
      '<mrow><mi mathvariant="normal">a</mi><mo>−</mo><mrow><mn>2</mn><mo>·</mo><mi mathvariant="normal">b</mi></mrow></mrow>',
    ],
    [
      '=(a + b) / 2',
      '<mfrac><mrow><mi mathvariant="normal">a</mi><mo>+</mo><mi mathvariant="normal">b</mi></mrow><mn>2</mn></mfrac>',
    ],
    [
      '=(a + b) * c',
      '<mrow><mrow><mo>(</mo><mrow><mi mathvariant="normal">a</mi><mo>+</mo><mi mathvariant="normal">b</mi></mrow><mo>)</mo></mrow><mo>·</mo><mi mathvariant="normal">c</mi></mrow>',
    ],
    ['=a^2', '<msup><mi mathvariant="normal">a</mi><mn>2</mn></msup>'],
    [
      '=(a + b)^2',
      '<msup><mrow><mo>(</mo><mrow><mi mathvariant="normal">a</mi><mo>+</mo><mi mathvariant="normal">b</mi></mrow><mo>)</mo></mrow><mn>2</mn></msup>',
    ],
    ['=-2^2', '<mrow><mo form="prefix">−</mo><msup><mn>2</mn><mn>2</mn></msup></mrow>'],
    ['=SQRT(a)', '<msqrt><mi mathvariant="normal">a</mi></msqrt>'],
    ['=a^0.5', '<msqrt><mi mathvariant="normal">a</mi></msqrt>'],
    ['=PI()', '<mi>π</mi>'],
    ['=ABS(a)', '<mrow><mo>|</mo><mi mathvariant="normal">a</mi><mo>|</mo></mrow>'],
    ['=alpha_b', '<mi mathvariant="normal">alpha_b</mi>'],
    ['=bush_od', '<mi mathvariant="normal">bush_od</mi>'],
    ['=press.close_in', '<mi mathvariant="normal">press.close_in</mi>'],
    [
      '=2 1/4 in',
      '<mrow><mn>2</mn><mfrac><mn>1</mn><mn>4</mn></mfrac><mspace width="0.17em"/><mtext>in</mtext></mrow>',
    ],
    ['=1.2e-5', '<mrow><mn>1.2</mn><mo>×</mo><msup><mn>10</mn><mn>−5</mn></msup></mrow>'],
    [
      '=MAX(a; b)',
      '<mrow><mi mathvariant="normal">max</mi><mo>(</mo><mi mathvariant="normal">a</mi><mo separator="true">;</mo><mi mathvariant="normal">b</mi><mo>)</mo></mrow>',
    ],
    ['=a <= b', '<mrow><mi mathvariant="normal">a</mi><mo>≤</mo><mi mathvariant="normal">b</mi></mrow>'],
  ])('%s', (formula, expected) => expect(set(formula)).toBe(expected));

  it('IF stands as a table, when and then, and goes on in the same table', () => {
    const cells = (text: string) =>
      [...text.matchAll(/<mtr>(.*?)<\/mtr>/g)].map((m) =>
        m[1]!.replaceAll('</mtd><mtd>', '|').replace(/<[^>]*>/g, ''),
      );
    const text = set('=IF(a > b; a; IF(ISBLANK(c); b; c))');
    expect(text).not.toContain('{');
    expect(text.match(/<mtable/g)).toHaveLength(1);
    expect(cells(text)).toEqual(['when|then', 'a&gt;b|a', 'cis blank|b', 'in any other case|c']);
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
