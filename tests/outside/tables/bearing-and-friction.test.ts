import { describe, expect, it } from 'vitest';
import type { BearingLimit } from '../../../cells/tables/bearing-limits.ts';
import { bearingLimitByKey, bearingLimits } from '../../../cells/tables/bearing-limits.ts';
import { frictionByKey, frictionPairs } from '../../../cells/tables/friction.ts';
import { retainingCompounds } from '../../../cells/tables/retaining-compounds.ts';
import type { Property } from '../../../cells/tables/table.ts';
import { rowById, rowsWhere, titleOf } from './reference.ts';

const limit = (key: string): BearingLimit => {
  const found = bearingLimitByKey(key);
  if (found === undefined) throw new Error(`no bearing material ${key}`);
  return found;
};

const spans = (property: Property | undefined, published: number | number[], rounding: number): void => {
  expect(property).toBeDefined();
  for (const figure of typeof published === 'number' ? [published] : published) {
    expect(property!.low).toBeLessThanOrEqual(figure * (1 + rounding));
    expect(property!.high).toBeGreaterThanOrEqual(figure * (1 - rounding));
  }
};

describe('bearing limits against print', () => {
  const boundary: Readonly<Record<string, string>> = {
    'manganese bronze C86200': 'c86200',
    'aluminium bronze C95400': 'c95400',
    'porous bronze, oil impregnated': 'porous-bronze',
    'babbitt, low tin 10 %': 'lead-babbitt',
    'filled PTFE': 'filled-ptfe',
  };
  for (const row of rowsWhere((each) => each.quantity.startsWith('pV limit, boundary lubrication')))
    it(titleOf(row), () => {
      const pv = limit(boundary[String(row.inputs.material)]!).pv!;
      const expected = row.expected as { psi_fpm: number; MPa_m_s: number };
      // Followed to the figure: this is what was read in print.
      expect(pv.value / (6894.757293168 * 0.00508)).toBeCloseTo(expected.psi_fpm, 6);
      expect(Math.abs(pv.value / 1e6 / expected.MPa_m_s - 1)).toBeLessThan(2e-3);
    });

  const materialLimits: Readonly<Record<string, string>> = {
    'tin-base babbitt': 'tin-babbitt',
    'lead-base babbitt': 'lead-babbitt',
    'tin bronze': 'tin-bronze',
    nylon: 'nylon',
    PTFE: 'ptfe',
  };
  for (const row of rowsWhere((each) => each.quantity.startsWith('bearing material limits')))
    it(titleOf(row), () => {
      const ours = limit(materialLimits[String(row.inputs.material)]!);
      const printed = row.expected as {
        p_MPa?: number | number[];
        Tmax_C?: number;
        v_m_s?: number;
        pv?: number;
      };
      if (printed.p_MPa !== undefined)
        spans(
          ours.p,
          typeof printed.p_MPa === 'number' ? printed.p_MPa * 1e6 : printed.p_MPa.map((x) => x * 1e6),
          1e-9,
        );
      if (printed.Tmax_C !== undefined)
        expect(ours.temperature!.value).toBeCloseTo(printed.Tmax_C + 273.15, 9);
      if (printed.v_m_s !== undefined) expect(ours.v!.value).toBeCloseTo(printed.v_m_s, 9);
      if (printed.pv !== undefined) expect(ours.pv!.value / 1e6).toBeCloseTo(printed.pv, 9);
    });

  for (const [id, key] of [
    ['R052', 'filled-ptfe'],
    ['R053', 'bronze-ptfe-lead'],
  ] as const)
    it(titleOf(rowById(id)), () => {
      const printed = rowById(id).expected as { max_static_load_MPa: number | number[]; max_temp_C: number };
      const load = printed.max_static_load_MPa;
      spans(limit(key).p, typeof load === 'number' ? load * 1e6 : load.map((x) => x * 1e6), 1e-9);
      expect(limit(key).temperature!.value).toBeCloseTo(printed.max_temp_C + 273.15, 9);
    });

  it(titleOf(rowById('R628')), () => {
    const { pV, p, v } = rowById('R628').expected as { pV: number; p: number; v: number };
    const ours = limit('porous-bronze');
    expect(ours.pv!.value / (6894.757293168 * 0.00508)).toBeCloseTo(pV, 6);
    expect(ours.p!.value / 6894.757293168).toBeCloseTo(p, 6);
    expect(ours.v!.value / 0.00508).toBeCloseTo(v, 6);
  });

  it('says where the nylon figures part: a factor of eight between sources', () => {
    const { pv } = limit('nylon');
    expect(pv!.high / pv!.low).toBeGreaterThan(8);
  });
});

