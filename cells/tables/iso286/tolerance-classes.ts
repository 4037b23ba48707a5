import type { ChoiceRow } from '../../record/cell.ts';
import { isProblem } from '../table.ts';
import { holeLetters } from './holes.ts';
import { limitDeviations } from './iso286.ts';
import { shaftLetters } from './shafts.ts';

/** Classes of the general-purpose fits of ISO 286-1:2010, Figures 12 and 13 (from memory), offered before the others. */
const preferred = {
  hole: ['H7', 'H8', 'H9', 'H11', 'G7', 'F8', 'E9', 'D10', 'JS7', 'K7', 'N7', 'P7', 'R7', 'S7'],
  shaft: ['g6', 'h6', 'f7', 'h7', 'e8', 'h9', 'd9', 'h11', 'js6', 'k6', 'm6', 'n6', 'p6', 'r6', 's6', 'u6'],
} as const;

const GRADES = [5, 6, 7, 8, 9, 10, 11, 12, 4, 13];
/** Nominal sizes, m, at one of which at least a class must exist to be offered. */
const TRIED = [0.002, 0.008, 0.05, 0.2, 0.45];

const exists = (designation: string): boolean =>
  TRIED.some((nominal) => !isProblem(limitDeviations(nominal, designation)));

/** Every class of grades 4 to 13, the usual ones first. The limits themselves depend on the size: see the functions. */
export const classRows = (of: 'hole' | 'shaft'): readonly ChoiceRow[] => {
  const letters = of === 'hole' ? holeLetters : shaftLetters;
  const others = letters.flatMap((letter) => GRADES.map((grade) => `${letter}${grade}`));
  const classes = [...new Set<string>([...preferred[of], ...others])].filter(exists);
  return classes.map((key) => ({ key, name: `${key} (${of})`, columns: {} }));
};
