import { describe, expect, test } from 'vitest';
import { sheetWith } from '../outside/cells/example-sheet.ts';
import { figure } from '../outside/cells/sheet-of.ts';

const steel = {
  E: '207 GPa',
  nu: '0.29',
  yield: '350 MPa',
  brittle: '0',
  alpha: '11.5e-6 1/K',
  max_temperature: '400 degC',
};
const iron = {
  E: '100 GPa',
  nu: '0.21',
  yield: '150 MPa',
  brittle: '1',
  alpha: '11.4e-6 1/K',
  max_temperature: '400 degC',
};
const bronze = {
  E: '100 GPa',
  nu: '0.34',
  yield: '138 MPa',
  brittle: '0',
  alpha: '18e-6 1/K',
  max_temperature: '160 degC',
};

const rings = (more: Record<string, string | Record<string, string>> = {}) =>
  sheetWith('interference-fit', {
    contact_diameter: '50 mm',
    interference: '0.040 mm',
    inner_bore: '40 mm',
    outer_diameter: '90 mm',
    length: '40 mm',
    inner_material: bronze,
    outer_material: steel,
    ...more,
  });
const said = (sheet: ReturnType<typeof rings>): string =>
  (sheet.byName('it')?.remarks ?? []).map((remark) => remark.message).join(' ');
const problem = (sheet: ReturnType<typeof rings>, output: string): string =>
  sheet.byName('it')?.outputs[output]?.problem?.message ?? '';

describe('what cannot be is said, and nothing is worked out from it', () => {
  test('a fit without interference is loose', () => {
    for (const interference of ['-0.01 mm', '0 mm'])
      expect(problem(rings({ interference }), 'pressure')).toContain('loose');
  });
  test('an inner part that is larger than the outer one', () => {
    expect(problem(rings({ inner_bore: '60 mm' }), 'close_in')).toContain('smaller');
    expect(problem(rings({ outer_diameter: '45 mm' }), 'close_in')).toContain('larger');
    expect(problem(rings({ inner_bore: '-1 mm' }), 'pressure')).toContain('below zero');
  });
  test('a blank size waits, and is named', () => {
    const outputs = rings({ inner_bore: '' }).byName('it')?.outputs;
    expect(outputs?.pressure?.problem?.message).toContain('bore of the inner part');
    expect(outputs?.yield_margin?.check.asNew.state).toBe('waiting');
  });
  test('huge and tiny figures give an error or a finite figure', () => {
    for (const size of ['1e300 mm', '1e-300 mm', '0 mm', '-5 mm']) {
      const result = rings({ contact_diameter: size }).byName('it')?.outputs.pressure;
      expect(
        result?.planned === undefined ? result?.problem !== undefined : Number.isFinite(result.planned.value),
      ).toBe(true);
    }
  });
});

describe('interference fit', () => {
  test('roughness takes 0.4 of both, or 0.8 by the older edition; left blank it takes nothing', () => {
    const rough = { inner_roughness: '4 um', outer_roughness: '6 um' };
    expect(figure(rings(rough), 'it', 'interference_lost').value).toBeCloseTo(4e-6, 15);
    expect(figure(rings({ ...rough, roughness_share: '0.8' }), 'it', 'interference_lost').value).toBeCloseTo(
      8e-6,
      15,
    );
    expect(figure(rings({ inner_roughness: '4 um' }), 'it', 'interference_lost').value).toBe(0);
    expect(said(rings({ inner_roughness: '60 um', outer_roughness: '60 um' }))).toContain(
      'Roughness takes up',
    );
  });
  test('roughness read as Ra is turned to Rz, about six times it, with its doubt', () => {
    const shop = rings({ inner_ra: '63 uin', outer_ra: '1.6 um' });
    const lost = figure(shop, 'it', 'interference_lost');
    const sum = 63 * 25.4e-9 + 1.6e-6;
    expect(lost.value).toBeCloseTo(0.4 * 6 * sum, 12);
    expect(lost.low).toBeCloseTo(0.4 * 4 * sum, 12);
    expect(lost.high).toBeCloseTo(0.4 * 8 * sum, 12);
    expect(said(rings({ inner_ra: '63 uin' }))).toContain('Only one roughness');
    expect(
      figure(rings({ inner_ra: '63 uin', outer_roughness: '6 um' }), 'it', 'interference_lost').value,
    ).toBeCloseTo(0.4 * (6 * 63 * 25.4e-9 + 6e-6), 12);
  });
  test('brittle iron asks twice its strength, steel a fifth more than its stress', () => {
    const limit = (more: Record<string, string | Record<string, string>>) =>
      rings(more).byName('it')?.outputs.outer_margin?.limits?.lower?.value;
    expect(limit({ outer_material: iron })).toBe(2);
    expect(limit({})).toBe(1.2);
    expect(limit({ least_margin: '3' })).toBe(3);
  });
  test('a casting that cannot be measured is a band from a thin one to an endless one', () => {
    const band = figure(rings({ outer_diameter: '' }), 'it', 'pressure');
    const at = (outer_diameter: string) => figure(rings({ outer_diameter }), 'it', 'pressure').value;
    expect(band.low / at('75 mm')).toBeCloseTo(1, 6);
    expect(band.high / at('1e6 mm')).toBeCloseTo(1, 6);
    expect(band.value).toBeGreaterThan(band.low);
  });
  test('brittle iron is judged by hoop tension and a third of the pressure, steel by von Mises', () => {
    const hub = rings({ outer_material: iron });
    const [hoop, p] = ['hoop_outer_bore', 'pressure'].map((name) => figure(hub, 'it', name).value) as [
      number,
      number,
    ];
    expect(figure(hub, 'it', 'outer_stress').value).toBeCloseTo(hoop + p / 3, 3);
    const plain = rings();
    const [h, q] = ['hoop_outer_bore', 'pressure'].map((name) => figure(plain, 'it', name).value) as [
      number,
      number,
    ];
    expect(figure(plain, 'it', 'outer_stress').value).toBeCloseTo(Math.sqrt(h * h + h * q + q * q), 3);
  });
  test('interference outside common practice is asked about, not refused', () => {
    const much = rings({ interference: '0.15 mm' });
    expect(said(much)).toContain('0.0003 to 0.002');
    expect(figure(much, 'it', 'pressure').value).toBeGreaterThan(0);
  });
});

