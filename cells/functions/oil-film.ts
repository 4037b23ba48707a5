import type { Movement, TradeFunction } from '../record/cell.ts';
import { type FilmPoint, filmAt, filmRows } from '../tables/raimondi.ts';
import { isProblem } from '../tables/table.ts';
import { dynamicViscosity } from '../tables/viscosity.ts';

/** Lengths at which a film is looked at between the ends of its range. */
const LENGTHS = 3;

/**
 * Ends of a figure of the film. At one length it goes one way between two rows of the table; over the lengths it is
 * smooth, so that it reaches beyond those looked at by less than two of them lie apart.
 */
const filmBounds =
  (of: (film: FilmPoint) => number): NonNullable<Movement['bounds']> =>
  (sommerfeld, ratio) => {
    const [low, high] = sommerfeld as readonly [number, number];
    const [short, long] = ratio as readonly [number, number];
    const ends: [number, number][] = [];
    for (let i = 0; i < LENGTHS; i++) {
      const x = Math.min(long, short + ((long - short) * i) / (LENGTHS - 1));
      const values: number[] = [];
      for (const S of [low, high, ...filmRows(x).filter((S) => S > low && S < high)]) {
        const film = filmAt(S, x);
        if (isProblem(film)) return { message: film.problem };
        values.push(of(film));
      }
      ends.push([Math.min(...values), Math.max(...values)]);
    }
    const apart = ends
      .slice(1)
      .flatMap(([a, b], i) => [Math.abs(a - ends[i]![0]), Math.abs(b - ends[i]![1])])
      .reduce((most, one) => Math.max(most, one), 0);
    return [Math.min(...ends.map(([a]) => a)) - apart, Math.max(...ends.map(([, b]) => b)) + apart];
  };

const read = (
  name: string,
  purpose: string,
  of: (film: FilmPoint) => number,
  movement: Movement = { bounds: filmBounds(of) },
): TradeFunction => ({
  name,
  purpose: `${purpose} of a full journal bearing, by its Sommerfeld number and its length over diameter.`,
  takes: [
    { name: 'Sommerfeld number', quantity: 'number' },
    { name: 'length over diameter', quantity: 'number' },
  ],
  gives: 'number',
  compute: (sommerfeld, ratio) => {
    const film = filmAt(Number(sommerfeld), Number(ratio));
    return isProblem(film) ? { message: film.problem } : of(film);
  },
  movement,
  source: 'Raimondi & Boyd, ASLE Transactions 1 (1958) 159-209, full bearing (from memory)',
});

const functions: readonly TradeFunction[] = [
  read('FILMLEAST', 'Least film over radial clearance', (film) => 1 - film.eccentricity, {
    moves: { 'Sommerfeld number': 'rising', 'length over diameter': 'rising' },
  }),
  read('FILMFRICTION', 'Friction variable (r/c) f', (film) => film.friction),
  read('FILMFLOW', 'Flow variable Q / (r c N l)', (film) => film.flow),
  read('FILMSIDEFLOW', 'Part of the flow that leaves at the sides', (film) => film.sideFlow),
  read('FILMPRESSURE', 'Mean pressure over greatest film pressure', (film) => film.pressure),
  {
    name: 'OILVISCOSITY',
    purpose:
      'Dynamic viscosity of an oil at a temperature, from its kinematic viscosity at 40 and 100 degC and its density.',
    takes: [
      { name: 'kinematic viscosity at 40 degC', quantity: 'kinematic viscosity' },
      { name: 'kinematic viscosity at 100 degC', quantity: 'kinematic viscosity' },
      { name: 'density at 15 degC', quantity: 'density' },
      { name: 'temperature', quantity: 'temperature' },
    ],
    gives: 'viscosity',
    compute: (at40, at100, density, temperature) => {
      const oil = { at40: Number(at40), at100: Number(at100), density: Number(density) };
      const found = dynamicViscosity(oil, Number(temperature));
      return typeof found === 'number' ? found : { message: found.problem };
    },
    // Above 100 degC, or below 40, the line swings about the figure that is further off.
    movement: {
      moves: {
        'kinematic viscosity at 40 degC': 'either way',
        'kinematic viscosity at 100 degC': 'either way',
        'density at 15 degC': 'rising',
        temperature: 'falling',
      },
    },
    source: 'Walther line, ASTM D341 and DIN 51563 (from memory)',
  },
];

export default functions;
