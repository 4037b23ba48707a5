import fc from 'fast-check';
import { expect, it } from 'vitest';
import { toDecimalComma } from '../../src/language/decimal.ts';
import { cellNameProblem, referencesIn, renameIn } from '../../src/language/names.ts';
import { NO_HANDBOOK, parseEntry, parseFormula, parseTolerance } from '../../src/language/parse.ts';
import { feed, mutated, nasty } from './inputs.ts';

const ENTRIES = [
  '2.2515 in',
  '2 1/4 in',
  '2-1/4',
  '27/64 in',
  '1 1/2 thou',
  '15 tenths',
  '38 mm',
  '#7',
  'F drill',
  '3/8-16 UNC-2B',
  'M8x1.25',
  "30 deg 15'",
  '4 tons',
  '68F',
  '20 under',
  '.003 TIR',
  '50H7/g6',
  '2.2510..2.2515 in',
  '2.2510 in +.0005 -.0000',
  'set 1.7500 in, +14 div of .0001 in',
  '2.2512; 2.2514 | 2.2513; 2.2515 in',
  '=bore + 0.003 in',
  '=(bore - press.close_in) / 2 * SQRT(2)',
  '=IF(bore > 2 in; MAX(bore; shaft); -2^2)',
  '=SUM(a; b; c) + ROUND(bore; 1 thou)',
  '= ((((bore))))',
];
const TOKENS = [
  ...'0123456789.,;|()+-*/^=<>"\'#{} ',
  ...[
    'in',
    'mm',
    'thou',
    'deg',
    'F',
    'degC',
    'bore',
    'press.close_in',
    'IF(',
    'MAX(',
    'H7',
    'x',
    '±',
    '..',
    'under',
    'TIR',
  ],
  ...['1e9', '1e-320', '2.25', '1/2', '\n', '\t'],
];

const inputs = fc.oneof(
  { weight: 4, arbitrary: mutated(fc.constantFrom(...ENTRIES)) },
  {
    weight: 3,
    arbitrary: fc.array(fc.constantFrom(...TOKENS), { maxLength: 24 }).map((bits) => bits.join('')),
  },
  {
    weight: 2,
    arbitrary: fc.array(fc.constantFrom(...TOKENS), { maxLength: 24 }).map((bits) => `=${bits.join('')}`),
  },
  { weight: 1, arbitrary: fc.string({ unit: 'binary', maxLength: 40 }) },
  { weight: 1, arbitrary: fc.array(nasty, { maxLength: 12 }).map((bits) => bits.join('')) },
  // One sign many times over: what makes a parser slow.
  {
    weight: 1,
    arbitrary: fc
      .tuple(fc.constantFrom(...TOKENS, ...ENTRIES), fc.integer({ min: 2, max: 3000 }), fc.boolean())
      .map(([bit, n, formula]) => (formula ? '=' : '') + bit.repeat(n)),
  },
);

it('whatever is typed is read, or said in words why not', async () => {
  const kinds = ['length', 'temperature', 'number', 'angle', 'force', undefined] as const;
  const quantity = fc.constantFrom(...kinds);
  const settings = fc.record({
    quantity,
    length: fc.constantFrom('in' as const, 'mm' as const),
    decimal: fc.constantFrom('.' as const, ',' as const),
    role: fc.constantFrom('given' as const, 'measured' as const, 'chosen' as const, 'worked' as const),
  });
  await feed('grammar', 13, fc.tuple(inputs, settings), ([text, of]) => {
    const context = {
      ...(of.quantity && { quantity: of.quantity }),
      units: { length: of.length },
      decimal: of.decimal,
      role: of.role,
      handbook: NO_HANDBOOK,
    };
    const entry = parseEntry(text, context);
    const read = [entry, parseTolerance(text, context), parseFormula(text, context)];
    const places = referencesIn(text);
    const renamed = renameIn(text, () => undefined);
    cellNameProblem(text);
    toDecimalComma(text);
    return () => {
      // Nothing is swallowed: what gives no value has a reason.
      if (entry.entry.kind === 'blank' && text.trim() !== '' && entry.problems.length === 0)
        throw new Error('no value and no word why');
      for (const { problems } of read)
        for (const { message, from, to } of problems) {
          expect(message).toMatch(/\S+ \S+/);
          if (from !== undefined && !(from >= 0 && (to ?? from) <= text.length + 1))
            throw new Error(`the fault is marked at ${from} to ${to}, outside the text`);
        }
      if (renamed !== text) throw new Error('changed without a rename');
      for (const { from, to } of places)
        if (from < 0 || to > text.length) throw new Error('a name outside the text');
    };
  });
});
