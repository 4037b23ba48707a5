import type { TradeFunction } from '../record/cell.ts';
import { isProblem, type TableProblem } from '../tables/table.ts';
import type { Range } from '../tables/threads/thread.ts';
import {
  percentOfThread,
  type Thread,
  type ThreadLimits,
  threadByDesignation,
} from '../tables/threads/threads.ts';

const unified = 'ASME B1.1-2003 (inch threads)';
const metric = 'ISO 68-1, ISO 261, ISO 724 and ISO 965-1 (metric threads)';
const takes = [{ name: 'thread', text: true }] as const;

/** A figure of a thread by its designation; a message where the thread, or the figure, is not to be had. */
const ofThread = (
  name: string,
  purpose: string,
  gives: string,
  read: (thread: Thread) => number | { message: string },
  source = `${unified}; ${metric}`,
): TradeFunction => ({
  name,
  purpose,
  takes,
  gives,
  compute: (designation) => {
    const found = threadByDesignation(String(designation));
    return isProblem(found) ? { message: found.problem } : read(found);
  },
  source,
});

/** Crest: major diameter of a bolt, minor diameter of a nut: what is turned or bored, where the pitch diameter is cut. */
const crestOf = ({ internal, major, minor }: ThreadLimits): Range | undefined => (internal ? minor : major);

const withClass = (designation: string, name: string): Thread | TableProblem => {
  const alone = threadByDesignation(designation);
  if (isProblem(alone)) return alone;
  if (!alone.limits) return threadByDesignation(`${designation}-${name}`);
  return alone.limits.class === name
    ? alone
    : {
        problem: `${designation} already names class ${alone.limits.class}, and ${name} is asked for: write one of them.`,
      };
};

/** A limit of a thread in a class: bolt or nut as the class says. */
const ofClass = (
  name: string,
  purpose: string,
  read: (limits: ThreadLimits) => number | undefined,
): TradeFunction => ({
  name,
  purpose,
  takes: [...takes, { name: 'class', text: true }],
  gives: 'length',
  compute: (designation, asked) => {
    const found = withClass(String(designation), String(asked));
    if (isProblem(found)) return { message: found.problem };
    const value = found.limits && read(found.limits);
    return value ?? { message: `Class ${String(asked)} sets no such limit for ${found.designation}.` };
  },
  source: `${unified}; ${metric}`,
});

const functions: readonly TradeFunction[] = [
  ofThread('THREADMAJOR', 'Basic major diameter of a thread.', 'length', (thread) => thread.major),
  ofThread('THREADPITCH', 'Pitch of a thread.', 'length', (thread) => thread.pitch),
  ofThread(
    'THREADPITCHDIAMETER',
    'Basic pitch diameter of a thread.',
    'length',
    (thread) => thread.pitchDiameter,
  ),
  ofThread('THREADMINOR', 'Basic minor diameter of the nut thread.', 'length', (thread) => thread.minor),
  ofThread(
    'STRESSAREA',
    'Tensile stress area of a bolt of that thread.',
    'area',
    (thread) => thread.stressArea,
    'ASME B1.1-2003: 0.7854 (D - 0.9743 / n)^2; ISO 898-1:2013: pi / 4 ((d2 + d3) / 2)^2',
  ),
  ofThread(
    'TAPDRILL',
    'Drill usually taken before tapping.',
    'length',
    ({ designation, tapDrill }) =>
      tapDrill?.diameter ?? { message: `No usual tap drill is listed for ${designation}: enter the hole.` },
    'the tables of threads; each row has its source',
  ),
  ofClass('PITCHLEAST', 'Least pitch diameter of a thread in a class.', ({ pitch }) => pitch.min),
  ofClass('PITCHGREATEST', 'Greatest pitch diameter of a thread in a class.', ({ pitch }) => pitch.max),
  ofClass(
    'CRESTLEAST',
    'Least diameter over the crests: major of a bolt, minor of a nut.',
    (limits) => crestOf(limits)?.min,
  ),
  ofClass(
    'CRESTGREATEST',
    'Greatest diameter over the crests: major of a bolt, minor of a nut.',
    (limits) => crestOf(limits)?.max,
  ),
  {
    name: 'HOLEOVERCLASS',
    purpose:
      'How far a hole is over the greatest minor diameter of a class of nut thread; under the least, below zero; 0 inside its limits, and for a class of bolts.',
    takes: [...takes, { name: 'class', text: true }, { name: 'hole', quantity: 'length' }],
    gives: 'length',
    compute: (designation, asked, hole) => {
      const found = withClass(String(designation), String(asked));
      if (isProblem(found)) return { message: found.problem };
      const minor = found.limits?.internal ? found.limits.minor : undefined;
      if (!minor) return 0;
      return Math.max(Number(hole) - minor.max, 0) + Math.min(Number(hole) - minor.min, 0);
    },
    movement: { moves: { hole: 'rising' } },
    compares: true,
    source: `${unified}; ${metric}`,
  },
  {
    name: 'THREADSHARE',
    purpose:
      'Share of the full thread height that a hole leaves: 100 % is 0.64952 of the pitch on each side.',
    takes: [...takes, { name: 'hole', quantity: 'length' }],
    gives: 'number',
    compute: (designation, hole) => {
      const found = threadByDesignation(String(designation));
      return isProblem(found)
        ? { message: found.problem }
        : percentOfThread(found.major, found.pitch, Number(hole)) / 100;
    },
    movement: { moves: { hole: 'falling' } },
    source: 'percent = 76.98 n (D - hole), inches and threads per inch; the same rule for metric threads',
  },
];

export default functions;
