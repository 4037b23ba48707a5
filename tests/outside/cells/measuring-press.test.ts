import { describe, expect, test } from 'vitest';
import { cell, figure, one, remarksOf, sheetOf, valueIn } from './sheet-of.ts';

const press = {
  diameter: '100 mm',
  fit_length: '100 mm',
  contact_pressure: '21.724 MPa',
  friction: '0.15',
  ram_bore: '50 mm',
  rated_pressure: '70 MPa',
};

describe('bush at the press', () => {
  test('R185 hollow steel shaft in a cast-iron disc: assembly force 102.37 kN (seen: Ugural, press-fit example)', () => {
    expect(Math.abs(one('bush-press', press)('force', 'kN') / 102.37 - 1)).toBeLessThan(0.001);
  });
  test('R701 ram of 50 mm at 70 MPa: 137.445 kN; 60.298 bar for 11.84 kN (computed)', () => {
    const it = one('bush-press', {
      ...press,
      diameter: '50 mm',
      fit_length: '50 mm',
      friction: '0.12',
      contact_pressure: '= 11.84 kN / (0.12 * PI() * 50 mm * 50 mm)',
    });
    expect(Math.abs(it('press_force', 'kN') / 137.445 - 1)).toBeLessThan(1e-4);
    expect(Math.abs(it('gauge_pressure', 'bar') / 60.298 - 1)).toBeLessThan(1e-4);
  });
  test('the longest bush takes the whole force of the press', () => {
    const longest = one('bush-press', press)('longest', 'mm');
    const it = one('bush-press', { ...press, fit_length: `${longest} mm` });
    expect(it('force', 'kN')).toBeCloseTo(it('press_force', 'kN'), 9);
    expect(it('gauge_pressure', 'MPa')).toBeCloseTo(70, 9);
  });
  test('a press too weak is said', () => {
    expect(remarksOf('bush-press', { ...press, rated_pressure: '20 MPa' }).join(' ')).toContain('too weak');
  });
});

describe('ram, frame and draw bolt', () => {
  const hollow = {
    ...press,
    ram_bore: '2.5 in',
    ram_rod: '1.25 in',
    rated_pressure: '1000 psi',
    contact_pressure: '= 800 psi * PI() / 4 * (2.5^2 - 1.25^2) * 1 in2 / (0.15 * PI() * 100 mm * 100 mm)',
  };
  test('a 2.5 in ram with a 1.25 in rod shows 800 psi where the whole bore would show 600 (recomputed: F / A)', () => {
    expect(one('bush-press', hollow)('gauge_pressure', 'psi')).toBeCloseTo(800, 6);
    expect(one('bush-press', { ...hollow, ram_rod: '' })('gauge_pressure', 'psi')).toBeCloseTo(600, 6);
  });
  test('a frame weaker than its ram is the limit, also in short tons', () => {
    const it = one('bush-press', { ...press, ram_bore: '80 mm', frame_capacity: '20 short_tonf' });
    expect(it('press_force', 'lbf')).toBeCloseTo(40000, 6);
    expect(it('margin', '')).toBeCloseTo((20 * 2000 * 4.4482216152605) / it('force', 'N'), 9);
    expect(remarksOf('bush-press', { ...press, frame_capacity: '5 short_tonf' }).join(' ')).toContain(
      'too weak',
    );
  });
  test('the gauge read when home gives force and friction back', () => {
    const it = one('bush-press', { ...press, friction: '0.12' });
    const read = one('bush-press', { ...press, end_pressure: `${it('gauge_pressure', 'bar')} bar` });
    expect(read('force_measured', 'kN')).toBeCloseTo(it('force', 'kN'), 9);
    expect(read('friction_measured', '')).toBeCloseTo(0.12, 9);
  });
  test('compound that sets on the way takes many times the force of friction, and its doubt is in it', () => {
    const wet = { ...press, contact_pressure: '8 MPa', friction: '0.1' };
    const dry = one('bush-press', wet)('force', 'kN');
    const sheet = sheetOf({ it: cell('bush-press', { ...wet, wet_compound: 'high-strength' }) });
    const force = figure(sheet, 'it', 'force');
    expect(force.value / 1000 / dry).toBeGreaterThan(6);
    expect(force.value / 1000 / dry).toBeLessThan(10);
    expect(force.low / 1000 / dry).toBeCloseTo(1, 6);
    expect(force.high / 1000 / dry).toBeGreaterThan(15);
  });
  test('a draw bolt past its share of proof is said', () => {
    const drawn = { ...press, draw_thread: 'M16', draw_grade: '8.8' };
    expect(one('bush-press', drawn)('draw_stress', 'MPa')).toBeCloseTo(102367 / 156.67, 0);
    expect(remarksOf('bush-press', drawn).join(' ')).toContain('draw bolt is stretched');
    expect(remarksOf('bush-press', { ...press, draw_thread: 'M16' }).join(' ')).toContain('thread and grade');
  });
});

