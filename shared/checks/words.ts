import type { CheckState, Place, Verdict } from './states.ts';

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
};

/** One line for people. */
export const wordsOf = (asNew: Verdict, inService: Verdict | undefined): string => {
  if (asNew.state === 'waiting') return 'waiting';
  if (!inService) return asNew.state + place(asNew);
  if (asNew.state === 'no limits') return IN_SERVICE[inService.state] + place(inService);
  const same = asNew.at === inService.at;
  return `${AS_NEW[asNew.state]}${same ? '' : place(asNew)}; ${IN_SERVICE[inService.state]}${place(inService)}`;
};
