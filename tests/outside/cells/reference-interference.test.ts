import { describe } from 'vitest';
import { rowById, rowsWhere } from '../tables/reference.ts';
import { sheetWith } from './example-sheet.ts';
import { checkRow, expectedOf } from './row-check.ts';
import { valueIn } from './sheet-of.ts';

/** Two rings in the units of a row: lengths in mm or in, pressures in MPa or psi. */
interface Rings {
  bore: number;
  contact: number;
  outside: number;
  E: readonly [inner: number, outer: number];
  nu: readonly [inner: number, outer: number];
  interference: number;
  length?: number;
  friction?: number;
  unit?: 'in';
}

const rings = (r: Rings) => {
  const [size, stress] = r.unit === 'in' ? ['in', 'psi'] : ['mm', 'MPa'];
  const material = (i: 0 | 1) => ({
    E: `${r.E[i]} ${stress}`,
    nu: `${r.nu[i]}`,
    yield: `${r.unit === 'in' ? 50000 : 350} ${stress}`,
    brittle: '0',
  });
  const sheet = sheetWith('interference-fit', {
    contact_diameter: `${r.contact} ${size}`,
    interference: `${r.interference} ${size}`,
    inner_bore: `${r.bore} ${size}`,
    outer_diameter: `${r.outside} ${size}`,
    length: `${r.length ?? r.contact} ${size}`,
    friction: `${r.friction ?? 0.15}`,
    inner_material: material(0),
    outer_material: material(1),
  });
  return (output: string, unit: string): number => valueIn(unit, sheet, 'it', output);
};

const inputs = (id: string) => rowById(id).inputs as Record<string, number>;

describe('rings solved from the equation of equilibrium, and by finite elements', () => {
  const outputs: Readonly<Record<string, readonly [output: string, unit: string]>> = {
    'contact pressure': ['pressure', 'MPa'],
    'inner ring OD reduction (diametral)': ['inner_shrinkage', 'mm'],
    'housing bore growth (diametral)': ['bore_growth', 'mm'],
    'housing OD growth (diametral)': ['outside_growth', 'mm'],
    'bore close-in (diametral)': ['close_in', 'mm'],
    'hoop stress, bush bore': ['hoop_inner_bore', 'MPa'],
    'hoop stress, bush OD': ['hoop_inner_outside', 'MPa'],
    'hoop stress, housing bore': ['hoop_outer_bore', 'MPa'],
    'hoop stress, housing OD': ['hoop_outer_outside', 'MPa'],
  };
  for (const row of rowsWhere((each) => each.quantity.startsWith('independent numeric check: ')))
    checkRow(row.id, () => {
      const i = inputs(row.id);
      const [output, unit] = outputs[row.quantity.replace('independent numeric check: ', '')] ?? [];
      if (output === undefined || unit === undefined) throw new Error(`no output for ${row.quantity}`);
      const solved = rings({
        bore: i.inner_ID as number,
        contact: i.contact_D as number,
        outside: i.outer_OD as number,
        E: [i.E_inner as number, i.E_outer as number],
        nu: [i.nu_inner as number, i.nu_outer as number],
        interference: i.diametral_interference as number,
      });
      return { got: solved(output, unit), expected: row.expected as number, within: 1e-5 };
    });
});

