import { expandedFactor } from '../statistics/coverage.ts';
import type { CheckVerdict } from './check.ts';
import { type Grade, gradeOf, isPartState } from './states.ts';

/** Limits a band is read against, SI, and how the verdict on them came out. */
export interface Against {
  lower?: number;
  upper?: number;
  grade: Grade;
  /** The bare figure decides, whatever its band. */
  isBare?: boolean;
}

/** The band of a figure that is shown behind it: the one its verdict goes by. */
export interface Band {
  low: number;
  high: number;
  /** Which band it is, said behind it; the worst case goes unsaid. */
  mark: '' | '(by its middle)' | '(k=2)' | '(95 %)' | '(at most)' | '(95.45 % by draws)' | '(95 % by draws)';
  /** The verdicts that the band as it is printed must not contradict. */
  against: readonly Against[];
}

interface Judged {
  check: CheckVerdict;
  /** By draws, where they decide. */
  drawn?: { low: number; high: number; draws: number };
  limits?: Readonly<Partial<Record<'lower' | 'upper' | 'wear', { value: number }>>>;
}

interface Figure {
  value: number;
  low: number;
  high: number;
  centre: number;
  u: number;
  dof?: number;
  /** How far the worst case reaches is not settled. */
  atMost?: boolean;
}

/** Share of a figure, and of its band, that is arithmetic on doubles. */
const NOISE = { figure: 1e-12, band: 1e-9 };

/** True where a band lies within the limits, across one, or outside, as the verdict says; what stands on a limit may be on either side. */
const agrees = (
  { low, high }: { low: number; high: number },
  { lower = Number.NEGATIVE_INFINITY, upper = Number.POSITIVE_INFINITY, grade }: Against,
): boolean => {
  if (grade === 'out') return high < lower || low > upper;
  const size = Math.max(Math.abs(low), Math.abs(high)) * NOISE.figure + (high - low) * NOISE.band;
  const hair = Number.isFinite(size) ? size : 0;
  const isInside = (by: number): boolean => low >= lower - by && high <= upper + by;
  if (grade !== 'open') return isInside(hair);
  return !isInside(-hair) && !(high < lower - hair || low > upper + hair);
};

const againstOf = ({ check, limits }: Judged): Against[] => {
  const { lower, upper, wear } = limits ?? {};
  const found: Against[] = [];
  const add = (state: Parameters<typeof gradeOf>[0], ends: Omit<Against, 'grade'>): void => {
    const grade = gradeOf(state);
    if (grade) found.push({ ...ends, grade });
  };
  const ends = (low?: { value: number }, high?: { value: number }): Omit<Against, 'grade'> => ({
    ...(low ? { lower: low.value } : {}),
    ...(high ? { upper: high.value } : {}),
  });
  if (lower || upper) add(check.asNew.state, ends(lower, upper));
  if (wear && check.inService) {
    // Wear leads past the limit that it lies beyond.
    const isHigh = upper
      ? wear.value >= upper.value
      : lower
        ? wear.value > lower.value
        : check.inService.by === undefined;
    add(check.inService.state, isHigh ? ends(lower, wear) : ends(wear, upper));
  }
  return found;
};

/** A factor that reads as 2. */
const NEARLY_TWO = 2.05;

/**
 * The band to show behind a figure: with limits the one that its verdict goes by; without, the expanded uncertainty of a
 * reading and the worst case of everything else.
 *
 * @param read it was read off a part
 */
export const bandOf = (figure: Figure, judged: Judged | undefined, read: boolean): Band => {
  const check = judged?.check;
  const isJudged =
    judged?.limits !== undefined &&
    check !== undefined &&
    (check.asNew.state !== 'no limits' || check.inService !== undefined);
  const factor = expandedFactor(figure.dof ?? Number.POSITIVE_INFINITY);
  // Few readings ask for another factor than 2, and the band is then known by what it covers.
  const expanded = (k = factor): Band => about(k, k < NEARLY_TWO ? '(k=2)' : '(95 %)');
  const about = (k: number, mark: Band['mark']): Band => ({
    low: figure.centre - k * figure.u,
    high: figure.centre + k * figure.u,
    mark,
    against: [],
  });
  const worst: Band = {
    low: figure.low,
    high: figure.high,
    mark: figure.atMost ? '(at most)' : '',
    against: [],
  };
  const judgedBy = (): Band => {
    const drawn = judged?.drawn;
    const is2017 = check?.rule === 'iso14253-2017';
    if (drawn && drawn.draws > 0 && Number.isFinite(drawn.low) && Number.isFinite(drawn.high))
      return {
        low: drawn.low,
        high: drawn.high,
        mark: is2017 ? '(95 % by draws)' : '(95.45 % by draws)',
        against: [],
      };
    // Until draws have been made nothing narrower than the worst case is known.
    if (drawn) return worst;
    if (check?.rule === 'iso14253-2013') return expanded(check.k);
    return is2017 && check.k !== undefined ? about(check.k, '(95 %)') : worst;
  };
  const band = isJudged ? judgedBy() : read ? expanded() : worst;
  // What arithmetic, a limit with a spread of its own or a doubt that is not known decides is no matter of places.
  if (isJudged) {
    const isBare = check.rule === 'simple';
    const bare = { low: figure.value, high: figure.value };
    // The middle of a plan decides where its nominal stands elsewhere (50 p6).
    const isMiddle = isBare && !isPartState(check.asNew.state) && !read;
    if (isMiddle && Math.abs(figure.centre - figure.value) > NOISE.band * (figure.high - figure.low))
      band.mark = '(by its middle)';
    band.against = againstOf(judged)
      .filter((one) => agrees(isBare ? bare : band, one))
      .map((one) => (isBare ? { ...one, isBare } : one));
  }
  return band;
};
