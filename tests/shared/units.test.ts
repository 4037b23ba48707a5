import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { dimension, sameDimension } from '../../shared/dimension.ts';
import {
  bareUnit,
  displayUnit,
  kindsOf,
  quantityKind,
  quantityKinds,
} from '../../shared/quantities/quantities.ts';
import { table } from '../../shared/units/registry.ts';
import {
  findUnit,
  fromSI,
  isUnit,
  parseUnit,
  toSI,
  type Unit,
  unitSymbols,
  unitsOfDimension,
} from '../../shared/units/units.ts';

const unit = (symbol: string): Unit => {
  const found = parseUnit(symbol);
  if (!isUnit(found)) throw new Error(found.message);
  return found;
};

describe('reading a unit', () => {
  test.each([
    ['"', 'in'],
    ['µm', 'um'],
    ['μm', 'um'],
    ['micron', 'um'],
    ['°F', 'degF'],
    ['N·m', 'N.m'],
    ['N * m', 'N.m'],
    ['ft-lb', 'lbf.ft'],
    ['in²', 'in2'],
    ['in^2', 'in2'],
    ['fpm', 'ft/min'],
    ['RPM', 'rpm'],
    ['t', 'tonne'],
  ])('%s is %s', (text, symbol) => expect(unit(text)).toEqual(findUnit(symbol)));

  test('a compound that is not defined is put together from its parts', () => {
    expect(unit('lbf/in2')).toMatchObject({ factor: unit('psi').factor, label: 'lbf/in²' });
    expect(unit('kg·m²').dimension).toEqual(dimension(2, 1));
    expect(unit('1/(m.s)').dimension).toEqual(dimension(-1, 0, -1));
    expect(unit('m/s/s')).toMatchObject({ dimension: dimension(1, 0, -2) });
  });

  test('a temperature scale is a point alone and a difference inside a compound', () => {
    expect(unit('degF').point).toBe(true);
    expect(unit('1/degF')).toMatchObject({ point: false, factor: 1.8, label: '1/°F' });
    expect(unit('W/(m.degC)').factor).toBe(1);
    expect(unit('K').point).toBe(false);
    expect(parseUnit('K', { point: true })).toMatchObject({ point: true });
    expect(unit('degF_diff')).toMatchObject({ point: false, label: 'Δ°F' });
  });

  test('what stands below a stroke needs parentheses', () =>
    expect(parseUnit('W/m.K')).toMatchObject({ kind: 'syntax' }));

  test.each(['furlong', 'W/(m.K', '/s', 'm/', 'm..s', 'm 2', 'constructor', '__proto__', 'in\u202e'])(
    '%s is refused as unknown',
    (text) => expect(parseUnit(text)).toMatchObject({ kind: 'unknown-unit' }),
  );

  test('an unknown symbol is named, with its place and near ones', () => {
    expect(parseUnit('lbf/inn2')).toMatchObject({
      from: 4,
      to: 7,
      message: expect.stringContaining('"inn"'),
    });
    expect(parseUnit('Ksi')).toMatchObject({ message: expect.stringContaining('ksi') });
    expect(parseUnit('x'.repeat(100_000))).toMatchObject({ kind: 'too-big' });
  });
});

describe('words with several meanings', () => {
  const force = dimension(1, 1, -2);

  test('a ton is asked about until the sheet has settled which', () => {
    expect(parseUnit('tons')).toMatchObject({
      kind: 'ask',
      choices: [{ setting: { name: 'ton', value: 'short_ton' } }, {}, {}],
    });
    expect(parseUnit('tons', { ton: 'long_ton' })).toMatchObject({ symbol: 'long_ton' });
    expect(parseUnit('tenths', { tenth: 'tenth_mm' })).toMatchObject({ symbol: 'tenth_mm', factor: 1e-4 });
    expect(parseUnit('gal')).toMatchObject({
      kind: 'ask',
      choices: [{ entry: 'gal_us' }, { entry: 'gal_imp' }],
    });
  });

  test('where a force, a pressure or a torque is wanted, a mass is read as its force', () => {
    expect(parseUnit('tons', { ton: 'short_ton', dimension: force })).toMatchObject({ symbol: 'short_tonf' });
    expect(parseUnit('lb', { dimension: force })).toMatchObject({ symbol: 'lbf' });
    expect(parseUnit('lb/in2', { dimension: dimension(-1, 1, -2) })).toMatchObject({
      factor: unit('psi').factor,
    });
    expect(parseUnit('ft.lb', { dimension: dimension(2, 1, -2) })).toMatchObject({
      factor: unit('lbf.ft').factor,
    });
    expect(parseUnit('lb', { dimension: dimension(0, 1) })).toMatchObject({ symbol: 'lb' });
    expect(parseUnit('slug', { dimension: force })).toMatchObject({ symbol: 'slug' });
  });
});

