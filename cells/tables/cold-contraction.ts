import type { Property } from './table.ts';
import { celsius, fromMemory, property } from './table.ts';

/**
 * How much shorter a material is in liquid nitrogen: total contraction from 20 degC (293 K) to 77 K, as a fraction of
 * length. Expansion falls off with cold, so the room-temperature coefficient overstates it by a quarter. Keys are those of
 * the materials table. Ekin, Experimental Techniques for Low-Temperature Measurements, App. A6.4, and NIST cryogenic data.
 */
export interface ColdContraction {
  key: string;
  name: string;
  /** Keys under which sheets of earlier editions chose it. */
  formerKeys?: readonly string[];
  total: Property;
}

const ekin = fromMemory(
  'Ekin, Experimental Techniques for Low-Temperature Measurements, App. A6.4; NIST cryogenics',
);
const alike = fromMemory('taken like its neighbours in Ekin, App. A6.4');

const percent = (value: number, range: readonly [number, number], origin = ekin): Property =>
  property(0.01, value, range, origin);

export const coldContractions: readonly ColdContraction[] = [
  { key: '6061-t6', name: 'Aluminium 6061-T6', total: percent(0.389, [0.375, 0.4]) },
  { key: '2024-t3', name: 'Aluminium 2024', total: percent(0.38, [0.36, 0.395]) },
  { key: 'a356-t6', name: 'Cast aluminium A356', total: percent(0.355, [0.33, 0.38], alike) },
  { key: '304', name: 'Stainless steel 304', total: percent(0.281, [0.265, 0.3]) },
  { key: '316', name: 'Stainless steel 316', total: percent(0.279, [0.26, 0.295]) },
  { key: 'steel', name: 'Carbon and low-alloy steel', total: percent(0.185, [0.17, 0.205]) },
  { key: 'gray-iron', name: 'Gray cast iron', total: percent(0.17, [0.15, 0.19], alike) },
  { key: 'c26000', name: 'Brass 70/30', total: percent(0.353, [0.33, 0.375]) },
  { key: 'c36000', name: 'Free-cutting brass', total: percent(0.365, [0.34, 0.385], alike) },
  { key: 'c93200', name: 'Bearing bronze C93200', total: percent(0.32, [0.295, 0.345], alike) },
  { key: 'c90500', name: 'Tin bronze, gunmetal C90500', total: percent(0.32, [0.295, 0.345], alike) },
  { key: 'c51000', name: 'Phosphor bronze C51000', total: percent(0.313, [0.295, 0.335]) },
  { key: 'c17200', name: 'Beryllium copper', total: percent(0.298, [0.28, 0.315]) },
  { key: 'copper', name: 'Copper', total: percent(0.302, [0.29, 0.315]) },
  { key: 'ti-6al-4v', name: 'Titanium Ti-6Al-4V', total: percent(0.163, [0.15, 0.175]) },
  {
    key: 'feni36',
    formerKeys: ['invar'],
    name: 'Iron with 36 % nickel',
    total: percent(0.038, [0.02, 0.055]),
  },
  { key: 'nylon-66', name: 'Nylon', total: percent(1.26, [1.1, 1.45]) },
  { key: 'ptfe', name: 'PTFE', total: percent(1.94, [1.8, 2.1]) },
];

export const coldContractionByKey = (key: string): ColdContraction | undefined =>
  coldContractions.find((row) => row.key === key);

/** Boiling nitrogen and subliming dry ice at one atmosphere, K. CRC Handbook, from memory. */
export const coldBaths = { nitrogen: celsius(-195.8), dryIce: celsius(-78.5) } as const;

export const coldContractionTable = {
  title: 'Contraction in liquid nitrogen',
  rows: coldContractions.map(({ total, ...row }) => ({ ...row, columns: { total } })),
};
