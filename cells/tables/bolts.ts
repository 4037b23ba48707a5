import type { Origin, Property } from './table.ts';
import { fromMemory, inch, mm, property, seen } from './table.ts';

/** Strength of a bolt grade over a range of sizes. SI: pascals, metres. */
export interface BoltGrade {
  key: string;
  name: string;
  proof: Property;
  yield: Property;
  tensile: Property;
  /** Sizes the figures are for. */
  from: Property;
  to: Property;
}

const KSI = 6894757.293168361;
const MPA = 1e6;
const exact = (unit: number, value: number, origin: Origin): Property =>
  property(unit, value, [value, value], origin);

const grade = (
  key: string,
  name: string,
  unit: number,
  [proof, yields, tensile]: readonly [number, number, number],
  sizes: readonly [number, number],
  origin: Origin,
): BoltGrade => ({
  key,
  name,
  proof: exact(unit, proof, origin),
  yield: exact(unit, yields, origin),
  tensile: exact(unit, tensile, origin),
  from: exact(1, sizes[0], origin),
  to: exact(1, sizes[1], origin),
});

const j429 = seen('SAE J429');
const j429Memory = fromMemory('SAE J429');
const iso898 = fromMemory('ISO 898-1:2013, Table 3');

export const boltGrades: readonly BoltGrade[] = [
  grade('2', 'inch grade 2, 1/4 to 3/4 in', KSI, [55, 57, 74], [inch(0.25), inch(0.75)], j429),
  grade(
    '2-large',
    'inch grade 2, over 3/4 to 1 1/2 in',
    KSI,
    [33, 36, 60],
    [inch(0.751), inch(1.5)],
    j429Memory,
  ),
  grade('5', 'inch grade 5, 1/4 to 1 in', KSI, [85, 92, 120], [inch(0.25), inch(1)], j429),
  grade('5-large', 'inch grade 5, over 1 to 1 1/2 in', KSI, [74, 81, 105], [inch(1.001), inch(1.5)], j429),
  grade('8', 'inch grade 8, 1/4 to 1 1/2 in', KSI, [120, 130, 150], [inch(0.25), inch(1.5)], j429Memory),
  grade('4.6', 'metric class 4.6', MPA, [225, 240, 400], [mm(1.6), mm(39)], iso898),
  grade('5.8', 'metric class 5.8', MPA, [380, 420, 520], [mm(5), mm(24)], iso898),
  grade('8.8', 'metric class 8.8, to M16', MPA, [580, 640, 800], [mm(1.6), mm(16)], iso898),
  grade('8.8-large', 'metric class 8.8, over M16', MPA, [600, 660, 830], [mm(16.1), mm(39)], iso898),
  grade('10.9', 'metric class 10.9', MPA, [830, 940, 1040], [mm(1.6), mm(39)], iso898),
  grade('12.9', 'metric class 12.9', MPA, [970, 1100, 1220], [mm(1.6), mm(39)], iso898),
];

/** How a bolt is oiled: the usual nut factor of T = K d F. Its scatter is in the cell. */
export interface NutFactor {
  key: string;
  name: string;
  factor: Property;
}

const shigley = fromMemory("Budynas & Nisbett, Shigley's Mechanical Engineering Design, 9e, Table 8-15");
const practice = fromMemory('common practice, no source');

export const nutFactors: readonly NutFactor[] = [
  { key: 'as-received', name: 'plain steel as it comes, a trace of oil', factor: exact(1, 0.2, shigley) },
  { key: 'oiled', name: 'oiled, threads and under the head', factor: exact(1, 0.18, shigley) },
  { key: 'black-dry', name: 'black finish, dry', factor: exact(1, 0.3, shigley) },
  { key: 'zinc', name: 'zinc plated, dry', factor: exact(1, 0.2, shigley) },
  { key: 'anti-seize', name: 'anti-seize paste', factor: exact(1, 0.14, practice) },
];
