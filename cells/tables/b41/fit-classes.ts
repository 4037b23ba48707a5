import type { ShaftRow } from './shaft-limits.ts';
import { clearance, force, interference, running, transition } from './shaft-limits.ts';

/** One class of fit: what it is for, the grade of its hole and, where the standard names one, of its shaft. */
export interface FitClass {
  name: string;
  purpose: string;
  holeGrade: number;
  /** Absent where the standard has no symbol for the shaft. */
  shaftGrade?: number;
  rows: readonly ShaftRow[];
}

const classOf = (
  name: string,
  purpose: string,
  holeGrade: number,
  shaftGrade: number | undefined,
  rows: readonly ShaftRow[],
): FitClass => ({
  name,
  purpose,
  holeGrade,
  ...(shaftGrade === undefined ? {} : { shaftGrade }),
  rows,
});

/** ANSI/ASME B4.1-1967 (R2009), in the standard's own order. */
export const fitClasses: readonly FitClass[] = [
  classOf('RC1', 'close sliding, without play', 5, 4, running),
  classOf('RC2', 'sliding, moves and turns easily but does not run freely', 6, 5, running),
  classOf('RC3', 'precision running, slow and lightly loaded', 7, 6, running),
  classOf('RC4', 'close running, moderate speed and pressure', 8, 7, running),
  classOf('RC5', 'medium running, higher speed or heavy pressure', 8, 7, running),
  classOf('RC6', 'medium running, wider tolerances', 9, 8, running),
  classOf('RC7', 'free running, where accuracy is not essential or it runs hot', 9, 8, running),
  classOf('RC8', 'loose running', 10, 9, running),
  classOf('RC9', 'loose running, wider tolerances', 11, undefined, running),
  classOf('LC1', 'locating, assembled freely', 6, 5, clearance),
  classOf('LC2', 'locating, assembled freely', 7, 6, clearance),
  classOf('LC3', 'locating, assembled freely', 8, 7, clearance),
  classOf('LC4', 'locating, assembled freely', 10, 9, clearance),
  classOf('LC5', 'locating, assembled freely, a little looser', 7, 6, clearance),
  classOf('LC6', 'locating, assembled freely, medium clearance', 9, 8, clearance),
  classOf('LC7', 'locating, medium clearance', 10, 9, clearance),
  classOf('LC8', 'locating, medium clearance', 10, 9, clearance),
  classOf('LC9', 'locating, loose', 11, 10, clearance),
  classOf('LC10', 'fasteners, loose', 12, undefined, clearance),
  classOf('LC11', 'fasteners, very loose', 13, undefined, clearance),
  classOf('LT1', 'locating, a little play or a little interference', 7, 6, transition),
  classOf('LT2', 'locating, a little play or a little interference', 8, 7, transition),
  classOf('LT3', 'locating, nearly no play', 7, 6, transition),
  classOf('LT4', 'locating, nearly no play', 8, 7, transition),
  classOf('LT5', 'locating, mostly interference', 7, 6, transition),
  classOf('LT6', 'locating, mostly interference', 7, 7, transition),
  classOf('LN1', 'locating by light interference', 6, 5, interference),
  classOf('LN2', 'locating by interference', 7, 6, interference),
  classOf('LN3', 'locating by firm interference', 7, 6, interference),
  classOf('FN1', 'light drive: thin sections, long fits, cast iron', 6, undefined, force),
  classOf('FN2', 'medium drive: ordinary steel parts, about the tightest for cast iron', 7, 6, force),
  classOf('FN3', 'heavy drive: heavier steel parts', 7, 6, force),
  classOf('FN4', 'force: parts that stand high stress, shrink fits', 7, 6, force),
  classOf('FN5', 'force: parts that stand high stress, shrink fits', 8, 7, force),
];
