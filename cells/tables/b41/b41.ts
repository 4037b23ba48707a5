import type { TableProblem } from '../table.ts';
import { thou } from '../table.ts';
import { fitClasses } from './fit-classes.ts';
import { inchGrades, inchTolerance } from './hole-tolerances.ts';

export { fitClasses } from './fit-classes.ts';

/** Limits of hole and shaft from basic size, and the clearance they give; metres, negative clearance is interference. */
export interface InchFit {
  hole: { upper: number; lower: number };
  shaft: { upper: number; lower: number };
  clearance: { max: number; min: number };
}

/** `RC 4`, `rc4` and `RC4` are one class. */
const plain = (name: string): string => name.replace(/[\s-]+/g, '').toUpperCase();

/** Inches, to a hundred-millionth: a size given in mm must not fall a rounding error past a step. */
const inches = (metres: number): number => Math.round((metres / 0.0254) * 1e8) / 1e8;

/** Basic sizes, metres, up to which a row of some table reaches: limits jump there, and nowhere else. */
export const inchSteps: readonly number[] = [
  ...new Set([...fitClasses.flatMap(({ rows }) => rows), ...inchGrades].map(({ to }) => to)),
]
  .sort((a, b) => a - b)
  .map((size) => size * 0.0254);

/** An inch fit of ANSI/ASME B4.1-1967 (R2009) for a basic size in metres, such as `inchFit(0.0508, 'FN2')`. */
export const inchFit = (nominal: number, className: string): InchFit | TableProblem => {
  const found = fitClasses.find((each) => each.name === plain(className));
  if (found === undefined)
    return {
      problem: `B4.1 has no fit class "${className.trim()}": RC1 to RC9, LC1 to LC11, LT1 to LT6, LN1 to LN3, FN1 to FN5. An ISO 286 fit is written hole/shaft, such as H7/g6.`,
    };
  const size = inches(nominal);
  const row = size > 0 ? found.rows.find((each) => size <= each.to) : undefined;
  const grade = inchTolerance(size, found.holeGrade);
  if (row === undefined || grade === undefined)
    return {
      problem: `Basic size ${size} in is outside the table (over 0 to 9.85 in): take an ISO 286 fit, or write the limits out.`,
    };
  const limits = row.by.get(found.name);
  if (limits === undefined)
    return {
      problem: `${found.name} is not tabulated at ${size} in (${found.name === 'FN3' ? 'it begins over 0.95 in' : 'it begins over 0.24 in'}): take ${found.name === 'FN3' ? 'FN2 or FN4' : 'LT1, LT2 or LT5'}.`,
    };
  const hole = { upper: thou(grade), lower: 0 };
  const shaft = { upper: thou(limits[0]), lower: thou(limits[1]) };
  return { hole, shaft, clearance: { max: hole.upper - shaft.lower, min: hole.lower - shaft.upper } };
};
