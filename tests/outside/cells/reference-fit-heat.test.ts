import { describe, expect, test } from 'vitest';
import { rowById, titleOf } from '../tables/reference.ts';
import { sheetWith } from './example-sheet.ts';
import { checkRow, expectedOf } from './row-check.ts';
import { valueIn } from './sheet-of.ts';

describe('friction and heat of fits', () => {
  checkRow('R194', () => {
    const [low, high] = rowById('R194').expected as [number, number];
    const sheet = sheetWith('interference-fit', {
      contact_diameter: '50 mm',
      interference: '0.04 mm',
      inner_bore: '0 mm',
      outer_diameter: '90 mm',
      length: '40 mm',
      friction_pair: 'steel-steel-dry',
      inner_material: { E: '207 GPa', nu: '0.3', yield: '350 MPa', brittle: '0' },
      outer_material: { E: '207 GPa', nu: '0.3', yield: '350 MPa', brittle: '0' },
    });
    const taken = sheet.byName('it')?.outputs.friction_taken?.planned;
    // The range taken reaches over the printed one.
    return [
      { got: taken?.value ?? 0, expected: low, near: 1e-9 },
      { got: Math.max(high, taken?.high ?? 0), expected: taken?.high ?? 0, near: 1e-9 },
    ];
  });
  /** Ends of the friction that the cell takes for a pair, joined this way. */
  const frictionOf = (friction_pair: string, joined?: string) => {
    const { planned } =
      sheetWith('interference-fit', {
        contact_diameter: '50 mm',
        interference: '0.04 mm',
        inner_bore: '0 mm',
        outer_diameter: '90 mm',
        length: '40 mm',
        friction_pair,
        ...(joined === undefined ? {} : { joined }),
        inner_material: { E: '207 GPa', nu: '0.3', yield: '350 MPa', brittle: '0' },
        outer_material: { E: '207 GPa', nu: '0.3', yield: '350 MPa', brittle: '0' },
      }).byName('it')?.outputs.friction_taken ?? {};
    if (!planned) throw new Error(`no friction for ${friction_pair}`);
    return planned;
  };
  /** Printed figures that must lie in what the cell takes. */
  const within = (taken: { low: number; high: number }, printed: readonly number[]) =>
    printed.map((one) => ({
      got: Math.min(Math.max(one, taken.low), taken.high),
      expected: one,
      near: 1e-12,
    }));
  checkRow('R196', () => {
    const printed = rowById('R196').expected as Record<string, number[]>;
    return [
      ...within(frictionOf('steel-steel-dry', 'pressed'), printed.steel_dry!),
      ...within(frictionOf('steel-steel-oiled', 'pressed'), printed.steel_oiled!),
      ...within(frictionOf('steel-cast-iron-dry', 'pressed'), printed.cast_iron!),
      ...within(frictionOf('bronze-steel-oiled', 'pressed'), printed.Cu_alloys!),
      ...within(frictionOf('bronze-cast-iron-dry'), printed.Cu_alloys!),
    ];
  });
  checkRow('R197', () => {
    const printed = rowById('R197').expected as { oiled: number; degreased: number[] };
    return [
      ...within(frictionOf('steel-steel-oiled', 'shrunk'), [printed.oiled]),
      ...within(frictionOf('steel-steel-dry', 'shrunk'), printed.degreased),
    ];
  });
  test('a joint not said to be shrunk is taken as pressed, the lower figure', () => {
    const pair = 'steel-cast-iron-dry';
    expect(frictionOf(pair).low).toBe(frictionOf(pair, 'pressed').low);
    expect(frictionOf(pair, 'shrunk').low).toBeGreaterThan(frictionOf(pair).low);
  });
  checkRow('R037', () => {
    const { degC, degF } = rowById('R037').expected as { degC: number; degF: number };
    const grown = (temperature: string) =>
      valueIn(
        'mm',
        sheetWith('part-temperature', {
          reading: '100 mm',
          part_temperature: temperature,
          gauge_temperature: temperature,
          part_expansion: '23e-6 1/K',
          gauge_expansion: '0 1/K',
        }),
        'it',
        'at_20',
      );
    return [
      { got: grown(`${degC} degC`), expected: 100, near: 1e-12 },
      { got: grown(`${degF} degF`), expected: 100, near: 1e-9 },
    ];
  });
  checkRow('R201', () => {
    const i = rowById('R201').inputs as Record<string, number>;
    const sheet = sheetWith('shrink-fit', {
      outer_bore: `${i.hole_min} in`,
      interference: `${(i.shaft_max! - i.hole_min!).toFixed(4)} in`,
      assembly_clearance: `${i.clearance} in`,
      room_temperature: `${i.ambient_F} degF`,
      inner_temperature: `${i.shaft_T_F} degF`,
      outer_material: { alpha: `${i.alpha_bronze_F} 1/degF`, max_temperature: '500 degF' },
      inner_material: { alpha: `${i.alpha_shaft_F} 1/degF`, max_temperature: '500 degF' },
    });
    const kelvin = sheet.byName('it')?.outputs.heat_to?.planned?.value ?? 0;
    return { got: (kelvin - 273.15) * 1.8 + 32, expected: expectedOf('R201'), near: 1 };
  });
  const cold: Readonly<Record<string, string>> = {
    R202: '6061-t6',
    R204: '304',
    R205: 'c26000',
    R207: 'ptfe',
  };
  for (const [id, metal] of Object.entries(cold))
    checkRow(id, () => {
      const sheet = sheetWith('shrink-fit', {
        outer_bore: '2.2980 in',
        interference: '0.0020 in',
        assembly_clearance: '0.002 in',
        inner_temperature: '-196 degC',
        in_nitrogen: metal,
        outer_material: { alpha: '11.4e-6 1/K', max_temperature: '400 degC' },
        inner_material: { alpha: '20e-6 1/K', max_temperature: '120 degC' },
      });
      const shrunk = valueIn('in', sheet, 'it', 'contraction');
      return id === 'R202'
        ? { got: shrunk, expected: expectedOf(id), within: 0.1 }
        : { got: (shrunk / 2.3) * 100, expected: expectedOf(id), within: 0.07 };
    });
  test(`${titleOf(rowById('R087'))}, hot bush and unlike metals alike`, () => {
    const metals = { alpha: '13.1e-6 1/degF', max_temperature: '120 degC' };
    const iron = { alpha: '6.3e-6 1/degF', max_temperature: '400 degC' };
    const free = sheetWith('unlike-metals', {
      diameter: '2.3 in',
      interference: '0.002 in',
      inner_running: '200 degF',
      cold_temperature: '68 degF',
      inner_material: metals,
      outer_material: iron,
    });
    const bush = sheetWith('pressed-bush-hot', {
      bush_outside: '2.3 in',
      pressed_bore: '1.9 in',
      interference: '0.002 in',
      close_in_per_interference: '0.7',
      bush_temperature: '200 degF',
      cold_temperature: '68 degF',
      bush_material: metals,
      housing_material: iron,
    });
    for (const got of [
      valueIn('in', free, 'it', 'change_running'),
      valueIn('in', bush, 'it', 'interference_change'),
    ])
      expect(Math.abs(got - expectedOf('R087'))).toBeLessThan(1e-6);
  });
});
