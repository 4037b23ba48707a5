import type { TradeFunction } from '../record/cell.ts';
import { type FilmPoint, filmAt } from '../tables/raimondi.ts';
import { isProblem } from '../tables/table.ts';
import { dynamicViscosity } from '../tables/viscosity.ts';

const read = (name: string, purpose: string, of: (film: FilmPoint) => number): TradeFunction => ({
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
  source: 'Raimondi & Boyd, ASLE Transactions 1 (1958) 159-209, full bearing (from memory)',
});

const functions: readonly TradeFunction[] = [
  read('FILMLEAST', 'Least film over radial clearance', (film) => 1 - film.eccentricity),
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
    source: 'Walther line, ASTM D341 and DIN 51563 (from memory)',
  },
];

export default functions;
