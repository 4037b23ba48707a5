import type { TableProblem } from '../table.ts';
import { grades, stepOf, toleranceUm } from './grades.ts';
import { aboveLetters, belowLetters, deviationSteps, gradeBoundSteps } from './shaft-deviations.ts';
import type { Deviations } from './shafts.ts';
import { letterMissing } from './shafts.ts';

const gradeNumber = (grade: string): number => (grade === '01' ? -1 : Number(grade));

/**
 * Delta = ITn - IT(n-1), so that a fit of the hole system (H7/p6) and its twin of the shaft system (P7/h6) fit alike:
 * K, M and N to IT8, P to ZC to IT7, over 3 up to 500 mm.
 */
export const deltaUm = (nominal: number, letter: string, grade: string): number => {
  const n = gradeNumber(grade);
  const last = ['K', 'M', 'N'].includes(letter) ? 8 : 7;
  if (nominal <= 3 || nominal > 500 || n < 3 || n > last) return 0;
  const own = toleranceUm(nominal, grade);
  const finer = toleranceUm(nominal, grades[grades.indexOf(grade) - 1]!);
  return typeof own === 'number' && typeof finer === 'number' ? own - finer : 0;
};

const belowHole = (nominal: number, letter: string, grade: string): number | TableProblem => {
  const coarse = gradeNumber(grade) > 8;
  if (letter === 'K') {
    if (nominal <= 3 || nominal > 500) return 0;
    if (coarse)
      return { problem: `K${grade} is not defined over 3 up to 500 mm (K to IT8): take JS${grade}.` };
    return -stepOf(gradeBoundSteps, nominal)!.k + deltaUm(nominal, letter, grade);
  }
  if (letter === 'N' && coarse && nominal <= 1)
    return { problem: `N${grade} is not used up to 1 mm: take N8 or finer.` };
  if (letter === 'N' && coarse && nominal > 3 && nominal <= 500) return 0;
  // The one row the standard prints apart from the rule.
  if (letter === 'M' && grade === '6' && nominal > 250 && nominal <= 315) return -9;
  const magnitude = stepOf(deviationSteps, nominal)?.by.get(letter.toLowerCase());
  if (magnitude === undefined) return letterMissing(letter, nominal);
  return -magnitude + deltaUm(nominal, letter, grade);
};

/** Limit deviations of a hole, micrometres; nominal size in mm. ISO 286-1:2010. */
export const holeDeviations = (nominal: number, letter: string, grade: string): Deviations | TableProblem => {
  const tolerance = toleranceUm(nominal, grade);
  if (typeof tolerance !== 'number') return tolerance;
  if (letter === 'JS') return { upper: tolerance / 2, lower: -tolerance / 2 };
  if (letter === 'H') return { upper: tolerance, lower: 0 };
  if (letter === 'J') {
    const upper = stepOf(gradeBoundSteps, nominal)?.J.get(grade);
    return upper === undefined
      ? { problem: `J${grade} is not tabulated at ${nominal} mm (J6, J7 and J8 to 500 mm): take JS${grade}.` }
      : { upper, lower: upper - tolerance };
  }
  const twin = letter.toLowerCase();
  if ((aboveLetters as readonly string[]).includes(twin)) {
    if ((letter === 'A' || letter === 'B') && nominal <= 1)
      return { problem: `${letter} is not used up to 1 mm (nominal ${nominal} mm): take C.` };
    const lower = stepOf(deviationSteps, nominal)?.by.get(twin);
    return lower === undefined ? letterMissing(letter, nominal) : { upper: lower + tolerance, lower };
  }
  const upper = belowHole(nominal, letter, grade);
  return typeof upper === 'number' ? { upper, lower: upper - tolerance } : upper;
};

export const holeLetters: readonly string[] = [...aboveLetters, 'js', 'j', ...belowLetters].map((letter) =>
  letter.toUpperCase(),
);
