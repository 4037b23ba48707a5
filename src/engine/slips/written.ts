import { formatQuantity } from '../../../shared/quantities/figures.ts';
import { findUnit, type Unit } from '../../../shared/units/units.ts';
import type { Literal } from '../../language/syntax/syntax.ts';
import type { Datum } from './datum.ts';
import { digitsOf } from './rewrite.ts';

const unitOf = (datum: Datum): Unit => findUnit(datum.system) as Unit;

/** A size in the system a text is written in, to the places it is written to. */
export function written(si: number, datum: Datum): string {
  const inches = datum.system === 'in';
  const places = datum.literals.filter((one) => one.unit === datum.system).map((one) => digitsOf(one));
  return formatQuantity(si, unitOf(datum), {
    decimals: Math.min(6, Math.max(inches ? 4 : 3, ...places)),
  }).replaceAll('\u00a0', ' ');
}

const steps = new WeakMap<Datum, number>();

/** Worth of one step of the last figure written, SI; of several the finest: who leaves a digit out has read no coarser. */
export function stepOf(datum: Datum): number {
  let step = steps.get(datum);
  if (step === undefined) {
    step = finestOf(datum);
    steps.set(datum, step);
  }
  return step;
}

function finestOf(datum: Datum): number {
  const step = (one: Literal): number =>
    (findUnit(one.unit ?? '')?.factor ?? 1) * 10 ** -(one.digits ?? (datum.system === 'in' ? 4 : 3));
  return Math.min(...datum.literals.map(step));
}
