import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseEntry } from '../../src/language/parse.ts';
import { reading } from '../../src/language/values/reading.ts';
import { contextKey, plainForm } from '../../src/language/values/retyped.ts';
import { walk } from '../walk.ts';
import { at } from './context.ts';

const number = fc.tuple(fc.nat(999), fc.integer({ min: -1, max: 5 })).map(([whole, places]) => {
  return places < 0 ? `${whole}` : `${whole}.${'0'.repeat(places)}`;
});
const FITTING = ['mm', 'um', 'in', 'thou', 'ft', '"', 'mil', 'degC', 'degF', 'deg', '%', 'kN', ''];
const OTHER = ['ppm', 'K', 'rev/min', 'qq', 'ton', 'arcmin'];
const unit = fc.oneof({ weight: 5, arbitrary: fc.constantFrom(...FITTING) }, fc.constantFrom(...OTHER));
const gap = fc.constantFrom('', ' ', '\u00a0');
const sign = fc.constantFrom('±', ' ± ', ' ± ', ' +/- ', ' +-', ' +', ' -');
const end = fc.constantFrom('', '', '', ' ', ' tir', ' (k=2)');
const plain = fc
  .record({
    lead: fc.constantFrom('', '', '', ' ', '-', 'dia '),
    first: fc.tuple(number, gap, unit),
    spread: fc.option(fc.tuple(sign, number, gap, unit)),
    sameUnit: fc.boolean(),
    end,
  })
  .map(({ lead, first, spread, sameUnit, end: last }) => {
    const more = spread ? [...spread.slice(0, 3), sameUnit ? first[2] : spread[3]] : [];
    return [lead, ...first, ...more, last].join('');
  });

const withDigits = (text: string, digits: readonly number[]): string => {
  let i = 0;
  return text.replace(/\d/g, () => String(digits[i++ % digits.length]));
};

const place = fc.record({
  quantity: fc.constantFrom('', 'length', 'length', 'length', 'temperature', 'force', 'angle'),
  role: fc.constantFrom('given' as const, 'measured' as const, 'chosen' as const),
  length: fc.constantFrom('mm' as const, 'in' as const),
});

describe('a number typed anew in the place of another', () => {
  it('is read as if it had been the first', () => {
    let fresh = 0;
    let kept = 0;
    fc.assert(
      fc.property(
        plain,
        place,
        fc.array(fc.nat(9), { minLength: 16, maxLength: 16 }),
        (text, { quantity, role, length }, digits) => {
          const other = withDigits(text, digits);
          // A setting that nothing here asks for keeps this run's readings apart from those before.
          const within = (tenth: string) => at(quantity, { length, tenth: tenth as never }, { role });
          const first = within(`a${fresh}`);
          parseEntry(text, first);
          const again = parseEntry(other, first);
          const own = parseEntry(other, within(`b${fresh++}`));
          expect(again).toEqual(own);
          if (plainForm(reading(other, first), own.entry)) kept++;
        },
      ),
      { seed: 11, numRuns: walk(3500, 40_000) },
    );
    expect(kept).toBeGreaterThan(150);
  });

  it('is asked about where its whole ± says no unit, though the last was nought', () => {
    expect(parseEntry('2.25 in ± 0', at()).problems).toEqual([]);
    expect(parseEntry('2.25 in ± 5', at()).problems[0]).toMatchObject({ kind: 'ask' });
  });

  it('hangs on the kind of quantity, the role and the units of the sheet', () => {
    const keys = [
      at('length'),
      at('force'),
      at('length', { length: 'in' }, { role: 'measured' }),
      at('length', { length: 'mm' }),
      at('length', { length: 'mm', ton: 'tonne' }),
    ].map(contextKey);
    expect(new Set(keys).size).toBe(keys.length);
  });
});
