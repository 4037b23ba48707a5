import type { TradeFunction } from '../record/cell.ts';
import { nextOversize, nextUndersize, oversizeSeries, undersizeSeries } from '../tables/undersizes.ts';

const sizes = [
  { name: 'new_size', quantity: 'length' },
  { name: 'cleans_up_at', quantity: 'length' },
] as const;

const isKey = <T extends object>(of: T, key: string): key is keyof T & string => Object.hasOwn(of, key);
const noSeries = (key: number | string, known: object) => ({
  message: `There is no series "${key}". There are: ${Object.keys(known).join(', ')}.`,
});

const functions: readonly TradeFunction[] = [
  {
    name: 'UNDERSIZE',
    purpose: 'The least standard undersize at which a journal cleans up.',
    takes: [{ name: 'series', text: true }, ...sizes],
    gives: 'length',
    compute: (series, newSize, cleansUpAt) => {
      const key = String(series);
      if (!isKey(undersizeSeries, key)) return noSeries(key, undersizeSeries);
      const found = nextUndersize(Number(newSize), Number(cleansUpAt), key);
      return 'problem' in found ? { message: found.problem } : found.under;
    },
    movement: { moves: { new_size: 'rising', cleans_up_at: 'falling' }, steps: true },
    source: 'the table of undersizes',
  },
  {
    name: 'OVERSIZE',
    purpose: 'The least standard oversize at which a bore cleans up.',
    takes: [{ name: 'series', text: true }, ...sizes],
    gives: 'length',
    compute: (series, newSize, cleansUpAt) => {
      const key = String(series);
      if (!isKey(oversizeSeries, key)) return noSeries(key, oversizeSeries);
      const found = nextOversize(Number(newSize), Number(cleansUpAt), key);
      return 'problem' in found ? { message: found.problem } : found.over;
    },
    movement: { moves: { new_size: 'falling', cleans_up_at: 'rising' }, steps: true },
    source: 'the table of oversizes',
  },
];

export default functions;