test('a bush that comes loose in winter has the bore of the free bush', () => {
  const [free, interference, share] = [0.04, 10e-6, 0.6979];
  const pressed = free - share * interference;
  const sheet = sheetWith('pressed-bush-hot', {
    bush_outside: '50 mm',
    pressed_bore: `${pressed * 1000} mm`,
    interference: '0.010 mm',
    close_in_per_interference: `${share}`,
    bush_temperature: '60 degC',
    winter_temperature: '-30 degC',
    bush_material: bronze,
    housing_material: iron,
  });
  expect(figure(sheet, 'it', 'winter_interference').value).toBeLessThan(0);
  expect(said(sheet)).toContain('loose in winter');
  expect(figure(sheet, 'it', 'winter_bore').value).toBeCloseTo(free * (1 - 18e-6 * 50), 7);
});

test('a wear limit stands beside the limits for new, and blank limits are none', () => {
  const worn = sheetWith('running-clearance', {
    bore: '2.012 in',
    journal: '2.000 in',
    new_least: '0.005 in',
    new_greatest: '0.0085 in',
    wear_limit: '0.015 in',
  }).byName('it')?.outputs.clearance?.check;
  expect(worn?.asNew.state).toBe('misses');
  expect(worn?.inService?.state).toBe('holds');
  const bare = sheetWith('running-clearance', { bore: '2.012 in', journal: '2.000 in' });
  expect(bare.byName('it')?.outputs.clearance?.check.asNew.state).toBe('no limits');
});

test('shims: what is really put in takes the place of the pack worked out', () => {
  const pack = (more: Record<string, string> = {}) =>
    sheetWith('shim-pack', {
      float_without: '1.00 mm',
      float_wanted: '0.12 mm',
      shim_1: '0.5 mm',
      shim_2: '0.1 mm',
      ...more,
    });
  expect(figure(pack(), 'it', 'pack').value).toBeCloseTo(0.0008, 12);
  expect(figure(pack({ pack_put_in: '0.85 mm' }), 'it', 'float_left').value).toBeCloseTo(0.00015, 12);
});

test('shims: no pack of at most so many shims comes nearer without passing (every pack, by plain loops)', () => {
  const sizes = [0.5, 0.3, 0.2, 0.05];
  for (const [wanted, most] of [
    [0.6, 5],
    [0.85, 3],
    [0.99, 4],
    [2.6, 5],
    [0.04, 5],
  ] as const) {
    let best = 0;
    for (let a = 0; a <= most; a++)
      for (let b = 0; a + b <= most; b++)
        for (let c = 0; a + b + c <= most; c++)
          for (let d = 0; a + b + c + d <= most; d++) {
            const total = a * 0.5 + b * 0.3 + c * 0.2 + d * 0.05;
            if (total <= wanted + 1e-9) best = Math.max(best, total);
          }
    const sheet = sheetWith('shim-pack', {
      float_without: `${wanted} mm`,
      float_wanted: '0 mm',
      most_pieces: `${most}`,
      ...Object.fromEntries(sizes.map((size, i) => [`shim_${i + 1}`, `${size} mm`])),
    });
    expect(figure(sheet, 'it', 'pack').value * 1000).toBeCloseTo(best, 9);
    expect(figure(sheet, 'it', 'pieces').value).toBeLessThanOrEqual(most);
  }
});

