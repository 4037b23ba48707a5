import { isProblem } from '../table.ts';
import { threadByDesignation } from './designation.ts';
import { inchThreads } from './inch-series.ts';
import { metricThreads } from './metric-series.ts';

/** What a choice that is typed in words may be instead. */
export interface Named {
  names: readonly string[];
  /** Which of all there are, where it is not all of them. */
  which?: string;
}

const inchNames = (from: number, to: number, series: readonly string[]): string[] =>
  inchThreads
    .filter((one) => one.major >= from && one.major <= to && series.includes(one.series))
    .map(({ size, perInch, series }) => `${size}-${perInch} ${series}`);

const metricNames = (from: number, to: number, fineToo: boolean): string[] =>
  metricThreads
    .filter(({ major }) => major >= from && major <= to)
    .flatMap(({ major, coarse, fine }) => [
      ...(coarse === undefined ? [] : [`M${major}`]),
      ...(fineToo ? fine.map((pitch) => `M${major}x${pitch}`) : []),
    ]);

/** A shop stays within the system of what is there, and a repair near its size: the rest is not worth a trial of each. */
const threadsNear = (text: string): Named => {
  const found = threadByDesignation(text);
  if (isProblem(found))
    return {
      names: [...inchNames(0, Number.POSITIVE_INFINITY, ['UNC']), ...metricNames(0, 68, false)],
      which: 'the coarse threads',
    };
  const unit = found.system === 'inch' ? 0.0254 : 1e-3;
  const [from, to] = [found.major / unit / 2.001, (found.major / unit) * 2.001];
  return {
    names:
      found.system === 'inch' ? inchNames(from, to, ['UNC', 'UNF', 'UNEF']) : metricNames(from, to, true),
    which: `${found.system === 'inch' ? 'the unified threads' : 'the metric threads'} from half to twice its size`,
  };
};

/** Classes in use of unified (ASME B1.1) and of metric threads (ISO 965-1), bolts before nuts. */
const CLASSES: readonly string[] = [
  ...['1A', '2A', '3A', '1B', '2B', '3B'],
  ...['4h', '6h', '6g', '6f', '6e', '8g', '4H', '5H', '6H', '6G', '7H'],
];

/** Choices that are typed in words and stand in no table, by their name: what may be taken in the place of one. */
export const namedChoices: ReadonlyMap<string, (text: string) => Named> = new Map([
  ['thread', threadsNear],
  ['thread-class', () => ({ names: CLASSES })],
]);
