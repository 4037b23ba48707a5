import { decimalRatio } from '../../../shared/units/exact.ts';
import type { Unit } from '../../../shared/units/unit.ts';
import { isUnit, parseUnit } from '../../../shared/units/units.ts';
import type { Entry, Span, Spread } from '../syntax/syntax.ts';
import { differenceSI, toLiteral } from './amount.ts';
import type { EntryContext } from './context.ts';
import { type Reading, wanted } from './reading.ts';

/** A number and its unit where they stand in a text. */
interface Place extends Span {
  /** End of the number. */
  end: number;
  digits: number;
  unit: Unit;
}

/** A figure of spread; how far it reaches by its number, for the value alone is typed anew most often. */
interface SpreadPlace extends Place {
  reach: Map<string, number>;
}

/** `45.123 mm ± 20 um`: a plain value, perhaps with one figure of spread, each with its unit. */
export interface PlainForm {
  value: Place;
  spread?: SpreadPlace;
}

const NUMBER = String.raw`(\d+(?:\.(\d+))?)`;
const UNIT = String.raw`(\s*)([^\s\d.±+;|()-]+)`;
const PLAIN = new RegExp(
  String.raw`^(\s*)${NUMBER}${UNIT}(?:(\s*(?:±|\+/-)\s*)${NUMBER}(?:${UNIT})?)?\s*$`,
  'u',
);

/** Everything beside the text that its reading may depend on. */
export const contextKey = ({ quantity, role, units, display }: EntryContext): string =>
  `${quantity ?? ''} ${role ?? ''} ${units.length} ${units.ton ?? ''} ${units.tenth ?? ''} ${display ?? ''}`;

const placeOf = (
  r: Reading,
  from: number,
  [number = '', decimals = '', gap = '', name]: (string | undefined)[],
  bare?: Unit,
): Place | undefined => {
  const { ton, tenth } = r.context.units;
  const unit = name === undefined ? bare : parseUnit(name, { ...wanted(r), ton, tenth });
  if (!unit || !isUnit(unit)) return undefined;
  const end = from + number.length;
  return { from, end, to: end + gap.length + (name?.length ?? 0), digits: decimals.length, unit };
};

/** The plain form of a text that was read as `entry`; undefined where it has none, or would give something else. */
export const plainForm = (r: Reading, entry: Entry): PlainForm | undefined => {
  const match = entry.kind === 'value' && r.edits.length === 0 ? PLAIN.exec(r.text) : null;
  if (!match) return undefined;
  const [, lead = '', ...rest] = match;
  const value = placeOf(r, lead.length, rest.slice(0, 4));
  if (!value) return undefined;
  const form: PlainForm = { value };
  const [mark, ...second] = rest.slice(4);
  if (mark !== undefined) {
    const spread = placeOf(r, value.to + mark.length, second, value.unit);
    if (!spread) return undefined;
    // A whole figure without a unit is asked about, unless it is nought.
    if (second[3] === undefined && spread.digits === 0) return undefined;
    form.spread = { ...spread, reach: new Map() };
  }
  const again = retyped(r, form);
  return again && JSON.stringify(again) === JSON.stringify(entry) ? form : undefined;
};

const amountAt = (r: Reading, { from, end, to, digits, unit }: Place) => {
  const ratio = decimalRatio(r.text.slice(from, end));
  return ratio && { ratio, digits, unit, from, to };
};

const KEPT = 100;

const reachOf = (r: Reading, place: SpreadPlace): number => {
  const number = r.text.slice(place.from, place.end);
  const known = place.reach.get(number);
  if (known !== undefined) return known;
  const amount = amountAt(r, place);
  const reach = amount ? differenceSI(amount, place.unit) : Number.NaN;
  if (place.reach.size >= KEPT) place.reach.clear();
  place.reach.set(number, reach);
  return reach;
};

/** The entry of a text that has other digits than the one whose form this is, and nothing else. */
export const retyped = (reading: Reading, form: PlainForm): Entry | undefined => {
  // What cannot be read in this way is told by the reading proper.
  const r: Reading = { ...reading, problems: [] };
  const amount = amountAt(r, form.value);
  const value = amount && toLiteral(r, amount, form.value.unit);
  if (!value) return undefined;
  if (!form.spread) return { kind: 'value', value };
  const high = reachOf(r, form.spread);
  if (!Number.isFinite(high)) return undefined;
  const spread: Spread = { low: -high, high, percent: false, form: 'within' };
  return { kind: 'value', value, spread };
};
