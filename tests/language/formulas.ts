import fc from 'fast-check';

/** Formula texts as a person might type them, over the names a to d, without calls that ask about angles. */
const number = fc.oneof(
  fc.integer({ min: 0, max: 9999 }).map(String),
  fc.double({ min: 1e-6, max: 1e6, noNaN: true }).map(String),
  fc.constantFrom('.5', '0.0015', '1e-3', '2.', '12.50'),
);
const literal = fc.oneof(
  number,
  fc
    .tuple(number, fc.constantFrom('in', 'mm', 'thou', '"', 'kg/m3', 'N.m'))
    .map(([n, unit]) => `${n} ${unit}`),
  fc.constantFrom('2 1/4 in', '27/64 in', `30 deg 15'`, '5 ft 3 in'),
);
const name = fc.constantFrom('a', 'b', 'c', 'd', 'press.close_in', '{c12}', '{c12}.od', 'δ_1', 'вал');
const blank = fc.constantFrom('', ' ', '  ');

const { formula } = fc.letrec<{ formula: string; operand: string }>((tie) => ({
  operand: fc.oneof(
    { depthSize: 'small', withCrossShrink: true },
    name,
    literal,
    tie('formula').map((inner) => `(${inner})`),
    fc.tuple(fc.constantFrom('-', '+'), tie('operand')).map((parts) => parts.join('')),
    fc
      .tuple(fc.constantFrom('MAX', 'SUM', 'min', 'AVERAGE'), tie('formula'), tie('formula'))
      .map(([fn, x, y]) => `${fn}(${x}; ${y})`),
    fc.tuple(tie('formula'), tie('formula')).map(([x, y]) => `IF(${x} > ${y}; ${y}; ${x})`),
  ),
  formula: fc.oneof(
    { depthSize: 'small', withCrossShrink: true },
    tie('operand'),
    fc
      .tuple(tie('operand'), blank, fc.constantFrom('+', '-', '*', '/', '×', '−', '^'), blank, tie('formula'))
      .map((parts) => parts.join('')),
  ),
}));

export const formulas: fc.Arbitrary<string> = formula.map((text) => `=${text}`);

/** Arithmetic over plain numbers and names, for comparing what computes. */
export const plainFormulas: fc.Arbitrary<string> = fc
  .letrec<{ any: string }>((tie) => ({
    any: fc.oneof(
      { depthSize: 'medium', withCrossShrink: true },
      fc.constantFrom('a', 'b', 'c', 'd'),
      number,
      fc
        .tuple(tie('any'), fc.constantFrom('+', '-', '*', '/', '^'), tie('any'))
        .map((parts) => parts.join(' ')),
      tie('any').map((inner) => `(${inner})`),
      tie('any').map((inner) => `-${inner}`),
      fc
        .tuple(
          fc.constantFrom('MAX', 'SUM', 'AVERAGE', 'MOD', 'MROUND', 'ATAN2', 'POWER'),
          tie('any'),
          tie('any'),
        )
        .map(([fn, x, y]) => `${fn}(${x}; ${y})`),
      fc
        .tuple(fc.constantFrom('SQRT', 'ABS', 'EXP', 'LN', 'ROUND', 'SIGN', 'INT'), tie('any'))
        .map(([fn, x]) => `${fn}(${x})`),
      fc
        .tuple(
          tie('any'),
          fc.constantFrom('<', '<=', '=', '<>', '>', '>='),
          tie('any'),
          tie('any'),
          tie('any'),
        )
        .map(([x, op, y, then, otherwise]) => `IF((${x}) ${op} (${y}); ${then}; ${otherwise})`),
    ),
  }))
  .any.map((text) => `=${text}`);