describe('a range takes in every source it cites', () => {
  const psi = 6894.757293168;
  const fpm = 0.00508;
  /** p psi, v ft/min, pV psi ft/min, degF, as each source has them. */
  const sources: readonly [string, string, { p?: number; v?: number; pv?: number; t?: number }][] = [
    ['from memory: Shigley Table 12-8', 'porous-bronze', { p: 4500, v: 1500, pv: 50000, t: 150 }],
    ['from memory: Shigley Table 12-8', 'phenolic', { p: 6000, v: 2500, pv: 15000, t: 200 }],
    ['from memory: Shigley Table 12-8', 'nylon', { p: 1000, v: 1000, pv: 3000, t: 200 }],
    ['from memory: Shigley Table 12-8', 'ptfe', { p: 500, v: 100, pv: 1000, t: 500 }],
    ['from memory: Shigley Table 12-8', 'acetal', { p: 1000, v: 1000, pv: 3000, t: 180 }],
    ['from memory: Shigley Table 12-8', 'carbon-graphite', { p: 600, v: 2500, pv: 15000, t: 750 }],
    ['from memory: Shigley Table 12-8', 'wood', { p: 2000, v: 2000, pv: 15000, t: 150 }],
    ['from memory: Shigley Table 12-8', 'rubber-water', { p: 50, v: 4000, t: 150 }],
    ['seen: Mott Table 16-1', 'porous-bronze', { pv: 50000 }],
    ['from memory: suppliers, first oil alone', 'porous-bronze', { pv: 20000 }],
    ['seen: Mott Table 16-1', 'c86200', { pv: 150000 }],
    ['seen: Mott Table 16-1', 'c95400', { pv: 125000 }],
    ['seen: Mott Table 16-1', 'lead-babbitt', { pv: 18000 }],
    ['seen: Mott Table 16-1', 'filled-ptfe', { pv: 7500 }],
  ];
  for (const [source, key, { p, v, pv, t }] of sources)
    it(`${key} [${source}]`, () => {
      const row = limit(key);
      if (p !== undefined) spans(row.p, p * psi, 0.02);
      if (v !== undefined) spans(row.v, v * fpm, 0.02);
      if (pv !== undefined) spans(row.pv, pv * psi * fpm, 0.02);
      if (t !== undefined) spans(row.temperature, (t + 459.67) / 1.8, 0.002);
    });
});

describe('friction against print', () => {
  const press = (key: string): Property => frictionByKey(key)!.press;
  it(titleOf(rowById('R194')), () => {
    const range = rowById('R194').expected as number[];
    spans(press('steel-steel-dry'), range, 0);
    spans(frictionByKey('steel-steel-dry')!.shrink, range, 0);
  });

  it(titleOf(rowById('R196')), () => {
    const printed = rowById('R196').expected as Record<
      'steel_dry' | 'steel_oiled' | 'cast_iron' | 'Cu_alloys',
      number[]
    >;
    spans(press('steel-steel-dry'), printed.steel_dry, 0);
    spans(press('steel-steel-oiled'), printed.steel_oiled, 0);
    spans(press('steel-cast-iron-dry'), printed.cast_iron, 0);
    for (const key of ['bronze-steel-dry', 'bronze-cast-iron-dry', 'bronze-steel-oiled'])
      spans(press(key), printed.Cu_alloys, 0);
  });

  it(titleOf(rowById('R197')), () => {
    const printed = rowById('R197').expected as { oiled: number; degreased: number[] };
    spans(frictionByKey('steel-steel-oiled')!.shrink, printed.oiled, 0);
    spans(frictionByKey('steel-steel-dry')!.shrink, printed.degreased, 0);
  });

  it('the press-fit example after Ugural takes what we take for steel in cast iron', () => {
    expect(press('steel-cast-iron-dry').value).toBe(rowById('R185').inputs.f);
  });
});

it('every range stands around its value and oil never raises the friction of a pair', () => {
  const rows: [string, Record<string, unknown>][] = [
    ...bearingLimits.map((row): [string, Record<string, unknown>] => [row.key, { ...row }]),
    ...frictionPairs.map((row): [string, Record<string, unknown>] => [row.key, { ...row }]),
    ...retainingCompounds.map((row): [string, Record<string, unknown>] => [row.key, { ...row }]),
  ];
  let checked = 0;
  for (const [key, row] of rows)
    for (const [column, p] of Object.entries(row)) {
      if (typeof p !== 'object') continue;
      const { low, value, high } = p as Property;
      expect(low, `${key}.${column}`).toBeLessThanOrEqual(value);
      expect(high, `${key}.${column}`).toBeGreaterThanOrEqual(value);
      checked += 1;
    }
  expect(checked).toBeGreaterThan(80);
  for (const dry of frictionPairs.filter((pair) => pair.key.endsWith('-dry'))) {
    const oiled = frictionByKey(dry.key.replace(/-dry$/, '-oiled'));
    if (oiled) expect(oiled.press.value).toBeLessThanOrEqual(dry.press.value);
  }
});
