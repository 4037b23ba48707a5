/** An entry of readings taken apart: texts by place along the length and direction round, and the unit and doubt behind them all. */
export interface ReadingsText {
  places: string[][];
  tail: string;
}

const SPREAD = /\s*(?:±|\+\/?-).*$/su;
const READING = /^([+-]?\s*\d*[\d\s./-]*)\s*([^\d]*)$/u;

/** @returns nothing for what is no plain list of readings: a formula, a gauge setting, a range. */
export const splitReadings = (entry: string): ReadingsText | undefined => {
  const text = entry.trim();
  if (text === '') return { places: [], tail: '' };
  if (/^=|^set\b|\.\.|:/i.test(text)) return undefined;
  const spread = SPREAD.exec(text)?.[0] ?? '';
  const places = text
    .slice(0, text.length - spread.length)
    .split('|')
    .map((place) => place.split(';').map((reading) => reading.trim()));
  const last = places.at(-1)!;
  const [, number = '', unit = ''] = READING.exec(last.at(-1) ?? '') ?? [];
  if (number.trim() === '' || places.flat().some((reading) => !/\d/.test(reading))) return undefined;
  last[last.length - 1] = number.trim();
  return { places, tail: `${unit.trim()}${spread ? ` ${spread.trim()}` : ''}`.trim() };
};

/** The entry again; places and directions that were left out close up. */
export const joinReadings = ({ places, tail }: ReadingsText): string => {
  const list = places
    .map((place) => place.filter((reading) => reading.trim() !== '').join('; '))
    .filter((place) => place !== '')
    .join(' | ');
  return list === '' ? '' : `${list}${tail ? ` ${tail}` : ''}`;
};

/** Whether a text is a whole reading: `2.2549`, `.0015`, `2 1/4`, `27/64`, `-3`. */
export const isReading = (text: string): boolean =>
  /^[+-]?(?:\d+(?:\.\d+)?|\.\d+|(?:\d+[ -])?\d+\/[1-9]\d*)$/.test(text.trim());
