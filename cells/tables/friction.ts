import type { Origin, Property } from './table.ts';
import { fromMemory, property, seen } from './table.ts';

/**
 * Coefficients of friction of interference fits, as ranges: sources differ by a factor of two and more, and finish,
 * speed and lubricant move the figure further. `press` is pushing in or out lengthwise; `shrink` is the grip of a joint
 * put together by heat or cold. The figure read in print is followed, the range takes in the others: take the high end
 * for the press needed, the low end for the grip that can be counted on.
 */
export interface FrictionPair {
  key: string;
  name: string;
  press: Property;
  shrink: Property;
  /** The friction is that of wet retaining compound, which may set on the way. */
  wet?: true;
  note?: string;
}

const textbook = seen(
  'lecture notes after Ugural and Shigley: 0.15 to 0.20 for press and shrink fits; DIN 7190-1 lower (from memory)',
);
const textbookExample = seen(
  'press-fit example after Ugural, Mechanical Design: 0.15 taken for steel in cast iron; DIN 7190-1 0.06 to 0.11 (from memory)',
);
const din = fromMemory('DIN 7190-1, tables of adhesion coefficients');
const practice = fromMemory('common practice, no source');

const mu = (value: number, low: number, high: number, origin: Origin): Property =>
  property(1, value, [low, high], origin);

const flag = (value: number): Property => property(1, value, [value, value], practice);

export const frictionPairs: readonly FrictionPair[] = [
  {
    key: 'steel-steel-dry',
    name: 'Steel in steel, dry and degreased',
    press: mu(0.15, 0.08, 0.2, textbook),
    shrink: mu(0.18, 0.15, 0.2, textbook),
  },
  {
    key: 'steel-steel-oiled',
    name: 'Steel in steel, oiled',
    press: mu(0.08, 0.07, 0.15, din),
    shrink: mu(0.14, 0.1, 0.16, din),
  },
  {
    key: 'steel-cast-iron-dry',
    name: 'Steel in cast iron, dry',
    press: mu(0.15, 0.06, 0.2, textbookExample),
    shrink: mu(0.16, 0.1, 0.2, din),
  },
  {
    key: 'steel-cast-iron-oiled',
    name: 'Steel in cast iron, oiled',
    press: mu(0.08, 0.05, 0.12, din),
    shrink: mu(0.12, 0.08, 0.16, din),
  },
  {
    key: 'bronze-steel-dry',
    name: 'Bronze or brass with steel, dry',
    press: mu(0.07, 0.04, 0.15, din),
    shrink: mu(0.14, 0.07, 0.18, din),
  },
  {
    key: 'bronze-steel-oiled',
    name: 'Bronze or brass with steel, oiled',
    press: mu(0.055, 0.04, 0.1, din),
    shrink: mu(0.09, 0.05, 0.14, din),
  },
  {
    key: 'bronze-cast-iron-dry',
    name: 'Bronze or brass with cast iron, dry',
    press: mu(0.07, 0.04, 0.15, din),
    shrink: mu(0.14, 0.07, 0.18, din),
  },
  {
    key: 'bronze-cast-iron-oiled',
    name: 'Bronze or brass with cast iron, oiled',
    press: mu(0.055, 0.04, 0.1, din),
    shrink: mu(0.09, 0.05, 0.14, din),
  },
  {
    key: 'aluminium-steel-dry',
    name: 'Aluminium with steel or cast iron, dry',
    press: mu(0.07, 0.02, 0.15, din),
    shrink: mu(0.12, 0.08, 0.18, din),
    note: 'Picks up and galls when pressed dry: heat or cool it in, or oil it.',
  },
  {
    key: 'aluminium-steel-oiled',
    name: 'Aluminium with steel or cast iron, oiled',
    press: mu(0.05, 0.02, 0.1, din),
    shrink: mu(0.09, 0.05, 0.14, din),
  },
  {
    key: 'stainless-stainless-oiled',
    name: 'Stainless in stainless, lubricated',
    press: mu(0.12, 0.07, 0.25, practice),
    shrink: mu(0.15, 0.1, 0.25, practice),
    note: 'Galls: use a lubricant made for it, or shrink.',
  },
  {
    key: 'plastic-metal-dry',
    name: 'Plastic bush in metal, dry',
    press: mu(0.2, 0.1, 0.35, practice),
    shrink: mu(0.2, 0.1, 0.35, practice),
  },
  {
    key: 'metal-retaining-compound',
    name: 'Metal with wet retaining compound',
    press: mu(0.1, 0.05, 0.15, practice),
    shrink: mu(0.1, 0.05, 0.15, practice),
    wet: true,
    note: 'Wet, and still wet when home: where it sets on the way it shears over the whole area, many times this. Name the compound beside it.',
  },
];

export const frictionByKey = (key: string): FrictionPair | undefined =>
  frictionPairs.find((pair) => pair.key === key);

export const frictionTable = {
  title: 'Friction of interference fits',
  rows: frictionPairs.map(({ key, name, press, shrink, wet, note }) => ({
    key,
    name,
    columns: { press, shrink, wet: flag(wet ? 1 : 0) },
    ...(note === undefined ? {} : { note }),
  })),
};
