import type { TradeFunction } from '../cell.ts';
import { type Film, filmAt } from '../tables/film/film.ts';
import { isProblem } from '../tables/table.ts';

const read = (name: string, purpose: string, of: keyof Film): TradeFunction => ({
  name,
  purpose: `${purpose} of a full journal bearing, by its Sommerfeld number and its length over diameter.`,
  takes: [
    { name: 'Sommerfeld number', quantity: 'number' },
    { name: 'length over diameter', quantity: 'number' },
  ],
  gives: 'number',
  compute: (sommerfeld, ratio) => {
    const film = filmAt(Number(sommerfeld), Number(ratio));
    return isProblem(film) ? { message: film.problem } : film[of];
  },
  source: 'Raimondi & Boyd, ASLE Transactions 1 (1958) 159-209, tables of the full bearing (from memory)',
});

const functions: readonly TradeFunction[] = [
  read('FILMLEAST', 'Least film over radial clearance', 'least'),
  read('FILMFRICTION', 'Friction variable (r/c) f', 'friction'),
  read('FILMFLOW', 'Flow variable Q / (r c N l)', 'flow'),
  read('FILMSIDEFLOW', 'Part of the flow that leaves at the sides', 'side'),
  read('FILMPRESSURE', 'Mean pressure over greatest film pressure', 'pressure'),
];

export default functions;
