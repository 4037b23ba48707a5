import type { TableProblem } from '../table.ts';
import { stepOf, toleranceUm } from './grades.ts';
import { aboveLetters, belowLetters, deviationSteps, gradeBoundSteps } from './shaft-deviations.ts';

/** Micrometres. */
export interface Deviations {
  upper: number;
  lower: number;
}

const isOneOf = (letters: readonly string[], letter: string): boolean => letters.includes(letter);

export const shaftLetters: readonly string[] = [...aboveLetters, 'js', 'j', ...belowLetters];

/** Why a letter has no row at this size, and what to take instead. */
export const letterMissing = (letter: string, nominal: number): TableProblem => {
  const low = letter.toLowerCase();
  const instead = (u: string): string => (letter === low ? u : u.toUpperCase());
  if (nominal > 500)
    return {
      problem: `${letter} is not defined above 500 mm (nominal ${nominal} mm): write the limits out as deviations.`,
    };
  if (low === 't' || low === 'v' || low === 'y')
    return {
      problem: `${letter} has no row at ${nominal} mm (t begins over 24 mm, v over 14 mm, y over 18 mm): take ${instead(low === 't' ? 'u' : low === 'v' ? 'x' : 'z')}.`,
    };
  return {
    problem: `${letter} is tabulated here to 10 mm (nominal ${nominal} mm): take ${instead(low.slice(0, 1))} or ${instead(low.slice(1))}.`,
  };
};

const jLower = (nominal: number, grade: string): number | TableProblem => {
  const step = stepOf(gradeBoundSteps, nominal);
  const found =
    step &&
    (grade === '5' || grade === '6'
      ? step.j56
      : grade === '7'
        ? step.j7
        : grade === '8'
          ? step.j8
          : undefined);
  return (
    found ?? {
      problem: `j${grade} is not tabulated at ${nominal} mm (j5, j6 and j7 to 500 mm, j8 to 3 mm): take js${grade}.`,
    }
  );
};

/** Limit deviations of a shaft, micrometres; nominal size in mm. ISO 286-1:2010. */
export const shaftDeviations = (
  nominal: number,
  letter: string,
  grade: string,
): Deviations | TableProblem => {
  const tolerance = toleranceUm(nominal, grade);
  if (typeof tolerance !== 'number') return tolerance;
  // Not rounded to an even value: the 2010 tables print 10.5 where the 1988 ones allowed 10.
  if (letter === 'js') return { upper: tolerance / 2, lower: -tolerance / 2 };
  if (letter === 'h') return { upper: 0, lower: -tolerance };
  if (letter === 'j') {
    const lower = jLower(nominal, grade);
    return typeof lower === 'number' ? { upper: lower + tolerance, lower } : lower;
  }
  if (letter === 'k') {
    const inside = isOneOf(['4', '5', '6', '7'], grade);
    const lower = inside ? (stepOf(gradeBoundSteps, nominal)?.k ?? 0) : 0;
    return { upper: lower + tolerance, lower };
  }
  if ((letter === 'a' || letter === 'b') && nominal <= 1)
    return { problem: `${letter} is not used up to 1 mm (nominal ${nominal} mm): take c.` };
  const magnitude = stepOf(deviationSteps, nominal)?.by.get(letter);
  if (magnitude === undefined) return letterMissing(letter, nominal);
  return isOneOf(aboveLetters, letter)
    ? { upper: -magnitude, lower: -magnitude - tolerance }
    : { upper: magnitude + tolerance, lower: magnitude };
};
