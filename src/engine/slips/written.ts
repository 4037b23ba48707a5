import { formatQuantity } from '../../../shared/quantities/figures.ts';
import { findUnit, type Unit } from '../../../shared/units/units.ts';
import type { Literal } from '../../language/syntax/syntax.ts';
import type { Datum } from './datum.ts';
import { digitsOf } from './rewrite.ts';

const unitOf = (datum: Datum): Unit => findUnit(datum.system) as Unit;

/** What a drawing gives its limits to, SI. */
export const usualStep = (system: Datum['system']): number =>
  (findUnit(system) as Unit).factor * (system === 'in' ? 1e-4 : 1e-3);

const texts = new WeakMap<Datum, Map<number, string>>();
/** So many sizes a text is held against are kept as written. */
const KEPT = 32;

/** A size in the system a text is written in, to the places it is written to. */
export function written(si: number, datum: Datum): string {
  const known = texts.get(datum);
  const found = known?.get(si);
  if (found !== undefined) return found;
  const inches = datum.system === 'in';
  const places = datum.literals.filter((one) => one.unit === datum.system).map((one) => digitsOf(one));
  const text = formatQuantity(si, unitOf(datum), {
    decimals: Math.min(6, Math.max(inches ? 4 : 3, ...places)),
  }).replaceAll('\u00a0', ' ');
  if (known && known.size < KEPT) known.set(si, text);
  else texts.set(datum, new Map([[si, text]]));
  return text;
}

/** A size in the system of the sheet, to its usual places. */
export const plainly = (si: number, system: Datum['system']): string =>
  formatQuantity(si, findUnit(system) as Unit, { decimals: system === 'in' ? 4 : 3 }).replaceAll(
    '\u00a0',
    ' ',
  );

const steps = new WeakMap<Datum, number>();

/**
 * Worth of one step of what was read, SI: of the last figure written, of several the finest, for who leaves a digit out
 * has read no coarser; of five of them where three readings or more all end so, of two where five do.
 */
export function stepOf(datum: Datum): number {
  let step = steps.get(datum);
  if (step === undefined) {
    const { set, literals } = datum;
    // A count typed apart from its setting has its division.
    const isCount = set !== undefined && literals.length === 1 && literals[0]?.digits === undefined;
    step = isCount ? Math.abs(set.division.value) : finestOf(datum);
    steps.set(datum, step);
  }
  return step;
}

function finestOf(datum: Datum): number {
  const usual = datum.system === 'in' ? 4 : 3;
  const factor = (one: Literal): number => findUnit(one.unit ?? '')?.factor ?? 1;
  // A bare 0 has no last figure: it is as fine as those beside it, or as is usual.
  const written = datum.literals.filter((one) => one.value !== 0 || one.digits);
  const places = (one: Literal): number => (one.value === 0 ? one.digits || usual : (one.digits ?? usual));
  const finest = Math.min(
    ...(written.length > 0 ? written : datum.literals).map((one) => factor(one) * 10 ** -places(one)),
  );
  const steps = datum.literals.map(({ value }) => value / finest);
  return isInFives(steps) ? 5 * finest : isInTwos(steps) ? 2 * finest : finest;
}

/** Sizes in steps of the last figure: true where the gauge was read to five of them, but for one that may be out. */
function isInFives(steps: readonly number[]): boolean {
  const off = steps.filter((x) => Math.abs(x / 5 - Math.round(x / 5)) > 1e-3).length;
  if (steps.length - off < 3 || off > (steps.length > 4 ? 1 : 0)) return false;
  // The same figure over and over tells nothing, nor does one more that is far from it.
  const figures = [...new Set(steps.map((x) => Math.round(x)))];
  return (
    figures.length > 2 ||
    (figures.length === 2 && Math.abs((figures[0] as number) - (figures[1] as number)) <= 5)
  );
}

/** The same of a scale divided by two of them, as a vernier to 0.02 mm is. */
function isInTwos(steps: readonly number[]): boolean {
  if (steps.length < 5 || steps.some((x) => Math.abs(x / 2 - Math.round(x / 2)) > 1e-3)) return false;
  return steps.some((x) => Math.abs(x - (steps[0] as number)) > 0.5);
}
