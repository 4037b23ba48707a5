/** What is judged: a plan, what a model predicts from sizes that are known, or a part (ISO 14253-1). */
export type CheckMode = 'plan' | 'calculation' | 'part';

type PlanState = 'holds' | 'holds, near the edge' | 'may miss' | 'misses';
type CalculatedState = 'holds by calculation' | 'holds by calculation, near the edge' | 'may miss' | 'misses';
type PartState = 'proven in limits' | 'proven in limits, near the edge' | 'not proven' | 'out of limits';
/** Something is missing; something that was entered does not stand. */
type NoFigureState = 'waiting' | 'entry in error';
/** Verdict words; see `judge` for when each applies. `being settled`: draws decide, and are not done. */
export type CheckState =
  | PlanState
  | CalculatedState
  | PartState
  | 'being settled'
  | 'no limits'
  | NoFigureState;

export type Grade = 'in' | 'near' | 'open' | 'out';

export const STATES: Readonly<Record<CheckMode, Readonly<Record<Grade, CheckState>>>> = {
  plan: { in: 'holds', near: 'holds, near the edge', open: 'may miss', out: 'misses' },
  calculation: {
    in: 'holds by calculation',
    near: 'holds by calculation, near the edge',
    open: 'may miss',
    out: 'misses',
  },
  part: {
    in: 'proven in limits',
    near: 'proven in limits, near the edge',
    open: 'not proven',
    out: 'out of limits',
  },
};

const GRADES = new Map<CheckState, Grade>(
  Object.values(STATES).flatMap((states) =>
    (Object.entries(states) as [Grade, CheckState][]).map(([grade, state]) => [state, grade] as const),
  ),
);

/** How a verdict came out, whatever was judged; undefined where there is none. */
export const gradeOf = (state: CheckState): Grade | undefined => GRADES.get(state);

/**
 * Codes of the verdicts, for programs: they stay as they are when the words are put better. What was judged, then how it
 * came out.
 */
export type VerdictCode =
  | `${CheckMode}-${Grade}`
  | `part-${Grade}-where-read`
  | 'settling'
  | 'no-limits'
  | 'waiting'
  | 'in-error';

const CODES = new Map<CheckState, VerdictCode>([
  ...(Object.entries(STATES) as [CheckMode, Record<Grade, CheckState>][])
    .toReversed()
    .flatMap(([mode, states]) =>
      (Object.entries(states) as [Grade, CheckState][]).map(
        ([grade, state]) => [state, `${mode}-${grade}`] as const,
      ),
    ),
  ['being settled', 'settling'],
  ['no limits', 'no-limits'],
  ['waiting', 'waiting'],
  ['entry in error', 'in-error'],
]);

/** A word that was written down by another version may be none of these. */
export const isState = (word: string): word is CheckState => CODES.has(word as CheckState);

/**
 * What a plan and a calculation have one word for goes by the code of the plan.
 * @param where given where a part is proven of what was read alone
 */
export const codeOf = (state: CheckState, where?: string): VerdictCode => {
  const code = CODES.get(state) as VerdictCode;
  return where !== undefined && isProven(state) ? (`${code}-where-read` as VerdictCode) : code;
};

/** True where the whole of the spread that the verdict goes by lies outside. */
export const isOutside = (state: CheckState): boolean => gradeOf(state) === 'out';

/** Said of the part, not of the plan. */
export const isPartState = (state: CheckState): boolean =>
  (Object.values(STATES.part) as CheckState[]).includes(state);

/** A part that is in, near the edge or not. */
export const isProven = (state: CheckState | undefined): boolean =>
  state === STATES.part.in || state === STATES.part.near;

/** There is no figure to judge. */
export const isWithoutFigure = (state: CheckState): state is NoFigureState =>
  state === 'waiting' || state === 'entry in error';

export type Place = 'lower' | 'upper' | 'wear';

export interface Verdict {
  state: CheckState;
  /** The limit concerned: missed, perhaps missed, or near. */
  at?: Place;
  /** Where it misses or may miss: whether metal is still there to take off. */
  side?: 'metal on' | 'metal gone';
  /** By how much the nearest limit is missed (positive: outside) or kept (negative), SI; nominal to limit. */
  by?: number;
}
