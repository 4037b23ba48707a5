import type { DecisionRule } from '../../../shared/sheet/format.ts';
import { careOf } from '../../engine/report/care.ts';
import type { Library } from '../../engine/rows/library.ts';
import type { Care } from '../kit/care-list.tsx';
import { sayMessage } from '../kit/say-message.ts';
import { say } from '../kit/words.ts';
import type { Sheet } from './sheet.ts';

/** Ends every sheet, on the screen and on paper. */
export const DEFERS =
  'Local rules, the makers’ data and instructions, and licensed practice come before anything on this sheet. Lifting gear, pressure vessels, aircraft, fire pumps, and the brakes and steering of road vehicles are repaired by those whom an authority licenses for it.';

/** Said once a sheet. */
const K_WORDS =
  '(k=2) behind a reading: its expanded uncertainty; the true size lies within it about 95 times in 100.';

/** Which band stands behind a figure with limits, by the rule its verdict follows. */
const BAND: Readonly<Record<DecisionRule, string>> = {
  simple: 'Limits are held against the bare figure: of a plan, the middle of its spread.',
  'worst-case':
    'Behind a figure with limits stands its worst case: as far as it can be with all its sizes and doubts at their ends.',
  'iso14253-2013':
    'Behind a figure with limits stands its expanded uncertainty, behind every other its worst case.',
  'iso14253-2017':
    'Behind a figure with limits stands what holds 95 % of it, behind every other its worst case.',
};

const BAND_HEAD: Readonly<Record<DecisionRule, string>> = {
  simple: 'judged bare; worst case',
  'worst-case': 'worst case',
  'iso14253-2013': 'with limits: k=2',
  'iso14253-2017': 'with limits: 95 %',
};

/** Over the column of figures: which band stands behind those that are judged. */
export const bandHead = (rule: DecisionRule): string => BAND_HEAD[rule];

/** What the bands behind the figures of a sheet are. */
export const bandWords = (rule: DecisionRule): string => [K_WORDS, BAND[rule]].filter(Boolean).join(' ');

type Lines = Pick<Sheet, 'line' | 'idOf' | 'titleOf'>;

/** What to be careful of at a line. */
export const careOfLine = (sheet: Lines, library: Library | undefined, cell: string): string[] => {
  const record = sheet.line(cell)?.record;
  if (!record?.kind || !library) return [];
  const named = (name: string) => sheet.line(sheet.idOf(name) ?? name)?.record;
  return careOf(record, { library, named }).map(say);
};

/** What a line says about itself: that it will bind, that it is out of its range. */
const remarksOfLine = (sheet: Lines, cell: string): string[] =>
  (sheet.line(cell)?.result?.remarks ?? []).map(({ message }) => sayMessage(message, sheet));

/** What those lines call for, by line number, each said once. */
export const careOfLines = (
  sheet: Lines & Pick<Sheet, 'numberOf'>,
  library: Library | undefined,
  cells: readonly string[],
): Care[] => {
  const found = new Map<string, number[]>();
  for (const cell of cells)
    for (const text of [...remarksOfLine(sheet, cell), ...careOfLine(sheet, library, cell)]) {
      const number = sheet.numberOf(cell);
      const lines = found.get(text) ?? [];
      if (number !== undefined && !lines.includes(number)) lines.push(number);
      found.set(text, lines);
    }
  return [...found].map(([text, lines]) => ({ text, lines }));
};
