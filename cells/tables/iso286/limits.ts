import type { TableProblem } from '../table.ts';
import { um } from '../table.ts';
import { parseClass, parseFit } from './designation.ts';
import { millimetres } from './grades.ts';
import { holeDeviations } from './holes.ts';
import { shaftDeviations } from './shafts.ts';

/**
 * Limit deviations from the nominal size, metres, of a nominal size in metres: `limitDeviations(0.05, 'H7')` is
 * `{ upper: 25e-6, lower: 0 }`. ISO 286-1:2010.
 */
export const limitDeviations = (
  nominal: number,
  designation: string,
): { upper: number; lower: number } | TableProblem => {
  const parsed = parseClass(designation);
  if ('problem' in parsed) return parsed;
  const found = (parsed.hole ? holeDeviations : shaftDeviations)(
    millimetres(nominal),
    parsed.letter,
    parsed.grade,
  );
  if ('problem' in found) return found;
  // `+ 0` turns a negative zero into zero.
  return { upper: um(found.upper) + 0, lower: um(found.lower) + 0 };
};

/** Clearance of a fit, metres; negative is interference. */
export const fitClearance = (nominal: number, fit: string): { max: number; min: number } | TableProblem => {
  const parsed = parseFit(fit);
  if ('problem' in parsed) return parsed;
  const hole = limitDeviations(nominal, parsed.hole);
  if ('problem' in hole) return hole;
  const shaft = limitDeviations(nominal, parsed.shaft);
  if ('problem' in shaft) return shaft;
  return { max: hole.upper - shaft.lower, min: hole.lower - shaft.upper };
};
