import { type CheckState, isProven, isWithoutFigure, type Place, type Verdict } from './states.ts';

const LIMIT_WORDS: Readonly<Record<Place, string>> = {
  lower: 'lower limit',
  upper: 'upper limit',
  wear: 'wear limit',
};

const place = (v: Verdict): string =>
  v.at ? ` at the ${LIMIT_WORDS[v.at]}${v.side ? `, ${v.side}` : ''}` : '';

const AS_NEW: Readonly<Record<CheckState, string>> = {
  holds: 'holds as new',
  'holds, near the edge': 'holds as new, near the edge',
  'holds by calculation': 'holds as new by calculation',
  'holds by calculation, near the edge': 'holds as new by calculation, near the edge',
  'may miss': 'may miss as new',
  misses: 'misses as new',
  'proven in limits': 'proven in limits as new',
  'proven in limits, near the edge': 'proven in limits as new, near the edge',
  'not proven': 'not proven as new',
  'out of limits': 'out of limits as new',
  'being settled': 'being settled',
  'no limits': 'no limits as new',
  waiting: 'waiting',
  'entry in error': 'entry in error',
};

const IN_SERVICE: Readonly<Record<CheckState, string>> = {
  holds: 'holds in service',
  'holds, near the edge': 'holds in service, near the edge',
  'holds by calculation': 'holds in service by calculation',
  'holds by calculation, near the edge': 'holds in service by calculation, near the edge',
  'may miss': 'may miss in service',
  misses: 'misses in service',
  'proven in limits': 'proven serviceable',
  'proven in limits, near the edge': 'proven serviceable, near the edge',
  'not proven': 'not proven serviceable',
  'out of limits': 'not serviceable',
  'being settled': 'being settled in service',
  'no limits': 'no limits in service',
  waiting: 'waiting',
  'entry in error': 'entry in error',
};

/** How a verdict came about, where draws decide it, with the probability of conformance: never rounded up. */
export const drawsWords = ({
  method,
  conformance,
}: {
  method?: 'draws';
  conformance?: number;
}): string | undefined =>
  method === undefined
    ? undefined
    : conformance === undefined
      ? 'by draws'
      : `by draws, ${(Math.floor(conformance * 1e4 + 1e-9) / 100).toFixed(2)} % conform`;

/** Behind a proof of what was read alone. */
const whereRead = ({ state }: Verdict, where: string | undefined): string =>
  where !== undefined && isProven(state) ? ', where read' : '';

export const inServiceWords = (verdict: Verdict, where?: string): string =>
  IN_SERVICE[verdict.state] + place(verdict) + whereRead(verdict, where);

/** Verdicts as they are put into words; `where`: it is proven only of what was read. */
export interface Worded {
  asNew: Verdict;
  inService?: Verdict | undefined;
  where?: string | undefined;
}

/**
 * What is said of a part as new and in service, for lines of their own: a limit that both turn on is named behind the
 * first. One of them where there is no more to say.
 */
export const eachInWords = ({ asNew, inService, where }: Worded): [string, string?] => {
  if (isWithoutFigure(asNew.state)) return [asNew.state];
  if (!inService) return [asNew.state + place(asNew) + whereRead(asNew, where)];
  const served = inServiceWords(inService, where);
  if (asNew.state === 'no limits') return [served];
  const isOnce = asNew.at === inService.at;
  return [
    AS_NEW[asNew.state] + place(asNew) + whereRead(asNew, where),
    isOnce ? IN_SERVICE[inService.state] + whereRead(inService, where) : served,
  ];
};

/** One line for people: a limit that both turn on is named behind the second. */
export const wordsOf = ({ asNew, inService, where }: Worded): string => {
  const [first, second] = eachInWords({ asNew, inService, where });
  if (second === undefined || !inService) return first;
  const isOnce = asNew.at === inService.at;
  const fresh = isOnce ? AS_NEW[asNew.state] + whereRead(asNew, where) : first;
  return `${fresh}; ${inServiceWords(inService, where)}`;
};
