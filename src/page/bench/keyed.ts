import { spacedReadings } from '../entry/spaced-readings.ts';
import { isReading, type ReadingsText, splitReadings } from './readings-text.ts';

const UNITS_ALIKE: Readonly<Record<string, string>> = { '"': 'in', '″': 'in', '”': 'in', inch: 'in' };

const unitAs = (unit: string): string => UNITS_ALIKE[unit.toLowerCase()] ?? unit;

/** Whether two ways to write a unit mean the same one. */
export const sameUnit = (a: string, b: string): boolean =>
  unitAs(a).toLowerCase() === unitAs(b).toLowerCase();

/** One reading as keyed in or sent by a gauge: its figure, without leading noughts or a plus, and the unit it came with. */
export const keyedReading = (text: string): { figure: string; unit: string } | undefined => {
  const [, figure = '', unit = ''] = /^\s*\+?\s*(-?[\d./ -]*?)\s*([a-zµ"″”]*)\s*$/iu.exec(text) ?? [];
  const plain = figure.replace(/^(-?)0+(?=\d)/, '$1');
  return isReading(plain) ? { figure: plain, unit } : undefined;
};

/** Several readings pasted at once, place by place; nothing where it is one, or anything else. */
export const listedReadings = (text: string, comma: boolean): ReadingsText | undefined => {
  const marked = comma || !text.includes('.') ? text.replace(/(\d),(?=\d)/g, '$1.') : text;
  const split = splitReadings(spacedReadings(marked.trim()));
  if (!split || split.places.flat().length < 2) return undefined;
  const places = split.places.map((place) => place.map((one) => keyedReading(one)));
  if (!places.flat().every((one) => one !== undefined)) return undefined;
  const units = [...places.flat().flatMap((one) => one!.unit || []), ...(split.tail ? [split.tail] : [])];
  if (!units.every((unit) => sameUnit(unit, units[0]!))) return undefined;
  return { places: places.map((place) => place.map((one) => one!.figure)), tail: units.at(-1) ?? '' };
};
