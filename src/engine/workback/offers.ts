import type { Computed } from '../computed.ts';
import type { Row } from '../network/layout.ts';
import { type Free, nominalOf, Path } from '../trial/path.ts';
import type { FigurePlace } from '../trial/place.ts';
import { inputsOf, type Movable, staying } from './inputs.ts';
import type { Offered, Offers, Want } from './question.ts';
import { wantedOf } from './wanted.ts';
import { figureName, planAt } from './work-back.ts';

/** A thousandth of an inch, m, by which lengths are compared; of a temperature one kelvin, of all else a hundredth. */
const THOU = 25.4e-6;
const SHARE = 0.01;

/**
 * The inputs that move a figure: sizes still to be cut first, then by how far it goes with a thousandth of an inch, a
 * kelvin or a hundredth of each. Rows of a table come last, by name: how far they go shows when they are tried.
 */
export function offersFor(book: Computed, figure: FigurePlace, want: Want): Offers {
  const plan = planAt(book, figure);
  const wanted = plan ? wantedOf(book, plan, want) : 'has no value.';
  if (typeof wanted === 'string') return { inputs: [], reason: `\`${figureName(book, figure)}\` ${wanted}` };
  const all = inputsOf(book, wanted.isLimit);
  const moved = all.filter((one): one is Movable & { free: Free } => one.free !== undefined);
  // Several may stand for one row of the sheet only by mistake; each is a lane of its own.
  const width = 1 + 2 * moved.length;
  const path = new Path(
    book,
    moved.map(({ free }) => free),
    wanted.rows,
    wanted.cases,
    width,
  );
  const values = moved.map(({ free, quantity }, k) => {
    const here = free.moves === 'spread' ? 1 : nominalOf(book, free.row);
    const block = new Float64Array(width).fill(here);
    const step = stepOf(here, quantity, free.moves === 'spread');
    block[1 + 2 * k] = here - step;
    block[2 + 2 * k] = here + step;
    return block;
  });
  path.run(values, width);
  const distances = new Float64Array(width);
  wanted.distance(path, width, distances);
  const here = distances[0] as number;
  const offers: Offered[] = [];
  moved.forEach((one, k) => {
    const apart = [distances[1 + 2 * k], distances[2 + 2 * k]].map((value) =>
      Math.abs((value as number) - here),
    );
    const known = apart.filter((value) => !Number.isNaN(value));
    const influence = known.length > 0 ? Math.max(...known) : 0;
    // Nothing to go by yet where the figure has no value: what leads to it is offered all the same.
    const leads = leadsTo([one.free.row], wanted.rows, wanted.isLimit);
    if (influence > 1e-12 * wanted.scale || (Number.isNaN(here) && leads))
      offers.push(offered(one, influence));
  });
  const rowsOf = (cell: string): Row[] =>
    (book.cells.get(cell)?.rows ?? []).flatMap(({ key }) => book.network.rows.get(key) ?? []);
  for (const one of all)
    if (one.isChoice && leadsTo(rowsOf(one.cell), wanted.rows, wanted.isLimit)) offers.push(offered(one, 0));
  offers.sort(
    (a, b) =>
      Number(b.isToCut) - Number(a.isToCut) ||
      Number(a.isChoice ?? false) - Number(b.isChoice ?? false) ||
      b.influence - a.influence,
  );
  if (offers.length > 0) return { inputs: offers };
  const stay = staying(book, (cell) => leadsTo(rowsOf(cell), wanted.rows, wanted.isLimit));
  return { inputs: [], reason: ['Nothing that may still move has an influence on it.', ...stay].join(' ') };
}

const offered = (
  { free: _free, rows: _rows, which: _which, usual: _usual, entry: _entry, ...rest }: Movable,
  influence: number,
): Offered => ({
  ...rest,
  influence,
});

const stepOf = (here: number, quantity: string | undefined, isSpread: boolean): number => {
  if (isSpread) return SHARE;
  if (quantity === 'length') return THOU;
  if (quantity === 'temperature' || quantity === 'temperature difference') return 1;
  return SHARE * (Math.abs(here) || 1);
};

/** True where rows lead to one of those asked for; by nominals alone, or by how far sources reach too. */
const leadsTo = (from: Iterable<Row>, to: readonly Row[], bySpread: boolean): boolean => {
  const seen = new Set<Row>(from);
  for (const row of seen) {
    if (to.includes(row)) return true;
    for (const user of row.usedBy)
      if (bySpread || user.source === undefined || user.template?.keys.includes(row.key)) seen.add(user);
  }
  return false;
};
