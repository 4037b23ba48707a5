import type { Origin, Property } from '../table.ts';
import { celsius, fromMemory, property, seen } from '../table.ts';

type MaterialKind =
  | 'cast iron'
  | 'steel'
  | 'stainless steel'
  | 'copper alloy'
  | 'babbitt'
  | 'aluminium alloy'
  | 'magnesium alloy'
  | 'titanium alloy'
  | 'nickel alloy'
  | 'plastic';

/** One shop material as it comes to the bench. SI base units; temperatures in kelvin. */
export interface Material {
  key: string;
  name: string;
  kind: MaterialKind;
  /** Other trade names for this very material. A word that fits several ("bronze") is no alias of any. */
  aliases: readonly string[];
  /** Keys under which sheets of earlier editions chose it. */
  formerKeys?: readonly string[];
  /** It breaks before it yields: `yield` holds the tensile strength. */
  brittle?: boolean;
  /** Holds lead as an alloying metal or in its lining: the cell of the material says how to handle it. */
  leaded?: true;
  /** Young's modulus, Pa. */
  E: Property;
  /** Poisson's ratio. */
  nu: Property;
  /** Mean linear expansion from 20 degC over its temperature range, 1/K. */
  alpha: Property;
  /** Yield or 0.2 % proof strength, Pa; of a brittle material the tensile strength. */
  yield: Property;
  /** Tensile strength, Pa. */
  tensile?: Property;
  /** kg/m3 */
  density: Property;
  /** W/(m K) */
  conductivity?: Property;
  /** Where strength or shape begins to go, K. Guidance, never a limit to work up to. */
  maxTemperature?: Property;
  note?: string;
}

/**
 * Rule for the whole table: where sources differ, the figure that was read in print is followed over a remembered one,
 * and the range takes in both. Yield strengths are typical; their low end goes down to the specified minimum where there
 * is one.
 */
const appendixB = 'Callister, Fundamentals of Materials Science and Engineering, 3e (2008), Appendix B';
const shigleyA5 = 'Budynas & Nisbett, Shigley, Table A-5';

export const from = {
  callister: seen(`${appendixB}, Table B.6`),
  callisterDensity: seen(`${appendixB}, Table B.1`),
  callisterRemembered: fromMemory(appendixB),
  shigley: seen(`${shigleyA5}, as reproduced in a problem listing`),
  shigleyRemembered: fromMemory(shigleyA5),
  neale: seen('Tribology Handbook (Neale, 2e), A5.1'),
  database: seen('general materials database'),
  carvill: seen("Carvill, Mechanical Engineer's Data Handbook (1993), sec. 2.9.3"),
  asm: fromMemory('ASM Handbook vol. 1 and 2, Shigley Tables A-20 to A-24; typical'),
  resin: fromMemory('resin data ranges; moisture and grade move it much'),
  heat: fromMemory('guidance, order of magnitude, not a limit'),
} as const;

/** The same origin with a word on what else is in print and which is followed. */
export const saying = (origin: Origin, remark: string): Origin => ({
  source: `${origin.source}; ${remark}`,
  grade: origin.grade,
});

type Range = readonly [number, number];
const room: Range = [-20, 100];

export const gpa = (value: number, range: Range, origin: Origin, temperature: Range = room): Property =>
  property(1e9, value, range, origin, temperature);
export const mpa = (value: number, range: Range, origin: Origin, temperature: Range = room): Property =>
  property(1e6, value, range, origin, temperature);
export const ratio = (value: number, range: Range, origin: Origin, temperature: Range = room): Property =>
  property(1, value, range, origin, temperature);
export const perMillionK = (
  value: number,
  range: Range,
  origin: Origin,
  temperature: Range = [20, 100],
): Property => property(1e-6, value, range, origin, temperature);
export const kgm3 = (value: number, range: Range, origin: Origin): Property =>
  property(1, value, range, origin, [20, 20]);
export const wmk = (value: number, range: Range, origin: Origin): Property =>
  property(1, value, range, origin, [20, 100]);
export const degC = (value: number, range: Range, origin: Origin): Property =>
  property(1, celsius(value), [celsius(range[0]), celsius(range[1])], origin);
