import type { TableProblem } from '../table.ts';
import { inch } from '../table.ts';
import type { ThreadLimits } from './thread.ts';
import { basicMinor, basicPitchDiameter } from './thread.ts';

/**
 * Limits of unified threads, ASME B1.1-2003 section 5 formulas and its rounding: the class 2A pitch diameter tolerance to
 * six places, everything hanging on it to four, limits of size from four-place figures, the minor diameter of 1B and 2B
 * to three places from number 6 up. Inches inside; formulas from memory, their results held against printed limits.
 */
const to = (places: number, x: number): number => Math.round(x * 10 ** places + 1e-7) / 10 ** places;

/** Class 2A pitch diameter tolerance; the length of engagement is one diameter, or nine pitches of the constant-pitch and extra-fine series. */
const pitchTolerance2A = (major: number, perInch: number, series: string): number => {
  const P = 1 / perInch;
  const byDiameter = series === 'UNC' || series === 'UNF' || (series === 'UN' && perInch <= 8);
  const engagement = byDiameter ? major : 9 * P;
  return to(6, 0.0015 * Math.cbrt(major) + 0.0015 * Math.sqrt(engagement) + 0.015 * P ** (2 / 3));
};

const pitchFactor: Readonly<Record<string, number>> = {
  '1A': 1.5,
  '2A': 1,
  '3A': 0.75,
  '1B': 1.95,
  '2B': 1.3,
  '3B': 0.975,
};

/** Minor diameter tolerance of the internal thread. */
const minorTolerance = (major: number, perInch: number, grade: string): number => {
  const P = 1 / perInch;
  const bySize = 0.05 * P ** (2 / 3) + (0.03 * P) / major - 0.002;
  if (grade === '3B') {
    const least = perInch >= 13 ? 0.23 * P - 1.5 * P * P : 0.12 * P;
    return Math.max(Math.min(bySize, 0.394 * P), least);
  }
  const least = 0.25 * P - 0.4 * P * P;
  if (major < 0.25) return Math.max(Math.min(bySize, 0.394 * P), least);
  return perInch >= 4 ? least : 0.15 * P;
};

/** Limits of size in metres; `major` in inches. */
export const unifiedLimits = (
  major: number,
  perInch: number,
  series: string,
  grade: string,
): ThreadLimits | TableProblem => {
  const factor = pitchFactor[grade];
  if (factor === undefined)
    return {
      problem: `"${grade}" is no class of unified threads: 1A, 2A, 3A are external, 1B, 2B, 3B internal.`,
    };
  const P = 1 / perInch;
  const base = pitchTolerance2A(major, perInch, series);
  const basicPitch = to(4, basicPitchDiameter(major, P));
  const pitchTolerance = to(4, base * factor);
  const nominal = to(4, major);
  if (grade.endsWith('A')) {
    const allowance = grade === '3A' ? 0 : to(4, 0.3 * base);
    const majorTolerance = to(4, (grade === '1A' ? 0.09 : 0.06) * P ** (2 / 3));
    const top = to(4, nominal - allowance);
    const pitchTop = to(4, basicPitch - allowance);
    return {
      class: grade,
      internal: false,
      major: { min: inch(to(4, top - majorTolerance)), max: inch(top) },
      pitch: { min: inch(to(4, pitchTop - pitchTolerance)), max: inch(pitchTop) },
    };
  }
  const least = to(4, basicMinor(major, P));
  const most = to(4, least + to(4, minorTolerance(major, perInch, grade)));
  const places = grade !== '3B' && major >= 0.138 ? 3 : 4;
  return {
    class: grade,
    internal: true,
    pitch: { min: inch(basicPitch), max: inch(to(4, basicPitch + pitchTolerance)) },
    minor: { min: inch(to(places, least)), max: inch(to(places, most)) },
  };
};