// The same shaft and disc as a fit of the library: bore 50 mm, contact 100 mm, outside 250 mm.
const ring = (modulus: string, poisson: string) =>
  cell('material', {
    own_modulus: modulus,
    own_poisson: poisson,
    own_yield: '300 MPa',
    own_expansion: '11e-6 1/K',
    own_density: '7800 kg/m3',
    own_max_temperature: '300 degC',
  });
const withTrace = (trace: string, interference = '0.0510 mm', more: Record<string, string> = {}) =>
  sheetOf({
    steel: ring('210 GPa', '0.3'),
    iron: ring('70 GPa', '0.25'),
    planned_fit: cell('interference-fit', {
      contact_diameter: '100 mm',
      interference,
      inner_bore: '50 mm',
      outer_diameter: '250 mm',
      length: '100 mm',
      inner_material: 'steel',
      outer_material: 'iron',
      friction: '0.15',
    }),
    pressing: cell('ram-trace', { trace, fit: 'planned_fit', ...more }),
  });

describe('ram trace', () => {
  const sheet = withTrace('25 mm: 25.5925 kN; 50 mm: 51.185 kN; 100 mm: 102.37 kN');
  test('R183, R185 force over depth gives the contact pressure 21.724 MPa back (seen: Ugural, press-fit example)', () => {
    expect(Math.abs(valueIn('MPa', sheet, 'pressing', 'contact_pressure') / 21.724 - 1)).toBeLessThan(0.001);
    expect(valueIn('kN', sheet, 'pressing', 'force_at_end')).toBeCloseTo(102.37, 9);
  });
  test('the interference it implies makes that pressure in the fit (second way: the fit computed with it)', () => {
    const there = valueIn('mm', sheet, 'pressing', 'interference');
    const again = withTrace('100 mm: 102.37 kN; 50 mm: 51.185 kN', `${there} mm`);
    expect(valueIn('MPa', again, 'planned_fit', 'pressure')).toBeCloseTo(
      valueIn('MPa', sheet, 'pressing', 'contact_pressure'),
      9,
    );
    expect(valueIn('um', again, 'pressing', 'more_than_planned')).toBeCloseTo(0, 6);
  });
  test('least squares through the origin, and its standard error (recomputed: normal equation by hand)', () => {
    const scattered = withTrace('2 mm: 1.2 kN; 4 mm: 2.3 kN; 6 mm: 3.6 kN');
    const slope = 33.2 / 56;
    const rest = (1.2 - 2 * slope) ** 2 + (2.3 - 4 * slope) ** 2 + (3.6 - 6 * slope) ** 2;
    const error = Math.sqrt(rest / 2 / 56);
    expect(valueIn('N/mm', scattered, 'pressing', 'slope')).toBeCloseTo(1000 * slope, 6);
    expect(figure(scattered, 'pressing', 'slope').u / 1e6).toBeCloseTo(error, 9);
  });
  test('the doubt of the friction goes into the interference', () => {
    const doubtful = withTrace('50 mm: 51.185 kN; 100 mm: 102.37 kN', '0.0510 mm', {
      friction_here: '0.15 ± 0.03',
    });
    const found = figure(doubtful, 'pressing', 'interference');
    expect(found.high / found.value).toBeCloseTo(0.15 / 0.12, 2);
    expect(found.low / found.value).toBeCloseTo(0.15 / 0.18, 2);
  });
  test.each([
    ['', /blank/],
    ['2 mm', /colon/],
    ['2 mm: 1.2', /each with its unit/],
    ['1.2 kN: 2 mm', /Depth first/],
    ['2 furlong: 1 kN', /furlong/],
    ['0 mm: 0 kN; 0 mm: 1 kN', /two depths/],
    ['2 mm: 1 kN', /two depths/],
    ['2 mm: 1 kN; 2 mm: 1.1 kN', /two depths/],
  ])('a trace of "%s" is refused with the reason', (trace, reason) => {
    expect(() => valueIn('N/mm', withTrace(trace), 'pressing', 'slope')).toThrow(reason);
  });
  test.each([
    'falls: 10 mm: 40 kN; 20 mm: 30 kN; 30 mm: 20 kN',
    'leaps about: 10 mm: 50 kN; 20 mm: 2 kN; 30 mm: 90 kN; 40 mm: 1 kN',
  ])('no interference comes of a force that %s', (trace) => {
    const odd = withTrace(trace.replace(/^\D*: /, ''));
    expect(() => valueIn('um', odd, 'pressing', 'interference')).toThrow(/does not rise with depth/);
  });
  test('inches and pounds: a pound is a force here', () => {
    const pounds = withTrace('1 in: 2000 lb; 2 in: 4000 lbf');
    expect(valueIn('lbf/in', pounds, 'pressing', 'slope')).toBeCloseTo(2000, 6);
  });
  test.each([
    ['25 mm: 25,5925 kN; 50 mm: 51,1850 kN', 'a decimal comma'],
    ['25 mm 25.5925 kN\n50 mm\t51.185 kN', 'a pair a line, without colons'],
    ['25 mm, 25.5925 kN; 50 mm, 51.185 kN', 'a comma between'],
    ['2,5 cm: 25592,5 N; 5,0 cm: 51185 N', 'other units'],
  ])('%s is read: %s', (trace) => {
    expect(valueIn('N/mm', withTrace(trace), 'pressing', 'slope')).toBeCloseTo(1023.7, 6);
  });
  test('fractions of an inch, and short tons', () => {
    const tons = withTrace('1/2 in: 1 short_tonf; 1 1/2 in: 3 short_tonf');
    expect(valueIn('lbf/in', tons, 'pressing', 'slope')).toBeCloseTo(4000, 6);
  });
  test('a comma before three digits is asked about, and a fraction over nothing refused', () => {
    expect(() => valueIn('N/mm', withTrace('2 mm: 1,234 N; 4 mm: 2,468 N'), 'pressing', 'slope')).toThrow(
      /1\.234 or 1234/,
    );
    expect(() => valueIn('N/mm', withTrace('1/0 in: 1 kN; 2 mm: 2 kN'), 'pressing', 'slope')).toThrow(
      /no number/,
    );
  });
  test('compound in the planned fit is taken off before the interference is worked out', () => {
    const sheet2 = sheetOf({
      steel: ring('210 GPa', '0.3'),
      iron: ring('70 GPa', '0.25'),
      planned_fit: cell('interference-fit', {
        contact_diameter: '100 mm',
        interference: '0.0510 mm',
        inner_bore: '50 mm',
        outer_diameter: '250 mm',
        length: '100 mm',
        inner_material: 'steel',
        outer_material: 'iron',
        friction: '0.15',
        wet_compound: 'medium-strength',
        film_share: '0.2',
      }),
      pressing: cell('ram-trace', { trace: '50 mm: 98.3089 kN; 100 mm: 196.6178 kN', fit: 'planned_fit' }),
    });
    // 102.37 kN of friction and pi x 100 x 100 mm2 x 3 MPa = 94.2478 kN of film.
    expect(
      valueIn('kN', sheet2, 'planned_fit', 'axial_force') -
        valueIn('kN', sheet2, 'planned_fit', 'friction_force'),
    ).toBeCloseTo(94.2478, 4);
    expect(valueIn('MPa', sheet2, 'pressing', 'contact_pressure')).toBeCloseTo(21.724, 3);
    expect(valueIn('kN', sheet2, 'planned_fit', 'friction_force')).toBeCloseTo(
      (2 * valueIn('kN.m', sheet2, 'planned_fit', 'torque_held')) / 0.1,
      9,
    );
  });
  test('a bent trace is asked about', () => {
    const bent = withTrace('10 mm: 1 kN; 20 mm: 8 kN; 30 mm: 9 kN');
    const said = bent
      .byName('pressing')
      ?.remarks.map((one) => one.message)
      .join(' ');
    expect(said).toContain('not a straight line');
  });
});
