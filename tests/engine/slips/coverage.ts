import { bandOf } from '../../../shared/checks/band.ts';
import type { CellRecord, SheetFile } from '../../../shared/sheet/format.ts';
import type { OutputResult } from '../../../src/engine/rows/results.ts';
import type { Asker } from './asker.ts';
import { Draw } from './draw.ts';
import { type Ends, type Form, goodForm, type Mic, readOff, surface, wornForm } from './surfaces.ts';

/** How often what was read covers what is: of parts whose true form is known. */
export interface Coverage {
  parts: number;
  /** True mean, least and greatest within what is printed of them. */
  mean: number;
  least: number;
  greatest: number;
  /**
   * Of a fit of two such parts: the true least below all that is printed, or the true greatest above. So often it is proven
   * wrongly to limits that are only just proven.
   */
  below: number;
  above: number;
  /** The same of what alone was read, where that is less than the part. */
  belowThere: number;
  aboveThere: number;
}

const cell = (name: string, more: Partial<CellRecord>): CellRecord => ({
  id: name,
  role: 'measured',
  name,
  quantity: 'length',
  ...more,
});

const band = (output: OutputResult | undefined): { low: number; high: number } | undefined => {
  const standing = output?.measured ?? output?.planned;
  return standing && output ? bandOf(standing, output, true) : undefined;
};

/** Error of a micrometer of certificate ± 3 um (k = 2) and setting ± 1 um, scatter 1.2 um, mm. */
const micrometer = (draw: Draw): Mic => ({
  error: 0.0015 * draw.normal() + draw.between(-0.001, 0.001),
  scatter: 0.0012,
  step: 0.001,
});

const gauge = (name: string): CellRecord => ({
  id: name,
  role: 'cell',
  kind: 'gauge',
  edition: 1,
  name,
  inputs: {
    gauge: 'micrometer-25-50-mm',
    certificate: '3 um',
    setting_doubt: '1 um',
    scatter: '1.2 um',
    division: '1 um',
  },
});

export function coverage(
  form: (draw: Draw) => Form,
  [along, around]: readonly [number, number],
  parts: number,
  seed: number,
  rule: SheetFile['rule'],
  asker: Asker,
  doubt?: string,
): Coverage {
  const draw = new Draw(seed);
  const found = { parts, mean: 0, least: 0, greatest: 0, below: 0, above: 0, belowThere: 0, aboveThere: 0 };
  for (let i = 0; i < parts; i++) {
    const [bore, journal] = [surface(draw, 40.06, form(draw)), surface(draw, 40, form(draw))];
    const [inside, outside] = [micrometer(draw), micrometer(draw)];
    const [hole, shaft] = [
      readOff(draw, bore, inside, along, around),
      readOff(draw, journal, outside, along, around),
    ];
    const stated = doubt ? ` ± ${doubt}` : '';
    const file: SheetFile = {
      format: 'fitwright-sheet',
      version: 2,
      title: { title: 'coverage' },
      units: { length: 'mm' },
      rule,
      cells: [
        gauge('inside_mic'),
        gauge('outside_mic'),
        cell('bore', { entry: hole.text + stated, ...(doubt ? {} : { gauge: 'inside_mic' }) }),
        cell('journal', { entry: shaft.text + stated, ...(doubt ? {} : { gauge: 'outside_mic' }) }),
        cell('clearance', { role: 'worked', entry: '= bore - journal' }),
      ],
    };
    const results = new Map(asker.results(file).map((one) => [one.id, one.outputs]));
    const isIn = (value: number, name: string): number => {
      const range = band(results.get('bore')?.[name]);
      return range && value >= range.low && value <= range.high ? 1 : 0;
    };
    found.mean += isIn(bore.mean / 1e3, 'value');
    found.least += isIn(bore.least / 1e3, 'least');
    found.greatest += isIn(bore.greatest / 1e3, 'greatest');
    const fit = results.get('clearance') ?? {};
    const [low, high] = [band(fit.least ?? fit.value)?.low ?? 0, band(fit.greatest ?? fit.value)?.high ?? 0];
    const isBelow = (a: Ends, b: Ends): boolean => (a.least - b.greatest) / 1e3 < low;
    const isAbove = (a: Ends, b: Ends): boolean => (a.greatest - b.least) / 1e3 > high;
    if (isBelow(bore, journal)) found.below++;
    if (isAbove(bore, journal)) found.above++;
    if (isBelow(hole.there, shaft.there)) found.belowThere++;
    if (isAbove(hole.there, shaft.there)) found.aboveThere++;
  }
  return found;
}

/** Nothing but oval: the hardest to tell from two directions. */
const ovalForm = (draw: Draw): Form => ({
  taper: 0,
  bell: 0,
  oval: 0.02 * 10 ** draw.next(),
  lobes: 0,
  grows: 0,
});

export const FORMS = { good: goodForm, worn: wornForm, oval: ovalForm } as const;