describe('conversion', () => {
  test('one length written in several units is one double', () => {
    expect(toSI(2.2515, unit('in'))).toBe(0.0571881);
    expect(toSI(2251.5, unit('thou'))).toBe(0.0571881);
    expect(toSI(57.1881, unit('mm'))).toBe(0.0571881);
    expect(toSI(68, unit('degF'))).toBe(toSI(20, unit('degC')));
    expect(toSI(180, unit('deg'))).toBe(Math.PI);
    expect(toSI(1, unit('rpm'))).toBe(1 / 60);
  });

  test('a figure typed with up to ten digits comes back as it was, in every length unit', () => {
    const lengths = unitsOfDimension(dimension(1)).filter((u) =>
      /^(in|thou|tenth_in|uin|ft|mm|um|cm|m)$/.test(u.symbol),
    );
    fc.assert(
      fc.property(
        fc.integer({ min: -9_999_999_999, max: 9_999_999_999 }),
        fc.integer({ min: -9, max: 3 }),
        fc.constantFrom(...lengths),
        (n, e, u) => {
          const value = Number(`${n}e${e}`);
          expect(fromSI(toSI(value, u), u)).toBe(value);
        },
      ),
      { seed: 1, numRuns: 2000 },
    );
  });

  test('to SI and back is the same within two units in the last place, in every unit', () => {
    const all = [...table.values()].map((d) => d.unit);
    fc.assert(
      fc.property(fc.double({ min: 1e-12, max: 1e12, noNaN: true }), fc.constantFrom(...all), (value, u) => {
        const scale = Math.abs(value) + Math.abs(u.offset ?? 0);
        expect(Math.abs(fromSI(toSI(value, u), u) - value)).toBeLessThanOrEqual(scale * 2 ** -51);
      }),
      { seed: 2, numRuns: 2000 },
    );
  });

  test('what is not finite stays so', () => {
    expect(toSI(Number.NaN, unit('in'))).toBeNaN();
    expect(fromSI(Number.POSITIVE_INFINITY, unit('degF'))).toBe(Number.POSITIVE_INFINITY);
    expect(toSI(1e308, unit('km'))).toBe(Number.POSITIVE_INFINITY);
    expect(Object.is(toSI(0, unit('in')), 0)).toBe(true);
  });

  test('a unit survives a message', () => {
    const sent = structuredClone(unit('psi'));
    expect(toSI(1, sent)).toBe(toSI(1, unit('psi')));
  });
});

describe('definitions', () => {
  test('every defined unit has a symbol for the tokenizer, and no two share one', () => {
    for (const { unit: u, aliases } of table.values()) {
      for (const name of [u.symbol, ...aliases]) {
        expect(unitSymbols.has(name)).toBe(true);
        expect(findUnit(name)).toBe(u);
      }
    }
  });

  test('a defined compound means what its parts mean', () => {
    for (const { unit: u } of table.values()) {
      if (!/[./]/.test(u.symbol) || u.symbol.includes('%')) continue;
      const built = parseUnit(u.symbol.replaceAll('.', '·'));
      expect(built).toMatchObject({ factor: u.factor, dimension: u.dimension });
    }
  });
});

describe('kinds of quantity', () => {
  test('every unit a kind offers fits it', () => {
    for (const kind of quantityKinds) {
      for (const symbol of [...kind.units.in, ...kind.units.mm]) {
        const shown = displayUnit(kind.name, { length: 'in' }, symbol);
        expect(shown.symbol).toBe(symbol);
        expect(sameDimension(shown.dimension, kind.dimension)).toBe(true);
        expect(shown.point).toBe(kind.point ?? false);
      }
    }
  });

  test('a bare number takes the unit of the sheet, none, or is asked about', () => {
    expect(bareUnit('length', { length: 'in' })).toBe('in');
    expect(bareUnit('length', { length: 'mm' })).toBe('mm');
    expect(bareUnit('temperature', { length: 'in' })).toBe('degF');
    expect(bareUnit('temperature', { length: 'in', temperature: 'degC' })).toBe('degC');
    expect(bareUnit('angle', { length: 'in' })).toBe('deg');
    expect(bareUnit('number', { length: 'in' })).toBe('');
    expect(bareUnit('force', { length: 'in' })).toBeUndefined();
    expect(bareUnit('no such kind', { length: 'in' })).toBeUndefined();
  });

  test('the unit shown is the one asked for where it fits, else the sheet’s', () => {
    expect(displayUnit('length', { length: 'in' }, 'mm').symbol).toBe('mm');
    expect(displayUnit('length', { length: 'in' }, 'psi').symbol).toBe('in');
    expect(displayUnit('temperature difference', { length: 'in' }, 'degF').symbol).toBe('degF_diff');
    expect(displayUnit('temperature', { length: 'in' }, 'K').point).toBe(true);
    expect(displayUnit('force', { length: 'in' }, 'lb').symbol).toBe('lbf');
    expect(displayUnit(undefined, { length: 'in' }).symbol).toBe('');
  });

  test('of several kinds with one dimension the likeliest comes first', () => {
    expect(kindsOf(dimension(2, 1, -2)).map((k) => k.name)).toEqual(['torque', 'energy']);
    expect(kindsOf(dimension(0, 0, 0, 1), true).map((k) => k.name)).toEqual(['temperature']);
    expect(quantityKind('force')?.dimension).toEqual(dimension(1, 1, -2));
  });
});
