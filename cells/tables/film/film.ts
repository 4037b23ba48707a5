import type { TableProblem } from '../table.ts';
import { curve } from './curve.ts';
import { ECCENTRICITY, type FilmColumns, filmTables } from './raimondi-boyd.ts';

/** What an oil film does at a Sommerfeld number, all without dimension. */
export interface Film {
  /** Least film over radial clearance, 1 less the eccentricity ratio. */
  least: number;
  /** (r/c) f */
  friction: number;
  /** Q / (r c N l) */
  flow: number;
  /** Part of the flow that leaves at the sides. */
  side: number;
  /** P / pmax */
  pressure: number;
}

/**
 * Between the tables over length: Raimondi and Boyd's own rule, at one eccentricity ratio (as Shigley 9e Eq 12-16; held
 * against a numerical solution at l/d 0.35, 0.75 and 1.5).
 */
const between = (x: number, endless: number, one: number, half: number, quarter: number): number =>
  (((x - 1) * (1 - 2 * x) * (1 - 4 * x) * endless) / 8 +
    ((1 - 2 * x) * (1 - 4 * x) * one) / 3 -
    ((1 - x) * (1 - 4 * x) * half) / 4 +
    ((1 - x) * (1 - 2 * x) * quarter) / 24) /
  x ** 3;

const column = (ratio: number, name: keyof FilmColumns): number[] =>
  ECCENTRICITY.map((_, i) =>
    between(
      ratio,
      filmTables.endless[name][i] as number,
      filmTables['1'][name][i] as number,
      filmTables['1/2'][name][i] as number,
      filmTables['1/4'][name][i] as number,
    ),
  );

/** @param ratio length over diameter, a quarter and longer */
export const filmAt = (sommerfeld: number, ratio: number): Film | TableProblem => {
  if (!(ratio >= 0.25))
    return { problem: `Length over diameter is ${ratio.toPrecision(3)}: the tables begin at 1/4.` };
  if (!(sommerfeld > 0))
    return { problem: 'The Sommerfeld number must be above zero: load, speed and oil are needed.' };
  const numbers = column(ratio, 'sommerfeld');
  const friction = column(ratio, 'friction');
  const last = ECCENTRICITY.length - 1;
  if (sommerfeld < (numbers[last] as number))
    return {
      problem: `The film is thinner than 3 % of the clearance (Sommerfeld number ${sommerfeld.toPrecision(3)}): metal touches, and the tables end. Look at mean pressure and pV instead.`,
    };
  const [first, slippery] = [numbers[0] as number, friction[0] as number];
  if (sommerfeld > first) {
    // Near the centre the eccentricity goes as load, and friction as that of a centred shaft.
    const eccentricity = (0.1 * first) / sommerfeld;
    const share = eccentricity / 0.1;
    return {
      least: 1 - eccentricity,
      friction: (slippery * sommerfeld) / first,
      flow: Math.PI + share * ((column(ratio, 'flow')[0] as number) - Math.PI),
      side: share * (column(ratio, 'side')[0] as number),
      pressure: column(ratio, 'pressure')[0] as number,
    };
  }
  const rising = [...numbers].reverse().map(Math.log);
  const eccentricity = curve(rising, [...ECCENTRICITY].reverse(), Math.log(sommerfeld));
  const read = (name: keyof FilmColumns): number => curve(ECCENTRICITY, column(ratio, name), eccentricity);
  return {
    least: 1 - eccentricity,
    friction: Math.exp(curve(rising, [...friction].reverse().map(Math.log), Math.log(sommerfeld))),
    flow: read('flow'),
    side: read('side'),
    pressure: read('pressure'),
  };
};