test('a bond holds less warm, less on stainless, and above 100 degC asks for its sheet', () => {
  const bond = (more: Record<string, string> = {}) =>
    sheetWith('retaining-compound', {
      diameter: '25 mm',
      length: '20 mm',
      gap: '0.05 mm',
      compound: 'medium-strength',
      ...more,
    });
  const share = (more: Record<string, string>): number => figure(bond(more), 'it', 'share_kept').value;
  expect(share({})).toBeCloseTo(0.7, 12);
  expect(share({ running_temperature: '100 degC' })).toBeCloseTo(0.7, 12);
  expect(share({ running_temperature: '61 degC' })).toBeCloseTo(0.85, 12);
  expect(share({ running_temperature: '-10 degC' })).toBe(1);
  expect(said(bond({ running_temperature: '130 degC' }))).toContain('Above 100 degC');
  expect(said(bond({ running_temperature: '130 degC', hot_share: '0.4' }))).not.toContain('Above 100 degC');
  const held = (more: Record<string, string>): number => figure(bond(more), 'it', 'force_held').value;
  expect(held({ metals: 'light-or-stainless' }) / held({ metals: 'steel-or-iron' })).toBeCloseTo(0.6, 12);
});

test('a press fit wipes compound off: at its low end the bond holds nothing', () => {
  const bond = (more: Record<string, string> = {}) =>
    figure(
      sheetWith('retaining-compound', {
        diameter: '2 in',
        length: '2 in',
        gap: '-3 thou',
        shear_strength: '1700 psi',
        ...more,
      }),
      'it',
      'force_held',
    );
  const whole = Math.PI * 4 * 1700 * 0.5 * 4.4482216152605;
  expect(bond().low).toBeCloseTo(0, 6);
  expect(bond().high / whole).toBeCloseTo(0.5, 9);
  expect(bond({ gap: '3 thou' }).value / whole).toBeCloseTo(1, 9);
  expect(bond({ own_film_left: '1' }).value / whole).toBeCloseTo(1, 9);
  expect(bond({ press_pressure: '10 MPa' }).low).toBeGreaterThan(0);
});

test('a journal that is not hardened has no case to grind through', () => {
  const ground = (case_depth: string) =>
    said(
      sheetWith('journal-undersize', {
        new_size: '60 mm',
        least: '59.86 mm',
        runout: '0.03 mm',
        stock: '0.02 mm',
        series: 'mm',
        fillet: '3 mm',
        case_depth,
      }),
    );
  expect(ground('0 mm')).not.toContain('case');
  expect(ground('0.1 mm')).toContain('through the hard case');
});

test('a bore at the edge of an oversize is bored to one size; the doubt is in what it leaves to spare', () => {
  const sheet = sheetWith('bore-clean-up', {
    greatest: '2.2676 in ± 0.0006 in',
    offset: '4 thou',
    skin: '4 thou',
    new_size: '2.25 in',
    series: 'inch',
  });
  const bored = figure(sheet, 'it', 'bored_size');
  expect(bored.high - bored.low).toBe(0);
  const spare = figure(sheet, 'it', 'to_spare');
  expect(spare.low).toBeLessThan(0);
  expect(spare.high).toBeGreaterThan(0);
});

test('roughness of one surface alone is not taken for none', () => {
  expect(said(rings({ inner_roughness: '4 um' }))).toContain('Only one roughness');
  expect(said(rings({ inner_roughness: '4 um', outer_roughness: '4 um' }))).not.toContain(
    'Only one roughness',
  );
  expect(said(rings())).not.toContain('Only one roughness');
});

test('a journal, or a bore, that cleans up at the size when new need not go to the next size', () => {
  const journal = (least: string) =>
    said(
      sheetWith('journal-undersize', {
        new_size: '60 mm',
        least,
        runout: '0 mm',
        stock: '0 mm',
        series: 'mm',
      }),
    );
  expect(journal('60.01 mm')).toContain('need not go');
  expect(journal('59.99 mm')).not.toContain('need not go');
  const bore = (greatest: string) =>
    said(
      sheetWith('bore-clean-up', { greatest, offset: '0 mm', skin: '0 mm', new_size: '60 mm', series: 'mm' }),
    );
  expect(bore('59.99 mm')).toContain('need not go');
  expect(bore('60.01 mm')).not.toContain('need not go');
});

test('a hot bush that would burst its casting is said', () => {
  const hot = (housing_outside: string) =>
    said(
      sheetWith('yield-hot-loose-cold', {
        bush_outside: '50 mm',
        bush_bore: '30 mm',
        housing_outside,
        interference: '0.05 mm',
        bush_temperature: '180 degC',
        bush_material: { ...bronze, alpha: '23.6e-6 1/K', yield: '300 MPa', max_temperature: '200 degC' },
        housing_material: iron,
      }),
    );
  expect(hot('58 mm')).toContain('past its strength');
  expect(hot('150 mm')).not.toContain('past its strength');
});
