import { describe, expect, test } from 'vitest';
import { callAt } from '../../src/page/entry/call.ts';
import { argumentOf, signaturesOf } from '../../src/page/entry/signature.ts';

const at = (text: string) => {
  const place = text.indexOf('^^');
  const found = callAt(text.replace('^^', ''), place);
  return found && `${found.name} ${found.argument}`;
};

describe('the function around the caret', () => {
  test.each([
    ['= ROUND(^^', 'ROUND 0'],
    ['= ROUND(bore; ^^)', 'ROUND 1'],
    ['= ROUND(MIN(a; b; c^^); 2)', 'MIN 2'],
    ['= ROUND(MIN(a; b); ^^)', 'ROUND 1'],
    ['= ROUND((a + ^^b); 2)', 'ROUND 0'],
    // An inch mark is no quote, and a text may hold what is else a sign.
    ['= MAX(2 1/4"; ^^', 'MAX 1'],
    ['= INCHHOLEUPPER(bore; "a;b(^^"', 'INCHHOLEUPPER 1'],
  ])('%s', (text, wanted) => {
    expect(at(text)).toBe(wanted);
  });

  test.each(['= ROUND^^(a; 2)', '= ROUND(a; 2)^^', '= (a + ^^b)', '= a^^'])('%s is in none', (text) => {
    expect(at(text)).toBeUndefined();
  });
});

test('a list takes its argument again and again, another function no more than it has', () => {
  const known = signaturesOf([]);
  expect(argumentOf(known.get('MIN')!, 4)).toBe(0);
  expect(argumentOf(known.get('ROUND')!, 1)).toBe(1);
  expect(argumentOf(known.get('ROUND')!, 2)).toBeUndefined();
  expect(argumentOf(known.get('PI')!, 0)).toBeUndefined();
});
