import type { TableProblem } from '../table.ts';
import { grades } from './grades.ts';
import { holeLetters } from './holes.ts';
import { shaftLetters } from './shafts.ts';

/** `H7`: a hole, letter H, grade 7. */
export interface ToleranceClass {
  hole: boolean;
  letter: string;
  grade: string;
}

/** Capitals are holes, small letters shafts. */
export const isHole = (designation: string): boolean => /^[A-Z]/.test(designation.trim());

export const parseClass = (designation: string): ToleranceClass | TableProblem => {
  const text = designation.trim();
  const match = /^([A-Za-z]{1,2})\s*(\d{1,2})$/.exec(text);
  if (match === null)
    return {
      problem: `"${text}" is not a tolerance class of ISO 286: write letter and grade, such as H7 for a hole or g6 for a shaft.`,
    };
  const [, letter, grade] = match as unknown as [string, string, string];
  if (letter !== letter.toUpperCase() && letter !== letter.toLowerCase())
    return {
      problem: `"${text}" mixes capital and small letters: ${letter.toUpperCase()}${grade} is a hole, ${letter.toLowerCase()}${grade} a shaft.`,
    };
  const hole = isHole(text);
  const letters = hole ? holeLetters : shaftLetters;
  if (!letters.includes(letter))
    return {
      problem: `ISO 286 has no ${hole ? 'hole' : 'shaft'} letter ${letter} (${letters.join(' ')}): i, l, o, q and w are left out so as not to be misread.`,
    };
  if (!(grades as readonly string[]).includes(grade))
    return { problem: `There is no tolerance grade ${grade} in "${text}": grades run 01, 0, 1 to 18.` };
  return { hole, letter, grade };
};

/** `H7/g6`: the hole comes first. */
export const parseFit = (text: string): { hole: string; shaft: string } | TableProblem => {
  const parts = text
    .trim()
    .split('/')
    .map((part) => part.trim());
  if (parts.length !== 2)
    return { problem: `"${text.trim()}" is not a fit: write hole/shaft, such as H7/g6.` };
  const [first, second] = parts as [string, string];
  const a = parseClass(first);
  if ('problem' in a) return a;
  const b = parseClass(second);
  if ('problem' in b) return b;
  if (a.hole === b.hole)
    return {
      problem: `"${text.trim()}" is two ${a.hole ? 'holes' : 'shafts'}: capitals are holes and small letters shafts, such as H7/g6.`,
    };
  if (!a.hole)
    return { problem: `"${text.trim()}" has the shaft first: the hole comes first, ${second}/${first}.` };
  return { hole: a.letter + a.grade, shaft: b.letter + b.grade };
};