describe('the formulas as printed', () => {
  // Rings that no other check uses; formulas in radii, radial interference.
  const [bore, contact, outside] = [31, 46, 71];
  const [Ei, Eo, ni, no] = [110000, 207000, 0.33, 0.29];
  const interference = 0.05;
  const solved = rings({ bore, contact, outside, E: [Ei, Eo], nu: [ni, no], interference });
  const [ri, R, ro, delta] = [bore / 2, contact / 2, outside / 2, interference / 2];
  const p =
    delta /
    (R *
      ((1 / Eo) * ((ro ** 2 + R ** 2) / (ro ** 2 - R ** 2) + no) +
        (1 / Ei) * ((R ** 2 + ri ** 2) / (R ** 2 - ri ** 2) - ni)));
  const printed: Readonly<Record<string, readonly [expected: number, output: string, unit: string]>> = {
    R115: [p, 'pressure', 'MPa'],
    R116: [(-2 * p * R ** 2) / (R ** 2 - ri ** 2), 'hoop_inner_bore', 'MPa'],
    R117: [(-p * (R ** 2 + ri ** 2)) / (R ** 2 - ri ** 2), 'hoop_inner_outside', 'MPa'],
    R118: [(p * (ro ** 2 + R ** 2)) / (ro ** 2 - R ** 2), 'hoop_outer_bore', 'MPa'],
    R119: [(2 * p * R ** 2) / (ro ** 2 - R ** 2), 'hoop_outer_outside', 'MPa'],
    R120: [(4 * p * R ** 2 * ri) / (Ei * (R ** 2 - ri ** 2)), 'close_in', 'mm'],
    R121: [(4 * p * R ** 2 * ro) / (Eo * (ro ** 2 - R ** 2)), 'outside_growth', 'mm'],
  };
  for (const [id, [expected, output, unit]] of Object.entries(printed))
    checkRow(id, () => ({ got: solved(output, unit), expected, within: 1e-9 }));
});

describe('printed answers', () => {
  for (const row of rowsWhere((each) => each.quantity.startsWith('solid shaft in hub, contact pressure')))
    checkRow(row.id, () => {
      const { radial_interference, R, ro, E, nu } = inputs(row.id) as Record<string, number>;
      const inch = (row.inputs.units as string) === 'in';
      const solved = rings({
        bore: 0,
        contact: 2 * R!,
        outside: 2 * ro!,
        E: [E!, E!],
        nu: [nu!, nu!],
        interference: 2 * radial_interference!,
        ...(inch ? { unit: 'in' } : {}),
      });
      return {
        got: solved('pressure', inch ? 'psi' : 'MPa'),
        expected: row.expected as number,
        within: 3e-3,
      };
    });

  const tubes = () => {
    const { ID, contact_D, OD, E, diametral_interference } = inputs('R172') as Record<string, number>;
    return rings({
      bore: ID!,
      contact: contact_D!,
      outside: OD!,
      E: [E!, E!],
      nu: [0.292, 0.292],
      interference: diametral_interference!,
    });
  };
  checkRow('R172', () => ({ got: tubes()('pressure', 'MPa'), expected: expectedOf('R172'), within: 1e-3 }));
  checkRow('R173', () => ({
    got: tubes()('hoop_inner_outside', 'MPa'),
    expected: expectedOf('R173'),
    within: 1e-3,
  }));
  checkRow('R175', () => {
    // Von Mises of the inner tube at the interface; the cell compares the greater one, at its bore.
    const [hoop, p] = [tubes()('hoop_inner_outside', 'MPa'), tubes()('pressure', 'MPa')];
    const expected = rowById('R175').expected as { inner: number; outer: number };
    return [
      { got: Math.sqrt(hoop ** 2 + hoop * p + p ** 2), expected: expected.inner, near: 0.02 },
      { got: tubes()('outer_stress', 'MPa'), expected: expected.outer, near: 0.02 },
    ];
  });

  const sleeve = (id: string) => {
    const i = inputs(id) as Record<string, number>;
    return rings({
      bore: i.bush_ID!,
      contact: i.contact!,
      outside: i.sleeve_OD!,
      E: [i.E_bronze!, i.E_steel!],
      nu: [i.nu!, i.nu!],
      interference: i.max_interference!,
      unit: 'in',
    });
  };
  for (const [id, output, unit] of [
    ['R177', 'pressure', 'psi'],
    ['R178', 'hoop_outer_bore', 'psi'],
    ['R180', 'bore_growth', 'in'],
    ['R181', 'inner_shrinkage', 'in'],
  ] as const)
    checkRow(id, () => ({ got: sleeve(id)(output, unit), expected: expectedOf(id), within: 1e-3 }));

  /** The example gives the hoop stress allowed: the interference that makes it is found by halving. */
  const disc = () => {
    const i = inputs('R183') as Record<string, number>;
    const at = (interference: number) =>
      rings({
        bore: 2 * i.a!,
        contact: 2 * i.b!,
        outside: 2 * i.c!,
        E: [i.Es!, i.Eh!],
        nu: [i.nus!, i.nuh!],
        interference,
        length: i.L!,
        friction: i.f!,
      });
    let [low, high] = [0.001, 0.5];
    for (let n = 0; n < 40; n++) {
      const middle = (low + high) / 2;
      if (at(middle)('hoop_outer_bore', 'MPa') < i.sigma_max!) low = middle;
      else high = middle;
    }
    return at(low);
  };
  checkRow('R183', () => ({ got: disc()('pressure', 'MPa'), expected: expectedOf('R183'), within: 1e-3 }));
  checkRow('R185', () => ({ got: disc()('axial_force', 'kN'), expected: expectedOf('R185'), within: 1e-3 }));
  checkRow('R186', () => ({
    got: disc()('torque_held', 'kN.m'),
    expected: expectedOf('R186'),
    within: 1e-3,
  }));

  // The print gives the answer alone: tyre 3/8 in thick on a rim 16 in outside and 1 in thick, hoop stress 20 000 psi at the
  // bore of the tyre (from memory of the textbook problem). The interference that makes it is found by halving.
  checkRow('R191', () => {
    const { E_o, nu_o, E_i, nu_i } = inputs('R191') as Record<string, number>;
    const at = (interference: number) =>
      rings({
        bore: 14,
        contact: 16,
        outside: 16.75,
        E: [E_i!, E_o!],
        nu: [nu_i!, nu_o!],
        interference,
        unit: 'in',
      })('hoop_outer_bore', 'psi');
    let [low, high] = [0.001, 0.1];
    for (let n = 0; n < 30; n++) {
      const middle = (low + high) / 2;
      if (at(middle) < 20000) low = middle;
      else high = middle;
    }
    return { got: 16 - low, expected: expectedOf('R191'), near: 1e-5 };
  });

  checkRow('R188', () => {
    const { ro, R, E, delta_diam } = inputs('R188') as Record<string, number>;
    const solved = rings({
      bore: 0,
      contact: 2 * R!,
      outside: 2 * ro!,
      E: [E!, E!],
      nu: [0.3, 0.3],
      interference: delta_diam!,
    });
    return { got: solved('hoop_outer_bore', 'MPa'), expected: expectedOf('R188'), within: 1e-3 };
  });
  checkRow('R189', () => {
    const { ri, R, ro, E, radial } = inputs('R189') as Record<string, number>;
    const solved = rings({
      bore: 2 * ri!,
      contact: 2 * R!,
      outside: 2 * ro!,
      E: [E!, E!],
      nu: [0.3, 0.3],
      interference: 2 * radial!,
    });
    return { got: solved('pressure', 'MPa'), expected: expectedOf('R189'), near: 0.01 };
  });
  checkRow('R193', () => {
    const i = inputs('R122') as Record<string, number>;
    const solved = rings({
      bore: i.inner_ID!,
      contact: i.contact_D!,
      outside: i.outer_OD!,
      E: [i.E_inner!, i.E_outer!],
      nu: [i.nu_inner!, i.nu_outer!],
      interference: i.diametral_interference!,
      length: 40,
      friction: 0.15,
    });
    // The row leaves length and friction out; their product follows from the press force of R701, 11.84 kN.
    return [
      { got: solved('torque_held', 'N.m'), expected: expectedOf('R193'), within: 1e-5 },
      { got: solved('axial_force', 'kN'), expected: 11.84, near: 0.005 },
    ];
  });
});
